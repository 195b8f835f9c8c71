/** Rows beside a thumb opening that go once round together are one round. */
import { expect, test } from 'vitest'
import { checkPiece } from '../../src/checks/piece/check'
import { addStep } from '../../src/pattern/edits/piece'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import type { Step } from '../../src/pattern/piece'
import { totalsOf } from '../../src/pattern/totals'
import { unitOfPiece } from '../../src/pattern/unit'
import { workPiece } from '../../src/pattern/workPiece'
import { stitchOf } from '../../src/stitches/vocabulary'

const knit = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })

/** On 40 pegs: 25 rounds, pegs 3-8 off, 8 rounds, closed. */
function start(): Pattern {
  const off: Step = { kind: 'bind off', how: 'basic', pegs: { from: 2, to: 7 } }
  return [knit(15), off, knit(8)].reduce(
    (piece, step, at) => addStep(piece, 2 + at, step),
    newPattern(40, 10),
  )
}

/** Takes the first mend for as long as there is one. */
function mended(pattern: Pattern): Pattern {
  const fix = checkPiece(workPiece(pattern)).flatMap(({ fixes }) => fixes)[0]
  return fix ? mended(fix.edit(pattern)) : pattern
}

test('an opening mended by the mends that are offered adds one round below it and one above', () => {
  const work = workPiece(mended(start()))
  expect(work.rows).toBe(37)
  expect(totalsOf(work).whole.rows).toBe(35)
  expect(unitOfPiece(work)).toBe('round')
})

test('rows that turn beside the opening stay rows', () => {
  const steps: Step[] = [
    { kind: 'pegs', run: { from: 8, to: 39 }, toAndFro: true },
    knit(2),
    { kind: 'pegs', run: null, toAndFro: false },
  ]
  const pattern = steps.reduce(
    (piece, step, at) => addStep(piece, 2 + at, step),
    newPattern(40, 10),
  )
  expect(totalsOf(workPiece(pattern)).whole.rows).toBe(12)
  expect(unitOfPiece(workPiece(pattern))).toBe('row')
})
