import { describe, expect, it } from 'vitest'
import type { Direction } from '../../src/loom/direction'
import { workPattern } from '../../src/pattern/work'
import { stitchOf } from '../../src/stitches/vocabulary'
import { abbreviations } from '../../src/words/abbreviations'
import { stepsOfStitch } from '../../src/words/steps'
import { pieceOf, rowOf } from './helpers'

const steps = (
  id: string,
  rows: readonly string[],
  shape: 'ring' | 'bar' = 'ring',
  direction: Direction = 'clockwise',
): string => {
  const pattern = pieceOf(rows.map((row) => rowOf(row)))
  const { loom } = pattern
  const work = workPattern({ ...pattern, loom: { ...loom, shape, direction } })
  return abbreviations(work, 'us').find(({ stitch }) => stitch?.id === id)?.steps ?? ''
}

// What becomes of an emptied peg: common practice. Which loop lies lowest as well.
describe('a decrease is explained as the pattern uses it', () => {
  it.each([
    [
      'the peg after it stays empty',
      'k2tog',
      ['k*2, k2tog, none, k*2', 'k*3, none, k*2'],
      'Over 2 pegs, counted in the order you work them: move the loop of peg 2 to peg 1, underneath; knit both loops of peg 1 as one; leave peg 2 empty.',
    ],
    [
      'the peg before it stays empty',
      'k2tog',
      ['k*2, none, k2tog, k*2'],
      'Over 2 pegs, counted in the order you work them: move the loop of peg 1 to peg 2, on top; knit both loops of peg 2 as one; leave peg 1 empty.',
    ],
    [
      'the gap is closed from the pegs after it',
      'ssk',
      ['k*2, ssk, k*2, none'],
      'Over 2 pegs, counted in the order you work them: move the loop of peg 2 to peg 1, on top; knit both loops of peg 1 as one; fill peg 2 by moving the loops after it back along the loom.',
    ],
    [
      'the gap is closed from the pegs before it',
      'ssk',
      ['none, k*2, ssk, k*2'],
      'Over 2 pegs, counted in the order you work them: move the loop of peg 1 to peg 2, underneath; knit both loops of peg 2 as one; fill peg 1 by moving the loops before it forward along the loom.',
    ],
    [
      'it is made again',
      'k2tog',
      ['k*2, yo, k2tog, k*2'],
      'yo, k2tog (over 2 pegs, counted in the order you work them): move the loop of peg 1 to peg 2, on top; knit both loops of peg 2 as one.',
    ],
    [
      'three loops, both pegs beside them left empty',
      'cdd',
      ['k, none, cdd, none, k*2'],
      'Over 3 pegs, counted in the order you work them: move the loop of peg 1 to peg 2, on top, then that of peg 3 to peg 2, on top; knit the 3 loops of peg 2 as one; leave pegs 1 and 3 empty.',
    ],
    [
      'three loops, one peg made again and one left empty',
      'k3tog',
      ['k, k3tog, yo, none, k*2'],
      'k3tog, yo, no st (over 3 pegs, counted in the order you work them): move the loop of peg 2 to peg 1, on top, then that of peg 3 to peg 1, underneath; knit the 3 loops of peg 1 as one; leave peg 3 empty.',
    ],
  ] as const)('%s', (_, id, rows, told) => {
    expect(steps(id, rows)).toBe(told)
  })

  // A loop that lies lowest shows: the left one of k2tog, the right one of ssk (common practice).
  it.each([
    ['k2tog, yo', 'k2tog', 'peg 2 to peg 1, underneath', 'peg 2 to peg 1, on top'],
    ['yo, k2tog', 'k2tog', 'peg 1 to peg 2, on top', 'peg 1 to peg 2, underneath'],
    ['ssk, yo', 'ssk', 'peg 2 to peg 1, on top', 'peg 2 to peg 1, underneath'],
    ['yo, ssk', 'ssk', 'peg 1 to peg 2, underneath', 'peg 1 to peg 2, on top'],
  ] as const)('%s leans alike whichever way it is worked', (row, id, clockwise, counter) => {
    const rows = [`k*2, ${row}, k*2`]
    expect(steps(id, rows)).toContain(`: move the loop of ${clockwise}; knit both loops`)
    expect(steps(id, rows, 'ring', 'counterclockwise')).toContain(
      `: move the loop of ${counter}; knit both loops`,
    )
  })

  it('tells each way that occurs, and none that does not', () => {
    const told = steps('k2tog', ['k2tog, yo, k*4', 'k*3, k2tog, none, k', 'k2tog, k*2, none*2, k'])
    expect(told).toBe(
      'Over 2 pegs, counted in the order you work them. ' +
        'k2tog, yo: move the loop of peg 2 to peg 1, underneath; knit both loops of peg 1 as one. ' +
        'k2tog, no st: move the loop of peg 2 to peg 1, underneath; knit both loops of peg 1 as one; leave peg 2 empty. ' +
        'k2tog with no peg left empty: move the loop of peg 2 to peg 1, underneath; knit both loops of peg 1 as one; fill peg 2 by moving the loops after it back along the loom.',
    )
  })

  it('says no yarn over where there is none, and only that a peg is emptied where nothing is known', () => {
    const { habits } = workPattern(pieceOf([rowOf('k*6')])).run
    for (const id of ['k2tog', 'ssk', 'p2tog', 'ssp', 'k3tog', 'sk2p', 'cdd']) {
      const told = stepsOfStitch(stitchOf(id), habits, 'forward')
      expect(told).not.toMatch(/\byo\b|yarn over/)
      expect(told).toMatch(/(?:peg 2 is|pegs \d and 3 are) now empty\.$/)
    }
  })

  it('tells both ways a row goes, each with its own use', () => {
    const told = steps('k2tog', ['k*2, k2tog, none, k*2', 'k*3, none, k2tog, none'], 'bar')
    expect(told).toMatch(/^Worked right to left\. Over 2 pegs/)
    expect(told).toContain('Worked left to right. Over 2 pegs')
    expect(told.match(/leave peg \d empty/g)).toEqual(['leave peg 2 empty', 'leave peg 1 empty'])
  })

  it('stands so in the abbreviations', () => {
    const work = workPattern(pieceOf([rowOf('k*2, k2tog, none, k*2')]))
    const found = abbreviations(work, 'us').find(({ abbr }) => abbr === 'k2tog')
    expect(found?.steps).toContain('leave peg 2 empty')
  })
})
