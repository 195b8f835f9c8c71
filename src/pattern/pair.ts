import { mirror } from './edits/mirror'
import { eachChart } from './edits/chart'
import { setPair } from './edits/piece'
import type { Pattern } from './pattern'

const seconds = new WeakMap<Pattern, Pattern>()

/**
 * The second piece of a pair. It is always derived: mirrored, with its words written from its own
 * chart, or the first itself where both are alike or there is no pair. The same object for the
 * same first.
 */
export function secondOf(first: Pattern): Pattern {
  if (first.pair !== 'mirrored') return first
  let second = seconds.get(first)
  if (!second) seconds.set(first, (second = derive(first)))
  return second
}

function derive(first: Pattern): Pattern {
  const mirrored = mirror(first)
  return {
    ...mirrored,
    title: first.title ? `${first.title}, second` : 'Second of a pair',
    charts: eachChart(mirrored.charts, (chart) => ({ ...chart, words: null })),
  }
}

/** The peg of the second on which the mirror image of what is on this peg of the first stands. */
export function pegInSecond(first: Pattern, peg: number): number {
  const { loom } = secondOf(first)
  const fromOtherEnd = first.pair === 'mirrored' && loom.direction === first.loom.direction
  return fromOtherEnd ? loom.pegs - 1 - peg : peg
}

/** How the pegs of the second are numbered; `turned`: the other way than those of the first. */
export function pegsOfSecond(first: Pattern) {
  const { shape, pegs, direction } = secondOf(first).loom
  return { shape, pegs, direction, turned: direction !== first.loom.direction } as const
}

/** The second as a piece that follows no other. */
export const secondByItself = (first: Pattern): Pattern => setPair(secondOf(first), 'none')
