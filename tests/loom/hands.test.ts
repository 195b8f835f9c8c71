/** What the hands notice, move by move on a small loom. */
import { describe, expect, test } from 'vitest'
import { Loom } from '../../src/loom/loom'
import type { Move } from '../../src/loom/move'
import { castOn, emptyLoom, pegsInWork } from '../../src/loom/state'
import { noWale, waleOf } from '../../src/loom/strand'

const full = () => new Loom(castOn(4), 'u-wrap')
const bare = () => new Loom(emptyLoom(4), 'flat')
const kinds = (loom: Loom, peg: number): string =>
  loom
    .stack(peg)
    .map(({ kind }) => kind)
    .join('+')
/** What a loom has noticed after some moves. */
const noticed = (loom: Loom, ...moves: ((loom: Loom) => void)[]) => {
  for (const move of moves) move(loom)
  return loom.faults
}

describe('noticed', () => {
  test('an empty peg, whatever is to be done with its loop', () => {
    const empty = [{ kind: 'empty peg', peg: 1 }]
    for (const move of [
      (loom: Loom) => loom.work(1),
      (loom: Loom) => loom.lay(1, 'tuck'),
      (loom: Loom) => loom.take(1, 'inside'),
      (loom: Loom) => loom.draw(1, 2),
      (loom: Loom) => loom.lift(1),
      (loom: Loom) => loom.letGo(1, 'gather'),
    ]) {
      expect(noticed(bare(), move)).toEqual(empty)
      expect(noticed(full(), (loom) => loom.drop(2), move)).toEqual([])
    }
  })

  test('a peg in use, where a loop begins', () => {
    const inUse = [{ kind: 'peg in use', peg: 1 }]
    for (const move of [
      (loom: Loom) => loom.lay(1, 'yarn over'),
      (loom: Loom) => loom.draw(2, 1),
      (loom: Loom) => loom.bar(1),
      (loom: Loom) => loom.castOn(1, 'chain'),
    ]) {
      expect(noticed(full(), move)).toEqual(inUse)
      expect(noticed(full(), (loom) => loom.drop(1), move)).toEqual([])
    }
  })

  test('more than three loops worked together', () => {
    const tuck = (loom: Loom) => loom.lay(1, 'tuck')
    const work = (loom: Loom) => loom.work(1)
    expect(noticed(full(), tuck, tuck, work)).toEqual([])
    expect(noticed(full(), tuck, tuck, tuck, work)).toEqual([
      { kind: 'too many loops', peg: 1, loops: 4 },
    ])
  })

  test('a float on each side, with the pegs it passed, where it is caught', () => {
    const pass = (peg: number, side: 'inside' | 'outside') => (loom: Loom) => loom.pass(peg, side)
    const work = (peg: number) => (loom: Loom) => loom.work(peg)
    expect(noticed(full(), pass(0, 'inside'), pass(1, 'inside'), work(2), work(3))).toEqual([
      { kind: 'float', side: 'inside', peg: 2, pegs: 2 },
    ])
    expect(noticed(full(), pass(0, 'outside'), work(1))).toEqual([
      { kind: 'float', side: 'outside', peg: 1, pegs: 1 },
    ])
    expect(noticed(full(), pass(0, 'outside'), pass(1, 'inside'), work(2))).toEqual([
      { kind: 'float', side: 'outside', peg: 1, pegs: 1 },
      { kind: 'float', side: 'inside', peg: 2, pegs: 1 },
    ])
    expect(noticed(full(), pass(0, 'inside'), pass(1, 'outside'))).toEqual([
      { kind: 'float', side: 'inside', peg: 1, pegs: 1 },
    ])
  })
})

describe('the yarn', () => {
  test('hangs behind the peg that caught it, whichever way work goes', () => {
    const loom = full()
    loom.work(1)
    expect(loom.gap).toBe(2)
    loom.turn()
    loom.work(1)
    expect([loom.heading, loom.gap]).toEqual(['back', 1])
  })

  test('comes back to its side at a turn', () => {
    const loom = full()
    loom.lay(2, 'wrap')
    expect([loom.gap, kinds(loom, 2)]).toEqual([2, 'wrap+cast-on'])
    loom.turn()
    loom.lay(1, 'German turn')
    expect([loom.gap, kinds(loom, 1)]).toEqual([2, 'cast-on+German turn'])
    loom.lay(0, 'tuck')
    expect([loom.gap, kinds(loom, 0)]).toEqual([0, 'cast-on+tuck'])
  })

  test('is carried only where it is not yet, and the carry is a move', () => {
    const moves: Move[] = []
    const loom = new Loom(castOn(4), 'flat', (move) => moves.push(move))
    loom.carry(0)
    loom.carry(2)
    loom.goPast(2)
    expect([loom.gap, moves]).toEqual([3, [{ do: 'carry', gap: 2 }]])
  })
})

describe('loops', () => {
  test('are knitted in the pattern’s way unless another is said', () => {
    const loom = new Loom(castOn(4), 'e-wrap')
    loom.work(0)
    loom.work(1, 'purl')
    loom.work(2, 'twisted purl')
    loom.work(3, 'flat')
    expect([0, 1, 2, 3].map((peg) => kinds(loom, peg))).toEqual([
      'twisted knit',
      'purl',
      'twisted purl',
      'knit',
    ])
  })

  test('are moved on top or under, and waited for on the needle in their order', () => {
    const moves: Move[] = []
    const loom = new Loom(castOn(4), 'flat', (move) => moves.push(move))
    loom.work(0)
    loom.move(0, 1)
    loom.work(2, 'purl')
    loom.move(2, 3, true)
    expect([kinds(loom, 0), kinds(loom, 1), kinds(loom, 3)]).toEqual([
      '',
      'cast-on+knit',
      'purl+cast-on',
    ])
    loom.take(1, 'inside')
    loom.take(3, 'outside')
    expect(loom.needle.map(({ side }) => side)).toEqual(['inside', 'outside'])
    loom.put(0)
    loom.put(2)
    loom.put(3)
    expect([0, 1, 2, 3].map((peg) => kinds(loom, peg))).toEqual([
      'cast-on+knit',
      '',
      'purl+cast-on',
      '',
    ])
    loom.move(0, 1, true)
    expect(moves.filter((move) => move.do === 'move').map(({ under }) => under)).toEqual([
      false,
      true,
      false,
    ])
  })

  test('are lifted over the top one, dropped and let go', () => {
    const moves: string[] = []
    const loom = new Loom(castOn(4), 'flat', (move) => moves.push(move.do))
    loom.lay(0, 'tuck')
    loom.lift(0)
    loom.drop(1)
    loom.drop(1)
    loom.letGo(2, 'gather')
    expect([kinds(loom, 0), kinds(loom, 1), kinds(loom, 2)]).toEqual(['tuck', '', ''])
    expect([loom.gap, moves]).toEqual([3, ['lay', 'lift', 'drop', 'let go']])
  })

  test('that begin take the wale of their peg where it is free, else the first that is', () => {
    const before = castOn(4)
    const loom = new Loom(before, 'flat')
    loom.drop(1)
    loom.lay(1, 'yarn over')
    expect(loom.settle(before).stacks.map(waleOf)).toEqual([0, 1, 2, 3])
    const moved = new Loom(before, 'flat')
    moved.move(1, 0)
    moved.lay(1, 'yarn over')
    const after = moved.settle(before)
    expect(after.stacks.map((stack) => stack.map(({ wale }) => wale))).toEqual([
      [0, 1],
      [4],
      [2],
      [3],
    ])
    expect(after.stacks.flat().every(({ wale }) => wale > noWale)).toBe(true)
    expect(pegsInWork(after)).toBe(4)
  })

  test('are cast on with the number of their peg, and behind others with a new one', () => {
    const loom = bare()
    for (const peg of [0, 1]) loom.castOn(peg, 'e-wrap')
    loom.move(1, 2)
    loom.castOn(1, 'e-wrap')
    expect(loom.settle(emptyLoom(4)).stacks.map(waleOf)).toEqual([0, 2, 1, noWale])
  })

  test('of an increase lie where they belong: a bar on top, its base below', () => {
    const loom = full()
    loom.base(0)
    loom.drop(1)
    loom.bar(1)
    loom.drop(2)
    loom.draw(3, 2)
    expect([kinds(loom, 0), kinds(loom, 1), kinds(loom, 2)]).toEqual(['bar+cast-on', 'bar', 'knit'])
  })
})
