import { expect, test } from 'vitest'
import { changeStep } from '../../src/pattern/edits/piece'
import type { Step } from '../../src/pattern/piece'
import { newPattern } from '../../src/pattern/pattern'
import { isJoinedAfter, isOneChart, isPlainPiece } from '../../src/pattern/charts'

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
