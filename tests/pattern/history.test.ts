import fc from 'fast-check'
import { expect, test } from 'vitest'
import { paint } from '../../src/pattern/edits/paint'
import { add, begin, look, redo, undo, type History } from '../../src/pattern/history'
import { newPattern } from '../../src/pattern/pattern'
import { stitchOf } from '../../src/stitches/vocabulary'

const spot = { row: 0, peg: 0 }
const start = begin(newPattern(8, 2))

const purl = (history: History, column: number, gesture: string | null = null): History =>
  add(history, {
    pattern: paint(history.present.pattern, stitchOf('p'), 0, column),
    from: history.on,
    on: history.on,
    label: `Purl ${column}`,
    spot,
    gesture,
  })

test('undo gives back the very pattern, redo the later one', () => {
  const one = purl(start, 1)
  const two = purl(one, 2)
  expect(undo(two).present.pattern).toBe(one.present.pattern)
  expect(redo(undo(two)).present.pattern).toBe(two.present.pattern)
})

test('a gesture is one step however many edits it has', () => {
  const drag = [1, 2, 3].reduce((history, column) => purl(history, column, 'drag'), start)
  expect(drag.past).toHaveLength(1)
  expect(undo(drag).present.pattern).toBe(start.present.pattern)
})

test('two gestures are two steps', () => {
  expect(purl(purl(start, 1, 'a'), 2, 'b').past).toHaveLength(2)
})

test('undo in the middle of a gesture begins a new step for what follows', () => {
  const drag = purl(purl(start, 1, 'drag'), 2, 'drag')
  const after = purl(undo(drag), 3, 'drag')
  expect(undo(after).present.pattern).toBe(start.present.pattern)
})

test('an edit that changes nothing makes no step', () => {
  const one = purl(start, 1)
  expect(purl(one, 1)).toBe(one)
})

test('an edit after undo forgets what was undone', () => {
  expect(purl(undo(purl(start, 1)), 2).future).toEqual([])
})

test('law: after any edits, undoing them all gives the first pattern back, and redoing the last', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(7), { maxLength: 30 }), (columns) => {
      const end = columns.reduce((history, column) => purl(history, column), start)
      let back = end
      while (back.past.length > 0) back = undo(back)
      expect(back.present.pattern).toBe(start.present.pattern)
      let on = back
      while (on.future.length > 0) on = redo(on)
      expect(on.present.pattern).toBe(end.present.pattern)
    }),
  )
})

test('a gesture that is named like the one undone to is a new step', () => {
  const two = purl(purl(start, 1, 'drag'), 2, 'other')
  const after = purl(undo(two), 3, 'drag')
  expect(after.past).toHaveLength(2)
  expect(undo(after).present.pattern).toBe(undo(two).present.pattern)
})

test('after redo, and after looking elsewhere, a gesture that is named like the last is a new step', () => {
  const drag = purl(purl(start, 1, 'drag'), 2, 'drag')
  const again = purl(redo(undo(drag)), 3, 'drag')
  expect(undo(again).present.pattern).toBe(drag.present.pattern)
  const elsewhere = purl(look(drag, 'Chart'), 3, 'drag')
  expect(elsewhere.past).toHaveLength(drag.past.length + 1)
})

test('the chart that is looked at goes with what is taken back and done again', () => {
  const opened = begin(newPattern(8, 2), 'Open a file')
  expect([opened.on, opened.present.from, opened.present.on]).toEqual(['Chart', 'Chart', 'Chart'])
  expect([opened.present.label, opened.present.spot]).toEqual(['Open a file', spot])
  const there = look(opened, 'Thumb')
  expect([there.on, there.present.on, there.past]).toEqual(['Thumb', 'Chart', []])
  const edited = add(there, { ...purl(there, 1).present, from: 'Thumb', on: 'Cuff' })
  expect(edited.on).toBe('Cuff')
  const back = undo(edited)
  expect([back.on, back.future.length, back.past.length]).toEqual(['Thumb', 1, 0])
  expect(redo(look(back, 'Chart')).on).toBe('Cuff')
})

test('a gesture that goes on is taken back to the chart in which it began', () => {
  const first = { ...purl(start, 1, 'drag').present, from: 'Chart', on: 'Thumb' }
  const drag = add(start, first)
  const on = add(drag, { ...purl(drag, 2, 'drag').present, from: 'Thumb', on: 'Thumb' })
  expect(undo(on).on).toBe('Chart')
})

test('nothing is before the first version, and nothing after the last', () => {
  expect(undo(start)).toBe(start)
  expect(redo(start)).toBe(start)
})
