/**
 * A drawing as plain data. Millimetres, y down. Writers (screen, SVG file, PDF) only write it;
 * nothing is laid out after this. Angles are clockwise from the top.
 */
export interface Scene {
  readonly width: number
  readonly height: number
  /** What it shows, in one sentence, for people who do not see it. */
  readonly title: string
  readonly layers: readonly Layer[]
}

/** A movable group. The same object stands for the same drawing, so writers can keep what they made. */
export interface Layer {
  /** Unique in its scene. */
  readonly key: string
  readonly x: number
  readonly y: number
  readonly items: readonly Item[]
}

/**
 * Inks are roles, not colours: each writer has one table for them (paper: black and white).
 *  line: drawn signs; solid: filled signs; ground: paper; shade: no stitch, grey;
 *  behind: a band that another passes over, a lighter grey;
 *  grid, heavy: cell lines; frame: outlines; repeat, band: boxes; note: texts and arrows;
 *  peg: pegs and rims of the loom; needle, tool: what the hands hold; loop, loop-edge: a strand of
 *  yarn and its outline; laid: a strand laid over loops; tone-1 to tone-4: strands that are followed;
 *  error, warning, hint: findings, which also differ by shape; place: the current place.
 */
export const inks = [
  'line',
  'solid',
  'ground',
  'shade',
  'behind',
  'grid',
  'heavy',
  'frame',
  'repeat',
  'band',
  'note',
  'unworked',
  'peg',
  'needle',
  'tool',
  'loop',
  'loop-edge',
  'laid',
  'tone-1',
  'tone-2',
  'tone-3',
  'tone-4',
  'error',
  'warning',
  'hint',
  'place',
] as const
export type InkRole = (typeof inks)[number]

export type Item =
  | {
      readonly kind: 'path'
      /** SVG path data. */
      readonly d: string
      readonly ink: InkRole
      /** Stroke width in mm; 0 for none. */
      readonly stroke: number
      readonly fill: boolean
      readonly dash?: string
    }
  | {
      readonly kind: 'text'
      readonly x: number
      /** Baseline. */
      readonly y: number
      readonly text: string
      /** Letter height (font size) in mm. */
      readonly size: number
      readonly anchor: 'start' | 'middle' | 'end'
      readonly ink: InkRole
      readonly weight?: 'bold'
    }
