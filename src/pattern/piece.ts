import type { BindOff, CastOn } from '../loom/move'
import type { Run } from './chart'
import type { Stitch } from '../stitches/stitch'

/** Moves `from`..`to` of the way a chart row is worked; all 0-based, both ends included. */
export interface Pictures extends Run {
  readonly chart: string
  readonly row: number
}

export const pairs = ['none', 'alike', 'mirrored'] as const
/** Is a second one made, and is it the mirror image? It is always derived from the first. */
export type Pair = (typeof pairs)[number]

/** Plain knit, in the pattern's own way, on this many stitches and rows, weighed in grams. */
export interface Swatch {
  readonly stitches: number
  readonly rows: number
  readonly grams: number
}

/** Plain rows: a number of them, or so many mm through the gauge. */
export type Amount = { readonly rows: number } | { readonly mm: number }

export type Step =
  | { readonly kind: 'cast on'; readonly how: CastOn; readonly pegs: Run | null }
  | { readonly kind: 'chart'; readonly chart: string; readonly times: number }
  /** Rows of one stitch on all pegs in work. */
  | { readonly kind: 'plain'; readonly stitch: Stitch; readonly amount: Amount }
  /**
   * From here on these pegs are worked, the others wait with their loops on. Work goes round, or to
   * and fro between the first and the last of them; a run of pegs is always worked to and fro.
   */
  | { readonly kind: 'pegs'; readonly run: Run | null; readonly toAndFro: boolean }
  | { readonly kind: 'note'; readonly text: string }
  | { readonly kind: 'bind off'; readonly how: BindOff; readonly pegs: Run | null }

export type StepKind = Step['kind']

export const pieceLimits = {
  steps: { least: 0, most: 100 },
  charts: { least: 1, most: 40 },
  /** Times a chart is worked. */
  times: { least: 1, most: 99 },
  plainRows: { least: 1, most: 1000 },
  /** mm */
  length: { least: 1, most: 3000 },
  /** Rows of the whole piece; what goes beyond is not worked. */
  rows: { least: 0, most: 6000 },
  /** Stitches a minute. */
  pace: { least: 1, most: 200 },
  /** Of a weighed swatch: stitches in all, rows in all, grams. */
  swatchStitches: { least: 1, most: 400 },
  swatchRows: { least: 1, most: 1000 },
  grams: { least: 0.1, most: 1000 },
  note: { least: 0, most: 4000 },
  pictures: { least: 0, most: 50 },
  /** Moves of one row. */
  moves: { least: 1, most: 100_000 },
  name: { least: 1, most: 60 },
} as const

/** How a new piece is cast on and bound off. */
export const usualEdges = { castOn: 'e-wrap', bindOff: 'basic' } as const

/** Cast on, work this chart once, bind off. */
export const stepsOfOneChart = (chart: string): readonly Step[] => [
  { kind: 'cast on', how: usualEdges.castOn, pegs: null },
  { kind: 'chart', chart, times: 1 },
  { kind: 'bind off', how: usualEdges.bindOff, pegs: null },
]
