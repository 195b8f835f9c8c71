/** What the other pegs go on with beside short rows. */
import { describe, expect, test } from 'vitest'
import { chartOn } from '../../../src/pattern/charts'
import { addChart, addStep } from '../../../src/pattern/edits/piece'
import { setRepeat } from '../../../src/pattern/edits/columns'
import { setBand } from '../../../src/pattern/edits/rows'
import { setLoom } from '../../../src/pattern/edits/settings'
import { setEnd, setRun } from '../../../src/pattern/edits/turning'
import { textureBefore } from '../../../src/pattern/generate/before'
import { besides, cutBy, isWhole, roundOfCells } from '../../../src/pattern/generate/round'
import { blankRow } from '../../../src/pattern/pattern'
import { stitchOf } from '../../../src/stitches/vocabulary'
import { cellsFrom, idsIn } from '../../cells'
import { patternOf } from '../edits/chart-text'

const knit = stitchOf('k')
const round = (row: string) => {
  const [first] = chartOn(patternOf(row)).rows
  return roundOfCells(first?.cells ?? [])
}

test('a row is whole where it names no pegs and does not turn', () => {
  const row = blankRow(4, knit)
  expect(isWhole(row)).toBe(true)
  expect(isWhole({ ...row, run: { from: 0, to: 3 } })).toBe(false)
  expect(isWhole({ ...row, end: 'wrap' })).toBe(false)
})

describe('beside a run', () => {
  const whole = { from: 0, to: 7 }
  const beside = (row: string, run = { from: 3, to: 5 }, line = whole) =>
    idsIn(besides(round(row), 8, run, line, knit)).join(' ')

  test('stitches stay on the other pegs, and the run is plain', () => {
    expect(beside('p p p p p p p p')).toBe('p p p k k k p p')
    expect(beside('p p p p p p p p', { from: 3, to: 5 }, { from: 1, to: 6 })).toBe(
      'k p p k k k p k',
    )
    expect(beside('p p p p p p p p', { from: 3, to: 5 }, { from: 4, to: 4 })).toBe(
      'k k k k k k k k',
    )
  })

  test('a cross stays whole, and one that the run cuts becomes plain', () => {
    expect(beside('1/1_LC . p p p p 1/1_RC .')).toBe('1/1 LC  p k k k 1/1 RC ')
    expect(beside('p p 1/1_LC . p 1/1_RC . p')).toBe('p p k k k k k p')
  })

  test('decreases stay where as many loops are made as taken, and else all become plain', () => {
    expect(beside('k2tog yo p p p p ssk yo')).toBe('k2tog yo p k k k ssk yo')
    expect(beside('k2tog p p p p yo ssk yo')).toBe('k p p k k k ssk yo')
  })
})

test('crosses that lie partly on a run are those that its ends cut', () => {
  const cut = (row: string) => cutBy(round(row), { from: 2, to: 5 }).map(({ peg }) => peg)
  expect(cut('p 1/1_LC . p p 1/1_RC . p')).toEqual([1, 5])
  expect(cut('1/1_LC . 1/1_LC . 1/1_RC . 1/1_RC .')).toEqual([])
  expect(cut('p p p p p p p p')).toEqual([])
})

describe('the texture before a heel', () => {
  const rib = setBand(patternOf('k p k p', 'p k p k', 'k k k k'), 0, 1, 2)
  const heel = {
    ...chartOn(rib),
    bands: [],
    rows: [{ ...blankRow(4, knit), run: { from: 0, to: 1 } }],
  }
  const chart = (name: string) => ({ kind: 'chart', chart: name, times: 1 }) as const
  const piece = addStep(addChart(rib, 'Heel', heel), 2, chart('Heel'))
  const cells = (pattern = piece, at = 3) =>
    textureBefore(pattern, at)?.beside.map((row) => idsIn(row).join(' '))

  test('is that of the nearest chart over all the pegs: its first two rounds, as they are worked', () => {
    expect(cells()).toEqual(['k p k p', 'p k p k'])
    const before = textureBefore(piece, 3)
    expect([before?.chart, before?.all.length]).toEqual(['Chart', 5])
    const one = patternOf('k p k p')
    expect(cells(one, 2)).toEqual(['k p k p', 'k p k p'])
  })

  test('is seen through notes, and past another heel; not through other steps', () => {
    expect(cells(addStep(piece, 2, { kind: 'note', text: 'Count.' }), 4)).toEqual(cells())
    const turned = setEnd(rib, 0, 'wrap')
    expect(textureBefore(turned, 2)).toBeNull()
    const plain = { kind: 'plain', stitch: knit, amount: { rows: 1 } } as const
    expect(textureBefore(addStep(piece, 2, plain), 4)).toBeNull()
    expect(textureBefore(addStep(piece, 2, chart('Crown')), 3)).toBeNull()
    expect(textureBefore(piece, 1)).toBeNull()
    expect(textureBefore(piece, 0)).toBeNull()
  })

  test('goes over the pegs copy by copy, and is none on a loom that it does not fill', () => {
    const repeated = setRepeat(rib, { from: 0, to: 3 })
    expect(cells(setLoom(repeated, { pegs: 8 }), 2)?.[0]).toBe('k p k p k p k p')
    expect(cells(setLoom(repeated, { pegs: 9 }), 2)).toBeUndefined()
    expect(cells(setRun(repeated, 0, { from: 0, to: 1 }), 2)).toBeUndefined()
  })
})

test('cells that go on with a cross are laid as one stitch', () => {
  expect(roundOfCells(cellsFrom(['1/1 LC', '', 'k'])).map(({ peg }) => peg)).toEqual([0, 2])
})
