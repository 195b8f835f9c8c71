import type { Knit } from '../../../loom/move'
import type { Run } from '../../../pattern/pattern'
import type { PatternRun } from '../../../pattern/work'
import type { Layout } from '../../../pattern/layout'
import type { ReadRow, TextRange } from '../../read/reading'
import { joinedByKeys } from '../joinedByKeys'
import {
  hunksByPeg,
  hunksInOrder,
  onPegs,
  widthOf,
  type Hunk,
  type Item,
  type WordItem,
} from './hunks'
import {
  holdsGaps,
  isGap,
  letterOf,
  meaningOfRow,
  meaningOfWords,
  meanTheSame,
} from '../match/meaning'
import { otherRepeat, type OtherRepeat } from './otherRepeat'
import { pathOfRun, pathOfWords, samePath, type Path } from './path'

/** Stitches of the words that stand at one place for those of the chart. */
export interface Differing {
  readonly words: readonly WordItem[]
  readonly chart: readonly Item[]
  readonly pegs: Run
}

/** Something a row of the words says otherwise than the chart. */
export type Mismatch =
  | { readonly kind: 'path'; readonly words: Path; readonly chart: Path; readonly range: TextRange }
  | {
      readonly kind: 'stitches'
      readonly places: readonly Differing[]
      readonly range: TextRange
      /**
       * How many pegs each has stitches for, where that is not the same and no one place makes it
       * so: what stands behind the place where they part cannot be told apart.
       */
      readonly miscount?: { readonly words: number; readonly chart: number }
      /** The places are all there are: what differs is the repeat. */
      readonly repeat?: OtherRepeat
    }

export interface Knits {
  readonly words: Knit
  readonly chart: Knit
}

interface Compared {
  readonly run: PatternRun
  readonly knits: Knits
  readonly mismatches: readonly Mismatch[]
}

const compared = new WeakMap<ReadRow, Compared>()

/** Compare a row of the words with one working of a chart row, which lies as `layout` says. */
export function compareRow(
  read: ReadRow,
  run: PatternRun,
  layout: Layout,
  knits: Knits,
): readonly Mismatch[] {
  const last = compared.get(read)
  const { words, chart } = knits
  if (last?.run === run && last.knits.words === words && last.knits.chart === chart)
    return last.mismatches
  const mismatches = mismatchesOf(read, run, layout, knits)
  compared.set(read, { run, knits, mismatches })
  return mismatches
}

function mismatchesOf(read: ReadRow, run: PatternRun, layout: Layout, knits: Knits): Mismatch[] {
  const chart = pathOfRun(run)
  const words = meaningOfWords(read.stitches, knits.words)
  const row = meaningOfRow(run.row, read.heading ?? run.heading, knits.chart)
  const sameStitches = meanTheSame(words, row)
  const path = pathOfWords(read, run, sameStitches)
  if (samePath(path, chart)) return sameStitches ? [] : stitchMismatches(read, run, layout, knits)
  const found: Mismatch = { kind: 'path', words: path, chart, range: read.range }
  return [found, ...overlapMismatches(read, path, run, layout, knits)]
}

/** Stitches added and left out in a row of other length, and in one that comes out as long. */
const mostEdits = 80
const mostMoved = 12

function stitchMismatches(
  read: ReadRow,
  run: PatternRun,
  layout: Layout,
  knits: Knits,
): Mismatch[] {
  const { heading, row } = run
  const { words, chart, gaps } = rowItems(read, run, knits)
  const group = (hunks: readonly Hunk[]) => grouped(hunks, words, chart, read, heading, layout)
  const pegs = widthOf(words)
  const missing = gaps ? 0 : countGaps(run, knits)
  const wanted = row.to - row.from + 1 - missing
  const samePegs = pegs === wanted
  if (!samePegs) {
    const hunks = hunksInOrder(words, chart, mostEdits)
    if (hunks?.length === 1) return group(hunks)
    return [{ ...partingOf(words, chart, read), miscount: { words: pegs, chart: wanted } }]
  }
  const byPeg = group(hunksByPeg(words, chart))
  if (byPeg.length === 1) return byPeg
  const repeat = otherRepeat(words, chart, layout)
  if (repeat) return [{ ...wholly(byPeg, words, read), repeat }]
  const moved = hunksInOrder(words, chart, mostMoved)
  if (!moved) return byPeg
  const inOrder = group(moved)
  return byPeg.length <= inOrder.length ? byPeg : inOrder
}

/** The first place, in working order, where two rows are not alike. */
function partingOf(
  words: readonly WordItem[],
  chart: readonly Item[],
  read: ReadRow,
): Extract<Mismatch, { kind: 'stitches' }> {
  let at = 0
  while (at < words.length && words[at]?.letter === chart[at]?.letter) at++
  const here = words.slice(at, at + 1)
  const there = chart.slice(at, at + 1)
  return {
    kind: 'stitches',
    places: [{ words: here, chart: there, pegs: pegsOf(there.length > 0 ? there : here) }],
    range: here[0]?.range ?? after(words.at(-1), read),
  }
}

/** All places of a row in one, with the words of the whole row. */
const wholly = (
  found: readonly Mismatch[],
  words: readonly WordItem[],
  read: ReadRow,
): Extract<Mismatch, { kind: 'stitches' }> => ({
  kind: 'stitches',
  places: found
    .flatMap((one) => (one.kind === 'stitches' ? one.places : []))
    .toSorted((a, b) => a.pegs.from - b.pegs.from),
  range: unionOf(words.map(({ range }) => range)) ?? read.range,
})

/** The stitches of both on the pegs of the chart row, in working order. */
export function rowItems(
  read: ReadRow,
  run: PatternRun,
  knits: Knits,
): { words: WordItem[]; chart: Item[]; gaps: boolean } {
  const gaps = holdsGaps(meaningOfWords(read.stitches, knits.words))
  return {
    words: wordItems(read, pathOfRun(run), knits, gaps ? null : run),
    chart: chartItems(run, knits).filter(({ letter }) => gaps || !isGap(letter)),
    gaps,
  }
}

/** Where both rows have stitches on the same pegs, those are compared peg by peg. */
function overlapMismatches(
  read: ReadRow,
  path: Path,
  run: PatternRun,
  layout: Layout,
  knits: Knits,
): Mismatch[] {
  const from = Math.max(path.run.from, run.row.from)
  const to = Math.min(path.run.to, run.row.to)
  const inside = ({ peg, stitch }: Item) => peg >= from && peg + stitch.width - 1 <= to
  const byPeg = <T extends Item>(items: readonly T[]) =>
    items.filter(inside).sort((a, b) => a.peg - b.peg)
  const words = byPeg(wordItems(read, path, knits, null))
  const chart = byPeg(chartItems(run, knits))
  if (widthOf(words) !== widthOf(chart) || words[0]?.peg !== chart[0]?.peg) return []
  return grouped(hunksByPeg(words, chart), words, chart, read, 'forward', layout)
}

const countGaps = ({ row }: PatternRun, { chart }: Knits): number =>
  row.sites.filter(({ stitch }) => isGap(letterOf(stitch, chart))).length

function chartItems({ row, heading }: PatternRun, { chart }: Knits): Item[] {
  const items = row.sites.map(({ stitch, peg }) => ({
    stitch,
    peg,
    letter: letterOf(stitch, chart),
  }))
  return heading === 'forward' ? items : items.reverse()
}

/** `around`: pegs that have no stitch in that row are passed over without a word. */
function wordItems(
  { stitches }: ReadRow,
  { heading, run }: Path,
  { words, chart }: Knits,
  around: PatternRun | null,
): WordItem[] {
  const empty = new Set(
    around?.row.sites
      .filter(({ stitch }) => isGap(letterOf(stitch, chart)))
      .map(({ peg }) => peg) ?? [],
  )
  const items = stitches.map(({ stitch, range }) => ({
    stitch,
    range,
    letter: letterOf(stitch, words),
  }))
  return onPegs(items, heading, run, empty)
}

/** Places that one piece of text, or one column of the repeat, makes differ are one mismatch. */
function grouped(
  hunks: readonly Hunk[],
  words: readonly WordItem[],
  chart: readonly Item[],
  read: ReadRow,
  heading: Path['heading'],
  { columnOf }: Layout,
): Mismatch[] {
  const places = hunks.map((hunk) => {
    const here = words.slice(...hunk.words)
    const there = chart.slice(...hunk.chart)
    const before = words[hunk.words[0] - 1]
    const range = unionOf(here.map((item) => item.range)) ?? after(before, read)
    const pegs = pegsOf(there.length > 0 ? there : here)
    return { words: here, chart: there, pegs, range }
  })
  const groups = joinedByKeys(places, ({ words: here, chart: there, range }) => {
    const kind = `${lettersOf(here)}>${lettersOf(there)}`
    const columns = there.map(({ peg }) => columnOf[peg] ?? -1).join(' ')
    return [
      `text ${kind} ${range.from}-${range.to}`,
      ...(there.length > 0 ? [`columns ${kind} ${columns}`] : []),
    ]
  })
  const step = heading === 'forward' ? 1 : -1
  return groups.map((group) => ({
    kind: 'stitches',
    places: group.toSorted((a, b) => (a.pegs.from - b.pegs.from) * step),
    range: unionOf(group.map(({ range }) => range)) ?? read.range,
  }))
}

const lettersOf = (items: readonly Item[]): string => items.map(({ letter }) => letter).join('')

/** Words that leave out stitches: the place behind the last one they name. */
const after = (before: WordItem | undefined, { range }: ReadRow): TextRange => {
  const at = before?.range.to ?? range.from
  return { from: at, to: at }
}

function unionOf(ranges: readonly TextRange[]): TextRange | null {
  if (ranges.length === 0) return null
  return {
    from: Math.min(...ranges.map(({ from }) => from)),
    to: Math.max(...ranges.map(({ to }) => to)),
  }
}

function pegsOf(items: readonly Item[]): Run {
  let [from, to] = [Infinity, -Infinity]
  for (const { peg, stitch } of items) {
    from = Math.min(from, peg)
    to = Math.max(to, peg + stitch.width - 1)
  }
  return { from: Math.max(0, from), to }
}
