/** Edges from where the yarn hangs: the pegs in their order, from 1, and what goes wrong. */
import { describe, expect, test } from 'vitest'
import { bindOffPegs, castOnPegs } from '../../src/loom/edges'
import { bindOffWay, castOnWay, type EdgePlan } from '../../src/loom/edgeWay'
import type { BindOff, CastOn } from '../../src/loom/move'
import { castOn, emptyLoom, type LoomState } from '../../src/loom/state'
import { emptyStack } from '../../src/loom/strand'
import type { Habits } from '../../src/loom/work'

const pegs = 8
/** A loom with loops on these pegs, from 1, and the yarn in a gap. */
const loom = (held: string, gap: number, heading: LoomState['heading'] = 'forward'): LoomState => ({
  ...emptyLoom(pegs),
  stacks: castOn(pegs).stacks.map((stack, peg) =>
    held.includes(`${peg + 1}`) ? stack : emptyStack,
  ),
  yarn: { gap, side: 'inside' },
  heading,
})
const all = '12345678'

type Told = Partial<Pick<EdgePlan, 'shape' | 'from' | 'to' | 'fold'>>
const told = ({ pegs: way, heading, beside }: ReturnType<typeof castOnWay>): string =>
  `${way.map((peg) => peg + 1).join('')} ${heading}${beside ? '' : ' !'}`
const on = (how: CastOn, before: LoomState, plan: Told = {}) =>
  told(castOnWay(how, { before, shape: 'ring', from: 0, to: pegs - 1, ...plan }))
const off = (how: BindOff, before: LoomState, plan: Told = {}) =>
  told(bindOffWay(how, { before, shape: 'ring', from: 0, to: pegs - 1, ...plan }))

const low = { from: 0, to: 3 }
const high = { from: 4, to: 7 }

describe('cast on', () => {
  test('the whole loom: round a ring, and from the far end of a bar but for a drawstring', () => {
    expect(on('e-wrap', loom('', 0))).toBe('12345678 forward')
    expect(on('e-wrap', loom('', 0), { shape: 'bar' })).toBe('87654321 back')
    expect(on('drawstring', loom('', 0), { shape: 'bar' })).toBe('12345678 forward')
  })

  test('some pegs of an empty loom: forward, and a drawstring there and back', () => {
    expect(on('chain', loom('', 0), high)).toBe('5678 forward')
    expect(on('drawstring', loom('', 0), high)).toBe('8765 back')
  })

  test('beside loops, from the end at which the yarn hangs', () => {
    expect(on('chain', loom('1234', 4), high)).toBe('5678 forward')
    expect(on('chain', loom('1234', 0), high)).toBe('8765 back')
    expect(on('chain', loom('1234', 0), { ...high, shape: 'bar' })).toBe('5678 forward !')
    expect(on('chain', loom('1234', 2, 'back'), high)).toBe('8765 back !')
    expect(on('drawstring', loom('1234', 4), high)).toBe('5678 forward')
  })
})

describe('bind off', () => {
  test('a round from the nearest loop, the way work goes where both are as near', () => {
    expect(off('basic', loom(all, 0, 'back'))).toBe('12345678 forward')
    expect(off('basic', loom(all, 8))).toBe('87654321 back')
    expect(off('basic', loom(all, 3))).toBe('45678123 forward')
    expect(off('basic', loom(all, 3, 'back'))).toBe('32187654 back')
    expect(off('sewn', loom('1245678', 3))).toBe('45678123 forward'.replace('3', ''))
    expect(off('gather', loom('1235678', 3))).toBe('32187654 back'.replace('4', ''))
  })

  test('a part from the end beside the yarn, over no more than three empty pegs', () => {
    expect(off('basic', loom(all, 0), low)).toBe('1234 forward')
    expect(off('basic', loom(all, 4), low)).toBe('4321 back')
    expect(off('basic', loom(all, 2), low)).toBe('1234 forward !')
    expect(off('basic', loom(all, 2, 'back'), low)).toBe('4321 back !')
    expect(off('basic', loom('78', 3), { from: 6, to: 7 })).toBe('78 forward')
    expect(off('basic', loom('78', 2), { from: 6, to: 7, shape: 'bar' })).toBe('78 forward !')
    expect(off('basic', loom('78', 0), { from: 6, to: 7 })).toBe('87 back')
    expect(off('basic', loom('', 0), low)).toBe(' forward')
  })

  test('as near from both ends it goes forward, but from the last gap back', () => {
    expect(off('basic', loom('1', 0), { from: 0, to: 0 })).toBe('1 forward')
    expect(off('basic', loom('2', 1), { from: 1, to: 1 })).toBe('2 forward')
    expect(off('basic', loom('2', 2), { from: 1, to: 1 })).toBe('2 back')
    expect(off('basic', loom('18', 8), { from: 0, to: 7, shape: 'bar' })).toBe('81 back')
  })

  test('what is gathered becomes a ring: any of its pegs may be the first', () => {
    expect(off('gather', loom(all, 2), low)).toBe('3412 forward')
    expect(off('gather', loom(all, 2, 'back'), low)).toBe('2143 back')
    expect(off('gather', loom(all, 6), low)).toBe('1234 forward !')
  })

  test('halves begin at an end, at their middle, or at the corner of their fold that is nearer', () => {
    expect(off('graft', loom(all, 4), { ...low, to: 7 })).toBe('56781234 forward')
    expect(off('graft', loom(all, 3), { shape: 'bar' })).toBe('12345678 forward !')
    expect(off('graft', loom(all, 0), { shape: 'bar' })).toBe('12345678 forward')
    expect(off('graft', loom(all, 0), { fold: 1 })).toBe('23456781 forward')
    expect(off('three-needle', loom(all, 5), { fold: 1 })).toBe('67812345 forward')
    expect(off('graft', loom(all, 3), { fold: 1 })).toBe('23456781 forward !')
  })
})

describe('after an edge', () => {
  const habits: Habits = {
    shape: 'ring',
    direction: 'clockwise',
    knit: 'flat',
    crossing: 'move then knit',
    transfer: 'ordered',
  }
  const bar: Habits = { ...habits, shape: 'bar' }
  const held = ({ stacks }: LoomState) =>
    stacks.flatMap((stack, peg) => (stack.length > 0 ? [peg + 1] : [])).join('')

  test('a whole loom is ready to begin at peg 1', () => {
    for (const way of [habits, bar]) {
      const { after, faults } = castOnPegs(emptyLoom(pegs), way, 'e-wrap', 0, 7)
      expect([held(after), after.yarn.gap, after.heading, faults]).toEqual([all, 0, 'forward', []])
    }
  })

  test('the pegs of a bind-off are bare, and one away from the yarn says where it hangs', () => {
    const { after, faults } = bindOffPegs(castOn(pegs), bar, 'basic', 0, 3)
    expect([held(after), after.yarn.gap, after.heading, faults]).toEqual(['5678', 4, 'forward', []])
    const away = bindOffPegs(castOn(pegs), bar, 'basic', 2, 4)
    expect(away.faults).toEqual([{ kind: 'start', peg: 2, yarnGap: 0 }])
    expect(held(away.after)).toBe('12678')
    expect(bindOffPegs(emptyLoom(pegs), bar, 'basic', 0, 3).faults).toEqual([])
  })

  test('a drawstring goes once more round a ring, and back on a bar', () => {
    const woven = (way: Habits): string => {
      const moves: string[] = []
      castOnPegs(emptyLoom(4), way, 'drawstring', 0, 3, (move) =>
        moves.push('peg' in move ? `${move.peg + 1}${move.do === 'pass' ? '-' : ''}` : move.do),
      )
      return moves.join(' ')
    }
    expect(woven(habits)).toBe('1 2- 3 4- 1- 2 3- 4')
    expect(woven(bar)).toBe('1 2- 3 4- turn 4 3- 2 1-')
  })

  test('a graft away from the yarn is sewn with a new length, and the yarn stays', () => {
    const sewn = bindOffPegs(castOn(pegs), bar, 'graft', 2, 5)
    expect([sewn.newEnd, sewn.faults, sewn.after.yarn.gap, held(sewn.after)]).toEqual([
      true,
      [],
      0,
      '1278',
    ])
    const beside = bindOffPegs(castOn(pegs), bar, 'graft', 0, 3)
    expect([beside.newEnd, beside.fold]).toEqual([false, null])
    expect(bindOffPegs(castOn(pegs), habits, 'graft', 0, 7, 1).fold).toBe(1)
  })
})
