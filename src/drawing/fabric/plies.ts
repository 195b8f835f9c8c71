import type { Item } from '../scene'
import { area, line, Ply } from './inked'
import { Pen, type Surface } from './pen'

/** What a row is drawn in, the first lowest. */
export class Plies {
  readonly faint: Pen
  readonly holes: Pen
  readonly behind: Ply
  readonly sinkers: Ply
  readonly bumps: Ply
  readonly plain: Ply
  readonly halo: Pen
  readonly front: Ply
  readonly over: Ply
  readonly top: Ply

  constructor(surface: Surface) {
    this.faint = new Pen(surface)
    this.holes = new Pen(surface)
    this.behind = new Ply(surface)
    this.sinkers = new Ply(surface)
    this.bumps = new Ply(surface)
    this.plain = new Ply(surface)
    this.halo = new Pen(surface)
    this.front = new Ply(surface)
    this.over = new Ply(surface)
    this.top = new Ply(surface)
  }

  /** A few paths; outlines are `stroke` mm wide. */
  items(stroke: number): readonly Item[] {
    return [
      ...line(this.faint.d, 'grid', stroke),
      ...area(this.holes.d, 'loop-edge'),
      ...this.behind.filled(stroke),
      ...this.sinkers.filled(stroke),
      ...this.bumps.filled(stroke),
      ...this.plain.filled(stroke),
      ...area(this.halo.d, 'shade'),
      ...this.front.filled(stroke),
      ...this.over.filled(stroke),
      ...this.top.filled(stroke),
    ]
  }
}
