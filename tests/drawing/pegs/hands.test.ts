import { describe, expect, test } from 'vitest'
import { post } from '../../../src/drawing/pegs/band'
import { stepPicture } from '../../../src/drawing/pegs/figures/step'
import type { StripDrawing } from '../../../src/drawing/pegs/strip/strip'
import { directions } from '../../../src/loom/direction'
import { crossings } from '../../../src/loom/row'
import { crosses } from '../../../src/stitches/crosses'
import type { Moment } from '../../../src/loom/walk'
import type { Pattern } from '../../../src/pattern/pattern'
import { cellsOf } from '../../arbitraries'
import { stitchOf } from '../../../src/stitches/vocabulary'
import { lastWalk } from './walks'
import { drawn, endsOf, layer, piece, plain, yOf } from './figures'

describe('what passes in front in a cross', () => {
  const all = directions.flatMap((direction) =>
    crossings.flatMap((crossing) => crosses.map(({ id }) => [direction, crossing, id] as const)),
  )
  const crossPiece = ([direction, crossing, id]: (typeof all)[number]): Pattern => {
    const pattern = piece(['k', 'k', ...cellsOf(stitchOf(id)), 'k', 'k'], direction)
    return { ...pattern, making: { ...pattern.making, crossing } }
  }

  test('the moved loops go before the pegs, below their heads, and it is written there', () => {
    for (const way of all) {
      const pattern = crossPiece(way)
      const picture = drawn(lastWalk(pattern), pattern, 'move')
      const { heads, rim, unit } = picture.geometry
      const lines = layer(picture, 'move').filter(
        (item) => item.kind === 'path' && item.ink === 'note' && !item.fill,
      )
      const pegHeads = heads + post.headHigh * unit
      const heights = lines
        .filter((item) => item.kind === 'path' && !item.d.includes('a'))
        .flatMap((item) => yOf(item))
      expect(Math.min(...heights), way.join()).toBeGreaterThan(pegHeads)
      expect(Math.max(...heights), way.join()).toBeLessThan(rim)
      const [label, ...more] = layer(picture, 'outside').filter(({ kind }) => kind === 'text')
      expect(label).toMatchObject({ text: 'in front' })
      expect(more).toEqual([])
      // On the knitter's side of the rim, and not on the ball of yarn.
      if (label?.kind !== 'text') continue
      expect(label.y).toBeGreaterThan(rim)
      const wide = label.size * 4.2 * (label.anchor === 'end' ? -1 : 1)
      const [left, right] = [label.x, label.x + wide].toSorted((a, b) => a - b)
      const ball = picture.drawn.yarn ?? -Infinity
      expect((right ?? 0) < ball - 0.3 * unit || (left ?? 0) > ball + 0.3 * unit).toBe(true)
    }
  })

  test('the waiting loops go behind, from a needle right over their pegs', () => {
    for (const way of all) {
      const pattern = crossPiece(way)
      const moments = lastWalk(pattern)
      const picture = drawn(moments, pattern, 'put')
      const texts = layer(picture, 'outside').filter(({ kind }) => kind === 'text')
      expect(texts).toMatchObject([{ text: 'behind' }])
      for (const text of texts)
        if (text.kind === 'text') expect(text.y).toBeLessThan(picture.geometry.heads)
      const numbers = layer(picture, 'move').flatMap((item) =>
        item.kind === 'text' ? [item.x] : [],
      )
      const pegs = moments.flatMap(({ move }) => (move?.do === 'put' ? [move.peg] : []))
      // Numbers stand in the order of the pegs that they lead to, none of them before another.
      const sides = pegs.slice(1).map((peg, index) => {
        const [from, to] = [pegs[index] ?? 0, peg]
        return Math.sign((picture.geometry.x(to) ?? 0) - (picture.geometry.x(from) ?? 0))
      })
      const gaps = numbers.slice(1).map((at, index) => at - (numbers[index] ?? 0))
      expect(gaps.map(Math.sign), way.join()).toEqual(sides)
      for (const gap of gaps) expect(Math.abs(gap)).toBeGreaterThan(0.42 * picture.geometry.unit)
    }
  })

  test('no arrow is cut where another one crosses it', () => {
    for (const what of ['take', 'move', 'put'] as const) {
      const pattern = crossPiece(['clockwise', 'move then knit', '3/3 LC'])
      const items = layer(drawn(lastWalk(pattern), pattern, what), 'move')
      const firstLine = items.findIndex(({ ink }) => ink === 'note')
      const discs = items.findIndex((item) => item.kind === 'path' && item.d.includes('a'))
      expect(discs).toBeGreaterThan(firstLine)
      expect(items.slice(firstLine, discs).map(({ ink }) => ink)).not.toContain('ground')
    }
  })

  test.each(directions)(
    'the yarn is brought back before the last group is worked: %s',
    (direction) => {
      // The group behind is worked last where it comes first.
      const id = direction === 'clockwise' ? '2/2 RC' : '2/2 LC'
      const pattern = crossPiece([direction, 'knit then move', id])
      const moments = lastWalk(pattern)
      const last = moments.findLastIndex(({ site }) => site?.peg === 2)
      const [worked, again] = [moments[last - 1], moments[last]]
      expect([moments[last - 3]?.move?.do, moments[last - 2]?.move?.do]).toEqual(['put', 'carry'])
      expect([worked?.move?.do, again?.move?.do]).toEqual(['work', 'work'])
      expect(moments[last - 2]?.gap).toBe(4)
    },
  )
})

describe('what is lifted', () => {
  const decrease = piece(['k', 'k2tog', 'yo', 'k', 'k'], 'clockwise')
  const worked = (peg: number) => {
    const moments = lastWalk(decrease)
    const at = moments.findIndex(({ move }) => move?.do === 'work' && move.peg === peg)
    return stepPicture(moments[at - 1] as Moment, moments[at] as Moment, decrease.loom, {
      trail: moments.slice(0, at - 1),
    })
  }
  const lines = (picture: StripDrawing) =>
    layer(picture, 'move').filter(
      (item) => item.kind === 'path' && item.ink === 'note' && !item.fill,
    )

  test('two loops worked as one have a line along both of them', () => {
    expect(lines(worked(3))).toHaveLength(1)
    const picture = worked(1)
    const [along] = lines(picture)
    const { rim, unit } = picture.geometry
    const heights = new Set(yOf(along).map((y) => Math.round(((y - rim) / unit) * 100)))
    expect(heights.size).toBe(2)
    expect(lines(picture)).toHaveLength(2)
  })

  test('goes over the head: the tip is behind it, and nothing is drawn on the front', () => {
    const picture = worked(3)
    const items = layer(picture, 'move')
    expect(items.some((item) => item.kind === 'path' && item.dash !== undefined)).toBe(false)
    // The head of the peg lies before all of the arrow.
    expect(items.at(-1)).toMatchObject({ ink: 'peg', fill: true })
    const tip = items.findLast((item) => item.ink === 'note' && item.kind === 'path' && item.fill)
    const { heads } = picture.geometry
    expect(Math.max(...yOf(tip))).toBeGreaterThan(heads)
    expect(Math.min(...yOf(tip))).toBeLessThan(heads)
  })

  test('the hook leaves the number of its peg, the bracket and the page’s edge free', () => {
    for (const direction of directions) {
      const pattern = piece(plain(10), direction)
      const moments = lastWalk(pattern)
      for (let at = 1; at < moments.length; at++) {
        const { geometry, scene } = stepPicture(
          moments[at - 1] as Moment,
          moments[at] as Moment,
          pattern.loom,
          { trail: moments.slice(0, at - 1) },
        )
        const { rim, rimHigh, unit, x } = geometry
        const middle = x(at - 1) ?? 0
        const shaft = (scene.layers.find(({ key }) => key === 'move')?.items ?? []).filter(
          ({ ink }) => ink === 'tool',
        )
        const [start] = endsOf(shaft[0])
        const [, end] = endsOf(shaft.at(-1))
        const y = rim + rimHigh / 2
        const [sx, sy] = start ?? [0, 0]
        const [ex, ey] = end ?? [0, 0]
        const there = sx + ((ex - sx) * (y - sy)) / (ey - sy)
        expect(Math.abs(there - middle)).toBeGreaterThan(0.3 * unit)
        const half = 0.13 * unit
        expect(ey + half).toBeLessThan(scene.height)
        expect(ex - half).toBeGreaterThan(0)
        expect(ex + half).toBeLessThan(scene.width)
      }
    }
  })
})
