/** The wall beside a thumb opening goes on as high as its rounds, and as wide as the piece. */
import { expect, test } from 'vitest'
import { profileOf } from '../../../src/drawing/piece/profile'
import { checkPiece } from '../../../src/checks/piece/check'
import { addStep } from '../../../src/pattern/edits/piece'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { workPiece } from '../../../src/pattern/workPiece'
import { stitchOf } from '../../../src/stitches/vocabulary'

const knit = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })

function mended(pattern: Pattern): Pattern {
  const fix = checkPiece(workPiece(pattern)).flatMap(({ fixes }) => fixes)[0]
  return fix ? mended(fix.edit(pattern)) : pattern
}

test('35 rounds with an opening are as high as 35 rounds, and no part of a round floats apart', () => {
  const off: Step = { kind: 'bind off', how: 'basic', pegs: { from: 2, to: 7 } }
  const start = [knit(15), off, knit(8)].reduce<Pattern>(
    (piece, step, at) => addStep(piece, 2 + at, step),
    {
      ...newPattern(40, 10),
      gauge: { stitches: 20, rows: 30 },
    },
  )
  const slices = profileOf(workPiece(mended(start)))
  expect(slices.reduce((sum, { height }) => sum + height, 0)).toBeCloseTo((35 * 100) / 30)
  const rows = slices.filter(({ kind, height }) => kind !== 'edge' && height > 0)
  expect(rows.map(({ kind, lower, upper }) => [kind, lower, upper])).toEqual(
    rows.map(() => ['rows', 100, 100]),
  )
})
