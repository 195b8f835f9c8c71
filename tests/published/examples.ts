import { readFileSync } from 'node:fs'
import type { Heading } from '../../src/loom/direction'
import { workRow, type RowRun } from '../../src/loom/work'
import type { Stitch } from '../../src/stitches/stitch'
import { columnsOf, expand, takesOf } from './notation'
import { habits, loomWith, loopsOn, rowOn } from './onLoom'

/** A row of an example that gives its cast-on, or of one that gives a multiple. */
export interface ExampleRow {
  /** "5", "2-6", "cuff" */
  readonly row: string
  readonly before_repeat?: string
  readonly repeat?: string
  readonly after_repeat?: string
  readonly repeats?: number
  readonly sts_before?: number
  readonly sts_after?: number
  readonly canonical?: string
  readonly consumes_per_repeat?: number
  readonly produces_per_repeat?: number
  /** The count that the source itself gives after the row, where it gives another. */
  readonly stated_after?: number
}

export interface Example {
  readonly id: string
  readonly kind: 'positive' | 'negative'
  readonly source: string
  readonly where: string
  readonly shape: 'round' | 'flat'
  readonly cast_on?: number
  readonly cast_on_in_source?: number | null
  readonly multiple?: number
  /** Stitches beyond the multiple: plain ones, half of them at each end. */
  readonly plus?: number
  readonly rows: readonly ExampleRow[]
  readonly wrong_rows?: readonly string[]
  readonly notes: string
}

export const readExamples = (address: URL): Example[] =>
  JSON.parse(readFileSync(address, 'utf8')) as Example[]

/** Enough to see that copies agree with each other, where the source gives no cast-on. */
const fewCopies = 3

const plain = (count: number): Stitch[] => (count > 0 ? expand(`k${count}`) : [])
const copies = (list: readonly Stitch[], count: number): Stitch[] =>
  Array.from({ length: count }, () => list).flat()

/** How often the example's repeat goes round: a fraction when it does not fit its cast-on. */
export const copiesOf = ({ multiple = 1, plus = 0, cast_on_in_source }: Example): number =>
  cast_on_in_source ? (cast_on_in_source - plus) / multiple : fewCopies

/** All stitches of a row in working order. */
export function stitchesOf(example: Example, row: ExampleRow): Stitch[] {
  if (row.canonical === undefined)
    return [
      ...expand(row.before_repeat ?? ''),
      ...copies(expand(row.repeat ?? ''), row.repeats ?? 0),
      ...expand(row.after_repeat ?? ''),
    ]
  const { plus = 0 } = example
  const edge = Math.floor(plus / 2)
  const middle = copies(expand(row.canonical), Math.floor(copiesOf(example)))
  return [...plain(edge), ...middle, ...plain(plus - edge)]
}

export const castOnOf = (example: Example): number =>
  example.cast_on ?? Math.floor(copiesOf(example)) * (example.multiple ?? 1) + (example.plus ?? 0)

/** How often a row is worked: "2-6" is five times. */
const timesOf = ({ row }: ExampleRow): number => {
  const [, first, last] = /^(\d+)-(\d+)$/.exec(row) ?? []
  return first && last ? Number(last) - Number(first) + 1 : 1
}

export interface Judged {
  readonly row: string
  readonly run: RowRun
  readonly loopsBefore: number
  readonly loopsAfter: number
  /** Loops taken and loops there disagree, or the count after it is not the one stated. */
  readonly wrong: boolean
}

/**
 * Work an example's rows one after the other on a loom with room for all of them. After a row that
 * is wrong, the next one starts from the loops that were there before it.
 */
export function judge(example: Example): Judged[] {
  const lines = example.rows.map((row) => stitchesOf(example, row))
  const pegs = Math.max(
    castOnOf(example),
    ...lines.map((line) => Math.max(takesOf(line), columnsOf(line))),
  )
  let state = loomWith(castOnOf(example), pegs)
  let heading: Heading = 'forward'
  const flat = example.shape === 'flat'
  return example.rows.flatMap((row, index) =>
    Array.from({ length: timesOf(row) }, () => {
      const line = rowOn(lines[index] ?? [], 0, pegs - 1, heading)
      const run = workRow(state, line, { ...habits, shape: flat ? 'bar' : 'ring' })
      const loopsBefore = loopsOn(state)
      const loopsAfter = loopsOn(run.after)
      const stated = row.stated_after ?? loopsAfter
      const wrong = run.miscount !== null || stated !== loopsAfter
      if (wrong) state = { ...state, yarn: run.after.yarn }
      else state = run.after
      if (flat) heading = heading === 'forward' ? 'back' : 'forward'
      return { row: row.row, run, loopsBefore, loopsAfter, wrong }
    }),
  )
}
