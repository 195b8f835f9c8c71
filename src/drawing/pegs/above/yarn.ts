import type { Moment } from '../../../loom/walk'
import { mm, type Point } from '../../path'
import type { Item } from '../../scene'
import { Pen } from '../band'
import type { AboveGeometry } from './geometry'
import { yarnBall } from '../yarnBall'
import { yarnPath } from '../yarnPath'

/** The way of the yarn from loop to loop, inside or outside the pegs, and out to the ball. */
export function yarnAbove(
  moments: readonly Moment[],
  geometry: AboveGeometry,
): { readonly inside: readonly Item[]; readonly outside: readonly Item[]; readonly place: Point } {
  const { unit, at, follow } = geometry
  const now = moments.at(-1)
  const gap = (now?.gap ?? 0) - 0.5
  const travels = now?.move?.do === 'pass' || now?.move?.do === 'carry'
  const pen = new Pen(unit, 'loop', false, 0.024)
  const latest = travels ? new Pen(unit, 'tone-1', true, 0.024) : pen
  const wide = 0.075
  const inside: Item[] = []
  const outside: Item[] = []
  const path = yarnPath(moments)
  path.forEach(({ peg, passes }, index) => {
    const next = path[index + 1]
    if (peg === null || (next && next.peg === null)) return
    const to = nearest(next?.peg ?? gap, peg, geometry)
    const way = Math.sign(to - peg)
    const before = passes.at(-1)?.side === 'outside'
    const out = before ? 0.5 : -0.5
    const end = next ? to - way * 0.12 : to
    const d =
      mm`M${at(peg + way * 0.12, before ? 0.3 : -0.3)}` +
      follow(peg + way * 0.25, end, out).replace(/^M/, 'L')
    ;(before ? outside : inside).push(...(next ? pen : latest).strand(d, wide))
  })
  const ballRadius = Math.max(1.5, 0.42 * unit)
  const ball = at(gap, 1.6 + (1.8 * ballRadius) / unit)
  const place = at(gap, 0)
  outside.push(
    ...latest.strand(mm`M${at(gap, path.length > 0 ? -0.5 : 0)}L${ball}`, wide),
    ...yarnBall(ball, ballRadius),
  )
  return { inside, outside, place }
}

/** On a ring, the same place as near as can be. */
const nearest = (place: number, to: number, { kind, pegs }: AboveGeometry): number =>
  kind === 'ring' ? place - Math.round((place - to) / pegs) * pegs : place
