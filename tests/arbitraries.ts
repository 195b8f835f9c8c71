/**
 * Arbitrary documents for property tests. All of them are valid: inside the limits, of known
 * stitches, with cells that fit the chart. Whether they can be worked is another matter.
 */
import fc, { type Arbitrary } from 'fast-check'
import { directions, headings } from '../src/loom/direction'
import { bindOffs, castOns, knits } from '../src/loom/move'
import { crossings, rowEnds, transfers } from '../src/loom/row'
import {
  cellShapes,
  limits,
  ringStarts,
  shapes,
  type Band,
  type Chart,
  type CheckSettings,
  type LoomSetup,
  type Making,
  type Pattern,
  type ReadAs,
  type Row,
  type Run,
  type Style,
  type NamedChart,
} from '../src/pattern/pattern'
import { pairs, pieceLimits, stepsOfOneChart, type Step } from '../src/pattern/piece'
import { traditions } from '../src/stitches/sign'
import { termSets } from '../src/languages/terms'
import type { Stitch } from '../src/stitches/stitch'
import { standardVocabulary } from '../src/stitches/vocabulary'
import { cellsFrom } from './cells'

/** Records like any written object: toStrictEqual tells those without a prototype apart. */
const record = <T>(parts: { [K in keyof T]: Arbitrary<T[K]> }): Arbitrary<T> =>
  fc.record(parts, { noNullPrototype: true })

const between = ({ least, most }: { least: number; most: number }): Arbitrary<number> =>
  fc.double({ min: least, max: most, noNaN: true })

/** Any stitch; or one of those given. */
export const arbitraryStitch = (
  stitches: readonly Stitch[] = standardVocabulary.stitches,
): Arbitrary<Stitch> => fc.constantFrom(...stitches)

/** One stitch in its cells: its id, then '' for its other columns. */
export const cellsOf = ({ id, width }: Stitch): string[] => [
  id,
  ...Array.from({ length: width - 1 }, () => ''),
]

/** A row's cells in which every stitch is whole. Runs of knits and purls are likely. */
export const arbitraryCells = (
  columns: number,
  stitches: readonly Stitch[] = standardVocabulary.stitches,
): Arbitrary<string[]> =>
  fc
    .array(fc.tuple(arbitraryStitch(stitches), fc.integer({ min: 1, max: 4 })), {
      maxLength: columns,
    })
    .map((runs) => {
      const cells: string[] = []
      for (const [stitch, copies] of runs)
        for (let copy = 0; copy < copies; copy++)
          if (cells.length + stitch.width <= columns) cells.push(...cellsOf(stitch))
      while (cells.length < columns) cells.push('k')
      return cells
    })

/** Cells in which stitches may be cut by a neighbour or the edge, and columns continue nothing. */
export const arbitraryCutCells = (
  columns: number,
  stitches: readonly Stitch[] = standardVocabulary.stitches,
): Arbitrary<string[]> =>
  fc.array(
    fc.oneof(
      fc.constant(''),
      arbitraryStitch(stitches).map(({ id }) => id),
    ),
    {
      minLength: columns,
      maxLength: columns,
    },
  )

/** Both ends from 0 to `most` - 1. */
export const arbitraryRun = (most: number): Arbitrary<Run> =>
  fc
    .tuple(fc.nat(most - 1), fc.nat(most - 1))
    .map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) }))

/** A row of its own cells, run, heading and end. */
export const arbitraryRow = (
  columns: number,
  pegs: number,
  cells: Arbitrary<string[]> = arbitraryCells(columns),
): Arbitrary<Row> =>
  record({
    cells: cells.map(cellsFrom),
    run: fc.option(arbitraryRun(pegs)),
    heading: fc.option(fc.constantFrom(...headings)),
    end: fc.constantFrom(...rowEnds),
  })

/** Bands of rows 0 to `rows` - 1, rising and apart. */
export const arbitraryBands = (rows: number, most = 12): Arbitrary<Band[]> =>
  fc
    .tuple(
      fc.uniqueArray(fc.nat(rows), { maxLength: 6 }),
      fc.array(fc.integer({ min: limits.times.least, max: most }), {
        minLength: 3,
        maxLength: 3,
      }),
    )
    .map(([cuts, times]) => {
      const sorted = cuts.toSorted((a, b) => a - b)
      return times.flatMap((count, index) => {
        const from = sorted[2 * index]
        const end = sorted[2 * index + 1]
        return from === undefined || end === undefined ? [] : [{ from, to: end - 1, times: count }]
      })
    })

export const arbitraryLoom = (
  pegs: Arbitrary<number> = fc.integer({ min: limits.pegs.least, max: limits.pegs.most }),
): Arbitrary<LoomSetup> =>
  record({
    shape: fc.constantFrom(...shapes),
    pegs,
    pitch: fc.double({ min: limits.pitch.least, max: limits.pitch.most, noNaN: true }),
    direction: fc.constantFrom(...directions),
  })

export interface ChartSize {
  /** Most columns and rows; small by default, so that many charts can be tried. */
  readonly columns?: number
  readonly rows?: number
  /** Most times that a band is worked; few by default, since more are only more of the same. */
  readonly times?: number
  readonly stitches?: readonly Stitch[]
  /** May stitches be cut short? */
  readonly cut?: boolean
}

export const arbitraryChart = (pegs: number, size: ChartSize = {}): Arbitrary<Chart> =>
  fc
    .tuple(
      fc.integer({ min: limits.columns.least, max: size.columns ?? 24 }),
      fc.integer({ min: limits.rows.least, max: size.rows ?? 8 }),
    )
    .chain(([columns, rows]) => {
      const whole = arbitraryCells(columns, size.stitches)
      const cells = size.cut ? fc.oneof(whole, arbitraryCutCells(columns, size.stitches)) : whole
      return record({
        columns: fc.constant(columns),
        repeat: fc.option(arbitraryRun(columns)),
        bands: arbitraryBands(rows, size.times),
        rows: fc.array(arbitraryRow(columns, pegs, cells), { minLength: rows, maxLength: rows }),
      })
    })

export const arbitraryMaking: Arbitrary<Making> = record({
  knit: fc.constantFrom(...knits),
  crossing: fc.constantFrom(...crossings),
  transfer: fc.constantFrom(...transfers),
  forBaby: fc.boolean(),
})

export const arbitraryCheckSettings: Arbitrary<CheckSettings> = record({
  off: fc.array(fc.string({ unit: 'binary' }), { maxLength: 3 }),
  longestFloat: fc.nat(limits.longestFloat.most),
  longestCross: between(limits.longestCross),
  rowsBetweenCrosses: fc.oneof(
    fc.constant('habit' as const),
    fc.nat(limits.rowsBetweenCrosses.most),
  ),
})

export const arbitraryStyle: Arbitrary<Style> = record({
  symbols: fc.constantFrom(...traditions),
  terms: fc.constantFrom(...termSets),
  background: fc.constantFrom(...standardVocabulary.stitches.filter(({ width }) => width === 1)),
  cell: fc.constantFrom(...cellShapes),
  ringCastOn: fc.constantFrom(...ringStarts),
  heavyEvery: fc.nat(limits.heavyEvery.most),
})

/** Own words may hold any characters, empty lines and all kinds of line ends. */
export const arbitraryWords: Arbitrary<string | null> = fc.option(
  fc
    .array(fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('', '\r', 'Rnd 1: k2, p2.')))
    .map((lines) => lines.join('\n')),
)

export const arbitraryReadAs: Arbitrary<ReadAs> = record({
  size: fc.nat(limits.sizes.most - 1),
  needles: fc.boolean(),
})

const gaugeCount = between(limits.gauge)

const plainStitches = standardVocabulary.stitches.filter(
  ({ width, takes, makes }) => width === 1 && takes === 1 && makes === 1,
)

export const arbitraryStep = (pegs: number, names: readonly string[]): Arbitrary<Step> => {
  const some = fc.option(arbitraryRun(pegs))
  return fc.oneof(
    record({
      kind: fc.constant('cast on' as const),
      how: fc.constantFrom(...castOns),
      pegs: some,
    }),
    record({
      kind: fc.constant('chart' as const),
      chart: fc.constantFrom(...names),
      times: fc.integer({ min: 1, max: 4 }),
    }),
    record({
      kind: fc.constant('plain' as const),
      stitch: fc.constantFrom(...plainStitches),
      amount: fc.oneof(
        fc.integer({ min: 1, max: 20 }).map((rows) => ({ rows })),
        fc.double({ min: 1, max: 200, noNaN: true }).map((mm) => ({ mm })),
      ),
    }),
    record({ kind: fc.constant('pegs' as const), run: some, toAndFro: fc.boolean() }),
    record({ kind: fc.constant('note' as const), text: fc.string({ unit: 'binary' }) }),
    record({
      kind: fc.constant('bind off' as const),
      how: fc.constantFrom(...bindOffs),
      pegs: some,
    }),
  )
}

type PieceParts = Pick<Pattern, 'charts' | 'steps' | 'pair' | 'pace' | 'swatch' | 'pictures'>

/** Up to three charts, worked in steps of any order, which is no order to work in at all. */
export const arbitraryPiece = (pegs: number, size: ChartSize = {}): Arbitrary<PieceParts> =>
  fc
    .uniqueArray(fc.string({ minLength: 1, maxLength: 12 }), { minLength: 1, maxLength: 3 })
    .chain(([first = 'Chart', ...names]) => {
      const chart = (name: string): Arbitrary<NamedChart> =>
        record({
          name: fc.constant(name),
          chart: arbitraryChart(pegs, size),
          wish: fc.constant(null),
          words: arbitraryWords,
          aside: fc.array(fc.string({ unit: 'binary' }), { maxLength: 3 }),
        })
      return record({
        charts: fc
          .tuple(chart(first), fc.tuple(...names.map(chart)))
          .map(([one, others]): Pattern['charts'] => [one, ...others]),
        steps: fc.array(arbitraryStep(pegs, [first, ...names]), { maxLength: 6 }),
        pair: fc.constantFrom(...pairs),
        pace: fc.option(between(pieceLimits.pace)),
        swatch: fc.option(
          record({
            stitches: between(pieceLimits.swatchStitches),
            rows: between(pieceLimits.swatchRows),
            grams: between(pieceLimits.grams),
          }),
        ),
        pictures: fc.array(
          fc
            .tuple(fc.constantFrom(first, ...names), fc.nat(20), arbitraryRun(90))
            .map(([name, row, run]) => ({ chart: name, row, ...run })),
          { maxLength: 3 },
        ),
      })
    })

/** A whole document. Texts hold any characters there are. */
export const arbitraryPattern = (size: ChartSize = {}): Arbitrary<Pattern> =>
  arbitraryLoom().chain((loom) =>
    fc
      .tuple(
        record({
          title: fc.string({ unit: 'binary' }),
          designer: fc.string({ unit: 'grapheme' }),
          notes: fc.string({ unit: 'binary' }),
          loom: fc.constant(loom),
          gauge: fc.option(record({ stitches: gaugeCount, rows: gaugeCount })),
          making: arbitraryMaking,
          vocabulary: fc.constant(standardVocabulary),
          readAs: arbitraryReadAs,
          checks: arbitraryCheckSettings,
          style: arbitraryStyle,
        }),
        arbitraryPiece(loom.pegs, size),
      )
      .map(([settings, piece]) => ({ ...settings, ...piece })),
  )

/** A document of one chart: cast on, worked once, bound off. */
export const arbitraryOneChart = (size: ChartSize = {}): Arbitrary<Pattern> =>
  arbitraryPattern(size).map((pattern) => {
    const [chart] = pattern.charts
    return {
      ...pattern,
      charts: [{ ...chart, name: 'Chart' }],
      steps: stepsOfOneChart('Chart'),
      pair: 'none',
      pace: null,
      swatch: null,
      pictures: [],
    }
  })
