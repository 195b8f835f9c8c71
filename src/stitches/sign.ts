/**
 * Drawn signs, as plain data. A sign is drawn in its own columns as the right side is seen:
 * x from 0 at its left edge to `width` at its right edge, y from 0 at the top (up the fabric) to 1
 * at the bottom. The drawing folder maps this square onto flat cells or ring sectors.
 */
export type Command =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  /** A circle that stays round however the cell is stretched: centre, radius in cell units. */
  | readonly ['O', number, number, number]
  | readonly ['Z']

/**
 * line: stroked. solid: filled with ink. ground: filled with paper (to let one strand pass over
 * another), then stroked by a following line. shade: filled with grey (no stitch).
 */
export type Ink = 'line' | 'solid' | 'ground' | 'shade'

export interface Mark {
  readonly ink: Ink
  readonly path: readonly Command[]
}

export type Sign = readonly Mark[]

/** The published traditions the signs are drawn in. */
export const traditions = ['cyc', 'jis'] as const
export type Tradition = (typeof traditions)[number]

export interface Signs {
  /** After the Craft Yarn Council's chart symbols. */
  readonly cyc: Sign
  /** After JIS L 0201 letter symbols for knitting stitch. */
  readonly jis: Sign
}

type Point = readonly [x: number, y: number]

const through = ([first, ...rest]: readonly Point[]): Command[] =>
  first ? [['M', ...first], ...rest.map((p): Command => ['L', ...p])] : []

export const line = (...points: Point[]): Mark => ({ ink: 'line', path: through(points) })
export const polygon = (ink: Ink, ...points: Point[]): Mark => ({
  ink,
  path: [...through(points), ['Z']],
})
export const circle = (x: number, y: number, r: number, ink: Ink = 'line'): Mark => ({
  ink,
  path: [['O', x, y, r]],
})
export const dot = (x: number, y: number, r: number): Mark => circle(x, y, r, 'solid')
export const curve = (...path: Command[]): Mark => ({ ink: 'line', path })
