import { withChart } from '../../src/pattern/edits/chart'
import { describe, expect, it } from 'vitest'
import { flatChart, flatGeometry } from '../../src/drawing/flat'
import type { FindingMark } from '../../src/drawing/marks'
import { ringChart } from '../../src/drawing/ring'
import type { Item, Scene } from '../../src/drawing/scene'
import { smallestReadable } from '../../src/drawing/sizes'
import { newPattern, type Row, type Run } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { ribCuff, row, turnedHeel } from './pieces'

const layer = ({ layers }: Scene, key: string): readonly Item[] =>
  layers.find((found) => found.key === key)?.items ?? []
const texts = (items: readonly Item[]) =>
  items.flatMap((item) => (item.kind === 'text' ? [item] : []))
const paths = (items: readonly Item[]) =>
  items.flatMap((item) => (item.kind === 'path' ? [item] : []))

describe('numbers', () => {
  it('stand on the side where their row starts', () => {
    const work = workPattern(turnedHeel())
    const { left, right, bottom } = flatGeometry(work)
    const rows = texts(layer(flatChart(work), 'numbers')).filter(({ y }) => y < bottom)
    const sides = rows.map(
      ({ x, text }) => `${text} ${x > right ? 'right' : x < left ? 'left' : ''}`,
    )
    // Worked clockwise, so row 1 starts at the right; after each turn the other side.
    expect(sides).toEqual([
      '1 right',
      '2 right',
      '3 left',
      '4 right',
      '5 left',
      '6 right',
      '7 left',
      '8 right',
    ])
  })

  it('are the rounds in which the rows are first worked', () => {
    const work = workPattern(ribCuff())
    const drawn = texts(layer(ringChart(work), 'numbers')).map(({ text }) => text)
    expect(drawn.slice(0, 8)).toEqual(['1', '2', '3', '4', '5', '14', '15', '16'])
    expect(drawn.slice(8)).toEqual(Array.from({ length: 33 }, (_, peg) => String(peg + 1)))
  })

  it('are written every few cells where cells are small', () => {
    const work = workPattern(newPattern(40, 40))
    const drawn = texts(layer(flatChart(work, { cell: 1 }), 'numbers')).map(({ text }) => text)
    expect(drawn).toEqual([
      ...['1', '5', '10', '15', '20', '25', '30', '35', '40'],
      ...['1', '5', '10', '15', '20', '25', '30', '35', '40'],
    ])
  })

  it('are never smaller than can be read', () => {
    for (const cell of [0.5, 1, 3, 8])
      for (const { size } of texts(layer(flatChart(workPattern(ribCuff()), { cell }), 'numbers')))
        expect(size).toBeGreaterThanOrEqual(smallestReadable.text)
  })
})

describe('boxes', () => {
  it('say how many times a band and a repeat are worked in all', () => {
    const work = workPattern(ribCuff())
    expect(texts(layer(flatChart(work), 'boxes')).map(({ text, ink }) => [text, ink])).toEqual([
      ['\u00d7 3', 'repeat'],
      ['\u00d7 3', 'band'],
    ])
  })

  it('stand round every copy when all pegs are shown', () => {
    const work = workPattern(ribCuff())
    const [box] = paths(layer(flatChart(work, { columns: 'loom' }), 'boxes')).filter(
      ({ ink }) => ink === 'repeat',
    )
    expect(box?.d.match(/Z/g)).toHaveLength(3)
  })
})

describe('pegs that a row does not work', () => {
  /** A repeat of 8, four times round, as at a thumb: row 2 works 26 of the 32 pegs. */
  function thumb(run: Run | null = { from: 0, to: 25 }) {
    const pattern = newPattern(32, 3)
    const plain = row(Array.from({ length: 8 }, () => 'k'))
    const rows = [plain, { ...plain, run }, plain]
    return workPattern(
      withChart(pattern, { columns: 8, repeat: { from: 0, to: 7 }, bands: [], rows }),
    )
  }
  const greyOf = (scene: Scene) =>
    scene.layers
      .filter(({ key }) => key.startsWith('row-'))
      .map(({ items }) => paths(items).filter(({ ink }) => ink === 'unworked').length)

  it('are grey in rows and ring where only some copies of the repeat leave them out', () => {
    expect(greyOf(ringChart(thumb()))).toEqual([0, 1, 0])
    expect(greyOf(flatChart(thumb()))).toEqual([0, 1, 0])
    const { slots } = flatGeometry(thumb())
    expect(slots.count).toBe(32)
    const covers = slots.covers(thumb().chart.rows[1] as Row)
    expect(slots.pegOf.filter((_, slot) => !covers(slot)).map((peg) => peg + 1)).toEqual([
      27, 28, 29, 30, 31, 32,
    ])
  })

  it('stand in one copy of the repeat where every copy is worked alike', () => {
    for (const run of [null, { from: 0, to: 31 }])
      expect(flatGeometry(thumb(run)).slots.count).toBe(8)
  })

  it('are found when a drawing is made from the one before', () => {
    const before = flatChart(thumb(null))
    const again = flatChart(thumb(), {}, before)
    expect(greyOf(again)).toEqual([0, 1, 0])
    expect(again.geometry.slots.count).toBe(32)
  })
})

describe('findings', () => {
  const marks: readonly FindingMark[] = [
    { row: 2, pegs: { from: 1, to: 4 }, severity: 'error' },
    { row: 3, pegs: { from: 3, to: 3 }, severity: 'warning' },
    { row: 4, pegs: null, severity: 'hint' },
    { row: 4, pegs: { from: 0, to: 0 }, severity: 'warning' },
  ]
  const work = workPattern(ribCuff())

  it.each([
    ['flat', flatChart(work, { marks })],
    ['ring', ringChart(work, { marks })],
  ])('differ by shape as well as by ink (%s)', (_, scene) => {
    const drawn = paths(layer(scene, 'findings'))
    const frames = drawn.slice(0, 3).map(({ ink, dash, stroke }) => [ink, dash ?? 'solid', stroke])
    expect(new Set(frames.map(([, dash]) => dash)).size).toBe(3)
    const signs = drawn.slice(3)
    // The worst finding of a row names its sign in the margin: row 5 has a hint and a warning.
    expect(signs.map(({ ink, fill, d }) => [ink, fill, d.match(/Z/g)?.length])).toEqual([
      ['warning', false, 2],
      ['error', true, 1],
    ])
  })

  it('keep their layer while they stay the same', () => {
    const find = (scene: Scene) => scene.layers.find(({ key }) => key === 'findings')
    const before = flatChart(work, { marks })
    expect(find(flatChart(work, { marks: structuredClone(marks) }, before))).toBe(find(before))
  })
})

describe('titles', () => {
  it('tell in a sentence what is shown', () => {
    expect(flatChart(workPattern(ribCuff())).title).toBe(
      'Row chart of Millrace cuff: 11 columns on 33 pegs, the repeat 3 times round, 8 rounds; peg 1 at the right, round 1 runs right to left.',
    )
  })
})
