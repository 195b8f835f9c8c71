import type { Point } from '../path'
import type { Item } from '../scene'
import { area, line, Ply } from './inked'
import { aside, Pen, type Surface } from './pen'
import type { Base, PlacedLoop, PlacedRow } from './place'

/** A stitch in the drawing, mm. */
export interface StitchSize {
  readonly width: number
  readonly height: number
}

/** What a row is drawn with, the first lowest. */
class Plies {
  readonly holes: Pen
  readonly behind: Ply
  readonly sinkers: Ply
  readonly bumps: Ply
  readonly plain: Ply
  readonly halo: Pen
  readonly front: Ply
  readonly over: Ply
  readonly top: Ply
  readonly faint: Pen

  constructor(surface: Surface) {
    this.behind = new Ply(surface)
    this.holes = new Pen(surface)
    this.sinkers = new Ply(surface)
    this.bumps = new Ply(surface)
    this.plain = new Ply(surface)
    this.halo = new Pen(surface)
    this.front = new Ply(surface)
    this.over = new Ply(surface)
    this.top = new Ply(surface)
    this.faint = new Pen(surface)
  }
}

export const isPurl = ({ kind }: PlacedLoop): boolean => kind === 'purl' || kind === 'twisted purl'

/**
 * A row as yarn: shaped strands with an outline, one over the other as on the right side. The two
 * legs of a knitted loop lie in front of the loop below, whose head a purled loop leaves in front.
 */
export function drawYarn(
  { loops, bars }: PlacedRow,
  size: StitchSize,
  surface: Surface,
): readonly Item[] {
  const plies = new Plies(surface)
  const shown = loops.filter(({ home }) => surface.shows(home * size.width))
  const hand = new Hand(size, plies)
  for (const loop of shown) hand.draw(loop)
  hand.purls(shown)
  hand.bars(bars.filter(({ x }) => surface.shows(x * size.width)))
  const stroke = Math.min(size.width, size.height) * 0.05
  return [
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
}

/** Shape of a stitch, in widths and heights. */
const shape = {
  /** From the middle of a loop to the middle of its legs, where they come out and at the head. */
  foot: 0.06,
  shoulder: 0.35,
  /** How far the legs begin below and end above the loop's own row. */
  below: 0.3,
  above: 0.16,
  /** Half of a leg's width. */
  thick: 0.2,
  bump: { reach: 0.47, top: 0.62, bottom: 0.02, end: -0.1 },
  sinker: { top: 0.12, bottom: 0.74, end: 0.2 },
  strand: 0.2,
  halo: 0.06,
} as const

class Hand {
  constructor(
    private readonly size: StitchSize,
    private readonly plies: Plies,
  ) {}

  #point(x: number, y: number): Point {
    return [x * this.size.width, -y * this.size.height]
  }

  draw(loop: PlacedLoop): void {
    for (const base of loop.bases) if (base.opened > 0) this.#opening(base)
    switch (loop.kind) {
      case 'cast-on':
        return this.#castOn(loop)
      case 'yarn over':
      case 'bar':
        this.#hole(loop)
        return this.#laid(loop, 0.62, 0.05)
      case 'tuck':
        return this.#laid(loop, 0.62, 0.1)
      case 'German turn':
        return this.#laid(loop, 0.3, -0.1)
      case 'wrap':
        return this.#wrap(loop)
      case 'bobble':
        return this.#bobble(loop)
      default:
        return this.#worked(loop)
    }
  }

  #worked(loop: PlacedLoop): void {
    const { bases, depth, over } = loop
    const { behind, plain, front } = this.plies
    const purled = isPurl(loop)
    const own = purled || depth === 'behind' ? behind : depth === 'front' || over ? front : plain
    for (let i = bases.length - 1; i >= 0; i--) {
      const base = bases[i] as Base
      const shows = i === 0
      if (over && own === front && bases.length === 1) this.#halo(base, loop)
      this.#legs(base, loop, shows ? own : behind)
    }
    if (loop.open) this.#head(loop)
  }

  #legs(base: Base, { head, kind, tone }: PlacedLoop, ply: Ply): void {
    const { foot, shoulder, below, above } = shape
    const twisted = kind === 'twisted knit' || kind === 'twisted purl'
    const feet = twisted ? -0.17 : foot
    const under = kind === 'twisted knit' ? this.plies.behind : ply
    const lean = (0.5 * (head.x - base.x)) / Math.max(1, head.y - base.y)
    for (const side of [-1, 1]) {
      const from = this.#point(
        base.x - lean * below + side * feet,
        base.y - (base.laid ? 0.05 : below),
      )
      const to = this.#point(head.x + lean * above + side * shoulder, head.y + above)
      this.#leg((side < 0 ? under : ply).pen(tone), from, to, twisted ? 0 : side)
    }
  }

  /** A leaf: the strand shows widest towards its head and tucks under at both ends. */
  #leg(pen: Pen, from: Point, to: Point, side = 0): void {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
    const steep = Math.abs(dy) / (Math.hypot(dx, dy) || 1)
    const half = this.size.width * shape.thick * (0.75 + 0.25 * steep)
    const [ax, ay] = aside(from, to, half / 0.75)
    const near: Point = [from[0] + 0.16 * dx, from[1] + 0.16 * dy]
    const far: Point = [from[0] + 0.9 * dx, from[1] + 0.9 * dy]
    // The two legs of a loop lie side by side where they come out: neither bulges towards the other.
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

  /** Shade between a strand in front and what it crosses. */
  #halo(base: Base, { head }: PlacedLoop): void {
    const reach = shape.shoulder + shape.thick * 0.7 + shape.halo
    const inset = (0.28 * (head.x - base.x)) / Math.max(1, head.y - base.y)
    this.plies.halo.area(
      this.#point(base.x - reach + inset, base.y + 0.28),
      this.#point(head.x - reach, head.y),
      this.#point(head.x + reach, head.y),
      this.#point(base.x + reach + inset, base.y + 0.28),
    )
  }

  #bean(pen: Pen, x: number, y: number, reach: number, outer: number, inner: number): void {
    pen.lens(
      this.#point(x - reach, y),
      [this.#point(x - reach * 1.12, outer), this.#point(x + reach * 1.12, outer)],
      this.#point(x + reach, y),
      [this.#point(x + reach * 0.62, inner), this.#point(x - reach * 0.62, inner)],
    )
  }

  /** Before a purled loop lies the head of the one below; between two, the strand that joins them. */
  purls(loops: readonly PlacedLoop[]): void {
    const heads = loops
      .filter(isPurl)
      .flatMap(({ bases, tone }) => bases.toReversed().map(({ x, y }) => ({ x, y, tone })))
      .sort((a, b) => a.x - b.x)
    const { bump, sinker } = shape
    const apart = (i: number, j: number): number => {
      const [a, b] = [heads[i], heads[j]]
      return a && b && a.y === b.y ? Math.max(0.2, Math.abs(b.x - a.x)) : 2
    }
    heads.forEach(({ x, y, tone }, i) => {
      const reach = Math.min(bump.reach, apart(i - 1, i) / 2, apart(i, i + 1) / 2)
      const pen = this.plies.bumps.pen(tone)
      this.#bean(pen, x, y + bump.end, reach, y + bump.top, y + bump.bottom)
      const next = heads[i + 1]
      const gap = apart(i, i + 1)
      if (!next || gap > 1.5) return
      this.#bean(
        this.plies.sinkers.pen(tone),
        (x + next.x) / 2,
        y - sinker.end,
        Math.min(bump.reach, gap / 2 - 0.02),
        y - sinker.bottom,
        y - sinker.top,
      )
    })
  }

  #head({ head, tone }: PlacedLoop): void {
    const y = head.y + 0.1
    this.plies.behind
      .pen(tone)
      .strand(
        this.#point(head.x - 0.3, y),
        this.#point(head.x - 0.36, y + 0.75),
        this.#point(head.x + 0.36, y + 0.75),
        this.#point(head.x + 0.3, y),
        shape.strand * this.size.width,
      )
  }

  /** A strand that was laid on the peg: it arches over from one side to the other. */
  #laid({ head, bases, tone }: PlacedLoop, reach: number, rise: number): void {
    const low = (bases[0]?.y ?? head.y - 1) + rise
    const top = head.y + 0.5
    const thick = shape.strand
    this.plies.behind
      .pen(tone)
      .lens(
        this.#point(head.x - reach, low),
        [this.#point(head.x - reach * 0.85, top), this.#point(head.x + reach * 0.85, top)],
        this.#point(head.x + reach, low),
        [
          this.#point(head.x + reach * 0.85 - thick, top - thick * 1.4),
          this.#point(head.x - reach * 0.85 + thick, top - thick * 1.4),
        ],
      )
  }

  /** Nothing comes up from below: one looks through the fabric. */
  #hole({ head, bases }: PlacedLoop): void {
    const low = bases[0]?.y ?? head.y - 1
    const middle = (low + head.y) / 2 - 0.02
    this.plies.holes.lens(
      this.#point(head.x - 0.27, middle),
      [this.#point(head.x - 0.27, middle + 0.5), this.#point(head.x + 0.27, middle + 0.5)],
      this.#point(head.x + 0.27, middle),
      [this.#point(head.x + 0.27, middle - 0.5), this.#point(head.x - 0.27, middle - 0.5)],
    )
  }

  #wrap({ head, tone }: PlacedLoop): void {
    this.#flat(tone, head.x - 0.46, head.x + 0.46, head.y, -0.12)
  }

  /** A strand lying flat across. */
  #flat(tone: number, from: number, to: number, y: number, bow: number): void {
    const third = (to - from) / 3
    this.plies.behind
      .pen(tone)
      .strand(
        this.#point(from, y),
        this.#point(from + third, y + bow),
        this.#point(to - third, y + bow),
        this.#point(to, y),
        shape.strand * this.size.width,
      )
  }

  bars(bars: PlacedRow['bars']): void {
    for (const { x, y } of bars) this.#flat(0, x - 0.56, x + 0.56, y + 0.5, -0.1)
  }

  #bobble({ head, bases, tone }: PlacedLoop): void {
    const y = (bases[0]?.y ?? head.y - 1) + 0.15
    const pen = this.plies.over.pen(tone)
    pen.lens(
      this.#point(head.x - 0.62, y),
      [this.#point(head.x - 0.62, y + 1.15), this.#point(head.x + 0.62, y + 1.15)],
      this.#point(head.x + 0.62, y),
      [this.#point(head.x + 0.62, y - 1.15), this.#point(head.x - 0.62, y - 1.15)],
    )
    for (const side of [-1, 1])
      this.#leg(
        this.plies.top.pen(tone),
        this.#point(head.x + side * 0.05, y - 0.55),
        this.#point(head.x + side * 0.26, y + 0.6),
      )
  }

  #castOn({ head, tone }: PlacedLoop): void {
    this.#leg(
      this.plies.plain.pen(tone),
      this.#point(head.x - 0.58, head.y - 0.62),
      this.#point(head.x + 0.52, head.y - 0.22),
    )
  }

  /** Where the fabric is opened flat, faint lines lead on to the loop that waited. */
  #opening({ x, y, opened }: Base): void {
    for (const side of [-1, 1])
      this.plies.faint.line(
        this.#point(x + side * 0.2, y - opened + 0.3),
        this.#point(x + side * 0.2, y - 0.2),
      )
  }
}
