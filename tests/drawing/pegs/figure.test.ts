import { withChart } from '../../../src/pattern/edits/chart'
import { chartOn } from '../../../src/pattern/charts'
import { describe, expect, test } from 'vitest'
import { levels, post } from '../../../src/drawing/pegs/band'
import { figurePicture, stepPicture } from '../../../src/drawing/pegs/figures/step'
import type { StripDrawing } from '../../../src/drawing/pegs/strip/strip'
import { rangeMark } from '../../../src/drawing/pegs/strip/rim'
import type { Item } from '../../../src/drawing/scene'
import { directions } from '../../../src/loom/direction'
import type { Moment } from '../../../src/loom/walk'
import type { Row } from '../../../src/pattern/pattern'
import { cellsOf } from '../../arbitraries'
import { stitchOf } from '../../../src/stitches/vocabulary'
import { bindOffWalk, lastWalk } from './walks'
import { drawn, endsOf, layer, piece, plain, textsIn, xOf } from './figures'

describe('a turn', () => {
  const ways = directions.flatMap((direction) =>
    (['forward', 'back'] as const).map((heading) => [direction, heading] as const),
  )

  test.each(ways)('a German turn lies high on the side of the next peg, %s %s', (...way) => {
    const [direction, heading] = way
    const run = heading === 'forward' ? { from: 0, to: 4 } : { from: 4, to: 8 }
    const pattern = piece(plain(9), direction, { run, heading, end: 'German turn' })
    const moments = lastWalk(pattern)
    const { drawn: shown, geometry } = drawn(moments, pattern, 'lay')
    const next = heading === 'forward' ? 3 : 5
    const side = Math.sign((geometry.x(next) ?? 0) - (geometry.x(4) ?? 0))
    const strand = shown.pegs.find(({ peg }) => peg === 4)?.bands.at(-1)
    expect(strand?.kind).toBe('German turn')
    const [low, high] = [...endsOf(strand?.before[0])].toSorted((a, b) => b[1] - a[1])
    expect(Math.sign(low?.[0] ?? 0)).toBe(-side)
    expect(Math.sign(high?.[0] ?? 0)).toBe(side)
  })

  test.each(ways)('the arrow comes the way the row went and heads back, %s %s', (...way) => {
    const [direction, heading] = way
    const run = heading === 'forward' ? { from: 0, to: 4 } : { from: 4, to: 8 }
    const pattern = piece(plain(9), direction, { run, heading, end: 'wrap' })
    const { geometry, scene } = drawn(lastWalk(pattern), pattern, 'turn')
    const [last, next] = heading === 'forward' ? [4, 5] : [4, 3]
    const onwards = Math.sign((geometry.x(next) ?? 0) - (geometry.x(last) ?? 0))
    const arrow = scene.layers
      .find(({ key }) => key === 'move')
      ?.items.find((item) => item.kind === 'path' && item.ink === 'note' && !item.fill)
    const x = xOf(arrow)
    expect(x).toHaveLength(4)
    expect([Math.sign((x[1] ?? 0) - (x[0] ?? 0)), Math.sign((x[3] ?? 0) - (x[2] ?? 0))]).toEqual([
      onwards,
      -onwards,
    ])
  })

  test.each(directions)('a German turn that waits goes on to the next peg, %s', (direction) => {
    const pattern = piece(plain(9), direction, { run: { from: 0, to: 4 }, end: 'German turn' })
    const [turned] = chartOn(pattern).rows
    const back: Row = { ...(turned as Row), run: { from: 2, to: 3 }, heading: 'back', end: 'on' }
    const rows = [turned as Row, back]
    const moments = lastWalk(withChart(pattern, { rows }))
    const { drawn: shown, geometry } = stepPicture(
      moments[1] as Moment,
      moments[2] as Moment,
      pattern.loom,
      { part: { from: 0, to: 6 } },
    )
    const strand = shown.pegs.find(({ peg }) => peg === 4)?.bands.at(-1)
    expect(strand?.kind).toBe('German turn')
    const away = (geometry.x(3) ?? 0) - (geometry.x(4) ?? 0)
    for (const item of strand?.behind ?? []) {
      const [from, to] = endsOf(item)
      // From behind the peg as far as the loop of the next one.
      expect(Math.abs(from?.[0] ?? Infinity)).toBeLessThanOrEqual(post.half * geometry.unit + 0.01)
      expect((to?.[0] ?? 0) / away).toBeGreaterThan(0.6)
      expect((to?.[0] ?? 0) / away).toBeLessThan(0.7)
    }
    expect(strand?.behind).not.toEqual([])
    // Both its ends lie at the peg, not in the air beside it.
    for (const [x] of endsOf(strand?.before[0]))
      expect(Math.abs(x)).toBeLessThan((post.half + 0.1) * geometry.unit)
  })

  test.each(ways)('the yarn leaves a wrap from below the loop, %s %s', (direction, heading) => {
    const run = heading === 'forward' ? { from: 0, to: 3 } : { from: 5, to: 8 }
    const pattern = piece(plain(9), direction, { run, heading, end: 'wrap' })
    const picture = drawn(lastWalk(pattern), pattern, 'lay')
    const { rim, unit } = picture.geometry
    const lowest = levels(['wrap', 'cast-on'])[0] ?? 0
    const starts = layer(picture, 'outside').map((item) => endsOf(item)[0]?.[1])
    expect(starts.some((y) => Math.abs((y ?? 0) - (rim + lowest * unit)) < 0.01)).toBe(true)
    // Off to the needle, round the peg, back again.
    expect(textsIn(layer(picture, 'move'))).toEqual(['1', '2', '3'])
    expect(textsIn(layer(picture, 'inside'))).toEqual(['inside'])
  })
})

describe('moves that are one figure', () => {
  test.each(directions)('each have a numbered arrow, worked %s', (direction) => {
    const pattern = piece(['k', ...cellsOf(stitchOf('3/3 LC')), 'k'], direction)
    const moments = lastWalk(pattern)
    for (const what of ['take', 'move', 'put'] as const)
      expect(textsIn(layer(drawn(moments, pattern, what), 'move'))).toEqual(['1', '2', '3'])
  })

  test('loops that were put back are shown on the needle as they were', () => {
    const pattern = piece(['k', ...cellsOf(stitchOf('2/2 LC')), 'k'], 'clockwise')
    const moments = lastWalk(pattern)
    const put = drawn(moments, pattern, 'put')
    expect(put.drawn.needle).toEqual([])
    const dashed = (items: readonly Item[]) =>
      items.filter((item) => item.kind === 'path' && item.dash !== undefined)
    expect(dashed(layer(put, 'inside'))).toHaveLength(2)
    // Both loops that were put are in the tone of what the move is about.
    const toned = put.drawn.pegs.filter(({ bands }) =>
      bands.some(({ before }) => before.some(({ ink }) => ink === 'tone-1')),
    )
    expect(toned.map(({ peg }) => peg).toSorted()).toEqual([1, 2])
  })

  test('loops that were moved are shown where they were', () => {
    const pattern = piece(['k', ...cellsOf(stitchOf('2/2 LC')), 'k'], 'clockwise')
    const { scene } = drawn(lastWalk(pattern), pattern, 'move')
    const left = scene.layers.filter(({ key }) => key.startsWith('left ')).map(({ key }) => key)
    expect(left.toSorted()).toEqual(['left 2', 'left 3'])
  })

  test('the spare needle has two points', () => {
    const pattern = piece(['k', ...cellsOf(stitchOf('2/2 LC')), 'k'], 'clockwise')
    const picture = drawn(lastWalk(pattern), pattern, 'take')
    const rod = layer(picture, 'inside').find(({ ink }) => ink === 'needle')
    const numbers = rod?.kind === 'path' ? (rod.d.match(/-?[\d.]+/g) ?? []).map(Number) : []
    const corners = Array.from({ length: numbers.length / 2 }, (_, i) => [
      numbers[2 * i] ?? 0,
      numbers[2 * i + 1] ?? 0,
    ])
    const xs = corners.map(([x]) => x ?? 0)
    for (const end of [Math.min(...xs), Math.max(...xs)])
      expect(corners.filter(([x]) => x === end)).toEqual([[end, picture.geometry.needle.inside]])
  })
})

describe('which pegs a figure shows', () => {
  const pattern = piece(plain(12), 'clockwise')
  const moments = lastWalk(pattern)
  const knit = (from: number, to: number) =>
    stepPicture(moments[from - 1] as Moment, moments[to] as Moment, pattern.loom, {
      moves: moments.slice(from, to + 1),
    })
  const pegsOf = (picture: StripDrawing) => picture.geometry.pegs.map((peg) => peg + 1)

  test('all of up to six, and a neighbour on each side', () => {
    expect(pegsOf(knit(3, 8))).toEqual([2, 3, 4, 5, 6, 7, 8, 9])
  })

  test('of a longer run those that come last', () => {
    expect(pegsOf(knit(1, 10))).toEqual([4, 5, 6, 7, 8, 9, 10, 11])
  })

  test('the last peg does not stand beside the first where work does not go over the join', () => {
    expect(pegsOf(knit(1, 1))).toEqual([1, 2, 3, 4, 5])
    expect(pegsOf(knit(12, 12))).toEqual([8, 9, 10, 11, 12])
  })

  test('a bracket stands under those that are meant, open where they go on', () => {
    const { geometry } = knit(3, 8)
    const ends = (pegs: readonly number[]) => endsOf(rangeMark(pegs, geometry)[0])
    const [left, right] = ends([2, 3, 4])
    // Clear of the yarn, which hangs half a unit away.
    const half = 0.34 * geometry.unit
    expect(left?.[0]).toBeCloseTo((geometry.x(4) ?? 0) - half, 1)
    expect(right?.[0]).toBeCloseTo((geometry.x(2) ?? 0) + half, 1)
    expect(left?.[1]).toBe(right?.[1])
    // Open: its end has no tick, so it lies lower than the other one.
    const [more, closed] = ends([7, 8, 9])
    expect(more?.[0]).toBeCloseTo(geometry.left, 1)
    expect(more?.[1]).toBeGreaterThan(closed?.[1] ?? Infinity)
    expect(rangeMark([11], geometry)).toEqual([])
  })
})

describe('the rim', () => {
  test.each(directions)('has a mark at peg 1 that points nowhere, worked %s', (direction) => {
    const pattern = piece(plain(8), direction)
    const moments = lastWalk(pattern)
    const picture = stepPicture(moments[0] as Moment, moments[1] as Moment, pattern.loom)
    const { x } = picture.geometry
    const marks = layer(picture, 'rim').filter(({ ink, kind }) => ink === 'note' && kind === 'path')
    expect(marks).toHaveLength(1)
    const numbers = marks.flatMap((item) =>
      item.kind === 'path' ? (item.d.match(/-?[\d.]+/g) ?? []).map(Number) : [],
    )
    const xs = numbers.filter((_, index) => index % 2 === 0)
    const [left, right] = [Math.min(...xs), Math.max(...xs)]
    // As much lies on the left of its middle as on the right.
    const inside = xs.filter((at) => at > left && at < right)
    for (const at of inside) expect(at).toBeCloseTo((left + right) / 2, 1)
    // On the side of peg 2: the hook comes up on the other one.
    const middle = (left + right) / 2
    expect(Math.sign(middle - (x(0) ?? 0))).toBe(Math.sign((x(1) ?? 0) - (x(0) ?? 0)))
  })

  test('numbers of eight pegs are read easily on a sheet', () => {
    const pattern = piece(plain(12), 'clockwise')
    const moments = lastWalk(pattern)
    const { scene } = stepPicture(moments[2] as Moment, moments[8] as Moment, pattern.loom, {
      moves: moments.slice(3, 9),
      width: 54.7,
    })
    const rim = scene.layers.find(({ key }) => key === 'rim')?.items ?? []
    const sizes = rim.flatMap((item) => (item.kind === 'text' ? [item.size] : []))
    expect(sizes).toHaveLength(8)
    // About 6.5 pt.
    expect(Math.min(...sizes)).toBeGreaterThan(2.3)
  })
})

describe('the picture of a figure', () => {
  const pattern = piece(plain(8), 'clockwise')

  test('is the step picture of its moves with what came before them', () => {
    const moments = bindOffWalk(pattern, 'three-needle')
    const scene = figurePicture(moments, { first: 3, last: 4 }, pattern.loom, { number: 2 })
    const step = stepPicture(moments[2] as Moment, moments[4] as Moment, pattern.loom, {
      number: 2,
      trail: moments.slice(0, 2),
      moves: moments.slice(3, 5),
    })
    expect(scene).toEqual(step.scene)
  })

  test('needs the moment before its first move', () => {
    const moments = lastWalk(pattern)
    const far = { first: 9, last: 30 }
    expect(() => figurePicture(moments, { first: 0, last: 2 }, pattern.loom)).toThrow(/0 to 2/)
    expect(() => figurePicture(moments, far, pattern.loom)).toThrow(/9 to 30 among 9 moments/)
  })
})
