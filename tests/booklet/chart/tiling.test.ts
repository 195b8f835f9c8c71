import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { liveArea, papers, paperSizes } from '../../../src/booklet/page/paper'
import {
  bestTiling,
  cut,
  sheetLetter,
  tile,
  type TiledChart,
} from '../../../src/booklet/chart/tiling'

const noCrosses = () => 0
const widest = 8

/** A chart with stitches at these columns, each standing on columns `from`..`to`. */
const chart = fc
  .record({
    columns: fc.integer({ min: 1, max: 200 }),
    rows: fc.integer({ min: 1, max: 600 }),
    every: fc.constantFrom(0, 5, 8),
    stitches: fc.array(fc.tuple(fc.nat(199), fc.integer({ min: 2, max: widest })), {
      maxLength: 60,
    }),
  })
  .map(({ stitches, ...rest }): TiledChart & { stitches: [number, number][] } => ({
    ...rest,
    stitches: stitches.filter(([from, width]) => from + width <= rest.columns),
    reach: (column) =>
      Math.max(
        0,
        ...stitches
          .filter(([from, width]) => column > from && column < from + width)
          .map(([from]) => column - from),
      ),
  }))
const paper = fc.constantFrom(...paperSizes).map((size) => liveArea(papers[size]))
const cell = fc.record({
  width: fc.double({ min: 2.5, max: 11, noNaN: true }),
  height: fc.double({ min: 2.5, max: 11, noNaN: true }),
})

describe('a chart on several sheets', () => {
  test('every cell stands on exactly one sheet, or on two where that is told', () => {
    fc.assert(
      fc.property(chart, cell, paper, (it, size, room) => {
        const { sheets, shared } = tile(it, size, room)
        const seen = new Uint8Array(it.columns * it.rows)
        for (const { rows, columns } of sheets)
          for (let row = rows.from; row <= rows.to; row++)
            for (let column = columns.from; column <= columns.to; column++)
              seen[row * it.columns + column] = (seen[row * it.columns + column] ?? 0) + 1
        const isShared = (column: number) =>
          shared.some(({ from, to }) => column >= from && column <= to)
        expect(seen.every((times, i) => times === (isShared(i % it.columns) ? 2 : 1))).toBe(true)
      }),
      { numRuns: 60 },
    )
  })

  test('sheets stand in working order, each row whole on one band of sheets', () => {
    fc.assert(
      fc.property(chart, cell, paper, (it, size, room) => {
        const { sheets, across, up } = tile(it, size, room)
        expect(sheets).toHaveLength(across * up)
        sheets.forEach((sheet, i) => {
          expect(sheet.letter).toBe(sheetLetter(i))
          const last = sheets[i - 1]
          if (!last) return expect([sheet.rows.from, sheet.columns.from]).toEqual([0, 0])
          if (sheet.up === last.up) {
            expect(sheet.rows).toEqual(last.rows)
            const next = last.columns.to + 1
            expect(sheet.columns.from).toBe(next - it.reach(next))
          } else {
            expect(sheet.rows.from).toBe(last.rows.to + 1)
            expect(sheet.columns.from).toBe(0)
          }
        })
        expect(sheets.at(-1)).toMatchObject({
          rows: { to: it.rows - 1 },
          columns: { to: it.columns - 1 },
        })
      }),
    )
  })

  test('no sheet is wider or higher than the room on the paper', () => {
    fc.assert(
      fc.property(chart, cell, paper, (it, size, room) => {
        for (const { rows, columns } of tile(it, size, room).sheets) {
          expect((rows.to - rows.from + 1) * size.height).toBeLessThanOrEqual(room.height + 1e-6)
          expect((columns.to - columns.from + 1) * size.width).toBeLessThanOrEqual(
            room.width + 1e-6,
          )
        }
      }),
    )
  })

  test('every stitch is whole on some sheet', () => {
    fc.assert(
      fc.property(chart, cell, paper, (it, size, room) => {
        const { sheets } = tile(it, size, room)
        for (const [from, width] of it.stitches)
          expect(
            sheets.some(({ columns }) => columns.from <= from && columns.to >= from + width - 1),
          ).toBe(true)
      }),
    )
  })

  test("columns are shared only where every line up to the paper's edge goes through a stitch", () => {
    fc.assert(
      fc.property(chart, cell, paper, (it, size, room) => {
        const { sheets, shared } = tile(it, size, room)
        const most = Math.floor(room.width / size.width + 1e-9)
        for (const { to } of shared) {
          const from = sheets.find(({ columns }) => columns.to === to)?.columns.from ?? NaN
          for (let line = from + most; line >= from + most - widest; line--)
            expect(it.reach(line)).toBeGreaterThan(0)
        }
      }),
    )
  })
})

describe('cutting', () => {
  test('makes runs of about the same length', () => {
    expect(cut(100, 40, 0)).toEqual([
      { from: 0, to: 33 },
      { from: 34, to: 66 },
      { from: 67, to: 99 },
    ])
  })

  test('cuts at heavier lines where that costs no sheet', () => {
    expect(cut(100, 40, 5)).toEqual([
      { from: 0, to: 34 },
      { from: 35, to: 69 },
      { from: 70, to: 99 },
    ])
  })

  test('leaves out no sheet of the fewest that do', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 600 }),
        fc.integer({ min: 10, max: 90 }),
        fc.constantFrom(0, 5),
        (count, most, every) => {
          expect(cut(count, most, every)).toHaveLength(Math.ceil(count / most))
        },
      ),
    )
  })

  test('goes round a stitch', () => {
    const reach = (column: number) => (column > 18 && column < 24 ? column - 18 : 0)
    expect(cut(40, 22, 0, reach)[0]).toEqual({ from: 0, to: 17 })
  })
})

test('the size with the fewest sheets is taken, and of those the largest', () => {
  const it = { columns: 36, rows: 24, every: 5, reach: noCrosses }
  const room = { width: 160, height: 230 }
  const tiling = bestTiling(it, { least: 3.8, most: 6.5 }, (width) => ({
    cell: { width, height: 0.75 * width },
    room,
  }))
  expect(tiling.sheets).toHaveLength(1)
  expect(36 * tiling.cell.width).toBeLessThanOrEqual(room.width)
  expect(36 * (tiling.cell.width + 0.1)).toBeGreaterThan(room.width)
})

test('sheets are lettered as columns of a spreadsheet are', () => {
  expect([0, 1, 25, 26, 27, 51, 52, 701, 702].map(sheetLetter)).toEqual(
    'A B Z AA AB AZ BA ZZ AAA'.split(' '),
  )
})
