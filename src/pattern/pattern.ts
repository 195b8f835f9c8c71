import type { Direction } from '../loom/direction'
import type { Knit } from '../loom/move'
import type { Crossing, Transfer } from '../loom/row'
import type { Tradition } from '../stitches/sign'
import type { Gauge } from '../languages/gauge'
import type { Terms } from '../languages/terms'
import type { Stitch } from '../stitches/stitch'
import { standardVocabulary, type Vocabulary } from '../stitches/vocabulary'
import type { Chart, NamedChart, Row, ShortRowWish } from './chart'
import { stepsOfOneChart, type Pair, type Pictures, type Step, type Swatch } from './piece'

export type { Gauge } from '../languages/gauge'
export { shortRowShapes, shortRowSides, shortRowTurns } from './chart'
export type { Band, Cell, Chart, NamedChart, Row, Run, ShortRowWish } from './chart'

/**
 * The document. All of it is immutable; edits make new objects and share what they do not change.
 * Lengths are millimetres. Pegs, columns and rows are numbered from 0 here, from 1 for people.
 */
export interface Pattern {
  readonly title: string
  readonly designer: string
  readonly notes: string
  readonly loom: LoomSetup
  readonly gauge: Gauge | null
  readonly making: Making
  /** The stitches that it can be made of; its cells hold some of them. */
  readonly vocabulary: Vocabulary
  /** At least one; their names differ. In no order that matters, but for which of them is shown first. */
  readonly charts: readonly [NamedChart, ...NamedChart[]]
  /** The whole piece: what is done with them, from cast-on to bind-off. */
  readonly steps: readonly Step[]
  readonly pair: Pair
  /** Plain stitches that the designer works in a minute; null: not said. */
  readonly pace: number | null
  /** A swatch that was weighed; null: none was. */
  readonly swatch: Swatch | null
  /** Moves that the booklet shows in pictures. */
  readonly pictures: readonly Pictures[]
  /** How own words are to be read. */
  readonly readAs: ReadAs
  readonly checks: CheckSettings
  readonly style: Style
}

/**
 * The document as an edit of one chart is given it: with the name of that chart. It is no part of the
 * document; without it the first chart is meant.
 */
export interface Sheet extends Pattern {
  readonly on?: string
}

export const shapes = ['ring', 'bar'] as const

export interface LoomSetup {
  readonly shape: (typeof shapes)[number]
  /** 3 to 400. */
  readonly pegs: number
  /** Centre of one peg to centre of the next, mm. */
  readonly pitch: number
  readonly direction: Direction
}

/** How the stitches are made; printed with the pattern. */
export interface Making {
  readonly knit: Knit
  readonly crossing: Crossing
  readonly transfer: Transfer
  /** Things for babies and children get stricter checks and printed cautions. */
  readonly forBaby: boolean
}

export interface ReadAs {
  /** Which size of "24 (28, 32)", from 0. */
  readonly size: number
  /** Flat words for needles: every other row is written as its wrong side looks. */
  readonly needles: boolean
}

/** Words for the loom, in one size. */
export const readAsWritten: ReadAs = { size: 0, needles: false }

export interface CheckSettings {
  /** Rules switched off for this pattern. */
  readonly off: readonly string[]
  /** Longest inside float, in pegs. */
  readonly longestFloat: number
  /** Most millimetres a cross may move a loop. */
  readonly longestCross: number
  /** By habit, plain rows between crosses of the same strands: see the check. */
  readonly rowsBetweenCrosses: 'habit' | number
}

export const cellShapes = ['gauge', 'square'] as const
export const ringStarts = ['outside', 'inside'] as const

/** How the pattern is drawn and worded. */
export interface Style {
  readonly symbols: Tradition
  readonly terms: Terms
  /** The stitch left blank in the chart; new cells get it. */
  readonly background: Stitch
  readonly cell: (typeof cellShapes)[number]
  /** Where the ring chart has its cast-on edge. */
  readonly ringCastOn: (typeof ringStarts)[number]
  /** A heavier line every so many columns and rows; 0 for none. */
  readonly heavyEvery: number
}

export const limits = {
  pegs: { least: 3, most: 400 },
  rows: { least: 1, most: 600 },
  columns: { least: 1, most: 400 },
  times: { least: 2, most: 99 },
  pitch: { least: 3, most: 40 },
  /** Of words, counted from 1. */
  sizes: { least: 1, most: 30 },
  /** Characters of own words. */
  words: { least: 0, most: 1_000_000 },
  /** Stitches or rows to 10 cm. */
  gauge: { least: 1, most: 100 },
  /** Pegs. */
  longestFloat: { least: 0, most: 50 },
  /** mm */
  longestCross: { least: 1, most: 200 },
  rowsBetweenCrosses: { least: 0, most: 50 },
  /** Columns and rows from one heavier line to the next. */
  heavyEvery: { least: 0, most: 50 },
} as const

export const blankRow = (columns: number, stitch: Stitch): Row => ({
  cells: Array.from({ length: columns }, () => stitch),
  run: null,
  heading: null,
  end: 'on',
})

export const emptyChart = (columns: number, rows: number, stitch: Stitch): Chart => ({
  columns,
  repeat: null,
  bands: [],
  rows: Array.from({ length: rows }, () => blankRow(columns, stitch)),
})

/** A chart, nothing said of it yet. `wish`: what it is made from. */
export const newChart = (
  name: string,
  chart: Chart,
  wish: ShortRowWish | null = null,
): NamedChart => ({
  name,
  chart,
  wish,
  words: null,
  aside: [],
})

/** An empty piece on a ring. */
export function newPattern(pegs = 36, rows = 12): Pattern {
  const knit = standardVocabulary.withRole('knit')
  return {
    title: 'Untitled',
    designer: '',
    notes: '',
    loom: { shape: 'ring', pegs, pitch: 9.5, direction: 'clockwise' },
    gauge: null,
    making: {
      knit: 'u-wrap',
      crossing: 'move then knit',
      transfer: 'ordered',
      forBaby: false,
    },
    vocabulary: standardVocabulary,
    charts: [newChart('Chart', emptyChart(pegs, rows, knit))],
    steps: stepsOfOneChart('Chart'),
    pair: 'none',
    pace: null,
    swatch: null,
    pictures: [],
    readAs: readAsWritten,
    checks: {
      off: [],
      longestFloat: 3,
      longestCross: 40,
      rowsBetweenCrosses: 'habit',
    },
    style: {
      symbols: 'cyc',
      terms: 'us',
      background: knit,
      cell: 'gauge',
      ringCastOn: 'outside',
      heavyEvery: 5,
    },
  }
}
