import type { StrandKind } from '../../loom/strand'
import { short, mm, type Point } from '../path'
import type { InkRole, Item } from '../scene'
import { filled, stroked } from '../items'

/**
 * How a strand looks on an upright peg, seen from the outside. Lengths are shares of the distance
 * from peg to peg (a *unit*); the origin is where the peg stands on the rim, y runs down.
 */
export const post = { half: 0.2, headHalf: 0.27, headHigh: 0.17, high: 1.65 } as const
export const strandWide = 0.15
export const edgeWide = 0.035
/** Half the width of a band that lies close round the peg. */
export const hug = post.half + strandWide * 0.42
const sag = 0.13

/** What lies behind the peg and what lies across it. */
export interface Band {
  readonly kind: StrandKind
  readonly behind: readonly Item[]
  readonly before: readonly Item[]
}

/** Room along the peg that a strand needs, in units. */
export const roomOf: Readonly<Record<StrandKind, number>> = {
  'cast-on': 0.3,
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

/** What a strand's place on the loom says of its shape; sides are +1 right and -1 left. */
export interface BandLook {
  /** Where a turn's strand lies high: the side that work went back to. */
  readonly high: 1 | -1
  /** Where a laid strand does not lead to the neighbour: the working yarn leaves or comes there. */
  readonly open: readonly (1 | -1)[]
  /** Where the drawing ends beside the peg; else 0. */
  readonly end: 1 | 0 | -1
}

const plainLook: BandLook = { high: 1, open: [], end: 0 }

type Draw = (pen: Pen, y: number, look: BandLook) => Band['before']

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
    return stroked(d, ink, wide * this.unit)
  }
}

const across: Draw = (pen, y) =>
  pen.strand(
    pen.d`M${-hug} ${y - sag * 0.6}C${-hug} ${y + sag * 0.7} ${hug} ${y + sag * 0.7} ${hug} ${y - sag * 0.6}`,
  )

/** Where the loops of the neighbours lie, as a rule. */
const neighbour = { x: 0.73, y: -0.36 } as const
/** The edge of a neighbour's loop: a strand that ends there lies not on it. */
const besideNeighbour = 0.62

/** A laid strand comes from the loop on one side and goes to that on the other. */
function flaredBehind(
  pen: Pen,
  y: number,
  { open, end }: BandLook,
  far: number = neighbour.x,
): readonly Item[] {
  const sides = ([1, -1] as const).filter((side) => !open.includes(side))
  const legs = sides.map(
    (side) =>
      pen.d`M${side * 0.2} ${y - 0.05}C${side * 0.36} ${y - 0.02} ${side * 0.5} ${neighbour.y + 0.06} ${side * (side === end ? 0.5 : far)} ${neighbour.y}`,
  )
  return legs.length === 0 ? [] : pen.strand(legs.join(''))
}

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

const draws: Readonly<Record<StrandKind, Draw>> = {
  knit: across,
  'cast-on': across,
  'twisted knit': twisted,
  purl: (pen, y, look) => [...across(pen, y - 0.08, look), ...bump(pen, y + 0.1)],
  'twisted purl': (pen, y, look) => [...twisted(pen, y - 0.04, look), ...bump(pen, y + 0.18)],
  'yarn over': across,
  tuck: across,
  wrap: (pen, y) =>
    pen.strand(pen.d`M${-0.33} ${y}C${-0.33} ${y + 0.15} ${0.33} ${y + 0.15} ${0.33} ${y}`),
  // It comes out of the far end of the loop below and goes round the peg on the side of the next.
  'German turn': (pen, y, { high }) =>
    pen.strand(
      pen.d`M${-high * hug} ${y + 0.25}C${-high * 0.48} ${y + 0.22} ${-high * 0.46} ${y - 0.06} ${-high * 0.2} ${y + 0.02}C${-high * 0.04} ${y + 0.07} ${high * hug} ${y + 0.06} ${high * hug} ${y - sag}`,
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
  'yarn over': flaredBehind,
  tuck: flaredBehind,
  wrap: hoop,
  'German turn': (pen, y, look) =>
    flaredBehind(
      pen,
      y - 0.05,
      { ...look, open: [...look.open, -look.high as 1 | -1] },
      besideNeighbour,
    ),
  bar: null,
}

const laid = new Set<StrandKind>(['yarn over', 'tuck', 'wrap', 'German turn'])

/** The ink of a strand, as it is or as the one the move is about. */
export const strandInk = (kind: StrandKind, fresh: boolean): InkRole =>
  fresh ? 'tone-1' : laid.has(kind) ? 'laid' : 'loop'

export function band(
  kind: StrandKind,
  y: number,
  unit: number,
  fresh: boolean,
  look: BandLook = plainLook,
): Band {
  const pen = new Pen(unit, strandInk(kind, fresh), fresh)
  return {
    kind,
    behind: behinds[kind]?.(pen, y, look) ?? [],
    before: draws[kind](pen, y, look),
  }
}

/** A loop as it was, drawn in dots: where it is now, it is drawn in full. */
export function bandGone(y: number, unit: number): readonly Item[] {
  const pen = new Pen(unit, 'loop', false)
  const d = pen.d`M${-0.12} ${0}C${-0.16} ${y + 0.1} ${-hug} ${y + 0.05} ${-hug} ${y - sag * 0.6}C${-hug} ${y + sag * 0.7} ${hug} ${y + sag * 0.7} ${hug} ${y - sag * 0.6}C${hug} ${y + 0.05} ${0.16} ${y + 0.1} ${0.12} ${0}`
  return goneStrand(pen, d, strandWide)
}

/** A strand that is no longer there: thin and dotted, its light rim as wide as it was. */
export const goneStrand = (pen: Pen, d: string, wide: number): readonly Item[] => [
  pen.line(d, 'ground', wide),
  { ...(pen.line(d, 'loop-edge', 0.05) as Item & { kind: 'path' }), dash: dots(pen.unit) },
]

const dots = (unit: number): string => mm`${0.03 * unit} ${0.12 * unit}`

/** Heights of the strands of a stack above the rim (negative y), bottom to top, in units. */
export function levels(
  kinds: readonly StrandKind[],
  most: number = post.high - 0.1,
): readonly number[] {
  const least = 0.2
  const room = kinds.reduce((sum, kind) => sum + roomOf[kind], 0)
  const scale = Math.min(1, (most - least) / Math.max(room, 0.01))
  let from = least
  return kinds.map((kind) => {
    const middle = from + (roomOf[kind] * scale) / 2
    from += roomOf[kind] * scale
    return -middle
  })
}

/** The peg itself. */
export function postItems(unit: number, inWork: boolean): readonly Item[] {
  const { half, high } = post
  const pen = new Pen(unit, 'peg', false)
  const body = pen.d`M${-half} ${0.05}L${-half} ${-high}L${half} ${-high}L${half} ${0.05}Z`
  const ink: InkRole = inWork ? 'peg' : 'ground'
  return [...outlined(body, ink, unit), ...headItems([0, 0], unit, inWork)]
}

/** The head of a peg whose foot stands at `foot`, mm. */
export function headItems([x, y]: Point, unit: number, inWork: boolean): readonly Item[] {
  const { headHalf, headHigh, high } = post
  const [left, right] = [x / unit - headHalf, x / unit + headHalf]
  const low = y / unit - high
  const top = low - headHigh - 0.05
  const pen = new Pen(unit, 'peg', false)
  const d = pen.d`M${left} ${low}C${left} ${top} ${right} ${top} ${right} ${low}C${right} ${low + 0.07} ${left} ${low + 0.07} ${left} ${low}Z`
  return outlined(d, inWork ? 'peg' : 'ground', unit)
}

const outlined = (d: string, ink: InkRole, unit: number): readonly Item[] => [
  stroked(d, 'frame', 0.055 * unit),
  filled(d, ink),
]
