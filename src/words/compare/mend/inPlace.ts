import type { PatternRun } from '../../../pattern/work'
import type { Stitch } from '../../../stitches/stitch'
import { lex } from '../../read/lines/lex'
import type { ReadRow, Reading, TextRange } from '../../read/reading'
import { isCounted } from '../../tokens'
import { hunksByPeg, hunksInOrder, widthOf, type Item, type WordItem } from '../within/hunks'
import type { Names } from './names'
import type { Changes } from './rewrite'
import { rowItems, type Knits } from '../within/row'

/** What the words at one place of the line are to say instead, each time they are worked. */
interface Said {
  readonly range: TextRange
  /** Stitches they stand for now, in the order worked, over all times. */
  readonly now: Stitch[]
  /** One list for each of `now`: what stands in its place. */
  readonly wanted: Item[][]
  /** How many were worked in each stretch without others between. */
  readonly runs: number[]
}

const mostEdits = 80

/**
 * The changes of a line that make it say what the chart has, of its differing stitches only: the
 * brackets, sizes and repeats around them stay. null: it cannot be done by these. Whether the line
 * then says what it should is for whoever reads it again.
 */
export function changesInPlace(
  reading: Reading,
  read: ReadRow,
  run: PatternRun,
  knits: Knits,
  names: Names,
): Changes | null {
  const { words, chart } = rowItems(read, run, knits)
  const wanted = inPlaceOf(words, chart)
  if (!wanted) return null
  const pieces: Saying[] = []
  for (const said of saidIn(words, wanted).sort((a, b) => a.range.from - b.range.from)) {
    const piece = pieceOf(reading, said)
    if (!piece) return null
    const last = pieces.at(-1)
    const joined = last && join(reading, last, piece)
    if (joined) pieces[pieces.length - 1] = joined
    else pieces.push(piece)
  }
  const changed = pieces.filter((piece) => piece.isChanged)
  const changes: Changes[number][] = []
  for (const piece of changed) {
    const text = textOf(reading, piece, names)
    const range = text === '' ? withComma(reading.text, piece.range) : piece.range
    if (text === null || !range) return null
    changes.push({ range, text })
  }
  // Where nothing stays as it was the line is written anew, in its shortest words.
  const nothingStays =
    changed.length === pieces.length && changes.some(({ text }) => /,|^$/.test(text))
  return changes.length === 0 || nothingStays ? null : changes
}

/** What the chart has in place of each stitch of the words; null: too much differs to be told. */
function inPlaceOf(words: readonly WordItem[], chart: readonly Item[]): Item[][] | null {
  if (words.length === 0) return null
  const hunks =
    widthOf(words) === widthOf(chart)
      ? hunksByPeg(words, chart)
      : hunksInOrder(words, chart, mostEdits)
  if (!hunks) return null
  const wanted: Item[][] = words.map(() => [])
  let [i, j] = [0, 0]
  const same = (to: number) => {
    while (i < to) wanted[i++]?.push(chart[j++] as Item)
  }
  for (const hunk of hunks) {
    same(hunk.words[0])
    const [from, to] = hunk.words
    const there = chart.slice(...hunk.chart)
    there.forEach((item, index) => {
      // As many on both sides go one for one; what is left over stands beside the last of them.
      const at = from === to ? Math.max(0, from - 1) : Math.min(from + index, to - 1)
      wanted[at]?.push(item)
    })
    i = to
    j = hunk.chart[1]
  }
  same(words.length)
  return wanted
}

function saidIn(words: readonly WordItem[], wanted: readonly Item[][]): Said[] {
  const all = new Map<number, Said>()
  let last: Said | null = null
  words.forEach(({ range, stitch }, index) => {
    let said = all.get(range.from)
    if (!said) all.set(range.from, (said = { range, now: [], wanted: [], runs: [] }))
    said.now.push(stitch)
    said.wanted.push(wanted[index] ?? [])
    if (said === last) said.runs[said.runs.length - 1] = (said.runs.at(-1) ?? 0) + 1
    else said.runs.push(1)
    last = said
  })
  return [...all.values()]
}

/** What is said at one place, and what is to be said there, each time it is worked. */
interface Saying {
  readonly range: TextRange
  readonly list: readonly Item[]
  readonly isChanged: boolean
  /** Its number is one of a list of sizes. */
  readonly isSized: boolean
  readonly times: number
}

/** null: the words would have to say one thing here and another there. */
function pieceOf({ text, settings }: Reading, { range, now, wanted, runs }: Said): Saying | null {
  const isChanged = !now.every((stitch, index) => {
    const list = wanted[index] ?? []
    return list.length === 1 && list[0]?.stitch === stitch
  })
  const numbers = lex(text.slice(range.from, range.to), settings.size).filter(
    ({ kind }) => kind === 'number',
  )
  const told = numbers.at(-1)?.value ?? 1
  const each = [told, 1, ...runs].find(
    (count) => runs.every((length) => length % count === 0) && repeats(wanted, count),
  )
  if (each === undefined) return null
  return {
    range,
    list: wanted.slice(0, each).flat(),
    isChanged,
    isSized: numbers.some(({ sizes }) => sizes > 1),
    times: now.length / each,
  }
}

/** "k3, k1" becomes "k4", where one of them is new; null: they stay two. */
function join({ text, settings }: Reading, a: Saying, b: Saying): Saying | null {
  const [last, first] = [a.list.at(-1), b.list[0]]
  const meet =
    last && first && last.letter === first.letter && isCounted(first.stitch, settings.terms)
  if (!meet || (!a.isChanged && !b.isChanged)) return null
  if (a.isSized || b.isSized || a.times !== b.times) return null
  if (!/^,\s*$/.test(text.slice(a.range.to, b.range.from))) return null
  const range = { from: a.range.from, to: b.range.to }
  return { ...a, range, list: [...a.list, ...b.list], isChanged: true }
}

/** null: only a stitch of another kind could stand there. */
function textOf({ text, settings }: Reading, piece: Saying, names: Names): string | null {
  const { list, range, isSized } = piece
  const was = text.slice(range.from, range.to)
  const [first] = list
  if (isSized) {
    // The number of every size stays, so only the name of the stitch can be another.
    const name = /^\p{L}+ ?(?=\d)/u.exec(was)?.[0]
    const isOne = first && list.every(({ letter }) => letter === first.letter)
    if (!isOne || !isCounted(first.stitch, settings.terms) || name === undefined) return null
    return `${names.write(first.stitch, 1).slice(0, -1)}${was.slice(name.length)}`
  }
  const parts: string[] = []
  for (let from = 0; from < list.length;) {
    const item = list[from] as Item
    let to = from + 1
    while (to < list.length && list[to]?.letter === item.letter) to++
    parts.push(names.write(item.stitch, to - from))
    from = to
  }
  const written = parts.join(', ')
  return /^\p{Lu}\p{Ll}*(?: ?\d+)?(?:,|$)/u.test(was) && !/\p{Lu}/u.test(written.slice(1))
    ? written.charAt(0).toUpperCase() + written.slice(1)
    : written
}

/** Where nothing is left to say, the comma before it goes too; null: there is none. */
function withComma(text: string, { from, to }: TextRange): TextRange | null {
  const comma = /,\s*$/.exec(text.slice(Math.max(0, from - 8), from))?.[0]
  return comma === undefined ? null : { from: from - comma.length, to }
}

/** Is the same wanted each time? */
const repeats = (wanted: readonly Item[][], count: number): boolean =>
  wanted.every((list, index) => {
    const first = wanted[index % count] ?? []
    return (
      list.length === first.length && list.every(({ letter }, at) => letter === first[at]?.letter)
    )
  })
