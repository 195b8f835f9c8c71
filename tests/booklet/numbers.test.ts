import { describe, expect, test } from 'vitest'
import { starterCharts } from '../../src/shelf/seeds'
import { layOut } from './read'

/** Sizes of the numbers beside the row charts, in points as printed. */
const numbersOf = (id: string, largePrint: boolean) =>
  layOut(starterCharts.find((chart) => chart.id === id)?.pattern() as never, {
    largePrint,
    chart: 'flat',
  }).pages.flatMap(({ pictures }) =>
    pictures.flatMap(({ scene, scale }) =>
      scene.layers
        .filter(({ key }) => key === 'numbers')
        .map(({ items }) =>
          items.flatMap((item) =>
            item.kind === 'text' ? [{ ...item, points: (item.size * scale * 72) / 25.4 }] : [],
          ),
        ),
    ),
  )

describe.each([
  ['shingle-mitt', false, 6.7],
  ['shingle-mitt', true, 13.9],
  ['fog-watch-socks', true, 13.9],
] as const)('numbers beside the charts of %s, large print %s', (id, largePrint, least) => {
  const charts = numbersOf(id, largePrint)

  test(`are ${least} points high or more`, () => {
    expect(charts.length).toBeGreaterThan(2)
    for (const numbers of charts)
      for (const { points } of numbers) expect(points).toBeGreaterThanOrEqual(least)
  })

  test('of neighbours do not run together', () => {
    for (const numbers of charts) {
      const pegs = numbers.filter(({ anchor, y }) => anchor === 'middle' && y === numbers.at(-1)?.y)
      const sorted = pegs.toSorted((a, b) => a.x - b.x)
      sorted.slice(1).forEach((next, at) => {
        const before = sorted[at] as (typeof sorted)[number]
        const wide = (0.5 * (next.text.length + before.text.length) * next.size) / 2
        expect(next.x - before.x).toBeGreaterThan(wide)
      })
    }
  })
})

test('one row over all pegs of the loom has not a number for each peg', () => {
  const [, thumb] = numbersOf('shingle-mitt', false)
  const pegs = thumb?.filter(({ anchor }) => anchor === 'middle').map(({ text }) => text)
  expect(pegs).toEqual(['1', '5', '10', '15', '20', '25', '30'])
})
