/** Repairs of turns, tried as they are: what they make of the rows, and where they make nothing. */
import { describe, expect, test } from 'vitest'
import { goOn, turnElsewhere } from '../../src/checks/turns/mend-turn'
import type { Turning } from '../../src/checks/turns/turning'
import { chartOn } from '../../src/pattern/charts'
import { setHeading, setRun } from '../../src/pattern/edits/turning'
import { newPattern, type Run, type Sheet } from '../../src/pattern/pattern'

const runs = (pattern: Sheet) =>
  chartOn(pattern).rows.map(({ run }) => (run ? `${run.from + 1}-${run.to + 1}` : 'all'))
const plain = newPattern(12, 2)

const turn = (heading: Turning['heading'], german: boolean, pegs: Run): Turning => ({
  heading,
  pegs,
  german,
  turnPeg: null,
  held: false,
  worked: [],
  beyond: null,
  faulty: false,
})

describe('turned elsewhere', () => {
  const short = setRun(setRun(plain, 0, { from: 2, to: 8 }), 1, { from: 3, to: 7 })
  const made = (one: Turning, peg: number) =>
    turnElsewhere(one, 0, peg).map(({ edit }) => {
      const edited = edit(short)
      return edited === short ? 'nothing' : runs(edited).join(' ')
    })
  const own = { from: 2, to: 8 }

  test('the row ends on that peg by a German turn, before it by a wrap', () => {
    expect(made(turn('forward', true, own), 6)).toEqual(['3-7 4-8', '3-7 4-6'])
    expect(made(turn('forward', false, own), 6)).toEqual(['3-6 4-8', '3-6 4-6'])
    expect(made(turn('back', true, own), 4)).toEqual(['5-9 4-8', '5-9 6-8'])
    expect(made(turn('back', false, own), 4)).toEqual(['6-9 4-8', '6-9 6-8'])
  })

  test('on the last peg of the loom, on one peg, and on no other', () => {
    expect(made(turn('forward', true, own), 11)).toEqual(['3-12 4-8', '3-12 4-11'])
    expect(made(turn('forward', true, own), 12)).toEqual(['nothing', 'nothing'])
    expect(made(turn('back', true, own), 0)).toEqual(['1-9 4-8', '1-9 2-8'])
    expect(made(turn('back', true, own), -1)).toEqual(['nothing', 'nothing'])
    expect(made(turn('forward', true, own), 2)).toEqual(['3-3 4-8', 'nothing'])
    expect(made(turn('forward', true, own), 1)).toEqual(['nothing', 'nothing'])
  })

  test('without a next row of a part there is one way', () => {
    const alone = setRun(plain, 0, own)
    const [one, other] = turnElsewhere(turn('forward', true, own), 0, 6)
    expect(one?.label).toBe('Turn on peg 7')
    expect(other?.label).toBe('Turn on peg 7, and begin the next row beside it')
    expect(one && runs(one.edit(alone))).toEqual(['3-7', 'all'])
    expect(other?.edit(alone)).toBe(alone)
  })
})

describe('gone on from the yarn', () => {
  const made = (run: Run | null, gap: number, leads: 'forward' | 'back') => {
    const before = setHeading(setRun(plain, 1, run), 1, 'back')
    const after = goOn(1, gap, leads)(before)
    return after === before ? 'nothing' : [runs(after)[1], chartOn(after).rows[1]?.heading]
  }

  test('the row goes to where it ended, else to the edge, and says no way', () => {
    expect(made({ from: 2, to: 8 }, 4, 'forward')).toEqual(['5-9', null])
    expect(made({ from: 2, to: 8 }, 8, 'forward')).toEqual(['9-9', null])
    expect(made({ from: 2, to: 8 }, 9, 'forward')).toEqual(['10-12', null])
    expect(made({ from: 2, to: 8 }, 4, 'back')).toEqual(['3-4', null])
    expect(made({ from: 2, to: 8 }, 3, 'back')).toEqual(['3-3', null])
    expect(made({ from: 2, to: 8 }, 2, 'back')).toEqual(['1-2', null])
    expect(made(null, 4, 'forward')).toEqual(['5-12', null])
    expect(made(null, 12, 'back')).toEqual(['all', null])
  })

  test('past either end there is nowhere to go', () => {
    expect(made(null, 12, 'forward')).toBe('nothing')
    expect(made(null, 0, 'back')).toBe('nothing')
    expect(made(null, 13, 'back')).toBe('nothing')
  })
})
