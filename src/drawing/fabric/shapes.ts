import type { Point } from '../path'
import { aside, type Pen } from './pen'

/** A stitch in the drawing, mm. */
export interface StitchSize {
  readonly width: number
  readonly height: number
}

/** Half of a leg's width, and the width of a strand that lies by itself, in stitch widths. */
export const thickness = { leg: 0.2, strand: 0.2 } as const

/** The shapes that yarn takes in the fabric. Places are in stitch widths and rows, up the fabric. */
export class Shapes {
  constructor(private readonly size: StitchSize) {}

  point(x: number, y: number): Point {
    return [x * this.size.width, -y * this.size.height]
  }

  /**
   * A leg of a loop: a leaf that shows widest towards the head and tucks under at both ends. `side`
   * -1 or 1 for the left or right one of a pair; 0 for one by itself.
   */
  leg(pen: Pen, from: Point, to: Point, side = 0): void {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
    const steep = Math.abs(dy) / (Math.hypot(dx, dy) || 1)
    const half = this.size.width * thickness.leg * (0.75 + 0.25 * steep)
    // The middle of a cubic curve lies at three quarters of the way to its handles.
    const [ax, ay] = aside(from, to, half / 0.75)
    const near: Point = [from[0] + 0.16 * dx, from[1] + 0.16 * dy]
    const far: Point = [from[0] + 0.9 * dx, from[1] + 0.9 * dy]
    // Two legs lie side by side where they come out: neither bulges much towards the other.
    const left = side > 0 ? 0.7 : 1
    const right = side < 0 ? 0.7 : 1
    pen.lens(
      from,
      [
        [near[0] + left * ax, near[1] + left * ay],
        [far[0] + ax, far[1] + ay],
      ],
      to,
      [
        [far[0] - ax, far[1] - ay],
        [near[0] - right * ax, near[1] - right * ay],
      ],
    )
  }

  /** A bump lying across: ends at `y`, bulging to `outer` and hollow to `inner`. */
  bean(pen: Pen, x: number, y: number, reach: number, outer: number, inner: number): void {
    pen.lens(
      this.point(x - reach, y),
      [this.point(x - reach * 1.12, outer), this.point(x + reach * 1.12, outer)],
      this.point(x + reach, y),
      [this.point(x + reach * 0.62, inner), this.point(x - reach * 0.62, inner)],
    )
  }

  /** A thin strand arching over from side to side, thinning out at both ends. */
  arch(pen: Pen, x: number, low: number, reach: number, top: number): void {
    const thick = thickness.strand
    pen.lens(
      this.point(x - reach, low),
      [this.point(x - reach * 0.85, top), this.point(x + reach * 0.85, top)],
      this.point(x + reach, low),
      [
        this.point(x + reach * 0.85 - thick, top - thick * 1.4),
        this.point(x - reach * 0.85 + thick, top - thick * 1.4),
      ],
    )
  }

  /** A strand lying flat across, bowed a little. */
  flat(pen: Pen, x: number, y: number, reach: number, bow: number): void {
    pen.strand(
      this.point(x - reach, y),
      this.point(x - reach / 3, y + bow),
      this.point(x + reach / 3, y + bow),
      this.point(x + reach, y),
      thickness.strand * this.size.width,
    )
  }

  /** The open head of a loop that nothing is drawn through. */
  head(pen: Pen, x: number, y: number): void {
    pen.strand(
      this.point(x - 0.3, y + 0.1),
      this.point(x - 0.36, y + 0.85),
      this.point(x + 0.36, y + 0.85),
      this.point(x + 0.3, y + 0.1),
      thickness.strand * this.size.width,
    )
  }

  /** An oval; `tall` is the height of the handles, four thirds of half its height. */
  oval(pen: Pen, x: number, y: number, reach: number, tall: number): void {
    pen.lens(
      this.point(x - reach, y),
      [this.point(x - reach, y + tall), this.point(x + reach, y + tall)],
      this.point(x + reach, y),
      [this.point(x + reach, y - tall), this.point(x - reach, y - tall)],
    )
  }
}
