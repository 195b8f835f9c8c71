/** The arrows of step pictures head where the work goes, in both directions and headings. */
import { describe, expect, test } from 'vitest'
import { levels } from '../../../src/drawing/pegs/band'
import { stepPicture } from '../../../src/drawing/pegs/figures/step'
import type { StripDrawing } from '../../../src/drawing/pegs/strip/strip'
import type { Item } from '../../../src/drawing/scene'
import { directions, headings } from '../../../src/loom/direction'
import { knits, type Knit } from '../../../src/loom/move'
import { crossings } from '../../../src/loom/row'
import type { Moment } from '../../../src/loom/walk'
import type { LoomSetup } from '../../../src/pattern/pattern'
import { standardVocabulary } from '../../../src/stitches/vocabulary'
import { cellsOf } from '../../arbitraries'
import { endsOf, layer, piece, plain } from './figures'
import { castOnWalk, lastWalk } from './walks'

type Ends = readonly [from: readonly [number, number], to: readonly [number, number]]

/** Where each shaft of the arrows begins and ends, mm. */
const shaftsIn = (picture: StripDrawing): readonly Ends[] =>
  layer(picture, 'move')
    .filter((item) => item.kind === 'path' && item.ink === 'note' && !item.fill)
    .filter((item) => item.kind === 'path' && item.d.includes('C'))
    .map((item) => endsOf(item) as unknown as Ends)

interface Headed {
  readonly what: string
  /** Across and down: 1 right or down, -1 left or up; null where it may be either. */
  readonly is: readonly (number | null)[]
  readonly wanted: readonly (number | null)[]
}

/** Where the work goes by this move: across, and down. */
function wayOf(
  before: Moment,
  { move, heading, gap }: Moment,
  { geometry: { x, xOfGap, leftward } }: StripDrawing,
): readonly [number | null, number | null] | null {
  const between = (from: number | null | undefined, to: number | null | undefined) =>
    typeof from !== 'number' || typeof to !== 'number' || from === to ? null : Math.sign(to - from)
  switch (move?.do) {
    case 'carry':
    case 'pass': {
      const across = between(xOfGap(before.gap), xOfGap(gap))
      return across === null ? null : [across, null]
    }
    case 'move':
    case 'draw': {
      const across = between(x(move.from), x(move.to))
      return across === null ? null : [across, null]
    }
    case 'cast on':
      return [leftward === (heading === 'forward') ? -1 : 1, null]
    case 'let go':
    case 'drop':
      return [null, -1]
    case 'take':
      return [null, move.to === 'inside' ? -1 : 1]
    case 'put':
      return [null, before.needle[0]?.side === 'inside' ? 1 : -1]
    default:
      return null
  }
}

/** All arrows of a walk whose way is known, with the way that they should head. */
function headedIn(moments: readonly Moment[], loom: LoomSetup): readonly Headed[] {
  return moments.slice(1).flatMap((after, index) => {
    const before = moments[index] as Moment
    const picture = stepPicture(before, after, loom, { trail: moments.slice(0, index) })
    const way = wayOf(before, after, picture)
    if (!way) return []
    const shafts = shaftsIn(picture)
    // Around the needle and back there are several, each with a way of its own.
    if (shafts.length > 1) return []
    return shafts.map(([from, to]) => ({
      what: after.move?.do ?? '',
      is: way.map((one, axis) =>
        one === null ? null : Math.sign((to[axis] ?? NaN) - (from[axis] ?? NaN)),
      ),
      wanted: way,
    }))
  })
}

test('arrows of every stitch head where the loops and the yarn go', () => {
  // Any two of direction, heading and habit of crossing meet.
  const headed = standardVocabulary.stitches.flatMap((stitch) =>
    directions.flatMap((direction, one) =>
      headings.flatMap((heading, other) => {
        const made = piece(['k', 'k', ...cellsOf(stitch), 'k', 'k'], direction, { heading })
        const crossing = crossings[(one + other) % crossings.length] ?? 'knit then move'
        const pattern = { ...made, making: { ...made.making, crossing } }
        return headedIn(lastWalk(pattern), pattern.loom)
      }),
    ),
  )
  expect(headed.filter(({ is, wanted }) => is.join() !== wanted.join())).toEqual([])
  const seen = new Set(headed.map(({ what }) => what))
  expect([...seen].toSorted()).toEqual(['carry', 'draw', 'drop', 'move', 'pass', 'put', 'take'])
})

test.each(directions)('arrows of a cast-on head on along the pegs, worked %s', (direction) => {
  const pattern = piece(plain(6), direction)
  const headed = headedIn(castOnWalk(pattern, 'e-wrap'), pattern.loom)
  expect(headed.length).toBeGreaterThan(4)
  expect(headed.filter(({ is, wanted }) => is.join() !== wanted.join())).toEqual([])
})

describe('while a peg is worked', () => {
  const worked = (cell: string, knit: Knit): StripDrawing => {
    const made = piece(['k', 'k', cell, 'k', 'k'], 'clockwise')
    const pattern = { ...made, making: { ...made.making, knit } }
    const moments = lastWalk(pattern)
    const at = moments.findIndex(({ move }) => move?.do === 'work' && move.peg === 2)
    return stepPicture(moments[at - 1] as Moment, moments[at] as Moment, pattern.loom, {
      trail: moments.slice(0, at - 1),
    })
  }
  const lies = (item: Item | undefined) => item?.kind === 'path' && item.ink === 'peg' && item.fill

  // Common practice: a true knit and a purl are drawn through the loop, all wraps are knitted over.
  test.each(knits.map((knit) => ['k', knit, knit !== 'true'] as const))(
    '%s worked as %s: the old loop goes over the head: %s',
    (cell, knit, goesOver) => {
      expect(lies(layer(worked(cell, knit), 'move').at(-1))).toBe(goesOver)
    },
  )

  test('a purl never goes over the head', () => {
    for (const knit of knits) expect(lies(layer(worked('p', knit), 'move').at(-1))).toBe(false)
  })

  test.each([
    ['k', 'true', 'down', ['cast-on', 'knit'], 0],
    ['p', 'true', 'up', ['knit', 'cast-on'], 1],
  ] as const)('%s, worked as %s: the arrow goes %s through the old loop', (...one) => {
    const [cell, knit, way, kinds, old] = one
    const picture = worked(cell, knit)
    const { rim, unit } = picture.geometry
    const [shaft] = shaftsIn(picture)
    const [from, to] = [shaft?.[0][1] ?? NaN, shaft?.[1][1] ?? NaN]
    expect(to > from).toBe(way === 'down')
    const away = levels(kinds).map((level) => Math.abs((from + to) / 2 - rim - level * unit))
    expect(away.indexOf(Math.min(...away))).toBe(old)
  })
})

describe.each(directions)('strands laid on the way of a row, worked %s', (direction) => {
  /** Shafts of the arrows of the first laid strand: 1 where they head on with the row, -1 back. */
  const laidWay = (cells: readonly string[], rest: Parameters<typeof piece>[2]) => {
    const pattern = piece(cells, direction, rest)
    const moments = lastWalk(pattern)
    const at = moments.findIndex(({ move }) => move?.do === 'lay')
    const [before, after] = [moments[at - 1] as Moment, moments[at] as Moment]
    const picture = stepPicture(before, after, pattern.loom, { trail: moments.slice(0, at - 1) })
    const { leftward } = picture.geometry
    const onwards = leftward === (rest?.heading !== 'back') ? -1 : 1
    return shaftsIn(picture).map(([from, to]) => Math.sign(to[0] - from[0]) * onwards)
  }
  const runs = { forward: { from: 0, to: 4 }, back: { from: 4, to: 8 } } as const

  test.each(headings)('a yarn over and a tuck head on: %s', (heading) => {
    for (const cell of ['yo', 'tuck'])
      expect(laidWay(['k', 'k', cell, 'k', 'k'], { heading })).toEqual([1])
  })

  // From memory: a wrap goes behind the peg first and comes back across its front.
  test.each(headings)('a wrap goes on behind the peg and back across its front: %s', (heading) => {
    // The first and the last arrow bring the loops to the needle and back.
    const way = laidWay(plain(9), { run: runs[heading], heading, end: 'wrap' })
    expect(way.slice(1, -1)).toEqual([1, -1])
  })
})
