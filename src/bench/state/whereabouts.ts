import * as v from 'valibot'
import { hands, places, type Bench } from './bench.svelte'
import { readings, rightReadings, type Panes } from './panes.svelte'

const index = v.optional(v.fallback(v.pipe(v.number(), v.integer(), v.minValue(0)), 0), 0)
const one = <const T extends readonly string[]>(words: T) =>
  v.optional(v.fallback(v.nullable(v.picklist(words)), null), null)

const px = v.optional(
  v.fallback(v.nullable(v.pipe(v.number(), v.minValue(100), v.maxValue(10_000))), null),
  null,
)
const yesOrNo = v.optional(v.fallback(v.nullable(v.boolean()), null), null)

/** Where the hands are: kept beside a piece, no part of it. What is not understood is passed over. */
const schema = v.object({
  chart: v.optional(v.fallback(v.nullable(v.string()), null), null),
  row: index,
  peg: index,
  looked: one(places),
  right: one(rightReadings),
  reading: one(readings),
  whole: one(readings),
  swapped: yesOrNo,
  rows: px,
  column: px,
  hand: one(hands),
  along: yesOrNo,
})
export type Whereabouts = v.InferOutput<typeof schema>

export const whereaboutsOf = (bench: Bench, panes: Panes): Whereabouts => ({
  chart: bench.on,
  row: bench.spot.row,
  peg: bench.spot.peg,
  looked: bench.isSecond ? 'second' : 'first',
  right: panes.right,
  reading: panes.reading,
  whole: panes.whole,
  swapped: panes.swapped,
  rows: panes.rows,
  column: panes.column,
  hand: bench.hand,
  along: bench.dialogs.includes('along'),
})

/** Go to the place that was kept, inside of the piece that is there. False: none was kept. */
export function goBackTo(kept: unknown, bench: Bench, panes: Panes | null): boolean {
  const result = v.safeParse(schema, kept)
  if (!result.success) return false
  const { chart, row, peg, looked, right, reading, whole, swapped, hand, rows, column, along } =
    result.output
  if (chart !== null) bench.lookAt(chart)
  if (looked) bench.look(looked)
  bench.goTo({ row, peg })
  if (!panes) return true
  panes.right = right ?? panes.right
  panes.reading = reading ?? panes.reading
  panes.whole = whole
  panes.swapped = swapped ?? panes.swapped
  panes.rows = rows
  panes.column = column
  bench.hand = hand ?? bench.hand
  if (along) bench.ask('along')
  return true
}
