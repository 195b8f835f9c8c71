/** A thumb opening that is widened, moved or worked higher: what is said, and mends that mend it. */
import { chartOn, namedOn } from '../../../src/pattern/charts'
import { expect, test } from 'vitest'
import { checkPiece } from '../../../src/checks/piece/check'
import { addChart } from '../../../src/pattern/edits/piece'
import { setRun } from '../../../src/pattern/edits/turning'
import { newPattern, type Pattern, type Run } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { workPiece } from '../../../src/pattern/workPiece'
import { stitchOf } from '../../../src/stitches/vocabulary'

interface Thumb {
  /** The last peg, from 1, that the row before the opening works. */
  readonly rowTo: number
  readonly off: Run
  readonly on: Run
  readonly times?: number
}

/** On 32 pegs: a round, a row up to the thumb, its pegs off, the row again, pegs on, a round. */
function mitt({ rowTo, off, on, times = 1 }: Thumb): Pattern {
  const hand = newPattern(32, 1)
  const row = chartOn(setRun(hand, 0, { from: 0, to: rowTo - 1 }))
  const whole = addChart(addChart(hand, 'Thumb', row), 'Hand', chartOn(hand))
  const steps: Step[] = [
    { kind: 'cast on', how: 'e-wrap', pegs: null },
    { kind: 'chart', chart: namedOn(whole).name, times: 1 },
    { kind: 'chart', chart: 'Thumb', times: 1 },
    { kind: 'bind off', how: 'basic', pegs: { from: off.from - 1, to: off.to - 1 } },
    { kind: 'chart', chart: 'Thumb', times },
    { kind: 'cast on', how: 'e-wrap', pegs: { from: on.from - 1, to: on.to - 1 } },
    { kind: 'chart', chart: 'Hand', times: 1 },
    { kind: 'bind off', how: 'basic', pegs: null },
  ]
  return { ...whole, steps }
}

const wide = { from: 25, to: 32 }
const narrow = { from: 27, to: 32 }
const found = (pattern: Pattern) => checkPiece(workPiece(pattern))

/** Take the first mend of the first finding, until nothing is left to mend. */
function mended(pattern: Pattern, taken: readonly string[] = []): readonly string[] {
  const [fix] = found(pattern)[0]?.fixes ?? []
  return fix
    ? mended(fix.edit(pattern), [...taken, fix.label])
    : [...taken, `${found(pattern).length} left`]
}

test('the opening as it should be', () => {
  expect(found(mitt({ rowTo: 24, off: wide, on: wide }))).toEqual([])
})

test('pegs of an opening that are not cast on again are said at the cast-on', () => {
  const pattern = mitt({ rowTo: 24, off: wide, on: narrow })
  const [finding, ...more] = found(pattern)
  expect(more).toEqual([])
  expect(finding).toMatchObject({
    place: { step: 5 },
    message:
      'Step 6 (cast on) leaves pegs 25-26 empty. Round 1 of step 7 (Hand) needs 32 stitches, the loom holds 30.',
    advice: 'Cast on pegs 25-32 here: these pegs were bound off.',
  })
  expect(mended(pattern)).toEqual(['Cast on pegs 25-32 here', '0 left'])
})

test.each([
  [4, 'Work pegs 1-24 back and forth, 5 times'],
  [5, 'Work pegs 1-24 back and forth'],
])('a row beside the opening, worked %i times, turns and goes back', (times, label) => {
  const pattern = mitt({ rowTo: 24, off: wide, on: wide, times })
  const [finding] = found(pattern)
  expect(finding?.message).toBe(
    'Step 5 (Thumb) begins at peg 1 when it is worked again, but the yarn is between pegs 24 and 25.',
  )
  expect(finding?.advice).toMatch(/^Turn and work back: before it, put pegs 1-24 in work/)
  expect(mended(pattern)).toEqual([label, '0 left'])
})

test('a row that goes past the opening is ended beside it, and so is one that ends short of it', () => {
  const past = mitt({ rowTo: 26, off: wide, on: narrow })
  expect(found(past)[0]?.advice).toBe(
    'End Thumb, row 1 at peg 24, or bind off pegs beside the yarn: from peg 27 on, or up to peg 26.',
  )
  expect(mended(past)).toEqual(['End Thumb, row 1 at peg 24', 'Cast on pegs 25-32 here', '0 left'])
  const short = mitt({ rowTo: 24, off: narrow, on: narrow })
  expect(found(short)[0]?.advice).toMatch(/^End Thumb, row 1 at peg 26, or bind off/)
  expect(mended(short)).toEqual(['End Thumb, row 1 at peg 26', '0 left'])
})

test('only the pegs between yarn and opening are named as missing', () => {
  const short = mitt({ rowTo: 24, off: narrow, on: narrow })
  expect(found(short)[0]?.fixes.map(({ label }) => label)).toContain('Knit pegs 25-26 before it')
  const plain: Step[] = [
    { kind: 'pegs', run: { from: 0, to: 23 }, toAndFro: true },
    { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 1 } },
    { kind: 'pegs', run: null, toAndFro: false },
  ]
  const steps = short.steps.toSpliced(2, 1, ...plain)
  const [finding] = found({ ...short, steps })
  expect(finding?.advice).toMatch(/^Put in a step that works pegs 25-26 before it, or bind off/)
})
