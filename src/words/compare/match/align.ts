import type { RowPair } from '../comparison'
import { hunksBetween } from '../within/hunks'
import { meanTheSame, withoutGaps, type Meaning } from './meaning'

/** A list of rows to be matched: what each says, and its number; NaN where it has none. */
export interface Listed {
  readonly meaning: Meaning
  readonly number: number
  /** It could not be read: nothing is known against it. */
  readonly unread?: boolean
}

/** Beyond so many rows added and left out, rows are matched by their numbers alone. */
const mostEdits = 500
/** Gaps up to this size (rows times rows) are matched by likeness. */
const largestGap = 4096

/**
 * Match the rows of the words with those of the chart: by their numbers, or by what they say, the
 * way that leaves the fewest rows differing or alone.
 */
export function align(read: readonly Listed[], worked: readonly Listed[]): RowPair[] {
  const agree = (i: number, j: number): boolean => {
    const words = read[i] as Listed
    return words.unread === true || meanTheSame(words.meaning, (worked[j] as Listed).meaning)
  }
  const cost = (pairs: readonly RowPair[]): number => {
    let sum = 0
    for (const { read: i, pass: j } of pairs) if (i === null || j === null || !agree(i, j)) sum++
    return sum
  }
  let best = byNumber(read, worked) ?? inOrder(0, read.length, 0, worked.length)
  let least = cost(best)
  for (const way of [
    () => inOrder(0, read.length, 0, worked.length),
    () => byContent(read, worked, agree),
  ]) {
    // One row out is the least there can be, if there is any: no other way is better.
    if (least < 2) break
    const pairs = way()
    const price = pairs ? cost(pairs) : Infinity
    if (pairs && price < least) {
      best = pairs
      least = price
    }
  }
  return best
}

/** null: the numbers do not rise from row to row, or are none. */
function byNumber(read: readonly Listed[], worked: readonly Listed[]): RowPair[] | null {
  for (let i = 0; i < read.length; i++)
    if (!((read[i] as Listed).number > (read[i - 1]?.number ?? 0))) return null
  const pairs: RowPair[] = []
  let i = 0
  for (let j = 0; j < worked.length; j++) {
    const { number } = worked[j] as Listed
    while (i < read.length && (read[i] as Listed).number < number)
      pairs.push({ read: i++, pass: null })
    const same = read[i]?.number === number
    pairs.push({ read: same ? i++ : null, pass: j })
  }
  while (i < read.length) pairs.push({ read: i++, pass: null })
  return pairs
}

function inOrder(fromRead: number, toRead: number, fromPass: number, toPass: number): RowPair[] {
  const pairs: RowPair[] = []
  for (let n = 0; n < Math.max(toRead - fromRead, toPass - fromPass); n++)
    pairs.push({
      read: fromRead + n < toRead ? fromRead + n : null,
      pass: fromPass + n < toPass ? fromPass + n : null,
    })
  return pairs
}

/** null: too much differs to be told apart by content. */
function byContent(
  read: readonly Listed[],
  worked: readonly Listed[],
  agree: (i: number, j: number) => boolean,
): RowPair[] | null {
  const least = Math.min(read.length, worked.length)
  let start = 0
  while (start < least && agree(start, start)) start++
  let tail = 0
  while (tail < least - start && agree(read.length - 1 - tail, worked.length - 1 - tail)) tail++
  const words = read.slice(start, read.length - tail).map(({ meaning }) => withoutGaps(meaning))
  const rows = worked.slice(start, worked.length - tail).map(({ meaning }) => withoutGaps(meaning))
  const hunks = hunksBetween(words, rows, mostEdits)
  if (!hunks) return null
  const pairs: RowPair[] = []
  let [i, j] = [0, 0]
  for (const hunk of hunks) {
    const [fromRead, toRead] = hunk.words.map((at) => at + start) as [number, number]
    const [fromPass, toPass] = hunk.chart.map((at) => at + start) as [number, number]
    pairs.push(...inOrder(i, fromRead, j, fromPass))
    pairs.push(...matchGap(read, worked, fromRead, toRead, fromPass, toPass))
    i = toRead
    j = toPass
  }
  pairs.push(...inOrder(i, read.length, j, worked.length))
  return pairs
}

/** Leaving a row alone costs half as much as pairing two that have nothing in common. */
const alone = 0.5

/** Match rows of which none says the same as another, so that those that are most alike meet. */
function matchGap(
  read: readonly Listed[],
  worked: readonly Listed[],
  fromRead: number,
  toRead: number,
  fromPass: number,
  toPass: number,
): RowPair[] {
  const height = toRead - fromRead
  const width = toPass - fromPass
  if (height === width || height === 0 || width === 0 || height * width > largestGap)
    return inOrder(fromRead, toRead, fromPass, toPass)
  const price = (i: number, j: number): number =>
    unlikeness(read[fromRead + i] as Listed, worked[fromPass + j] as Listed)
  const costs = Array.from({ length: height + 1 }, () => new Float64Array(width + 1))
  const at = (i: number, j: number): number => costs[i]?.[j] ?? 0
  for (let i = height; i >= 0; i--)
    for (let j = width; j >= 0; j--) {
      const ways = [
        i < height && j < width ? price(i, j) + at(i + 1, j + 1) : Infinity,
        i < height ? alone + at(i + 1, j) : Infinity,
        j < width ? alone + at(i, j + 1) : Infinity,
      ]
      const row = costs[i] as Float64Array
      row[j] = i === height && j === width ? 0 : Math.min(...ways)
    }
  const pairs: RowPair[] = []
  for (let i = 0, j = 0; i < height || j < width;) {
    const here = at(i, j)
    if (i < height && j < width && here === price(i, j) + at(i + 1, j + 1))
      pairs.push({ read: fromRead + i++, pass: fromPass + j++ })
    else if (i < height && here === alone + at(i + 1, j))
      pairs.push({ read: fromRead + i++, pass: null })
    else pairs.push({ read: null, pass: fromPass + j++ })
  }
  return pairs
}

/** 0 to 1: the share of stitches that differ, place by place; other numbers tip the scales. */
function unlikeness(a: Listed, b: Listed): number {
  const [one, other] = [withoutGaps(a.meaning), withoutGaps(b.meaning)]
  const length = Math.max(one.length, other.length, 1)
  let same = 0
  for (let i = 0; i < one.length; i++) if (one[i] === other[i]) same++
  return (1 - same / length) * 0.99 + (a.number === b.number ? 0 : 0.01)
}
