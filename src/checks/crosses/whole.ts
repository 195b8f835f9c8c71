import { rotateColumns } from '../../pattern/edits/turn-round'
import { landing, paint } from '../../pattern/edits/paint'
import { whyCut } from '../../pattern/cut'
import type { Layout } from '../../pattern/layout'
import type { Chart, Pattern, Row, Run } from '../../pattern/pattern'
import { cutWords } from '../../stitches/cut'
import { placed, type Placed } from '../../pattern/row'
import type { CutBy } from '../../stitches/stitch'
import type { Fix } from '../finding'
import { fix, paintColumns } from '../mending'
import { nothing } from '../nothing'
import type { Noted, RowView } from '../rule'
import { inEachRepeat, pegsNamed } from '../wording'

export interface Piece {
  readonly item: Placed
  readonly why: CutBy
  /** Pegs of what there is of it, in the first copy. */
  readonly pegs: Run
}

let lastView: RowView | null = null
let lastFound: readonly Piece[] = nothing

/** The stitches of several columns that are not whole, each with its reason. */
export function brokenIn(view: RowView): readonly Piece[] {
  // Several rules ask this of one row, one after the other.
  if (view !== lastView) lastFound = findBroken(view)
  lastView = view
  return lastFound
}

const wide = new WeakMap<Row, readonly Placed[]>()

/** The stitches of a row that need several columns. */
function wideIn(row: Row): readonly Placed[] {
  let items = wide.get(row)
  if (!items) {
    items = placed(row).filter(({ stitch }) => stitch.width > 1)
    wide.set(row, items)
  }
  return items
}

function findBroken({ row, layout }: RowView): readonly Piece[] {
  const items = wideIn(row)
  if (items.length === 0) return nothing
  const pieces: Piece[] = []
  for (const item of items) {
    const why = whyCut(item, row, layout)
    if (!why) continue
    const peg = layout.columnOf.indexOf(item.column)
    if (peg < 0) continue
    const pegs = { from: peg, to: lastPegOf(item, peg, layout) }
    if (row.run && (pegs.to < row.run.from || peg > row.run.to)) continue
    pieces.push({ item, why, pegs })
  }
  return pieces
}

/** Up to which peg its columns lie side by side, from this peg on. */
function lastPegOf({ column, columns }: Placed, peg: number, { columnOf }: Layout): number {
  let last = peg
  while (last + 1 < peg + columns && columnOf[last + 1] === column + last + 1 - peg) last++
  return last
}

/** Note every stitch that is broken for this reason; `needs` says what it needs and lacks. */
export const noteBroken = (
  view: RowView,
  why: CutBy,
  needs: (piece: Piece) => string,
  advice: string,
  mend: (view: RowView, piece: Piece, row: number) => readonly Fix[],
): readonly Noted[] => {
  const broken = brokenIn(view)
  if (broken.length === 0) return nothing
  return broken
    .filter((piece) => piece.why === why)
    .map((piece) => {
      const { item, pegs } = piece
      const { abbr } = item.stitch[view.setting.terms]
      return {
        pegs,
        say: (row) =>
          `${row}: ${abbr} on ${pegsNamed(pegs)} is ${cutWords[why]}: it needs ${needs(piece)}${inEachRepeat(view.layout, pegs.from)}.`,
        advice,
        mend: (row) => mend(view, piece, row).toSpliced(2, 0, workPlain(piece, row)),
      }
    })
}

/** "2 are", of the pegs that are there for it. */
export const left = ({ from, to }: Run): string => (from === to ? '1 is' : `${to - from + 1} are`)

/** What is left of the stitch becomes plain knit, which is how the loom worked it anyway. */
const workPlain = ({ item, pegs }: Piece, row: number): Fix =>
  fix(
    item.columns === pegs.to - pegs.from + 1
      ? `Knit ${pegsNamed(pegs)} instead`
      : 'Knit all its pegs instead',
    paintColumns(
      'k',
      row,
      Array.from({ length: item.columns }, (_, offset) => item.column + offset),
    ),
  )

/** The nearest columns at which the stitch stands whole and meets no other stitch of several. */
export function moveInside({ item }: Piece, row: number, most: number): Fix[] {
  const { stitch, column, columns } = item
  const moved = (by: number) => (pattern: Pattern) => {
    const { background } = pattern.style
    const own = Array.from({ length: columns }, (_, offset) => column + offset)
    const cleared = paintColumns(background, row, own)(pattern)
    const painted = paint(cleared, stitch.id, row, column + by)
    return painted === cleared ? pattern : painted
  }
  const steps: Fix[] = []
  for (let by = 1; by <= most; by++) {
    steps.push(
      fix(`Move it ${by} ${by === 1 ? 'peg' : 'pegs'} earlier`, moved(-by)),
      fix(`Move it ${by} ${by === 1 ? 'peg' : 'pegs'} later`, moved(by)),
    )
  }
  return steps
}

/** Start the round, or the repeat, at another column, so that every stitch stands whole in it. */
export function startElsewhere(what: string, { item }: Piece, row: number): Fix[] {
  const label = (by: number) =>
    `Start ${what} ${Math.abs(by)} ${Math.abs(by) === 1 ? 'peg' : 'pegs'} ${by < 0 ? 'earlier' : 'later'}`
  const { width } = item.stitch
  const shift = (by: number): Fix =>
    fix(label(by), (pattern) => {
      const to = columnAfter(pattern.chart, item.column, by)
      if (wouldCut(pattern, by, row, item.column)) return pattern
      const rotated = rotateColumns(pattern, by)
      return landing(rotated, item.stitch.id, row, to).can
        ? paint(rotated, item.stitch.id, row, to)
        : pattern
    })
  const later = Array.from({ length: width - 1 }, (_, i) => i + 1)
  const enough = (by: number) => (by > 0 ? by >= width - item.columns : -by >= item.columns)
  return later
    .flatMap((by) => [by, -by])
    .filter(enough)
    .map(shift)
}

const roundOf = ({ repeat, columns }: Chart): Run => repeat ?? { from: 0, to: columns - 1 }

function columnAfter(chart: Chart, column: number, by: number): number {
  const { from, to } = roundOf(chart)
  const width = to - from + 1
  return from + ((((column - from - by) % width) + width) % width)
}

/** Would the new start go through a stitch of several columns in another row? */
function wouldCut({ chart }: Pattern, by: number, row: number, column: number): boolean {
  const { from, to } = roundOf(chart)
  const width = to - from + 1
  const start = from + (((by % width) + width) % width)
  return chart.rows.some((other, index) =>
    placed(other).some(
      (item) =>
        item.columns > 1 &&
        item.column < start &&
        item.column + item.columns > start &&
        !(index === row && item.column === column),
    ),
  )
}
