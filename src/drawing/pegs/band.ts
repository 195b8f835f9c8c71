import type { StrandKind } from '../../loom/strand'
import { circlePath, short } from '../path'
import type { InkRole, Item } from '../scene'

/**
 * How a strand looks on an upright peg, seen from the outside. Lengths are shares of the distance
 * from peg to peg (a *unit*); the origin is where the peg stands on the rim, y runs down.
 */
export const post = { half: 0.2, headHalf: 0.27, headHigh: 0.17, high: 1.5 } as const
export const strandWide = 0.15
export const edgeWide = 0.035
/** Half the width of a band that lies close round the peg. */
const hug = post.half + strandWide * 0.42
const sag = 0.13

/** What lies behind the peg and what lies across it. */
export interface Band {
  readonly kind: StrandKind
  readonly behind: readonly Item[]
  readonly before: readonly Item[]
}

/** Room along the peg that a strand needs, in units. */
export const roomOf: Readonly<Record<StrandKind, number>> = {
  'cast-on': 0.34,
  knit: 0.3,
  'twisted knit': 0.46,
  purl: 0.44,
  'twisted purl': 0.54,
  'yarn over': 0.3,
  tuck: 0.3,
  wrap: 0.3,
  'German turn': 0.36,
  bar: 0.34,
}

type Draw = (pen: Pen, y: number) => Band['before']

/** Writes paths in units as items in millimetres. */
export class Pen {
  constructor(
    readonly unit: number,
    readonly ink: InkRole,
    readonly bold: boolean,
    private readonly edge = edgeWide,
  ) {}

  d(strings: TemplateStringsArray, ...numbers: readonly number[]): string {
    return strings.reduce(
      (text, part, i) =>
        text + part + (i < numbers.length ? short((numbers[i] as number) * this.unit) : ''),
      '',
    )
  }

  /** A strand of yarn: its outline, then itself. */
  strand(d: string, wide = strandWide): readonly Item[] {
    const edge = this.edge * (this.bold ? 1.7 : 1)
    return [this.line(d, 'loop-edge', wide + 2 * edge), this.line(d, this.ink, wide)]
  }

  line(d: string, ink: InkRole, wide: number): Item {
    return { kind: 'path', d, ink, stroke: short(wide * this.unit), fill: false }
  }
}

const across: Draw = (pen, y) =>
  pen.strand(
    pen.d`M${-hug} ${y - sag * 0.6}C${-hug} ${y + sag * 0.7} ${hug} ${y + sag * 0.7} ${hug} ${y - sag * 0.6}`,
  )

const flared: Draw = (pen, y) =>
  pen.strand(
    pen.d`M${-0.47} ${y + 0.13}C${-0.36} ${y + 0.06} ${-0.28} ${y - 0.04} ${-0.17} ${y - 0.02}S${0.17} ${y - 0.02} ${0.17} ${y - 0.02}C${0.28} ${y - 0.04} ${0.36} ${y + 0.06} ${0.47} ${y + 0.13}`,
  )

/** The legs cross under the loop: one of them goes over the other. */
const twisted: Draw = (pen, y) => {
  const [low, high] = [y + 0.15, y - 0.12]
  const over = pen.d`M${-hug} ${high}C${-hug} ${y} ${hug - 0.02} ${low - 0.1} ${hug - 0.02} ${low}`
  return [
    ...pen.strand(
      pen.d`M${-hug + 0.02} ${low}C${-hug + 0.02} ${low - 0.1} ${hug} ${y} ${hug} ${high}C${hug} ${high - 0.16} ${-hug} ${high - 0.16} ${-hug} ${high}`,
    ),
    ...pen.strand(over),
  ]
}

const bump = (pen: Pen, y: number): readonly Item[] =>
  pen.strand(pen.d`M${-0.1} ${y}C${-0.05} ${y + 0.035} ${0.05} ${y + 0.035} ${0.1} ${y}`, 0.15)

const knot = (pen: Pen, y: number): readonly Item[] => {
  const d = circlePath([0, y * pen.unit], 0.085 * pen.unit)
  return [
    { kind: 'path', d, ink: 'loop-edge', stroke: short(edgeWide * 2 * pen.unit), fill: true },
    { kind: 'path', d, ink: pen.ink, stroke: 0, fill: true },
  ]
}

const draws: Readonly<Record<StrandKind, Draw>> = {
  knit: across,
  'cast-on': (pen, y) => [...across(pen, y - 0.04), ...knot(pen, y + 0.03)],
  'twisted knit': twisted,
  purl: (pen, y) => [...across(pen, y - 0.08), ...bump(pen, y + 0.1)],
  'twisted purl': (pen, y) => [...twisted(pen, y - 0.04), ...bump(pen, y + 0.18)],
  'yarn over': flared,
  tuck: flared,
  wrap: (pen, y) =>
    pen.strand(pen.d`M${-0.33} ${y}C${-0.33} ${y + 0.15} ${0.33} ${y + 0.15} ${0.33} ${y}`),
  'German turn': (pen, y) =>
    pen.strand(
      pen.d`M${-0.3} ${y + 0.2}C${-0.2} ${y + 0.22} ${0.16} ${y - 0.14} ${0.3} ${y - 0.12}`,
    ),
  bar: (pen, y) =>
    pen.strand(
      pen.d`M${-0.46} ${y + 0.24}L${-hug * 0.85} ${y - 0.03}L${hug * 0.85} ${y - 0.03}L${0.46} ${y + 0.24}`,
    ),
}

/** A real loop's legs go round behind the peg and down inside the loom. */
const legs: Draw = (pen, y) =>
  pen.strand(
    pen.d`M${-hug} ${y - sag * 0.6}C${-hug} ${y + 0.05} ${-0.16} ${y + 0.1} ${-0.12} ${0.1}M${hug} ${y - sag * 0.6}C${hug} ${y + 0.05} ${0.16} ${y + 0.1} ${0.12} ${0.1}`,
  )

const hoop: Draw = (pen, y) =>
  pen.strand(pen.d`M${-0.33} ${y}C${-0.33} ${y - 0.15} ${0.33} ${y - 0.15} ${0.33} ${y}`)

const behinds: Readonly<Record<StrandKind, Draw | null>> = {
  knit: legs,
  'cast-on': legs,
  'twisted knit': null,
  purl: legs,
  'twisted purl': null,
  'yarn over': null,
  tuck: null,
  wrap: hoop,
  'German turn': null,
  bar: null,
}

const laid = new Set<StrandKind>(['yarn over', 'tuck', 'wrap', 'German turn'])

/** The ink of a strand, as it is or as the one the move is about. */
export const strandInk = (kind: StrandKind, fresh: boolean): InkRole =>
  fresh ? 'tone-1' : laid.has(kind) ? 'laid' : 'loop'

export function band(kind: StrandKind, y: number, unit: number, fresh: boolean): Band {
  const pen = new Pen(unit, strandInk(kind, fresh), fresh)
  return { kind, behind: behinds[kind]?.(pen, y) ?? [], before: draws[kind](pen, y) }
}

/** Heights of the strands of a stack above the rim (negative y), bottom to top, in units. */
export function levels(kinds: readonly StrandKind[]): readonly number[] {
  const least = 0.2
  const room = kinds.reduce((sum, kind) => sum + roomOf[kind], 0)
  const scale = Math.min(1, (post.high - least - 0.1) / Math.max(room, 0.01))
  let from = least
  return kinds.map((kind) => {
    const middle = from + (roomOf[kind] * scale) / 2
    from += roomOf[kind] * scale
    return -middle
  })
}

/** The peg itself. */
export function postItems(unit: number, inWork: boolean): readonly Item[] {
  const { half, headHalf, headHigh, high } = post
  const pen = new Pen(unit, 'peg', false)
  const body = pen.d`M${-half} ${0.05}L${-half} ${-high}L${half} ${-high}L${half} ${0.05}Z`
  const top = -high - headHigh
  const head = pen.d`M${-headHalf} ${-high}C${-headHalf} ${top - 0.05} ${headHalf} ${top - 0.05} ${headHalf} ${-high}C${headHalf} ${-high + 0.07} ${-headHalf} ${-high + 0.07} ${-headHalf} ${-high}Z`
  const ink: InkRole = inWork ? 'peg' : 'ground'
  return [body, head].flatMap((d): Item[] => [
    { kind: 'path', d, ink: 'frame', stroke: short(0.055 * unit), fill: false },
    { kind: 'path', d, ink, stroke: 0, fill: true },
  ])
}
