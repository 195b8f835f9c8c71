import { withChart } from '../../src/pattern/edits/chart'
import { describe, expect, it } from 'vitest'
import { checkAfresh } from '../../src/checks/check'
import { newPattern, blankRow, type Pattern, type Row } from '../../src/pattern/pattern'
import type { RowEnd } from '../../src/loom/row'
import { stitchOf } from '../../src/stitches/vocabulary'

/**
 * Heels as the trade works them (common practice): half the pegs, a third of these turned on each
 * side, `w = round(H / 3)`; wrapped heels have 2w rows out and 2w - 2 back, then the corners.
 */
interface Turn {
  readonly forward: boolean
  readonly peg: number
}

function turnsOf(low: number, heel: number, german: boolean): Turn[] {
  const w = Math.round(heel / 3)
  const high = low + heel - 1
  const turns: Turn[] = []
  const pair = (step: number) =>
    turns.push({ forward: true, peg: high - step }, { forward: false, peg: low + step })
  for (let step = 0; step < w; step++) pair(step)
  for (let step = w - 2; step >= 0; step--) pair(step)
  expect(turns.length).toBe(2 * w + 2 * w - 2)
  if (german) pair(-1)
  return turns
}

function heelOn(pegs: number, end: Exclude<RowEnd, 'on'>, low: number, back = false): Pattern {
  const german = end === 'German turn'
  const rows: Row[] = [blankRow(pegs, stitchOf('k'))]
  let start = 0
  for (const { forward, peg } of turnsOf(low, pegs / 2, german)) {
    const last = german ? peg : forward ? peg - 1 : peg + 1
    if (last < 0) {
      // Over the join of the round: on to peg 1, then a row of the last peg alone.
      rows.push({ ...blankRow(pegs, stitchOf('k')), run: { from: 0, to: start } })
      rows.push({ ...blankRow(pegs, stitchOf('k')), run: { from: pegs - 1, to: pegs - 1 }, end })
    } else
      rows.push({
        ...blankRow(pegs, stitchOf('k')),
        run: forward ? { from: start, to: last } : { from: last, to: start },
        end,
      })
    start = german ? (forward ? peg - 1 : peg + 1) : last
  }
  rows.push(
    { ...blankRow(pegs, stitchOf('k')), run: { from: start, to: pegs - 1 } },
    blankRow(pegs, stitchOf('k')),
  )
  const pattern = newPattern(pegs)
  return withChart(
    {
      ...pattern,
      gauge: { stitches: 22, rows: 30 },
      loom: { ...pattern.loom, direction: back ? 'counterclockwise' : 'clockwise' },
    },
    { rows },
  )
}

describe.each([24, 32, 36, 40, 48])('a heel on %i pegs', (pegs) => {
  it.each([true, false])('in German turns is in order, counterclockwise: %s', (back) => {
    expect(checkAfresh(heelOn(pegs, 'German turn', 4, back)).findings).toEqual([])
  })

  it.each([true, false])('in wraps lacks only its corners, counterclockwise: %s', (back) => {
    const { findings } = checkAfresh(heelOn(pegs, 'wrap', 4, back))
    expect(findings.map(({ rule, severity }) => [severity, rule])).toEqual([
      ['hint', 'turn-corners'],
      ['hint', 'turn-corners'],
    ])
  })
})

it.each([24, 40, 48])(
  'a heel on %i pegs may begin at the start of the round, its lower corner at the last peg',
  (pegs) => {
    expect(checkAfresh(heelOn(pegs, 'German turn', 0)).findings).toEqual([])
  },
)

it('takes the published 9 + 10 + 9 of a 56-peg loom for a third', () => {
  // A published 56-peg example: 28 heel pegs, a third of them rounded down turned on each side.
  const { findings } = checkAfresh(heelOn(56, 'German turn', 10))
  expect(findings).toEqual([])
})
