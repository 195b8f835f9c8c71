import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { setPair } from '../../src/pattern/edits/piece'
import { setText } from '../../src/pattern/edits/settings'
import { setWords } from '../../src/pattern/edits/words'
import { headingsOf } from '../../src/pattern/pegs/headings'
import { pegInSecond, secondByItself, secondOf } from '../../src/pattern/pair'
import type { Pattern } from '../../src/pattern/pattern'
import { chartsInOrder, onChart, chartOn, namedOn } from '../../src/pattern/charts'
import { workPattern } from '../../src/pattern/work'
import type { Stitch } from '../../src/stitches/stitch'
import { arbitraryPattern } from '../arbitraries'
import { patternOf, textOf } from './edits/chart-text'
import { copyOf } from '../cells'

const mirrored = (pattern: Pattern) => setPair(pattern, 'mirrored')

test('the second of a mirrored pair has its crosses and leans on the other side', () => {
  const first = setText(mirrored(patternOf('p 2/2_LC . . . k2tog yo')), { title: 'Cuff' })
  expect(textOf(secondOf(first))).toEqual(['yo ssk 2/2_RC . . . p'])
  expect(secondOf(first).loom).toEqual(first.loom)
  expect(secondOf(first).title).toBe('Cuff, second')
})

test('the second has no own words: they are written from its chart', () => {
  const first = mirrored(setWords(patternOf('k p p'), 'Rnd 1: k1, p2.'))
  expect(namedOn(secondOf(first)).words).toBeNull()
  expect(namedOn(first).words).toBe('Rnd 1: k1, p2.')
})

test('a piece of its own follows no other', () => {
  const first = mirrored(patternOf('p 2/2_LC . . . k2tog yo'))
  expect(secondByItself(first).pair).toBe('none')
  expect(textOf(secondByItself(first))).toEqual(textOf(secondOf(first)))
})

describe('laws', () => {
  const arbitraryFirst = arbitraryPattern({ columns: 12, rows: 6 })

  test('the second of two alike is the first, and so is that of one', () => {
    fc.assert(
      fc.property(arbitraryFirst, fc.constantFrom('alike', 'none'), (pattern, pair) => {
        const first = setPair(pattern, pair)
        expect(secondOf(first)).toBe(first)
      }),
    )
  })

  test('the second of the second is worked as the first, in every section', () => {
    fc.assert(
      fc.property(arbitraryFirst.map(mirrored), (first) => {
        const twice = secondOf(secondOf(first))
        expect(chartsInOrder(twice).map(({ name }) => name)).toEqual(
          chartsInOrder(first).map(({ name }) => name),
        )
        expect(twice.steps).toEqual(first.steps)
        for (const { name } of chartsInOrder(first)) {
          const [one, other] = [onChart(first, name), onChart(twice, name)]
          expect(textOf(other)).toEqual(textOf(one))
          expect(headingsOf(chartOn(other), other.loom)).toEqual(headingsOf(chartOn(one), one.loom))
          expect(chartOn(other).rows.map(({ run, end }) => ({ run, end }))).toEqual(
            chartOn(one).rows.map(({ run, end }) => ({ run, end })),
          )
        }
      }),
    )
  })

  test('on each peg of the second lies the mirror image of what lies there on the first', () => {
    const cellsOnPegs = (pattern: Pattern) =>
      workPattern(pattern).firstRuns.map(({ row }) => {
        const on = new Map<number, { stitch: Stitch; part: number }>()
        for (const { stitch, peg } of row.sites)
          for (let part = 0; part < stitch.width; part++) on.set(peg + part, { stitch, part })
        return on
      })
    let compared = 0
    fc.assert(
      fc.property(arbitraryFirst.map(mirrored), (first) => {
        const second = secondOf(first)
        for (const { name } of chartsInOrder(first)) {
          const others = cellsOnPegs(onChart(second, name))
          cellsOnPegs(onChart(first, name)).forEach((row, index) => {
            expect(others[index]?.size).toBe(row.size)
            const whole = [...row].filter(([, { stitch }]) => !stitch.cut)
            const sameOrder = second.loom.direction !== first.loom.direction
            expect(
              whole.map(([peg]) => {
                const there = others[index]?.get(pegInSecond(first, peg))
                return [there?.stitch.id, there?.part]
              }),
            ).toEqual(
              whole.map(
                ([
                  ,
                  {
                    stitch: { mirror, width },
                    part,
                  },
                ]) => [mirror, sameOrder ? part : width - 1 - part],
              ),
            )
            compared += whole.length
          })
        }
      }),
      { numRuns: 40 },
    )
    expect(compared).toBeGreaterThan(500)
  })

  test('the first is left as it is, and has one second', () => {
    fc.assert(
      fc.property(arbitraryFirst.map(mirrored), (first) => {
        const before = copyOf(first)
        expect(secondOf(first)).toBe(secondOf(first))
        expect(first).toEqual(before)
        expect(chartsInOrder(secondOf(first)).every(({ words }) => words === null)).toBe(true)
      }),
    )
  })
})
