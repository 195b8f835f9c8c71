/** Ladders that only the whole piece has: what a step left empty is passed by the next one. */
import { describe, expect, test } from 'vitest'
import { checkAfresh } from '../../../src/checks/check'
import { checkPiece } from '../../../src/checks/piece/check'
import { addChart } from '../../../src/pattern/edits/piece'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { onChart, chartOn } from '../../../src/pattern/charts'
import { workPiece } from '../../../src/pattern/workPiece'
import { patternOf } from '../../pattern/edits/chart-text'
import { stitchOf } from '../../../src/stitches/vocabulary'

const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
const castOnPegs = (from: number, to: number): Step => ({ ...castOn, pegs: { from, to } })
const off = (from: number, to: number): Step => ({
  kind: 'bind off',
  how: 'basic',
  pegs: { from, to },
})
const bindOff: Step = { kind: 'bind off', how: 'basic', pegs: null }
const knit = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })
const chart = (name = 'Chart', times = 1): Step => ({ kind: 'chart', chart: name, times })
const on = (from: number, to: number): Step => ({ kind: 'pegs', run: { from, to }, toAndFro: true })
const round: Step = { kind: 'pegs', run: null, toAndFro: false }
const open: Step = { kind: 'pegs', run: null, toAndFro: true }

const withSteps = (pattern: Pattern, ...steps: Step[]): Pattern => ({
  ...pattern,
  steps,
})

const found = (pattern: Pattern) =>
  checkPiece(workPiece(pattern)).map(({ rule, place: { step }, message }) => ({
    rule,
    step,
    message,
  }))

const laddersIn = (pattern: Pattern) => found(pattern).filter(({ rule }) => rule === 'piece-ladder')

/** How many ladders the chart of a section has by itself. */
const ownLadders = (pattern: Pattern, section: string): number =>
  checkAfresh(onChart(pattern, section)).findings.filter(({ rule }) => rule === 'ladder').length

const gap = patternOf('k k k k k none none none k k k k')

describe('a ladder is found', () => {
  test('over pegs that were never cast on, once for all rounds', () => {
    const piece = withSteps(gap, castOnPegs(0, 4), castOnPegs(8, 11), chart('Chart', 3), bindOff)
    expect(found(piece)).toEqual([
      {
        rule: 'piece-ladder',
        step: 2,
        message:
          'In round 1 of step 3 (Chart) the yarn passes 3 empty pegs (pegs 6-8), 38 mm from loop to loop; this leaves a ladder in the fabric.',
      },
    ])
  })

  test('once for the crown and the rounds of the next chart', () => {
    const crown = patternOf('k k k k ssk none none k2tog k k k k')
    const piece = withSteps(
      addChart(crown, 'Tip', chartOn(patternOf('k k k k k none none k k k k k'))),
      castOn,
      chart(),
      chart('Tip', 2),
      bindOff,
    )
    expect(laddersIn(piece)).toEqual([])
    expect(checkAfresh(piece).findings.map(({ rule }) => rule)).toContain('ladder')
  })

  const closing = (gaps: number): Pattern =>
    withSteps(
      addChart(newPattern(12, 1), 'Gap', chartOn(patternOf('k k k k none none none none k k k k'))),
      ...[castOn, on(0, 3), knit(1), off(4, 7), on(8, 11), knit(1), round, chart('Gap', gaps)],
      ...[on(0, 3), knit(1), castOnPegs(4, 7), on(8, 11), knit(1), round, chart(), bindOff],
    )

  test('where more than one round passes the gap of bound off pegs', () => {
    expect(laddersIn(closing(2))).toEqual([
      {
        rule: 'piece-ladder',
        step: 7,
        message:
          'In round 1 of step 8 (Gap) the yarn passes 4 empty pegs (pegs 5-8), 47.5 mm from loop to loop; this leaves a ladder in the fabric.',
      },
    ])
  })

  test('but not where pegs are cast on again in the round after they were bound off', () => {
    expect(laddersIn(closing(1))).toEqual([])
  })
})

describe('nothing is found', () => {
  test('at a thumb opening that is bound off and cast on again', () => {
    const piece = withSteps(
      newPattern(12, 2),
      ...[castOn, chart(), on(0, 3), knit(1), off(4, 7), on(8, 11), knit(1)],
      ...[on(0, 3), knit(1), castOnPegs(4, 7), on(8, 11), knit(1), round, chart(), bindOff],
    )
    expect(found(piece)).toEqual([])
  })

  test('at an opening beside which rows go back and forth, and decrease there', () => {
    const edges = patternOf('none none k k k k k k k k none none')
    const narrow = {
      ...addChart(
        edges,
        'Decreases',
        chartOn(patternOf('none none k3tog k k k k k k k3tog none none')),
      ),
    }
    const piece = withSteps(narrow, castOn, open, chart('Decreases'), chart('Chart', 2), bindOff)
    expect(laddersIn(piece)).toEqual([])
    expect(ownLadders(piece, 'Decreases')).toBe(0)
    const inTheRound = withSteps(narrow, castOn, chart('Decreases'), chart('Chart', 2), bindOff)
    expect(laddersIn(inTheRound)).toEqual([])
    expect(ownLadders(inTheRound, 'Decreases')).toBe(1)
  })
})
