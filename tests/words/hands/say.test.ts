import { describe, expect, test } from 'vitest'
import type { Direction } from '../../../src/loom/direction'
import type { Row } from '../../../src/pattern/pattern'
import { rowOf } from '../helpers'
import { back, piece, said } from './helpers'

/**
 * The sentences expected here are worked out by hand from how each stitch is made (common
 * practice). Clockwise work runs right to left, so higher peg numbers lie to the left.
 */
const knit = (peg: number): string =>
  `Knit peg ${peg}: lay the yarn across the front of the peg and partly round it, above the loop, and lift the loop over the yarn and off the peg.`
const knitAsOne = (peg: number, what: string): string =>
  `Knit ${what} on peg ${peg} as one: lay the yarn across the front of the peg and partly round it, above them, and lift ${what} over the yarn and off the peg.`
const take = (peg: number): string =>
  `Take the loop off peg ${peg} onto the spare needle and let it wait inside the loom.`
const putFirst = (peg: number): string =>
  `Of the loops on the spare needle, put the one that was taken first on peg ${peg}, passing behind the moved loops: it comes off the other end of the needle.`
const put = (peg: number): string =>
  `Put the waiting loop from the spare needle on peg ${peg}, passing behind the moved loops.`
const move = (from: number, way: string, to: number): string =>
  `Move the loop of peg ${from} two pegs to the ${way}, to the empty peg ${to}, passing in front of the waiting loops.`
const yarnOver = (peg: number): string =>
  `Lay the yarn across the front of the empty peg ${peg} and partly round it, and lift nothing over: this yarn over is the new loop there and leaves a hole.`
const underneath = (from: number, to: number): string =>
  `Lift the loop of peg ${to} off onto the spare needle inside the loom, put the loop of peg ${from} on peg ${to}, and put the loop from the needle back on top of it.`
const onTop = (from: number, way: string, to: number, what = 'the loop'): string =>
  `Move the loop of peg ${from} one peg to the ${way}, to peg ${to}, on top of ${what} there.`

const crossRow = rowOf('k*4, 2/2 LC, k*4')
const crossBack = rowOf('k*4, 2/2 LC, k*4', back)

describe('a 2/2 left cross: the right-hand two loops travel left in front', () => {
  const knitFirst = { crossing: 'knit then move' } as const
  const moveFirst = { crossing: 'move then knit' } as const

  test('right to left, knit then move', () => {
    expect(said(piece([crossRow], 'clockwise', knitFirst), '2/2 LC')).toEqual([
      'Carry the yarn behind pegs 5 and 6, inside the loom.',
      knit(7),
      knit(8),
      take(7),
      take(8),
      'Bring the yarn back behind pegs 8 to 5, inside the loom, ready for peg 5.',
      knit(5),
      knit(6),
      move(6, 'left', 8),
      move(5, 'left', 7),
      putFirst(5),
      put(6),
      'Carry the yarn behind pegs 7 and 8, inside the loom.',
    ])
  })

  test('left to right, knit then move', () => {
    expect(said(piece([crossRow], 'counterclockwise', knitFirst), '2/2 LC')).toEqual([
      take(5),
      take(6),
      'Carry the yarn behind pegs 5 and 6, inside the loom.',
      knit(7),
      knit(8),
      move(7, 'left', 5),
      move(8, 'left', 6),
      putFirst(7),
      put(8),
      'Bring the yarn back behind pegs 8 and 7, inside the loom, ready for peg 7.',
      knit(7),
      knit(8),
    ])
  })

  test('right to left, move then knit', () => {
    expect(said(piece([crossRow], 'clockwise', moveFirst), '2/2 LC')).toEqual([
      take(7),
      take(8),
      move(6, 'left', 8),
      move(5, 'left', 7),
      putFirst(5),
      put(6),
      knit(5),
      knit(6),
      knit(7),
      knit(8),
    ])
  })

  test('left to right, move then knit', () => {
    expect(said(piece([crossRow], 'counterclockwise', moveFirst), '2/2 LC')).toEqual([
      take(5),
      take(6),
      move(7, 'left', 5),
      move(8, 'left', 6),
      putFirst(7),
      put(8),
      knit(5),
      knit(6),
      knit(7),
      knit(8),
    ])
  })

  test('going back on a loom worked clockwise is going left to right, down the numbers', () => {
    expect(said(piece([crossBack], 'clockwise', knitFirst), '2/2 LC')).toEqual([
      take(8),
      take(7),
      'Carry the yarn behind pegs 8 and 7, inside the loom.',
      knit(6),
      knit(5),
      move(6, 'left', 8),
      move(5, 'left', 7),
      putFirst(6),
      put(5),
      'Bring the yarn back behind pegs 5 and 6, inside the loom, ready for peg 6.',
      knit(6),
      knit(5),
    ])
  })

  test('going back on a loom worked counterclockwise is going right to left', () => {
    expect(said(piece([crossBack], 'counterclockwise', knitFirst), '2/2 LC')).toEqual([
      'Carry the yarn behind pegs 8 and 7, inside the loom.',
      knit(6),
      knit(5),
      take(6),
      take(5),
      'Bring the yarn back behind pegs 5 to 8, inside the loom, ready for peg 8.',
      knit(8),
      knit(7),
      move(7, 'left', 5),
      move(8, 'left', 6),
      putFirst(8),
      put(7),
      'Carry the yarn behind pegs 6 and 5, inside the loom.',
    ])
  })
})

describe('a decrease with its yarn over: the lowest loop shows', () => {
  const row = (cells: string, more: Partial<Row> = {}) => rowOf(`k*4, ${cells}, k*2`, more)
  const table: readonly [string, Direction, Partial<Row>, string[]][] = [
    // k2tog leans right: its left loop lies lowest.
    ['k2tog, yo', 'clockwise', {}, [underneath(6, 5), knitAsOne(5, 'both loops'), yarnOver(6)]],
    [
      'k2tog, yo',
      'counterclockwise',
      {},
      [onTop(6, 'left', 5), knitAsOne(5, 'both loops'), yarnOver(6)],
    ],
    ['yo, k2tog', 'clockwise', {}, [onTop(5, 'left', 6), yarnOver(5), knitAsOne(6, 'both loops')]],
    ['k2tog, yo', 'clockwise', back, [underneath(6, 5), yarnOver(6), knitAsOne(5, 'both loops')]],
    // ssk leans left: its right loop lies lowest.
    ['ssk, yo', 'clockwise', {}, [onTop(6, 'right', 5), knitAsOne(5, 'both loops'), yarnOver(6)]],
    ['yo, ssk', 'clockwise', {}, [underneath(5, 6), yarnOver(5), knitAsOne(6, 'both loops')]],
    [
      'yo, cdd, yo',
      'clockwise',
      {},
      [
        onTop(5, 'left', 6),
        onTop(7, 'right', 6, 'both loops'),
        yarnOver(5),
        knitAsOne(6, 'all 3 loops'),
        yarnOver(7),
      ],
    ],
    [
      'yo, cdd, yo',
      'counterclockwise',
      {},
      [
        onTop(5, 'right', 6),
        onTop(7, 'left', 6, 'both loops'),
        yarnOver(5),
        knitAsOne(6, 'all 3 loops'),
        yarnOver(7),
      ],
    ],
  ]
  test.each(table)('%s, %s %o', (cells, direction, more, sentences) => {
    const all = said(piece([row(cells, more)], direction))
    const plain = [1, 2, 3, 4, 7, 8, 9].map(knit)
    expect(all.filter((text) => !plain.includes(text))).toEqual(sentences)
  })
})

describe('turns', () => {
  const out = (end: Row['end'], to: number) => rowOf('k*12', { run: { from: 3, to }, end })
  const home = (end: Row['end'], from: number) =>
    rowOf('k*12', { run: { from, to: 6 }, heading: 'back', end })

  test.each([
    ['clockwise', 'left to right'],
    ['counterclockwise', 'right to left'],
  ] as const)('a German turn, worked %s', (direction, way) => {
    expect(said(piece([out('German turn', 7)], direction))).toEqual([
      ...[4, 5, 6, 7, 8].map(knit),
      'Lay the yarn back across the front of peg 8, above its loop, towards peg 7, and partly round peg 8, so that its loop and this strand lie on peg 8 together (a German turn); they are worked as one later.',
      `Turn back: from here, work from ${way}, peg 7 first; the loom itself is not turned.`,
    ])
  })

  test('a German turn at the end of a row back', () => {
    expect(said(piece([home('German turn', 4)], 'clockwise'), null)).toEqual([
      'Lay the yarn back across the front of peg 5, above its loop, towards peg 6, and partly round peg 5, so that its loop and this strand lie on peg 5 together (a German turn); they are worked as one later.',
      'Turn back: from here, work from right to left, peg 6 first; the loom itself is not turned.',
    ])
  })

  test('the doubled loop is worked as one', () => {
    const rows = [
      out('German turn', 7),
      home('German turn', 4),
      rowOf('k*12', { run: { from: 5, to: 8 } }),
    ]
    expect(said(piece(rows))).toEqual([
      knit(6),
      knit(7),
      knitAsOne(8, 'the loop and the strand over it'),
      knit(9),
    ])
  })

  test.each([
    ['clockwise', 'left to right'],
    ['counterclockwise', 'right to left'],
  ] as const)('a wrap, worked %s', (direction, way) => {
    expect(said(piece([out('wrap', 6)], direction))).toEqual([
      ...[4, 5, 6, 7].map(knit),
      'Take the loop off peg 8 onto the spare needle and let it wait inside the loom; lead the yarn behind the peg first, then across its front, back towards peg 7; put the loop back on top of that strand (a wrap).',
      `Turn back: from here, work from ${way}, peg 7 first; the loom itself is not turned.`,
    ])
  })

  test('a peg wrapped again keeps its wrap with its loop; they are lifted together', () => {
    const rows = [
      out('wrap', 6),
      home('wrap', 4),
      rowOf('k*12', { run: { from: 4, to: 6 }, end: 'wrap' }),
    ]
    expect(said(piece(rows), null)[0]).toBe(
      'Take the loop and its wrap off peg 8 onto the spare needle and let them wait inside the loom; lead the yarn behind the peg first, then across its front, back towards peg 7; put the loop and its wrap back on top of that strand (a wrap).',
    )
    const last = rowOf('k*12', { run: { from: 7, to: 7 }, heading: 'forward' })
    expect(said(piece([...rows, last]))).toEqual([knitAsOne(8, 'the loop and its 2 wraps')])
    expect(said(piece([rows[0] as Row, last]))).toEqual([knitAsOne(8, 'the loop and its wrap')])
  })

  test('the end of a bar is a turn too', () => {
    const flat = piece([rowOf('k*3')])
    const onBar = { ...flat, loom: { ...flat.loom, shape: 'bar' as const } }
    expect(said(onBar, null)).toEqual([
      'Turn back: from here, work from left to right, peg 3 first; the loom itself is not turned.',
    ])
  })
})

describe('other stitches', () => {
  test('a bobble: four times on the same peg, its base lifted back, all as one', () => {
    expect(said(piece([rowOf('k*4, mb')]), 'mb')).toEqual([
      knit(5),
      knit(5),
      knit(5),
      knit(5),
      'Lift the lowest of the loops just knitted on peg 5 back onto the peg, so that two loops lie on it.',
      knitAsOne(5, 'both loops'),
    ])
  })

  test.each([
    ['clockwise', 'left'],
    ['counterclockwise', 'right'],
  ] as const)('kfb puts its second loop on the next peg, worked %s', (direction, side) => {
    expect(said(piece([rowOf('k2tog, kfb, k')], direction), 'kfb')).toEqual([
      `Draw a new loop of the yarn through the loop on peg 2 and put it on the empty peg 3 to the ${side}; the old loop stays on peg 2.`,
      'Knit peg 2 by e-wrap: wind the yarn once round the peg so that it crosses itself, above the loop, and lift the loop over the yarn and off the peg.',
      'Carry the yarn behind peg 3, inside the loom.',
    ])
  })

  test('kfb on the way back', () => {
    expect(said(piece([rowOf('k, kfb, k2tog', back)]), 'kfb')).toEqual([
      'Draw a new loop of the yarn through the loop on peg 3 and put it on the empty peg 2 to the right; the old loop stays on peg 3.',
      'Knit peg 3 by e-wrap: wind the yarn once round the peg so that it crosses itself, above the loop, and lift the loop over the yarn and off the peg.',
      'Carry the yarn behind peg 2, inside the loom.',
    ])
  })

  test.each([
    ['m1l', 'left'],
    ['m1r', 'right'],
  ])('%s lifts the bar, twisted', (id, side) => {
    expect(said(piece([rowOf(`k2tog, ${id}, k`)]), id)).toEqual([
      `Lift the strand of yarn that lies beside peg 2, below its neighbour’s loop, onto the empty peg 2, twisted to the ${side}.`,
      knit(2),
    ])
  })

  test('slips and tucks', () => {
    expect(said(piece([rowOf('k, sl, slf, tuck, k')]))).toEqual([
      knit(1),
      'Leave the loop on peg 2 as it is and carry the yarn behind peg 2, inside the loom.',
      'Take the loop off peg 3, lay the yarn behind the peg but in front of the fabric, and put it back.',
      'Lay the yarn across the front of peg 4 and partly round it, above the loop, and lift nothing over (a tuck): both are worked as one later.',
      knit(5),
    ])
    expect(said(piece([rowOf('k*3, tuck, k'), rowOf('k*5')]))[3]).toBe(knitAsOne(4, 'both strands'))
  })

  // The four ways to knit and the two to purl, in the words of common practice.
  test.each([
    [
      'ew',
      /^Knit peg 1 by e-wrap: wind the yarn once round .* crosses itself.* lift the loop over/,
    ],
    ['fk', /^Knit peg 1 by flat knit: lay the yarn straight across the front .* above the loop/],
    [
      'tk',
      /^Knit peg 1 by true knit: lay the yarn above .* hook up through the loop, draw a new loop/,
    ],
    [
      'p',
      /^Purl peg 1: lay the yarn below the loop, put the hook down through the loop, draw a new/,
    ],
    [
      'ptbl',
      /^Purl peg 1, twisted: twist the loop once on the peg; then lay the yarn below the loop/,
    ],
  ])('%s', (id, words) => {
    expect(said(piece([rowOf(`${id}, k, k`)]), id)[0]).toMatch(words)
  })

  test('the pattern’s own knit is just "knit"', () => {
    expect(said(piece([rowOf('k, ew, p')], 'clockwise', { knit: 'e-wrap' })).slice(0, 2)).toEqual(
      [1, 2].map(
        (peg) =>
          `Knit peg ${peg}: wind the yarn once round the peg so that it crosses itself, above the loop, and lift the loop over the yarn and off the peg.`,
      ),
    )
  })
})
