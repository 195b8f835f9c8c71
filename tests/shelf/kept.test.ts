/** Files as earlier versions of Pegwright saved them: they open, with all that was in them. */
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { Pattern } from '../../src/pattern/pattern'
import { readFile, writeFile } from '../../src/shelf/format'

function kept(version: number): Pattern {
  const file = readFile(
    readFileSync(new URL(`kept/version${version}.json`, import.meta.url), 'utf8'),
  )
  if (!file.ok) throw new Error(file.message)
  return file.pattern
}

const edges = { castOn: 'e-wrap', bindOff: 'basic' }

test.each([
  [1, null, 0],
  [2, 'Rnd 1: knit.', 1],
])('version %d: one chart, cast on and bound off', (version, words, size) => {
  const pattern = kept(version)
  expect(pattern.charts.map(({ name, aside }) => [name, aside])).toEqual([['Chart', []]])
  expect(pattern.charts[0].words).toBe(words)
  expect(pattern.readAs.size).toBe(size)
  expect([pattern.charts[0].chart.columns, pattern.charts[0].chart.rows.length]).toEqual([18, 11])
  expect(pattern.steps).toEqual([
    { kind: 'cast on', how: edges.castOn, pegs: null },
    { kind: 'chart', chart: 'Chart', times: 1 },
    { kind: 'bind off', how: edges.bindOff, pegs: null },
  ])
})

test('version 3: charts beside the one that lay on the bench, and steps that name them', () => {
  const pattern = kept(3)
  const [cuff, leg] = pattern.charts
  expect(pattern.charts.map(({ name }) => name)).toEqual(['Cuff', 'Leg', 'Heel', 'Foot', 'Toe'])
  expect(cuff.words).toBe('Rnd 1: *k2, p2; rep from * to end.')
  expect(cuff.aside).toEqual(['gauge, chart, all'])
  expect(leg?.words).toBe('Rnds 1-8: as charted.')
  expect(leg?.chart.columns).toBe(24)
  expect(pattern.steps.flatMap((step) => (step.kind === 'chart' ? [step.chart] : []))).toEqual([
    'Cuff',
    'Leg',
    'Heel',
    'Foot',
    'Toe',
  ])
  expect(pattern.pictures).toEqual([{ chart: 'Heel', row: 0, from: 0, to: 3 }])
  expect(pattern.pair).toBe('mirrored')
})

test('version 4: the rows of a heel and a toe are rows of one’s own', () => {
  const pattern = kept(4)
  expect(pattern.charts.map(({ name, wish, chart }) => [name, wish, chart.rows.length])).toEqual([
    ['Cuff', null, 1],
    ['Leg', null, 8],
    ['Heel', null, 34],
    ['Foot', null, 8],
    ['Toe', null, 30],
  ])
  expect(pattern.pair).toBe('mirrored')
})

test.each([1, 2, 3, 4])(
  'version %d: saved again it is a file of today, and the same',
  (version) => {
    const pattern = kept(version)
    expect(readFile(writeFile(pattern))).toEqual({ ok: true, pattern })
  },
)
