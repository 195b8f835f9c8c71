import type { Side } from './state'

export const knits = ['e-wrap', 'u-wrap', 'flat', 'true'] as const
/** The four ways to knit a peg (common practice); a pattern has one of them as its plain "knit". */
export type Knit = (typeof knits)[number]
export type How = Knit | 'purl' | 'twisted purl'

export const castOns = ['e-wrap', 'double e-wrap', 'chain', 'long-tail', 'drawstring'] as const
/** How loops are cast on (common practice). */
export type CastOn = (typeof castOns)[number]

export const bindOffs = ['basic', 'elastic', 'sewn', 'gather', 'three-needle', 'graft'] as const
/** How the last loops are made safe (common practice). */
export type BindOff = (typeof bindOffs)[number]

/**
 * The primitive moves of the hands. Every stitch is a short program in these.
 * All `peg`s are 0-based.
 */
export type Move =
  /** Everything on the peg is lifted over a new strand. */
  | { readonly do: 'work'; readonly peg: number; readonly how: How }
  /** The yarn is laid on the peg and nothing is lifted; a wrap is laid under the loop. */
  | {
      readonly do: 'lay'
      readonly peg: number
      readonly as: 'yarn over' | 'tuck' | 'wrap' | 'German turn'
    }
  /** The yarn goes past the peg, which keeps its loops. */
  | { readonly do: 'pass'; readonly peg: number; readonly yarn: Side }
  /** The yarn is carried inside, behind the pegs, to another gap of the same cross. */
  | { readonly do: 'carry'; readonly gap: number }
  /** The loops of the peg are taken off to the spare needle. */
  | { readonly do: 'take'; readonly peg: number; readonly to: Side }
  /** The loops that were taken off first are put on this peg. */
  | { readonly do: 'put'; readonly peg: number }
  /** The loops of one peg are moved to another, on top of what is there or underneath it. */
  | { readonly do: 'move'; readonly from: number; readonly to: number; readonly under: boolean }
  /** A new loop is drawn through the loop on one peg and put on another, empty one. */
  | { readonly do: 'draw'; readonly from: number; readonly to: number }
  /** The bar of yarn beside an empty peg is lifted onto it. */
  | { readonly do: 'bar'; readonly peg: number }
  /** The lowest of several loops knitted on one peg is lifted back onto it. */
  | { readonly do: 'base'; readonly peg: number }
  | { readonly do: 'turn' }
  /** A first loop is put on an empty peg; `last`: the last one of its edge. */
  | {
      readonly do: 'cast on'
      readonly peg: number
      readonly how: CastOn
      readonly last: boolean
    }
  /** The lower loops on the peg are lifted over the top one and off. */
  | { readonly do: 'lift'; readonly peg: number }
  /** The loops leave the peg; the yarn end drawn through them keeps them. */
  | { readonly do: 'let go'; readonly peg: number; readonly how: BindOff }
  /** The loops fall off unworked: only where a row's count is wrong. */
  | { readonly do: 'drop'; readonly peg: number }

/**
 * A move of one stitch, on its own pegs: peg 0 is the one that work comes to first, gap 0 lies before
 * it. Without `how` it is knitted as the pattern knits. Plain data, as a file could hold it.
 */
export type StitchMove =
  | { readonly do: 'work'; readonly peg: number; readonly how?: How }
  | Extract<
      Move,
      { do: 'lay' | 'pass' | 'carry' | 'take' | 'put' | 'move' | 'draw' | 'bar' | 'base' }
    >

export type StitchMoves = readonly StitchMove[]
