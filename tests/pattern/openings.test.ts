/** Pegs bound off and cast on again, as for a thumb. */
import { expect, test } from 'vitest'
import { newPattern, type Run } from '../../src/pattern/pattern'
import type { Step } from '../../src/pattern/piece'
import { leavesWaiting, openingsOf, partOf } from '../../src/pattern/pegs/openings'
import { workPiece } from '../../src/pattern/workPiece'
import { stitchOf } from '../../src/stitches/vocabulary'

const castOn = (pegs: Run | null = null): Step => ({ kind: 'cast on', how: 'e-wrap', pegs })
const off = (pegs: Run | null = null): Step => ({ kind: 'bind off', how: 'basic', pegs })
const on = (run: Run | null): Step => ({ kind: 'pegs', run, toAndFro: run !== null })
const knit = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })
const worked = (...steps: Step[]) => workPiece({ ...newPattern(12, 1), steps }).steps

const thumb = { from: 8, to: 11 }
const hand = { from: 0, to: 7 }
const mitt = worked(
  castOn(),
  on(hand),
  knit(1),
  off(thumb),
  knit(1),
  castOn(thumb),
  on(null),
  knit(1),
  off(),
)

test('an opening lies on the pegs of its bind-off and of its cast-on', () => {
  expect(openingsOf(mitt)).toEqual([{ pegs: thumb, from: 3, to: 5 }])
  const wider = worked(castOn(), off({ from: 7, to: 10 }), castOn({ from: 9, to: 10 }), off())
  expect(openingsOf(wider)).toEqual([{ pegs: { from: 9, to: 10 }, from: 1, to: 2 }])
})

test('what is not cast on again, or cast on elsewhere, is no opening', () => {
  expect(openingsOf(worked(castOn(), off(thumb), on(hand), knit(2), off(hand)))).toEqual([])
  const elsewhere = worked(
    castOn({ from: 4, to: 11 }),
    off(thumb),
    castOn({ from: 0, to: 3 }),
    off(),
  )
  expect(openingsOf(elsewhere)).toEqual([])
})

test('a part is what other loops stay beside', () => {
  expect(mitt.map(partOf)).toEqual([null, null, null, thumb, null, thumb, null, null, null])
  const [first, last] = worked(castOn(thumb), off(thumb))
  expect([first && partOf(first), last && partOf(last)]).toEqual([null, null])
})

test('loops wait beside a row of a part, but not where they are bound off next', () => {
  const waits = (index: number, row = 0) => leavesWaiting(mitt, index, row)
  expect(mitt.map((_, index) => waits(index))).toEqual(mitt.map(() => false))
  const short = worked(castOn(), { kind: 'chart', chart: 'Chart', times: 1 }, off())
  expect(leavesWaiting(short, 1, 0)).toBe(false)
  expect(leavesWaiting(short, 1, 5)).toBe(false)
  expect(leavesWaiting(short, 9, 0)).toBe(false)
  const pattern = newPattern(12, 1)
  const [row] = pattern.charts[0].chart.rows
  if (!row) throw new Error('The chart has a row.')
  const part = { ...pattern.charts[0].chart, rows: [{ ...row, run: hand }] }
  const piece = (...steps: Step[]) =>
    workPiece({ ...pattern, charts: [{ ...pattern.charts[0], chart: part }], steps }).steps
  const chart: Step = { kind: 'chart', chart: 'Chart', times: 1 }
  expect(leavesWaiting(piece(castOn(), chart, knit(1), off()), 1, 0)).toBe(true)
  expect(leavesWaiting(piece(castOn(), chart, off(thumb), knit(1)), 1, 0)).toBe(false)
  expect(leavesWaiting(piece(castOn(hand), chart, knit(1)), 1, 0)).toBe(false)
  expect(leavesWaiting(piece(castOn(), chart, off({ from: 9, to: 11 }), knit(1)), 1, 0)).toBe(true)
  expect(leavesWaiting(piece(castOn(), chart, knit(1), off(thumb)), 1, 0)).toBe(true)
  expect(leavesWaiting(piece(castOn(), { ...chart, times: 2 }, off(thumb)), 1, 0)).toBe(true)
})
