/** What is told of a chart that is not looked at follows every change that it hangs on. */
import { chartOn } from '../../../src/pattern/charts'
import { expect, test } from 'vitest'
import { checkPiece } from '../../../src/checks/piece/check'
import { addChart, addStep, copyStep } from '../../../src/pattern/edits/piece'
import { setLoom, setMaking, setRuleOff, setStyle } from '../../../src/pattern/edits/settings'
import type { Pattern } from '../../../src/pattern/pattern'
import { workPiece, type PieceWork } from '../../../src/pattern/workPiece'
import { patternOf } from '../../pattern/edits/chart-text'
import { copyOf } from '../../cells'

const told = (piece: PieceWork): string[] =>
  checkPiece(piece, 'Chart')
    .filter(({ rule }) => rule === 'piece-chart')
    .map(({ message }) => message)

/** What is told before a change, after it, and of a copy, which shares nothing with what is remembered. */
function toldOf(pattern: Pattern, change: (pattern: Pattern) => Pattern) {
  const work = workPiece(pattern)
  const before = told(work)
  const changed = change(pattern)
  return {
    before,
    after: told(workPiece(changed, work)),
    afresh: told(workPiece(copyOf(changed))),
  }
}

const plain = patternOf('k k k k k k k k k k k k', 'k k k k k k k k k k k k')
const withThumb = (...rows: string[]): Pattern => {
  const added = addChart(plain, 'Thumb', chartOn(patternOf(...rows)))
  return addStep(added, 2, { kind: 'chart', chart: 'Thumb', times: 1 })
}
const miscounted = withThumb('k2tog k k k k k k k k k k k')
const cut = withThumb('k k k k k k k k k k 2/2_LC .')

const changes: readonly (readonly [string, Pattern, (pattern: Pattern) => Pattern])[] = [
  ['pegs of the loom', miscounted, (p) => setLoom(p, { pegs: 16 })],
  ['shape of the loom', cut, (p) => setLoom(p, { shape: 'bar' })],
  ['a rule that is off', miscounted, (p) => setRuleOff(p, 'row-count', true)],
  [
    'loops that the steps before leave',
    miscounted,
    (p) => addStep(p, 2, { kind: 'bind off', how: 'basic', pegs: { from: 0, to: 2 } }),
  ],
]

test.each(changes)('%s', (_, pattern, change) => {
  const { before, after, afresh } = toldOf(pattern, change)
  expect(before).toHaveLength(1)
  expect(after).not.toEqual(before)
  expect(after).toEqual(afresh)
})

test('what changes nothing for the chart leaves what is told as it is', () => {
  for (const pattern of [miscounted, cut])
    for (const change of [
      (p: Pattern) => setMaking(p, { forBaby: true }),
      (p: Pattern) => setStyle(p, { heavyEvery: 4 }),
      (p: Pattern) => copyStep(p, 1),
    ]) {
      const { before, after, afresh } = toldOf(pattern, change)
      expect(after).toEqual(before)
      expect(after).toEqual(afresh)
    }
})

test('of several errors the first is told, and how many more there are', () => {
  const two = withThumb('k2tog k k k k k k k k k k k', 'k k k k k k k k k k 2/2_LC .')
  const [message, ...more] = told(workPiece(two))
  expect(message).toMatch(/^In the chart “Thumb”: .* \(and 1 error more\)$/)
  expect(more).toEqual([])
  expect(told(workPiece(cut))[0]).not.toMatch(/more/)
})
