import type { Habits } from '../loom/work'
import type { Pattern } from './pattern'

const known = new Map<string, Habits>()

/** How all rows of a pattern are worked. The same object for the same habits. */
export function habitsOf({ loom, making }: Pick<Pattern, 'loom' | 'making'>): Habits {
  const { shape, direction } = loom
  const { knit, crossing, transfer } = making
  const key = [shape, direction, knit, crossing, transfer].join('/')
  let habits = known.get(key)
  if (!habits) known.set(key, (habits = { shape, direction, knit, crossing, transfer }))
  return habits
}
