import * as v from 'valibot'
import { hands, places, type Bench } from './bench.svelte'
import { leftReadings, readings, rightReadings, type Panes } from './panes.svelte'

const index = v.optional(v.fallback(v.pipe(v.number(), v.integer(), v.minValue(0)), 0), 0)
const one = <const T extends readonly string[]>(words: T) =>
  v.optional(v.fallback(v.nullable(v.picklist(words)), null), null)

const yesOrNo = v.optional(v.fallback(v.nullable(v.boolean()), null), null)

/** Where the hands are: kept beside a piece, no part of it. What is not understood is passed over. */
const schema = v.object({
  chart: v.optional(v.fallback(v.nullable(v.string()), null), null),
  row: index,
  peg: index,
  looked: one(places),
  left: one(leftReadings),
  right: one(rightReadings),
  reading: one(readings),
  wideWords: yesOrNo,
  hand: one(hands),
  along: yesOrNo,
})
export type Whereabouts = v.InferOutput<typeof schema>

export const whereaboutsOf = (bench: Bench, panes: Panes): Whereabouts => ({
  chart: bench.on,
  row: bench.spot.row,
  peg: bench.spot.peg,
  looked: bench.isSecond ? 'second' : 'first',
  left: panes.left,
  right: panes.right,
  reading: panes.reading,
  wideWords: bench.wording.wide,
  hand: bench.hand,
  along: bench.dialogs.includes('along'),
})

/** Go to the place that was kept, inside of the piece that is there. False: none was kept. */
export function goBackTo(kept: unknown, bench: Bench, panes: Panes | null): boolean {
  const result = v.safeParse(schema, kept)
  if (!result.success) return false
  const { chart, row, peg, looked, left, right, reading, wideWords, hand, along } = result.output
  if (chart !== null) bench.lookAt(chart)
  if (looked) bench.look(looked)
  bench.goTo({ row, peg })
  if (!panes) return true
  panes.left = left ?? panes.left
  panes.right = right ?? panes.right
  panes.reading = reading ?? panes.reading
  bench.wording.wide = wideWords ?? bench.wording.wide
  bench.hand = hand ?? bench.hand
  if (along) bench.ask('along')
  return true
}
