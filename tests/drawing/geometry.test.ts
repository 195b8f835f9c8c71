import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flatGeometry } from '../../src/drawing/flat'
import { placeMark, type Geometry } from '../../src/drawing/geometry'
import { ringGeometry } from '../../src/drawing/ring'
import { workPattern, type Work } from '../../src/pattern/work'
import { ribCuff, turnedHeel } from './pieces'
import { arbitraryPiece, arbitraryShare, bothDirections } from './arbitrary'

const layouts: Readonly<Record<string, (work: Work) => Geometry>> = {
  'flat, columns of the chart': (work) => flatGeometry(work),
  'flat, pegs of the loom': (work) => flatGeometry(work, { columns: 'loom' }),
  'ring, cast-on outside': (work) => ringGeometry(work, { castOn: 'outside' }),
  'ring, cast-on inside': (work) => ringGeometry(work, { castOn: 'inside' }),
}

/** +1 or -1: which way round the map from (peg, row) to the page turns at this place. */
function orientation({ point, slots, firstRow, lastRow }: Geometry, across: number, up: number) {
  const u = across * slots.count
  const v = firstRow + up * (lastRow + 1 - firstRow)
  const step = 1e-5
  const [x, y] = point(u, v)
  const [xu, yu] = point(u + step, v)
  const [xv, yv] = point(u, v + step)
  return Math.sign((xu - x) * (yv - y) - (yu - y) * (xv - x))
}

describe('the map from pegs and rows to the page', () => {
  // The right side is shown by every layout, so none may be the mirror image of another; the
  // numbering of the pegs turns with the working direction, the look of the fabric does not.
  it('shows the right side in every layout, for both working directions', () => {
    fc.assert(
      fc.property(arbitraryPiece, arbitraryShare, arbitraryShare, (pattern, across, up) => {
        const signs = bothDirections(pattern).map((piece) => {
          const work = workPattern(piece)
          return Object.values(layouts).map((layout) => orientation(layout(work), across, up))
        })
        // Clockwise, seen from above, is right to left in front of the knitter (common practice):
        // rising pegs go left (-x) and rising rows up (-y), a positive turn on a page with y down.
        expect(signs).toEqual([
          [1, 1, 1, 1],
          [-1, -1, -1, -1],
        ])
      }),
    )
  })

  it.each(Object.entries(layouts))('finds the cell under a point (%s)', (_, layout) => {
    fc.assert(
      fc.property(arbitraryPiece, arbitraryShare, arbitraryShare, (pattern, across, up) => {
        const geometry = layout(workPattern(pattern))
        const { slots, firstRow, lastRow } = geometry
        const slot = Math.floor(across * slots.count)
        const row = firstRow + Math.floor(up * (lastRow + 1 - firstRow))
        const peg = slots.pegOf[slot] ?? -1
        fc.pre(peg >= 0)
        const [x, y] = geometry.centre(row, peg) ?? [NaN, NaN]
        expect(geometry.at(x, y)).toEqual({ row, peg, column: slots.columnOf[slot] })
        const box = geometry.cellBox(row, peg)
        expect(x).toBeGreaterThan(box?.x ?? NaN)
        expect(x).toBeLessThan((box?.x ?? NaN) + (box?.width ?? NaN))
        expect(y).toBeGreaterThan(box?.y ?? NaN)
        expect(y).toBeLessThan((box?.y ?? NaN) + (box?.height ?? NaN))
      }),
    )
  })

  it.each(Object.entries(layouts))('keeps every cell on the page (%s)', (_, layout) => {
    fc.assert(
      fc.property(arbitraryPiece, (pattern) => {
        const { slots, firstRow, lastRow, point, width, height } = layout(workPattern(pattern))
        for (const u of [0, 0.3 * slots.count, slots.count])
          for (const v of [firstRow, lastRow + 1]) {
            const [x, y] = point(u, v)
            expect(Math.min(x, y)).toBeGreaterThan(0)
            expect(x).toBeLessThan(width)
            expect(y).toBeLessThan(height)
          }
      }),
    )
  })

  it('names no cell outside the grid', () => {
    const work = workPattern(ribCuff())
    expect(flatGeometry(work).at(0.5, 0.5)).toBeNull()
    const ring = ringGeometry(work)
    expect(ring.at(...ring.centrePoint)).toBeNull()
    expect(
      ring.at(ring.centrePoint[0], ring.centrePoint[1] - (ring.inner + ring.outer) / 2),
    ).toBeNull()
    expect(ring.at(0, 0)).toBeNull()
  })
})

describe('where things stand', () => {
  const flat = (direction: 'clockwise' | 'counterclockwise') =>
    flatGeometry(workPattern(ribCuff(direction)))

  it('puts peg 1 at the right of a loom worked clockwise, row 1 at the bottom', () => {
    for (const [direction, side] of [
      ['clockwise', 1],
      ['counterclockwise', -1],
    ] as const) {
      const { centre } = flat(direction)
      const [first, last] = [centre(0, 0) ?? [0, 0], centre(7, 10) ?? [0, 0]]
      expect(Math.sign(first[0] - last[0])).toBe(side)
      expect(first[1]).toBeGreaterThan(last[1])
    }
  })

  it('shows every copy of the repeat in the same columns', () => {
    const { centre, at } = flat('clockwise')
    expect(centre(2, 14)).toEqual(centre(2, 3))
    const [x, y] = centre(2, 25) ?? [0, 0]
    expect(at(x, y)).toEqual({ row: 2, peg: 3, column: 3 })
  })

  it('takes the shape of a cell from the gauge', () => {
    const { smallest } = flat('clockwise')
    expect(smallest.width / smallest.height).toBeCloseTo(28 / 22)
    const square = { ...ribCuff(), gauge: null }
    expect(flatGeometry(workPattern(square)).smallest).toEqual({ width: 4, height: 4 })
  })

  it('gives corners from the bottom left, as the right side is seen', () => {
    const [bottomLeft, bottomRight, topRight, topLeft] = flat('clockwise').corners(2, 3) ?? []
    expect(bottomLeft?.[0]).toBeLessThan(bottomRight?.[0] ?? NaN)
    expect(topLeft?.[0]).toBeLessThan(topRight?.[0] ?? NaN)
    expect(bottomLeft?.[1]).toBeGreaterThan(topLeft?.[1] ?? NaN)
  })

  it('draws only the rows and columns of a sheet', () => {
    const work = workPattern(turnedHeel())
    const sheet = flatGeometry(work, { rows: { from: 2, to: 4 }, slots: { from: 5, to: 9 } })
    expect(sheet.slots.count).toBe(5)
    expect(sheet.centre(5, 6)).toBeNull()
    expect(sheet.centre(3, 4)).toBeNull()
    const [x, y] = sheet.centre(2, 9) ?? [0, 0]
    expect(sheet.at(x, y)).toEqual({ row: 2, peg: 9, column: 9 })
    expect(y).toBeCloseTo(sheet.bottom - sheet.smallest.height / 2)
  })

  it('keeps the innermost cells of a ring as wide as was asked', () => {
    fc.assert(
      fc.property(arbitraryPiece, fc.double({ min: 1, max: 9, noNaN: true }), (pattern, least) => {
        const { smallest } = ringGeometry(workPattern(pattern), { innermost: least })
        expect(smallest.width).toBeGreaterThanOrEqual(least - 1e-6)
      }),
    )
  })

  it('marks the current place with a frame round its cells', () => {
    const geometry = flat('clockwise')
    const mark = placeMark(geometry, 2, 1, 4)
    expect(mark).toMatchObject({ ink: 'place', d: geometry.outline(1, 4, 2, 2) })
    expect(placeMark(geometry, 99, 1)).toBeNull()
  })
})
