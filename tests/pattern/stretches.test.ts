/** What is walked move by move, with the names that rows go by. */
import { describe, expect, test } from 'vitest'
import { setBand } from '../../src/pattern/edits/rows'
import { setLoom } from '../../src/pattern/edits/settings'
import { habitsOf } from '../../src/pattern/habits'
import type { Pattern } from '../../src/pattern/pattern'
import type { Step } from '../../src/pattern/piece'
import {
  chartStretches,
  momentsOf,
  pieceStretches,
  type Stretch,
} from '../../src/pattern/stretches'
import { workPattern } from '../../src/pattern/work'
import { workPiece } from '../../src/pattern/workPiece'
import { stitchOf } from '../../src/stitches/vocabulary'
import { patternOf } from './edits/chart-text'

const three = setBand(patternOf('k k k k', 'p p p p', 'k p k p'), 0, 1, 2)
const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
const bindOff: Step = { kind: 'bind off', how: 'basic', pegs: null }
const steps: readonly Step[] = [
  castOn,
  { kind: 'chart', chart: 'Chart', times: 2 },
  { kind: 'note', text: 'Turn the loom.' },
  { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 2 } },
  bindOff,
]
const piece: Pattern = { ...three, steps }

const named = ({ kind, step, number, time, times, chart, isRound }: Stretch) =>
  [kind, step, number, time, times, chart?.row ?? null, isRound] as const

test('rows of a chart by itself are numbered as a row counter counts', () => {
  const stretches = chartStretches(workPattern(three))
  expect(stretches.map(named)).toEqual([
    ['row', null, 1, 0, 1, 0, true],
    ['row', null, 2, 0, 1, 1, true],
    ['row', null, 3, 0, 1, 0, true],
    ['row', null, 4, 0, 1, 1, true],
    ['row', null, 5, 0, 1, 2, true],
  ])
  expect(stretches[0]?.chart?.chart).toBe('Chart')
  expect(chartStretches(workPattern(setLoom(three, { shape: 'bar' })))[0]?.isRound).toBe(false)
})

test('in the piece each time of a chart counts from 1 again; notes are not walked', () => {
  const chart = (time: number) =>
    [0, 1, 0, 1, 2].map((row, at) => ['row', 1, at + 1, time, 2, row, true])
  expect(pieceStretches(workPiece(piece)).map(named)).toEqual([
    ['edge', 0, 1, 0, 1, null, false],
    ...chart(0),
    ...chart(1),
    ['row', 3, 1, 0, 1, null, true],
    ['row', 3, 2, 0, 1, null, true],
    ['edge', 4, 1, 0, 1, null, false],
  ])
})

test('to and fro over the opening of a ring no row is a round', () => {
  const open: Step = { kind: 'pegs', run: null, toAndFro: true }
  const flat = pieceStretches(workPiece({ ...piece, steps: [castOn, open, ...steps.slice(3)] }))
  expect(flat.map(({ isRound }) => isRound)).toEqual([false, false, false, false])
})

describe('the moments of a stretch lead from the loom before it to the loom after it', () => {
  test.each(pieceStretches(workPiece(piece)).map((one, at) => [at, one] as const))(
    'stretch %i',
    (_, stretch) => {
      const moments = momentsOf(stretch, habitsOf(piece))
      const lengths = (stacks: readonly (readonly unknown[])[]) => stacks.map((one) => one.length)
      const { before, after } = stretch.run
      expect(lengths(moments[0]?.stacks ?? [])).toEqual(lengths(before.stacks))
      expect(lengths(moments.at(-1)?.stacks ?? [])).toEqual(lengths(after.stacks))
      expect(moments.length).toBeGreaterThan(4)
    },
  )
})
