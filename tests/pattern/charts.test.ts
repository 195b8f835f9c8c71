import { expect, test } from 'vitest'
import { addChart, addStep, changeStep, setPair } from '../../src/pattern/edits/piece'
import { setWords } from '../../src/pattern/edits/words'
import type { Step } from '../../src/pattern/piece'
import { newPattern } from '../../src/pattern/pattern'
import {
  chartOn,
  chartsInOrder,
  editOn,
  findChart,
  isJoinedAfter,
  isOneChart,
  isPlainPiece,
  namedOn,
  onChart,
  sameWords,
  usedCharts,
  withoutOn,
} from '../../src/pattern/charts'

test('a piece of one chart is plain only where it is cast on and bound off as usual', () => {
  const plain = newPattern(12, 2)
  expect(isPlainPiece(plain)).toBe(true)
  const chain = changeStep(plain, 0, { kind: 'cast on', how: 'chain', pegs: null })
  const sewn = changeStep(plain, 2, { kind: 'bind off', how: 'gather', pegs: null })
  for (const other of [chain, sewn]) {
    expect(isOneChart(other)).toBe(true)
    expect(isPlainPiece(other)).toBe(false)
  }
})

test.each([
  ['grafted', { kind: 'bind off', how: 'graft', pegs: null }, 1, true],
  ['bound off with three needles', { kind: 'bind off', how: 'three-needle', pegs: null }, 1, true],
  ['bound off as usual', { kind: 'bind off', how: 'basic', pegs: null }, 1, false],
  ['worked twice', { kind: 'bind off', how: 'graft', pegs: null }, 2, false],
] as const)('a chart that is %s is joined after it or not', (_, end: Step, times, isJoined) => {
  const plain = newPattern(12, 2)
  const [first] = plain.charts
  const toe: Step = { kind: 'chart', chart: first.name, times }
  const note: Step = { kind: 'note', text: 'Turn it inside out.' }
  const cast = plain.steps.slice(0, 1)
  const pieceOf = (...steps: Step[]) => ({ ...plain, steps: [...cast, ...steps] })
  expect(isJoinedAfter(pieceOf(toe, end), first.name)).toBe(isJoined)
  expect(isJoinedAfter(pieceOf(toe, note, end), first.name)).toBe(isJoined)
  expect(isJoinedAfter(pieceOf(toe, end), 'Another')).toBe(false)
  expect(isJoinedAfter(pieceOf(toe, toe, end), first.name)).toBe(false)
})

test('a piece of more than its one chart, worked once on all the pegs, is none of one chart', () => {
  const plain = newPattern(12, 2)
  const pegs = { from: 0, to: 5 }
  expect(isOneChart(plain)).toBe(true)
  const others = [
    addChart(plain, 'Thumb', chartOn(plain)),
    setPair(plain, 'alike'),
    addStep(plain, 1, { kind: 'note', text: 'Mark peg 1.' }),
    changeStep(plain, 0, { kind: 'cast on', how: 'e-wrap', pegs }),
    changeStep(plain, 0, { kind: 'note', text: 'Cast on.' }),
    changeStep(plain, 1, { kind: 'chart', chart: 'Chart', times: 2 }),
    changeStep(plain, 1, { kind: 'chart', chart: 'Thumb', times: 1 }),
    changeStep(plain, 1, { kind: 'note', text: 'Work the chart.' }),
    changeStep(plain, 2, { kind: 'bind off', how: 'basic', pegs }),
    changeStep(plain, 2, { kind: 'note', text: 'Bind off.' }),
  ]
  expect(others.map(isOneChart)).toEqual(others.map(() => false))
  expect(others.map(isPlainPiece)).toEqual(others.map(() => false))
})

test('charts stand in the order in which steps first work them, and those of no step last', () => {
  const plain = newPattern(12, 2)
  const spare = addChart(addChart(plain, 'Spare', chartOn(plain)), 'Cuff', chartOn(plain))
  const cuffed = addStep(spare, 1, { kind: 'chart', chart: 'Cuff', times: 1 })
  const again = addStep(cuffed, 3, { kind: 'chart', chart: 'Cuff', times: 1 })
  expect(chartsInOrder(again).map(({ name }) => name)).toEqual(['Cuff', 'Chart', 'Spare'])
  expect(usedCharts(again).map(({ name }) => name)).toEqual(['Cuff', 'Chart'])
  expect(findChart(again, 'Spare')?.name).toBe('Spare')
  expect(findChart(again, 'Crown')).toBeUndefined()
})

test('the chart worked on is the one that is named, or else the first', () => {
  const two = addChart(newPattern(12, 2), 'Thumb', chartOn(newPattern(12, 3)))
  expect(namedOn(onChart(two, 'Thumb')).name).toBe('Thumb')
  expect(chartOn(onChart(two, 'Thumb')).rows).toHaveLength(3)
  expect(namedOn(onChart(two, 'Crown')).name).toBe('Chart')
  expect(withoutOn(two)).toBe(two)
  expect('on' in withoutOn(onChart(two, 'Thumb'))).toBe(false)
  expect('on' in editOn('Thumb', (sheet) => sheet)(two)).toBe(false)
})

test('own words are the same chart by chart', () => {
  const two = addChart(newPattern(12, 2), 'Thumb', chartOn(newPattern(12, 3)))
  const worded = setWords(two, 'Rnd 1: k12.')
  expect(sameWords(two.charts, two.charts)).toBe(true)
  expect(sameWords(worded.charts, setWords(two, 'Rnd 1: k12.').charts)).toBe(true)
  expect(sameWords(two.charts, worded.charts)).toBe(false)
  expect(sameWords(two.charts, addChart(two, 'Tip', chartOn(two)).charts)).toBe(false)
})
