import type { Item } from '../scene'
import { area, line, Ply } from './inked'
import { Pen, type Surface } from './pen'

/** What a row is drawn in, the first lowest. */
export function pliesOn(surface: Surface) {
  const pen = () => new Pen(surface)
  const ply = () => new Ply(surface)
  return {
    faint: pen(),
    holes: pen(),
    behind: ply(),
    sinkers: ply(),
    bumps: ply(),
    plain: ply(),
    halo: pen(),
    front: ply(),
    over: ply(),
    top: ply(),
  }
}
export type Plies = ReturnType<typeof pliesOn>

/** All of them as a few paths; outlines are `stroke` mm wide. */
export const itemsOf = (plies: Plies, stroke: number): readonly Item[] => [
  ...line(plies.faint.d, 'grid', stroke),
  ...area(plies.holes.d, 'loop-edge'),
  ...plies.behind.filled(stroke),
  ...plies.sinkers.filled(stroke),
  ...plies.bumps.filled(stroke),
  ...plies.plain.filled(stroke),
  ...area(plies.halo.d, 'shade'),
  ...plies.front.filled(stroke),
  ...plies.over.filled(stroke),
  ...plies.top.filled(stroke),
]
