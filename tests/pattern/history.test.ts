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
