import type { StrandKind } from '../../../loom/strand'
import { mm } from '../../path'
import type { Item } from '../../scene'
import { Pen, strandInk } from '../band'

/**
 * How a strand looks on a peg seen from above; lengths in units (peg to peg), the origin the middle
 * of the peg. Each strand is a band of its own: the lowest lies closest to the peg. Legs of loops
 * run to the inside of the loom; strands that are only laid have none.
 */
export interface BandAbove {
  readonly kind: StrandKind
  readonly items: readonly Item[]
}

const wide = 0.075

/** A point `t` along the pegs and `o` outward, turned as the peg's outward way is. */
type Place = (t: number, o: number) => string

/** `high`: to which side along the pegs a turn's strand is led. */
type Draw = (pen: Pen, at: Place, r: number, high: 1 | -1) => readonly Item[]

const placeFor =
  (outward: number, unit: number): Place =>
  (t, o) => {
    const [sin, cos] = [Math.sin(outward), Math.cos(outward)]
    return mm`${(o * sin + t * cos) * unit} ${(t * sin - o * cos) * unit}`
  }

/** Round the outer half of the peg, from one side to the other. */
const round = (at: Place, r: number): string => {
  const k = 1.33 * r
  return `${at(-r, 0)}C${at(-r, k)} ${at(r, k)} ${at(r, 0)}`
}

const legEnd = (r: number): readonly [number, number] => [
  0.04 + 0.55 * (r - 0.2),
  -0.62 - (r - 0.27),
]

const loop: Draw = (pen, at, r) => {
  const [t, o] = legEnd(r)
  return pen.strand(
    `M${at(-t, o)}C${at(-t, -r)} ${at(-r, -r * 0.9)} ${round(at, r)}C${at(r, -r * 0.9)} ${at(t, -r)} ${at(t, o)}`,
    wide,
  )
}

const twisted: Draw = (pen, at, r) => {
  const o = legEnd(r)[1]
  const t = 0.16
  return [
    ...pen.strand(`M${at(t, o)}C${at(t, -r)} ${at(-r, -r * 0.7)} ${round(at, r)}`, wide),
    ...pen.strand(`M${at(r, 0)}C${at(r, -r * 0.7)} ${at(-t, -r)} ${at(-t, o)}`, wide),
  ]
}

const bump = (pen: Pen, at: Place, r: number): readonly Item[] => {
  const o = legEnd(r)[1] + 0.1
  return pen.strand(`M${at(-0.13, o)}L${at(0.13, o)}`, wide * 1.35)
}

const laidRound: Draw = (pen, at, r) =>
  pen.strand(
    `M${at(-0.5, -0.12)}C${at(-0.38, -0.12)} ${at(-r, -0.1)} ${round(at, r)}C${at(r, -0.1)} ${at(0.38, -0.12)} ${at(0.5, -0.12)}`,
    wide,
  )

const draws: Readonly<Record<StrandKind, Draw>> = {
  knit: loop,
  'twisted knit': twisted,
  purl: (pen, at, r, high) => [...loop(pen, at, r, high), ...bump(pen, at, r)],
  'twisted purl': (pen, at, r, high) => [...twisted(pen, at, r, high), ...bump(pen, at, r)],
  'cast-on': loop,
  'yarn over': laidRound,
  tuck: laidRound,
  wrap: (pen, at, r) =>
    pen.strand(`M${round(at, r)}C${at(r, -1.33 * r)} ${at(-r, -1.33 * r)} ${at(-r, 0)}Z`, wide),
  'German turn': (pen, at, r, high) =>
    pen.strand(
      `M${at(-high * (r - 0.1), -0.14)}L${at(-high * r, 0)}C${at(-high * r, 1.33 * r)} ${at(high * r, 1.33 * r)} ${at(high * r, 0)}L${at(high * 0.5, -0.3)}`,
      wide * 1.2,
    ),
  bar: (pen, at, r) =>
    pen.strand(`M${at(-0.5, -0.25)}L${at(-r, r * 0.7)}L${at(r, r * 0.7)}L${at(0.5, -0.25)}`, wide),
}

/** All strands of a stack, bottom to top. */
export function bandsAbove(
  kinds: readonly StrandKind[],
  unit: number,
  outward: number,
  isFresh: (level: number) => boolean,
  high: 1 | -1 = 1,
): readonly BandAbove[] {
  const at = placeFor(outward, unit)
  const step = Math.min(0.11, 0.22 / Math.max(1, kinds.length - 1))
  return kinds.map((kind, level): BandAbove => {
    const pen = new Pen(unit, strandInk(kind, isFresh(level)), isFresh(level), 0.024)
    return { kind, items: draws[kind](pen, at, 0.27 + step * level, high) }
  })
}
