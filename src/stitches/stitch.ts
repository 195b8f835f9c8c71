import { knits } from '../loom/move'
import type { Worked } from '../loom/row'
import type { Signs } from './sign'

export type Texture = 'knit' | 'purl'
export type Lean = 'left' | 'right'

/** Front group, back group: how many pegs each. The front strand leans as the right side is seen. */
export interface Cross {
  readonly front: number
  readonly back: number
  readonly lean: Lean
  readonly frontTexture: Texture
  readonly backTexture: Texture
}

/** Families order the tray and the key. */
export const families = [
  'knit and purl',
  'slip',
  'increase',
  'decrease',
  'texture',
  'cross',
] as const
export type Family = (typeof families)[number]

/**
 * What the house itself takes a stitch for: to fill, to mend, to read what words leave open. Each has
 * one stitch; `knit` is worked in the pattern's own way, which is one of those that follow it.
 */
export const roles = [
  'knit',
  ...knits,
  'purl',
  'slip',
  'slip in front',
  'tuck',
  'yarn over',
  'make left',
  'make right',
  'knit twice',
  'two together',
  'no stitch',
] as const
export type Role = (typeof roles)[number]

/** What cuts a stitch of several pegs that does not stand whole on them. */
export const cutsBy = ['repeat', 'join', 'bar edge', 'run edge', 'overlap'] as const
export type CutBy = (typeof cutsBy)[number]

/** How one loop looks on the right side, for the fabric picture. */
export type Look =
  | 'knit'
  | 'twisted knit'
  | 'purl'
  | 'twisted purl'
  | 'slip'
  | 'float in front'
  | 'tuck'
  | 'yarn over'
  | 'left decrease'
  | 'right decrease'
  | 'centre decrease'
  | 'purl decrease'
  | 'increase'
  | 'bobble'
  | 'cross'
  | 'none'

/** One stitch of the vocabulary: what it is and does. What it is called, each language says itself. */
export interface Stitch extends Worked {
  readonly id: string
  readonly family: Family
  /** Id of the stitch that is its mirror image; its own where it has no lean. */
  readonly mirror: string
  /** Id of the stitch that it is seen from behind; none where the vocabulary has no such stitch. */
  readonly behind?: string
  readonly role?: Role
  /** The key that takes it into the hand while a chart has the focus. */
  readonly key?: string
  readonly look: Look
  /** How it is drawn; that of a cross follows from what it is. */
  readonly signs?: Signs
  readonly cross?: Cross
  /** Of what is left of a stitch that does not stand whole: which one, and what cuts it. */
  readonly cut?: { readonly of: Stitch; readonly by: CutBy }
}

/** What a cut stitch is left of; any other itself. */
export const wholeOf = (stitch: Stitch): Stitch => stitch.cut?.of ?? stitch

/** Does it make one loop of the one on its peg, so that it may stand on every peg that holds one? */
export const keepsItsLoop = ({ takes, makes, width }: Worked): boolean =>
  takes === 1 && makes === 1 && width === 1
