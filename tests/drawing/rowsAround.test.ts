import { describe, expect, test } from 'vitest'
import { rowsAround, slotsAround } from '../../src/drawing/rowsAround'
import { flatChart } from '../../src/drawing/flat'
import { workPiece } from '../../src/pattern/workPiece'
import { band, chartOf, keeperSock } from '../words/piece/pieces'

const chart = { ...chartOf('k*5, p', 'k*6', 'p*6'), bands: [{ from: 0, to: 1, times: 3 }] }
const piece = workPiece(band(chart, { pegs: 24 }))
const rows = (pass: number) => {
  const around = rowsAround(piece, 1, pass)
  return around && [around.work.numbers, around.row]
}

describe('a row with its neighbours', () => {
  test('stands between the rows that are worked before and after it, over the ends of a band', () => {
    expect(rows(0)).toEqual([[1, 2], 0])
    expect(rows(2)).toEqual([[2, 3, 4], 1])
    expect(rows(6)).toEqual([[6, 7], 1])
    expect(rows(7)).toBeNull()
    const around = rowsAround(piece, 1, 2)
    const cells = chart.rows.map(({ cells: row }) => row)
    expect(around?.work.chart.rows.map((row) => cells.indexOf(row.cells))).toEqual([1, 0, 1])
  })

  test('is drawn as the chart is, cell by cell', () => {
    const around = rowsAround(piece, 1, 2)
    if (!around) throw new Error('It has no rows.')
    const { geometry } = flatChart(around.work)
    expect([geometry.firstRow, geometry.lastRow, geometry.slots.count]).toEqual([0, 2, 6])
  })

  test('there is none of edges and plain rows', () => {
    const sock = workPiece(keeperSock())
    const plain = sock.steps.findIndex(({ step }) => step.kind === 'plain')
    expect(rowsAround(sock, 0, 0)).toBeNull()
    expect(rowsAround(sock, plain, 0)).toBeNull()
  })
})

describe('the columns that are shown', () => {
  const work = rowsAround(workPiece(band(chartOf('k*40'), { pegs: 40 })), 1, 0)?.work
  const shown = (peg: number, most = 11) =>
    work ? slotsAround(work, { from: peg, to: peg }, most) : null

  test('hold the pegs that are meant, inside of the chart, and stand still for some of them', () => {
    const windows = new Set<number>()
    for (let peg = 0; peg < 40; peg++) {
      const part = shown(peg)
      expect(part?.from).toBeLessThanOrEqual(peg)
      expect(part?.to).toBeGreaterThanOrEqual(peg)
      expect(part?.from).toBeGreaterThanOrEqual(0)
      expect(part?.to).toBeLessThan(40)
      expect((part?.to ?? 0) - (part?.from ?? 0)).toBe(10)
      windows.add(part?.from ?? -1)
    }
    expect(windows.size).toBeLessThan(10)
  })

  test('are all of a chart that has no more', () => {
    expect(shown(20, 60)).toEqual({ from: 0, to: 39 })
  })
})
