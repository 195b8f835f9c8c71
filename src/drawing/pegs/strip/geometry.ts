import type { LoomSetup } from '../../../pattern/pattern'
import { post } from '../band'
import { stripPegs, type StripPart, type StripPegs } from './window'

export interface StripOptions {
  /** From the middle of one peg to the middle of the next, mm. */
  readonly unit?: number
  /** Keep room for the spare needle inside (above) and outside (below), also when it is empty. */
  readonly room?: { readonly inside: boolean; readonly outside: boolean }
}

/** Where things stand in a strip, mm, y down. */
export interface StripGeometry extends StripPegs {
  readonly unit: number
  readonly width: number
  readonly height: number
  /** Middle of a peg; undefined when it is not shown. */
  readonly x: (peg: number) => number | undefined
  readonly xOfGap: (gap: number) => number | null
  /** Where the pegs stand on the rim, and the tops of their heads. */
  readonly rim: number
  readonly heads: number
  readonly rimHigh: number
  /** Middle of the spare needle. */
  readonly needle: { readonly inside: number; readonly outside: number }
  /** Middle of the ball of yarn. */
  readonly ball: number
  /** Left end of the loom's rim; its right end is as far from the other side. */
  readonly left: number
  /** Does the bar end at the left or right of what is shown? */
  readonly ends: { readonly left: boolean; readonly right: boolean }
  readonly pegAt: (x: number, y: number) => number | null
}

export function stripGeometry(
  loom: LoomSetup,
  part: StripPart,
  { unit = 8, room = { inside: true, outside: false } }: StripOptions = {},
): StripGeometry {
  const shown = stripPegs(loom, part)
  const { pegs, leftward, placeOf, placeOfGap } = shown
  const margin = 0.45 * unit
  const width = pegs.length * unit + 2 * margin
  const insideRoom = room.inside ? 1.05 * unit : 0
  const heads = 0.95 * unit + insideRoom
  const rim = heads + (post.high + post.headHigh) * unit
  const rimHigh = 0.52 * unit
  const outsideRoom = room.outside ? 1.35 * unit : 0
  const ball = rim + rimHigh + outsideRoom + 0.62 * unit
  const height = ball + 0.5 * unit
  const middle = (place: number): number => margin + (place + 0.5) * unit
  const edge = (peg: number | undefined, last: number): boolean =>
    loom.shape === 'bar' && peg === last
  const first = edge(pegs[0], 0)
  const last = edge(pegs.at(-1), loom.pegs - 1)
  return {
    ...shown,
    unit,
    width,
    height,
    x: (peg) => {
      const place = placeOf(peg)
      return place === undefined ? undefined : middle(place)
    },
    xOfGap: (gap) => {
      const place = placeOfGap(gap)
      return place === null ? null : middle(place - 0.5)
    },
    rim,
    heads,
    rimHigh,
    needle: { inside: 0.4 * unit, outside: rim + rimHigh + 0.5 * unit },
    ball,
    left: margin,
    ends: leftward ? { left: last, right: first } : { left: first, right: last },
    pegAt: (x, y) => {
      const place = Math.floor((x - margin) / unit)
      if (place < 0 || place >= pegs.length || y < 0 || y > height) return null
      return pegs[leftward ? pegs.length - 1 - place : place] ?? null
    },
  }
}
