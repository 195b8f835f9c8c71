import { excerpt } from '../../../pattern/excerpt'
import type { RelativeRemark } from '../nodes'
import type { WorkOrder } from '../lines/orders'
import type { TextRange } from '../reading'
import { error, warning } from './remark'

const listOf = ({ rows }: WorkOrder): string =>
  rows ? `rows ${rows[0]}-${rows[1]} of it` : 'no rows of it'

/** A chart or section is called for, and no rows are told for it. */
export const noSection = (order: WorkOrder, range: TextRange): RelativeRemark =>
  error(
    'no-section',
    range,
    `"${excerpt(order.name)}" is worked here, but ${listOf(order)} are ${order.rows ? 'not written' : 'written'} before it.`,
    `Write the rows of "${excerpt(order.name)}" under a heading with its name, or name a section that is written.`,
  )

/** "Work Cuff, Rnds 1-4, twice:" with fewer or more rows below it. */
export const otherRows = (order: WorkOrder, told: number, range: TextRange): RelativeRemark => {
  const [first, last] = order.rows ?? [1, 0]
  return warning(
    'section-rows',
    range,
    `"${excerpt(order.name)}" should have ${last - first + 1} rows here and has ${told}.`,
    'Write all its rows, or correct their numbers in this line.',
  )
}

export const noVersion = (order: WorkOrder, time: number, range: TextRange): RelativeRemark =>
  warning(
    'section-rows',
    range,
    `The words do not say how "${excerpt(order.name)}" is worked the next time (time ${time}); it goes on as before.`,
    'Name each of its times once.',
  )

export const pegsBeyond = (last: number, pegs: number, range: TextRange): RelativeRemark =>
  error(
    'peg-place',
    range,
    `Peg ${last} is named; the loom has ${pegs}.`,
    'Correct the peg numbers, or read the words for a larger loom.',
  )

/** A length on the piece: no rows can be made of it. */
export const measuredRows = (words: string, range: TextRange): RelativeRemark =>
  warning(
    'needs-gauge',
    range,
    `"${excerpt(words, 60)}" is a length. How many rows that is depends on the gauge, so it makes none.`,
    'Write the number of rows as well.',
  )
