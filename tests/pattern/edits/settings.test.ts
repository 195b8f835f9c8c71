import { describe, expect, test } from 'vitest'
import {
  setAside,
  setChecks,
  setGauge,
  setLoom,
  setMaking,
  setRuleOff,
  setStyle,
  setText,
} from '../../../src/pattern/edits/settings'
import { addChart } from '../../../src/pattern/edits/piece'
import { setReadAs, setWords } from '../../../src/pattern/edits/words'
import { shortRowChart } from '../../../src/pattern/generate/shortRows'
import { usualHeel } from '../../../src/pattern/generate/wish'
import { chartOn, findChart, namedOn, onChart } from '../../../src/pattern/charts'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'

const pattern = newPattern(24, 2)
const changed = (after: Pattern, before = pattern): string[] =>
  Object.keys(before).filter((key) => after[key as keyof Pattern] !== before[key as keyof Pattern])

describe('each setting changes what it names and nothing else', () => {
  test.each<[name: string, after: Pattern, part: keyof Pattern, is: object | string]>([
    ['title', setText(pattern, { title: 'Sea hat' }), 'title', 'Sea hat'],
    ['notes', setText(pattern, { notes: 'For gales.' }), 'notes', 'For gales.'],
    ['gauge', setGauge(pattern, { stitches: 18, rows: 25 }), 'gauge', { stitches: 18, rows: 25 }],
    [
      'making',
      setMaking(pattern, { forBaby: true }),
      'making',
      { ...pattern.making, forBaby: true },
    ],
    ['style', setStyle(pattern, { heavyEvery: 4 }), 'style', { ...pattern.style, heavyEvery: 4 }],
    [
      'checks',
      setChecks(pattern, { longestFloat: 5 }),
      'checks',
      { ...pattern.checks, longestFloat: 5 },
    ],
    ['reading', setReadAs(pattern, { size: 2 }), 'readAs', { ...pattern.readAs, size: 2 }],
  ])('%s', (_, after, part, is) => {
    expect(changed(after)).toEqual([part])
    expect(after[part]).toEqual(is)
  })
})

describe('the loom', () => {
  test.each([
    [2, 3],
    [3, 3],
    [30.4, 30],
    [400, 400],
    [401, 400],
    [NaN, 3],
  ])('of %d pegs is one of %i', (wanted, pegs) => {
    expect(setLoom(pattern, { pegs: wanted }).loom).toEqual({ ...pattern.loom, pegs })
  })

  test.each([
    [2, 3],
    [4.8, 4.8],
    [41, 40],
    [NaN, 3],
  ])('of pegs %d mm apart is one of %d mm', (wanted, pitch) => {
    expect(setLoom(pattern, { pitch: wanted }).loom).toEqual({ ...pattern.loom, pitch })
  })

  const heel = shortRowChart(pattern.loom, usualHeel(pattern.loom))
  if (!heel.ok) throw new Error(heel.message)
  const heeled = addChart(pattern, 'Heel', heel.chart, usualHeel(pattern.loom))
  const heelOf = (made: Pattern) => findChart(made, 'Heel')?.chart

  test('of other pegs has its heel made for it, and rows of the designer as they were', () => {
    const larger = setLoom(heeled, { pegs: 30 })
    expect(heelOf(larger)?.columns).toBe(30)
    expect(larger.charts[0]).toBe(heeled.charts[0])
  })

  test('with all its pegs keeps its heel, whichever way it is worked and however far they stand apart', () => {
    for (const change of [{ pitch: 12 }, { direction: 'counterclockwise' }, { pegs: 24 }] as const)
      expect(heelOf(setLoom(heeled, change))).toBe(heel.chart)
    expect(heelOf(setLoom(heeled, { shape: 'bar' }))).not.toBe(heel.chart)
  })
})

test('rules that are off stand in order, each once, and are switched on again', () => {
  const off = (given: Pattern) => given.checks.off
  const two = setRuleOff(setRuleOff(pattern, 'stretch', true), 'float', true)
  expect(off(two)).toEqual(['float', 'stretch'])
  expect(off(setRuleOff(two, 'float', true))).toEqual(['float', 'stretch'])
  expect(off(setRuleOff(two, 'float', false))).toEqual(['stretch'])
  expect(off(setRuleOff(two, 'gauge', false))).toEqual(['float', 'stretch'])
})

test('a finding is set aside in the chart that is worked on, and taken up again', () => {
  const two = addChart(pattern, 'Thumb', chartOn(pattern))
  const set = setAside(onChart(two, 'Thumb'), 'gauge, chart, all', true)
  expect(set.charts.map(({ aside }) => aside)).toEqual([[], ['gauge, chart, all']])
  expect(namedOn(setAside(set, 'gauge, chart, all', false)).aside).toEqual([])
})

test('own words are kept; without them nothing is left of how they were to be read', () => {
  const own = setReadAs(setWords(pattern, 'Rnd 1: k24.'), { needles: true })
  expect(setWords(own, 'Rnd 1: k24.')).toBe(own)
  const other = setWords(own, 'Rnd 1: p24.')
  expect([namedOn(other).words, other.readAs.needles]).toEqual(['Rnd 1: p24.', true])
  const none = setWords(own, null)
  expect([namedOn(none).words, none.readAs]).toEqual([null, { size: 0, needles: false }])
})
