import type { PaperSize } from './page/paper'

export const chartChoices = ['flat', 'ring', 'both'] as const
export type ChartChoice = (typeof chartChoices)[number]

export const wordings = ['chart', 'own'] as const
/** Words as the chart writes them, or the designer's own. */
export type Wording = (typeof wordings)[number]

/** What the user asks of a printed booklet. */
export interface BookletSettings {
  readonly paper: PaperSize
  /** With the charts and their key. */
  readonly charts: boolean
  readonly chart: ChartChoice
  /** Text of 22 points and larger signs. */
  readonly largePrint: boolean
  readonly words: boolean
  /** Which words; a pattern without own words has the chart's. */
  readonly wording: Wording
  /** With the step pictures that the piece has. */
  readonly pictures: boolean
  /** With the second of a mirrored pair, written out. */
  readonly second: boolean
  /** Width of a chart cell in mm; null: as large as is needed to read and to use few sheets. */
  readonly cell: number | null
}

export const usualSettings: BookletSettings = {
  paper: 'a4',
  charts: true,
  chart: 'flat',
  largePrint: false,
  words: true,
  wording: 'chart',
  pictures: true,
  second: true,
  cell: null,
}
