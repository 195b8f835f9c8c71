import { expect, test } from 'vitest'
import { changeStep } from '../../src/pattern/edits/piece'
import { newPattern } from '../../src/pattern/pattern'
import { isOneChart, isPlainPiece } from '../../src/pattern/charts'

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
