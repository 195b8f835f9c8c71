import { short, type Point } from '../path'

/** Where a point of the fabric lies in the drawing: mm in, mm out; x from the middle. */
export interface Surface {
  readonly x: (x: number) => number
  /** Is this place seen at all? */
  readonly shows: (x: number) => boolean
}

/** Collects the outlines of one path. Points are mm; x from the middle, y down from the row's level. */
export class Pen {
  readonly #parts: string[] = []

  constructor(private readonly surface: Surface) {}

  /** One flat string: each row's path is written into files many times. */
  get d(): string {
    return this.#parts.join('')
  }

  #at(x: number, y: number): string {
    return `${short(this.surface.x(x))} ${short(y)}`
  }

  line([x0, y0]: Point, ...rest: readonly Point[]): void {
    this.#parts.push(`M${this.#at(x0, y0)}`)
    for (const [x, y] of rest) this.#parts.push(`L${this.#at(x, y)}`)
  }

  area(first: Point, ...rest: readonly Point[]): void {
    this.line(first, ...rest)
    this.#parts.push('Z')
  }

  /** An open curve through two handles. */
  curve([x0, y0]: Point, [x1, y1]: Point, [x2, y2]: Point, [x3, y3]: Point): void {
    this.#parts.push(
      `M${this.#at(x0, y0)}C${this.#at(x1, y1)} ${this.#at(x2, y2)} ${this.#at(x3, y3)}`,
    )
  }

  /** Between two ends, bounded by a curve there and a curve back. */
  lens(
    from: Point,
    there: readonly [Point, Point],
    to: Point,
    back: readonly [Point, Point],
  ): void {
    const [[ax, ay], [bx, by]] = there
    const [[cx, cy], [dx, dy]] = back
    this.curve(from, [ax, ay], [bx, by], to)
    this.#parts.push(`C${this.#at(cx, cy)} ${this.#at(dx, dy)} ${this.#at(from[0], from[1])}Z`)
  }

  /** A strand of even width along a curve, with square ends. */
  strand(from: Point, handle1: Point, handle2: Point, to: Point, width: number): void {
    const [ax, ay] = aside(from, handle1, width / 2)
    const [bx, by] = aside(handle1, to, width / 2)
    const [cx, cy] = aside(from, handle2, width / 2)
    const [dx, dy] = aside(handle2, to, width / 2)
    this.curve(
      [from[0] + ax, from[1] + ay],
      [handle1[0] + bx, handle1[1] + by],
      [handle2[0] + cx, handle2[1] + cy],
      [to[0] + dx, to[1] + dy],
    )
    this.#parts.push(
      `L${this.#at(to[0] - dx, to[1] - dy)}` +
        `C${this.#at(handle2[0] - cx, handle2[1] - cy)} ${this.#at(handle1[0] - bx, handle1[1] - by)} ` +
        `${this.#at(from[0] - ax, from[1] - ay)}Z`,
    )
  }
}

/** At right angles to the way between two points, so long. */
export function aside([x0, y0]: Point, [x1, y1]: Point, length: number): Point {
  const [dx, dy] = [x1 - x0, y1 - y0]
  const way = Math.hypot(dx, dy) || 1
  return [(dy / way) * length, (-dx / way) * length]
}
