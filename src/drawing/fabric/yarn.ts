import type { Item } from '../scene'
import type { Ply } from './inked'
import type { Surface } from './pen'
import type { Base, PlacedLoop, PlacedRow } from './place'
import { itemsOf, pliesOn, type Plies } from './plies'
import { Shapes, thickness, type StitchSize } from './shapes'

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
  const plies = pliesOn(surface)
  const shapes = new Shapes(size)
  const hand = new Hand(shapes, plies)
  const shown = loops.filter(({ home }) => surface.shows(home * size.width))
  for (const loop of shown) hand.draw(loop)
  hand.purls(shown)
  for (const { x, y } of bars)
    if (surface.shows(x * size.width)) shapes.flat(plies.behind.pen(0), x, y + 0.5, 0.56, -0.1)
  return itemsOf(plies, Math.min(size.width, size.height) * 0.05)
}

/** How the parts of a loop lie, in stitch widths and rows. */
const lie = {
  /** From the middle of a loop to the middle of its legs, where they come out and at the head. */
  foot: 0.06,
  crossedFoot: -0.17,
  shoulder: 0.35,
  /** How far the legs begin below and end above the loop's own row. */
  below: 0.3,
  belowLaid: 0.05,
  above: 0.16,
  bump: { reach: 0.47, top: 0.62, bottom: 0.02, end: -0.1 },
  sinker: { top: 0.12, bottom: 0.74, end: 0.2 },
  halo: { beside: 0.06, inset: 0.28 },
} as const

class Hand {
  constructor(
    private readonly shapes: Shapes,
    private readonly plies: Plies,
  ) {}

  draw(loop: PlacedLoop): void {
    for (const base of loop.bases) if (base.opened > 0) this.#opening(base)
    const { head, tone } = loop
    const { plies, shapes } = this
    switch (loop.kind) {
      case 'cast-on':
        return shapes.leg(
          plies.plain.pen(tone),
          shapes.point(head.x - 0.58, head.y - 0.62),
          shapes.point(head.x + 0.52, head.y - 0.22),
        )
      case 'yarn over':
      case 'bar':
        // Nothing comes up from below: one looks through the fabric.
        shapes.oval(plies.holes, head.x, this.#middle(loop) - 0.02, 0.27, 0.5)
        return this.#laid(loop, 0.62, 0.05)
      case 'tuck':
        return this.#laid(loop, 0.62, 0.1)
      case 'German turn':
        return shapes.arch(plies.over.pen(tone), head.x, head.y - 0.3, 0.4, head.y + 0.55)
      case 'wrap':
        return shapes.flat(plies.over.pen(tone), head.x, head.y, 0.46, -0.12)
      case 'bobble':
        return this.#bobble(loop)
      default:
        return this.#worked(loop)
    }
  }

  #low({ bases, head }: PlacedLoop): number {
    return bases[0]?.y ?? head.y - 1
  }

  #middle(loop: PlacedLoop): number {
    return (this.#low(loop) + loop.head.y) / 2
  }

  #worked(loop: PlacedLoop): void {
    const { bases, depth, over, head, tone } = loop
    const { behind, plain, front } = this.plies
    const hidden = isPurl(loop) || depth === 'behind'
    const own = hidden ? behind : depth === 'front' || over ? front : plain
    for (let i = bases.length - 1; i >= 0; i--) {
      const base = bases[i] as Base
      if (over && own === front && bases.length === 1) this.#halo(base, loop)
      this.#legs(base, loop, i === 0 ? own : behind)
    }
    if (loop.bound) this.#chain(loop)
    if (loop.open) this.shapes.head(behind.pen(tone), head.x, head.y)
  }

  /** A loop of the bound-off edge, which lies on its side. */
  #chain({ head: { x, y }, tone }: PlacedLoop): void {
    for (const rise of [0.12, 0.42])
      this.shapes.leg(
        this.plies.over.pen(tone),
        this.shapes.point(x - 0.5, y + 0.27),
        this.shapes.point(x + 0.52, y + rise),
      )
  }

  #legs(base: Base, { head, kind, tone }: PlacedLoop, ply: Ply): void {
    const twisted = kind === 'twisted knit' || kind === 'twisted purl'
    const foot = twisted ? lie.crossedFoot : lie.foot
    const below = base.laid ? lie.belowLaid : lie.below
    const under = kind === 'twisted knit' ? this.plies.behind : ply
    const lean = (0.5 * (head.x - base.x)) / Math.max(1, head.y - base.y)
    for (const side of [-1, 1])
      this.shapes.leg(
        (side < 0 ? under : ply).pen(tone),
        this.shapes.point(base.x - lean * below + side * foot, base.y - below),
        this.shapes.point(head.x + lean * lie.above + side * lie.shoulder, head.y + lie.above),
        twisted ? 0 : side,
      )
  }

  /** Shade between a strand in front and what it crosses. */
  #halo(base: Base, { head }: PlacedLoop): void {
    const { beside, inset } = lie.halo
    const reach = lie.shoulder + thickness.leg * 0.7 + beside
    const low = base.x + (inset * (head.x - base.x)) / Math.max(1, head.y - base.y)
    this.plies.halo.area(
      this.shapes.point(low - reach, base.y + inset),
      this.shapes.point(head.x - reach, head.y),
      this.shapes.point(head.x + reach, head.y),
      this.shapes.point(low + reach, base.y + inset),
    )
  }

  /** Before a purled loop lies the head of the one below; between two, the strand that joins them. */
  purls(loops: readonly PlacedLoop[]): void {
    const heads = loops
      .filter(isPurl)
      .flatMap((loop) => loop.bases.map(({ x, y }) => ({ x, y, loop })))
      .sort((a, b) => a.x - b.x)
    const { bump, sinker } = lie
    const apart = (i: number, j: number): number => {
      const [a, b] = [heads[i], heads[j]]
      return a && b && a.y === b.y ? Math.max(0.2, Math.abs(b.x - a.x)) : 2
    }
    heads.forEach(({ x, y, loop }, i) => {
      const gap = apart(i, i + 1)
      const reach = Math.min(bump.reach, apart(i - 1, i) / 2, gap / 2)
      const pen = this.plies.bumps.pen(loop.tone)
      this.shapes.bean(pen, x, y + bump.end, reach, y + bump.top, y + bump.bottom)
      const next = heads[i + 1]
      if (!next || next.loop === loop || gap > 1.5) return
      this.shapes.bean(
        this.plies.sinkers.pen(loop.tone),
        (x + next.x) / 2,
        y - sinker.end,
        Math.min(bump.reach, gap / 2 - 0.02),
        y - sinker.bottom,
        y - sinker.top,
      )
    })
  }

  /** A strand that was laid on the peg: it arches over from one side to the other. */
  #laid(loop: PlacedLoop, reach: number, rise: number): void {
    const { head, tone } = loop
    const pen = this.plies.behind.pen(tone)
    this.shapes.arch(pen, head.x, this.#low(loop) + rise, reach, head.y + 0.5)
  }

  #bobble(loop: PlacedLoop): void {
    const { x } = loop.head
    const y = this.#low(loop) + 0.15
    this.shapes.oval(this.plies.over.pen(loop.tone), x, y, 0.62, 1.15)
    for (const side of [-1, 1])
      this.shapes.leg(
        this.plies.top.pen(loop.tone),
        this.shapes.point(x + side * 0.05, y - 0.55),
        this.shapes.point(x + side * 0.26, y + 0.6),
      )
  }

  /** Where the fabric is opened flat, faint lines lead on to the loop that waited. */
  #opening({ x, y, opened }: Base): void {
    for (const side of [-0.2, 0.2])
      this.plies.faint.line(
        this.shapes.point(x + side, y - opened + 0.3),
        this.shapes.point(x + side, y - 0.2),
      )
  }
}
