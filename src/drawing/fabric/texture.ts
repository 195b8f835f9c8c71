import type { Point } from '../path'
import type { Item } from '../scene'
import { area, line, Ply } from './inked'
import { Pen, type Surface } from './pen'
import type { Base, PlacedLoop, PlacedRow } from './place'
import type { StitchSize } from './shapes'
import { isPurl } from './yarn'

/**
 * A row as texture, for looking from afar: two short strokes for a knitted loop, a bar for a purled
 * one; strands in front are cleared of what they cross.
 */
export function drawTexture(
  { loops, bars }: PlacedRow,
  { width, height }: StitchSize,
  surface: Surface,
): readonly Item[] {
  const point = (x: number, y: number): Point => [x * width, -y * height]
  const behind = new Pen(surface)
  const purled = new Pen(surface)
  const cleared = new Pen(surface)
  const front = new Pen(surface)
  const laid = new Pen(surface)
  const faint = new Pen(surface)
  const tones = new Ply(surface)
  const holes = new Pen(surface)

  const legs = (pen: Pen, base: Base, { head, kind }: PlacedLoop): void => {
    const foot = kind === 'twisted knit' ? -0.14 : 0.05
    for (const side of [-1, 1])
      pen.line(
        point(base.x + side * foot, base.y + 0.02),
        point(head.x + side * 0.4, head.y + 0.12),
      )
  }
  const band = (pen: Pen, base: Base, { head }: PlacedLoop): void =>
    pen.area(
      point(base.x - 0.5, base.y),
      point(head.x - 0.5, head.y),
      point(head.x + 0.5, head.y),
      point(base.x + 0.5, base.y),
    )
  const edges = (pen: Pen, base: Base, { head }: PlacedLoop): void => {
    for (const side of [-0.5, 0, 0.5])
      pen.line(point(base.x + side, base.y), point(head.x + side, head.y))
  }
  const across = (pen: Pen, x: number, y: number, reach: number): void =>
    pen.line(point(x - reach, y), point(x + reach, y))

  for (const loop of loops) {
    const { head, bases, kind, tone } = loop
    if (!surface.shows(loop.home * width)) continue
    const [base] = bases
    if (!base) continue
    for (const { x, y, opened } of bases)
      if (opened > 0) faint.line(point(x, y - opened), point(x, y))
    if (loop.bound) across(laid, head.x, head.y + 0.3, 0.5)
    if (tone > 0) band(tones.pen(tone), base, loop)
    switch (kind) {
      case 'yarn over':
      case 'bar':
        holes.lens(
          point(head.x - 0.3, base.y + 0.5),
          [point(head.x - 0.3, base.y + 1.05), point(head.x + 0.3, base.y + 1.05)],
          point(head.x + 0.3, base.y + 0.5),
          [point(head.x + 0.3, base.y - 0.05), point(head.x - 0.3, base.y - 0.05)],
        )
        break
      case 'cast-on':
        across(laid, head.x, head.y - 0.3, 0.4)
        break
      case 'tuck':
      case 'German turn':
        laid.curve(
          point(head.x - 0.4, base.y + 0.2),
          point(head.x - 0.35, head.y + 0.3),
          point(head.x + 0.35, head.y + 0.3),
          point(head.x + 0.4, base.y + 0.2),
        )
        break
      case 'wrap':
        across(laid, head.x, head.y, 0.4)
        break
      case 'bobble':
        laid.lens(
          point(head.x - 0.5, base.y + 0.5),
          [point(head.x - 0.5, base.y + 1.4), point(head.x + 0.5, base.y + 1.4)],
          point(head.x + 0.5, base.y + 0.5),
          [point(head.x + 0.5, base.y - 0.4), point(head.x - 0.5, base.y - 0.4)],
        )
        break
      default: {
        if (isPurl(loop)) {
          across(purled, (base.x + head.x) / 2, (base.y + head.y) / 2, 0.36)
          break
        }
        for (const other of bases.slice(1)) legs(behind, other, loop)
        if (loop.over) {
          band(cleared, base, loop)
          edges(front, base, loop)
        } else if (loop.depth === 'front') {
          band(cleared, base, loop)
          legs(front, base, loop)
        } else legs(behind, base, loop)
      }
    }
  }
  for (const { x, y } of bars) if (surface.shows(x * width)) across(laid, x, y + 0.5, 0.5)
  const thin = width * 0.09
  return [
    ...tones.plain('loop'),
    ...line(faint.d, 'grid', thin),
    ...area(holes.d, 'shade'),
    ...line(holes.d, 'loop-edge', thin * 0.8),
    ...line(behind.d, 'loop-edge', thin),
    ...line(purled.d, 'loop-edge', height * 0.26),
    ...area(cleared.d, 'loop'),
    ...line(front.d, 'loop-edge', thin * 1.4),
    ...line(laid.d, 'loop-edge', thin * 1.2),
  ]
}
