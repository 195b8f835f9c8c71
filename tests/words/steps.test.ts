import { languages } from '../../src/languages/languages'
import { describe, expect, it } from 'vitest'
import { directions, type Direction, type Heading } from '../../src/loom/direction'
import { crossings, type Crossing } from '../../src/loom/row'
import type { Habits } from '../../src/loom/work'
import { crosses } from '../../src/stitches/crosses'
import { stitchOf, standardVocabulary } from '../../src/stitches/vocabulary'
import { stepsOfStitch } from '../../src/words/steps'
import { crossOrders } from '../published/data/standards'

const habitsOf = (direction: Direction, crossing: Crossing = 'move then knit'): Habits => ({
  shape: 'ring',
  direction,
  knit: 'u-wrap',
  crossing,
  transfer: 'ordered',
})

const steps = (id: string, direction: Direction, crossing?: Crossing, heading?: Heading) =>
  stepsOfStitch(stitchOf(id), habitsOf(direction, crossing), heading ?? 'forward')

/** "pegs 1 and 2", "pegs 4 to 1", "peg 3", as numbers. */
function pegsIn(text: string): number[] {
  const [, first, word, last] = /pegs? (\d+)(?: (and|to) (\d+))?/.exec(text) ?? []
  const [from, to] = [Number(first), Number(last ?? first)]
  if (word === 'and') return [from, to]
  const step = Math.sign(to - from)
  return Array.from({ length: Math.abs(to - from) + 1 }, (_, index) => from + index * step)
}

/** Do what the words say with loops 1, 2, ...: where they end, and how often each is worked. */
function follow(words: string) {
  const loops = new Map<number, number>()
  const needle: number[] = []
  const worked: number[] = []
  const [start = '', moves = ''] = words.slice(0, -1).split(': ')
  const count = Number(/^Over (\d+) pegs/.exec(start)?.[1])
  const pegs = Array.from({ length: count }, (_, index) => index + 1)
  for (const peg of pegs) loops.set(peg, peg)
  const lift = (peg: number): number => {
    const loop = loops.get(peg)
    if (loop === undefined) throw new Error(`Peg ${peg} is empty: ${words}`)
    loops.delete(peg)
    return loop
  }
  const put = (peg: number, loop: number) => {
    if (loops.has(peg)) throw new Error(`Peg ${peg} has a loop already: ${words}`)
    loops.set(peg, loop)
  }
  for (const move of moves.split('; ')) {
    if (/^take the loops? of/.test(move)) needle.push(...pegsIn(move).map(lift))
    else if (move.startsWith('put the waiting'))
      for (const peg of pegsIn(move)) put(peg, needle.shift() ?? NaN)
    else if (move.startsWith('move')) {
      const [from = '', to = ''] = move.split(
        /(?:, one after the other,)? to (?=pegs? \d+(?: and \d+| to \d+)?$)/,
      )
      const targets = pegsIn(to)
      pegsIn(from).forEach((peg, index) => put(targets[index] ?? NaN, lift(peg)))
    } else if (/^(knit|purl) /.test(move))
      worked.push(...pegsIn(move).map((peg) => loops.get(peg) ?? NaN))
    else if (!/^(carry|bring) the yarn/.test(move)) throw new Error(`What is "${move}"?`)
  }
  return { order: pegs.map((peg) => loops.get(peg)), worked }
}

describe('a 2/2 left cross, move by move, worked out by hand', () => {
  it('right to left, knit then move', () => {
    expect(steps('2/2 LC', 'clockwise', 'knit then move')).toBe(
      'Over 4 pegs, counted in the order you work them: carry the yarn behind pegs 1 and 2; ' +
        'knit pegs 3 and 4; take the loops of pegs 3 and 4 onto the spare needle, inside the loom; ' +
        'bring the yarn back behind the pegs to peg 1; knit pegs 1 and 2; ' +
        'move the loops of pegs 2 and 1, one after the other, to pegs 4 and 3; ' +
        'put the waiting loops on pegs 1 and 2; carry the yarn behind pegs 3 and 4.',
    )
  })

  it('right to left, move then knit', () => {
    expect(steps('2/2 LC', 'clockwise', 'move then knit')).toBe(
      'Over 4 pegs, counted in the order you work them: take the loops of pegs 3 and 4 onto the spare needle, ' +
        'inside the loom; move the loops of pegs 2 and 1, one after the other, to pegs 4 and 3; ' +
        'put the waiting loops on pegs 1 and 2; knit pegs 1 to 4.',
    )
  })

  it('left to right, knit then move', () => {
    expect(steps('2/2 LC', 'counterclockwise', 'knit then move')).toBe(
      'Over 4 pegs, counted in the order you work them: take the loops of pegs 1 and 2 onto the spare needle, ' +
        'inside the loom; carry the yarn behind pegs 1 and 2; knit pegs 3 and 4; ' +
        'move the loops of pegs 3 and 4, one after the other, to pegs 1 and 2; ' +
        'put the waiting loops on pegs 3 and 4; bring the yarn back behind the pegs to peg 3; ' +
        'knit pegs 3 and 4.',
    )
  })

  it('left to right, move then knit', () => {
    expect(steps('2/2 LC', 'counterclockwise', 'move then knit')).toBe(
      'Over 4 pegs, counted in the order you work them: take the loops of pegs 1 and 2 onto the spare needle, ' +
        'inside the loom; move the loops of pegs 3 and 4, one after the other, to pegs 1 and 2; ' +
        'put the waiting loops on pegs 3 and 4; knit pegs 1 to 4.',
    )
  })
})

describe('the steps of crosses', () => {
  it.each(crossOrders.values)('%s puts the loops where published pages put them', (id, order) => {
    for (const crossing of crossings) {
      expect(follow(steps(id, 'clockwise', crossing)).order).toEqual(order)
      const mirrored = stitchOf(id).mirror
      expect(follow(steps(mirrored, 'counterclockwise', crossing)).order).toEqual(order)
    }
  })

  it('work every loop once, and come to the same order by both habits', () => {
    for (const stitch of crosses)
      for (const direction of directions) {
        const [first, second] = crossings.map((crossing) => {
          const { order, worked } = follow(
            stepsOfStitch(stitch, habitsOf(direction, crossing), 'forward'),
          )
          expect(worked.toSorted(), stitch.id).toEqual(order.toSorted())
          return order
        })
        expect(first, stitch.id).toEqual(second)
      }
  })

  it('name pegs in working order, so that going back takes the moves of the other direction', () => {
    for (const stitch of crosses)
      for (const crossing of crossings)
        expect(stepsOfStitch(stitch, habitsOf('clockwise', crossing), 'back')).toBe(
          stepsOfStitch(stitch, habitsOf('counterclockwise', crossing), 'forward'),
        )
  })

  it('say which loops are purled', () => {
    expect(steps('1/1 LPC', 'clockwise')).toMatch(/purl peg 1; knit peg 2\.$/)
    expect(steps('1/1 RPC', 'clockwise')).toMatch(/knit peg 1; purl peg 2\.$/)
    expect(steps('1/1 LPPC', 'clockwise')).toMatch(/purl pegs 1 and 2\.$/)
  })
})

describe('the steps of decreases', () => {
  // Common practice: loops lifted together show the lowest one. Peg 1 is the right-hand one of
  // the pair when work goes right to left.
  it.each([
    [
      'yo, k2tog',
      'k2tog',
      'move the loop of peg 1 to peg 2, on top; knit both loops of peg 2 as one',
    ],
    ['ssk, yo', 'ssk', 'move the loop of peg 2 to peg 1, on top; knit both loops of peg 1 as one'],
    [
      'k2tog, yo',
      'k2tog',
      'move the loop of peg 2 to peg 1, underneath; knit both loops of peg 1 as one',
    ],
    [
      'yo, ssk',
      'ssk',
      'move the loop of peg 1 to peg 2, underneath; knit both loops of peg 2 as one',
    ],
  ])('%s, right to left', (pair, id, moves) => {
    const yarnOver = stitchOf('yo')
    const uses = [pair.startsWith('yo') ? [yarnOver, 'own' as const] : ['own' as const, yarnOver]]
    expect(stepsOfStitch(stitchOf(id), habitsOf('clockwise'), 'forward', 'us', uses)).toBe(
      `${pair} (over 2 pegs, counted in the order you work them): ${moves}.`,
    )
  })

  it('change the order of the loops with the direction', () => {
    for (const id of ['k2tog', 'ssk', 'p2tog', 'ssp', 'k3tog', 'sk2p']) {
      const [one, other] = directions.map((direction) => steps(id, direction))
      expect(one, id).not.toBe(other)
      expect(steps(id, 'clockwise', 'move then knit', 'back'), id).toBe(other)
    }
  })

  it('are the same both ways by plain transfer', () => {
    const plain = (direction: Direction): Habits => ({ ...habitsOf(direction), transfer: 'plain' })
    for (const id of ['k2tog', 'ssk', 'cdd', 'k3tog']) {
      const [one, other] = directions.map((direction) =>
        stepsOfStitch(stitchOf(id), plain(direction), 'forward'),
      )
      expect(one, id).toBe(other)
      expect(one).not.toContain('underneath')
    }
  })
})

describe('the steps of every stitch', () => {
  it('are said in whole sentences', () => {
    for (const stitch of standardVocabulary.stitches)
      for (const direction of directions)
        expect(stepsOfStitch(stitch, habitsOf(direction), 'forward'), stitch.id).toMatch(/^\w.*\.$/)
  })

  it('tell the plain knit in the way the pattern knits', () => {
    const flat = stepsOfStitch(stitchOf('k'), { ...habitsOf('clockwise'), knit: 'flat' }, 'forward')
    expect(flat).toBe(`Flat knit in this pattern. ${languages.us.steps(stitchOf('fk'))}`)
  })
})
