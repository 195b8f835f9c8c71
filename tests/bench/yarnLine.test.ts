import { expect, test } from 'vitest'
import { lineSteps } from '../../src/bench/head/yarnLine'
import { addStep } from '../../src/pattern/edits/piece'
import { smallBench } from './render'

/** Cast on, the chart, so many notes, bind off. */
function piece(notes: number) {
  const bench = smallBench()
  for (let note = 0; note < notes; note++)
    bench.apply('Note', (p) => addStep(p, 2, { kind: 'note', text: `Note ${note}` }))
  return bench.piece
}
const told = (notes: number, here: number, room: number) => {
  const { work, lengths } = piece(notes)
  return lineSteps(work, lengths, here, room).map((step) => step.told)
}

test('steps that fit are told whole, with their facts', () => {
  expect(told(0, 1, 900)).toEqual(['all', 'all', 'all'])
})

test('where there is less room the furthest lose their facts first, and then their names', () => {
  expect(told(2, 1, 690)).toEqual(['name', 'all', 'name', 'name', 'name'])
  expect(told(18, 1, 900).slice(-3)).toEqual(['number', 'number', 'number'])
  expect(told(18, 1, 900)[1]).not.toBe('number')
})

test('the step of the place keeps its name, however little room there is', () => {
  expect(told(6, 4, 100)).toEqual(
    Array.from({ length: 9 }, (_, index) => (index === 4 ? 'name' : 'number')),
  )
})
