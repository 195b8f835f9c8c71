import type { Direction } from '../loom/direction'
import type { Knit } from '../loom/move'
import type { RowEnd } from '../loom/row'
import type { Gauge } from './gauge'
import type { Unit } from './unit'

/** What a booklet says itself; instructions and statements come from the words. */
export interface BookletPhrases {
  readonly description: (made: MadeOn) => string
  /** Finished size, in lengths as they are told. */
  readonly size: (size: SizeTold, shape: 'ring' | 'bar') => string
  readonly chart: string
  /** How often a chart is worked: one number for each step that works it, not all of them 1. */
  readonly timesWorked: (times: readonly number[]) => string
  readonly ringChart: string
  /** Titles of the charts of a section. */
  readonly ringOf: (section: string) => string
  readonly sheetOf: (section: string, letter: string) => string
  /** Size of a whole piece, from cast-on to bind-off. */
  readonly pieceSize: (size: SizeTold, shape: 'ring' | 'bar') => string
  /** The foot of a sock as it is knitted, with the feet and shoes that it fits. */
  readonly foot: (foot: FootTold) => string
  readonly pair: Readonly<Record<'alike' | 'mirrored', string>>
  readonly secondPart: string
  readonly pictures: (what: string) => string
  readonly picturesOf: (row: PictureRow) => string
  readonly totals: string
  readonly key: string
  readonly turns: Readonly<Record<RowEnd, string>>
  readonly unworked: string
  readonly sheet: (letter: string) => string
  readonly rowsAndColumns: (sheet: {
    readonly unit: Unit
    readonly firstRow: number
    readonly lastRow: number
    readonly firstPeg: number
    readonly lastPeg: number
  }) => string
  /** Pegs that are left out of a chart; all numbers as they are printed. */
  readonly quiet: (pegs: QuietWords) => string
  readonly sheetsJoin: (sheets: number) => string
  readonly overlap: (first: number, last: number) => string
  readonly page: (number: number, of: number) => string
  /** Asked for by the Craft Yarn Council wherever its chart symbols are used: those of these stitches. */
  readonly symbolSource: (stitches: readonly string[]) => string
}

export interface QuietWords {
  readonly unit: Unit
  readonly pegs: Numbers
  readonly rests: readonly Numbers[]
  readonly worked: readonly (Numbers & { readonly abbr: string })[]
}

/** The row whose moves are shown. */
export interface PictureRow {
  readonly kind: Unit
  readonly number: number
  readonly section: string | null
}

/** What a piece is made on and how; pitch in mm. */
export interface MadeOn {
  readonly loom: {
    readonly shape: 'ring' | 'bar'
    readonly pegs: number
    readonly pitch: number
    readonly direction: Direction
  }
  readonly making: { readonly knit: Knit }
  readonly gauge: Gauge | null
}

/** Lengths as they are told: "24.4 cm". */
export interface SizeTold {
  readonly width: string
  readonly height: string
}

export interface FootTold {
  readonly length: string
  /** The feet that it fits: shortest and longest in cm, and how far round. */
  readonly feet: Ends
  readonly round: string
  /** Sizes of shoes; null where there are none for such feet. */
  readonly eu: Ends | null
  readonly ukChild: Ends | null
}

export type Ends = readonly [least: number, most: number]

/** Numbers as they are printed, both ends included. */
interface Numbers {
  readonly from: number
  readonly to: number
}
