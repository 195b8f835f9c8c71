import type { DrawingPhrases } from '../../../languages/drawings'
import type { Item } from '../../scene'
import { smallestReadable } from '../../sizes'
import type { OneMove } from './doing'
import type { StripGeometry } from './geometry'
import { written } from '../../items'

/**
 * Where loops of a cross change places, on which side of the others they pass, in words: "in front"
 * under the pegs, on the knitter's side, or "behind" over them. `yarn`: where the ball hangs, mm.
 */
export function passingLabel(
  steps: readonly OneMove[],
  yarn: number | null,
  geometry: StripGeometry,
  words: DrawingPhrases['passing'],
): readonly Item[] {
  const side = passingSide(steps)
  const { x, unit, width, rim, rimHigh, heads } = geometry
  const shown = steps.flatMap(({ after: { move } }) =>
    move?.do === 'move' ? (x(move.to) ?? []) : move?.do === 'put' ? (x(move.peg) ?? []) : [],
  )
  if (!side || shown.length === 0) return []
  const size = Math.max(smallestReadable.text, 0.32 * unit)
  const [low, high] = [Math.min(...shown), Math.max(...shown)]
  const text = (at: number, y: number, anchor: 'start' | 'end', words: string): Item =>
    written(words, [at, y], size, anchor)
  if (side === 'outside') {
    const y = rim + rimHigh + 0.3 * unit + size
    return yarn !== null && yarn > (low + high) / 2
      ? [text(Math.min(high + 0.4 * unit, yarn - 0.5 * unit), y, 'end', words.inFront)]
      : [text(Math.max(low - 0.4 * unit, (yarn ?? 0) + 0.5 * unit), y, 'start', words.inFront)]
  }
  const y = heads - 0.2 * unit
  const onRight = width - high > size * 4 + 0.3 * unit
  return onRight
    ? [text(high + 0.3 * unit, y, 'start', words.behind)]
    : [text(low - 0.3 * unit, y, 'end', words.behind)]
}

/** The side on which loops pass those that wait, or on which the waiting ones pass; else null. */
function passingSide(steps: readonly OneMove[]): 'inside' | 'outside' | null {
  const last = steps.at(-1)
  const waits = last?.before.needle[0]?.side
  const { move, site } = last?.after ?? {}
  if (!waits) return null
  if (move?.do === 'move') return waits === 'inside' ? 'outside' : 'inside'
  return move?.do === 'put' && site ? waits : null
}
