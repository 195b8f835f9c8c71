import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { setPair } from '../../src/pattern/edits/piece'
import { setText } from '../../src/pattern/edits/settings'
import { setWords } from '../../src/pattern/edits/words'
import { headingsOf } from '../../src/pattern/headings'
import { secondByItself, secondOf } from '../../src/pattern/pair'
import type { Pattern } from '../../src/pattern/pattern'
import { sectionsOf, withOnBench } from '../../src/pattern/sections'
import { arbitraryPattern } from '../arbitraries'
import { patternOf, textOf } from './edits/chart-text'

const mirrored = (pattern: Pattern) => setPair(pattern, 'mirrored')

test('the second of a mirrored pair has its crosses and leans on the other side', () => {
  const first = setText(mirrored(patternOf('p 2/2_LC . . . k2tog yo')), { title: 'Cuff' })
  expect(textOf(secondOf(first))).toEqual(['yo ssk 2/2_RC . . . p'])
  expect(secondOf(first).loom).toEqual(first.loom)
  expect(secondOf(first).title).toBe('Cuff, second')
})

test('the second has no own words: they are written from its chart', () => {
  const first = mirrored(setWords(patternOf('k p p'), 'Rnd 1: k1, p2.'))
  expect(secondOf(first).words).toBeNull()
  expect(first.words).toBe('Rnd 1: k1, p2.')
})

test('a piece of its own follows no other', () => {
  const first = mirrored(patternOf('p 2/2_LC . . . k2tog yo'))
  expect(secondByItself(first).piece.pair).toBe('none')
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
        expect(sectionsOf(twice).map(({ name }) => name)).toEqual(
          sectionsOf(first).map(({ name }) => name),
        )
        expect(twice.piece.steps).toEqual(first.piece.steps)
        for (const { name } of sectionsOf(first)) {
          const [one, other] = [withOnBench(first, name), withOnBench(twice, name)]
          expect(textOf(other)).toEqual(textOf(one))
          expect(headingsOf(other)).toEqual(headingsOf(one))
          expect(other.chart.rows.map(({ run, end }) => ({ run, end }))).toEqual(
            one.chart.rows.map(({ run, end }) => ({ run, end })),
          )
        }
      }),
    )
  })

  test('the first is left as it is, and has one second', () => {
    fc.assert(
      fc.property(arbitraryFirst.map(mirrored), (first) => {
        const before = structuredClone(first)
        expect(secondOf(first)).toBe(secondOf(first))
        expect(first).toEqual(before)
        expect(sectionsOf(secondOf(first)).every(({ words }) => words === null)).toBe(true)
      }),
    )
  })
})
