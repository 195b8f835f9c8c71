import * as v from 'valibot'
import type { Along } from '../../words/along/along'
import { stopAt, strides, type Place } from '../../words/along/place'
import { printsOf } from '../../words/along/since'
import { stopName } from './names'

const whole = v.pipe(v.number(), v.integer(), v.minValue(0))

/** What is kept of somebody who knits a piece. */
const schema = v.object({
  stop: whole,
  stint: whole,
  left: v.optional(v.fallback(whole, 0), 0),
  /** What the row was called. */
  name: v.fallback(v.string(), ''),
  /** ISO 8601. */
  date: v.fallback(v.string(), ''),
  /** What each stop of the piece said then. */
  prints: v.fallback(v.instance(Uint32Array), new Uint32Array()),
  /** The knitter's own counter. */
  count: v.fallback(whole, 0),
  stride: v.optional(v.fallback(v.picklist(strides), 'row'), 'row'),
  awake: v.optional(v.fallback(v.boolean(), true), true),
})
export type KeptAlong = v.InferOutput<typeof schema>

/** null: nothing that can be understood was kept. */
export function keptFrom(record: unknown): KeptAlong | null {
  const result = v.safeParse(schema, record)
  return result.success ? result.output : null
}

/** What is to be kept of somebody who is here. */
export const keptNow = (
  along: Along,
  place: Place,
  settings: Pick<KeptAlong, 'count' | 'stride' | 'awake'>,
): KeptAlong => ({
  ...place,
  ...settings,
  name: stopName(along, stopAt(along, place)),
  date: new Date().toISOString(),
  prints: Uint32Array.from(printsOf(along)),
})

/** What was kept of each piece since the page was opened: for where the store does not take it. */
export const keptMeanwhile = (): Map<string, KeptAlong> => new Map<string, KeptAlong>()
