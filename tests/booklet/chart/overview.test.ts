import { expect, test } from 'vitest'
import { marksScene } from '../../../src/booklet/chart/marks'
import { overviewScene } from '../../../src/booklet/chart/overview'
import { widthOf } from '../../../src/booklet/page/text'
import { bestTiling } from '../../../src/booklet/chart/tiling'

test('letters of many sheets stand inside the sheets they name', () => {
  const chart = { columns: 60, rows: 600, every: 0, reach: () => 0 }
  const tiling = bestTiling(chart, { least: 7, most: 7 }, (width) => ({
    cell: { width, height: 7 },
    room: { width: 21, height: 70 },
  }))
  expect(tiling.sheets.length).toBeGreaterThan(26 * 27)
  for (const peg1AtRight of [false, true]) {
    const { layers } = overviewScene(tiling, { peg1AtRight, letter: 4, terms: 'us' })
    const frames = layers[0]?.items ?? []
    frames.forEach((item, index) => {
      if (item.kind !== 'text') return
      const frame = frames[index - 1]
      const [, left = NaN, across = NaN] =
        /^M(\S+) \S+h(\S+)v/u.exec(frame?.kind === 'path' ? frame.d : '')?.map(Number) ?? []
      expect(widthOf(item.text, item.size, 'bold'), item.text).toBeLessThan(across)
      expect(item.x).toBeCloseTo(left + across / 2, 2)
    })
  }
})

test('letters of the sheets beside a sheet stand inside its edges', () => {
  const run = { from: 0, to: 0 }
  const beside = { letter: 'WWW', rows: run, columns: run, across: 0, up: 0 }
  const { width, layers } = marksScene(
    { width: 50, height: 50 },
    { above: undefined, below: undefined, left: beside, right: beside },
    4,
    'Sheet A',
  )
  const texts = (layers[0]?.items ?? []).flatMap((item) => (item.kind === 'text' ? [item] : []))
  expect(texts).toHaveLength(2)
  for (const { x, text, size } of texts) {
    const half = widthOf(text, size, 'bold') / 2
    expect(x - half).toBeGreaterThanOrEqual(0)
    expect(x + half).toBeLessThanOrEqual(width)
  }
})
