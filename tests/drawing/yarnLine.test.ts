import { withChart } from '../../src/pattern/edits/chart'
import { describe, expect, test } from 'vitest'
import { flatChart, type FlatScene } from '../../src/drawing/flat'
import type { Point } from '../../src/drawing/path'
import { ringChart, type RingScene } from '../../src/drawing/ring'
import type { Scene } from '../../src/drawing/scene'
import { directions } from '../../src/loom/direction'
import { setRun } from '../../src/pattern/edits/turning'
import { makeShortRows } from '../../src/pattern/generate/shortRows'
import { usualHeel } from '../../src/pattern/generate/wish'
import { type ShortRowWish } from '../../src/pattern/pattern'
import { newPattern, type LoomSetup, type Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { workSection } from '../pattern/generate/sections'

const empty = newPattern(24, 4)
const made = makeShortRows(empty.loom, usualHeel(empty.loom))
if (!made.ok) throw new Error(made.message)
const heel: Pattern = withChart(empty, { rows: made.rows })

const yarnOf = (pattern: Pattern) =>
  flatChart(workPattern(pattern)).layers.find(({ key }) => key === 'yarn')?.items ?? []

test('a chart of whole rounds has no line of yarn', () => {
  expect(yarnOf(empty)).toEqual([])
})

/**
 * Sections and the way of their yarn, by hand, pegs numbered from 1: row by row from the first peg
 * worked to the last, a comma where the row turns, a bar where the line ends. A wrapped peg is not
 * worked: the row ends before it and the next one begins there.
 */
const heelWish = {
  beside: null,
  shape: 'heel',
  run: { from: 1, to: 6 },
  turned: 2,
  step: 1,
  sides: 'both',
} as const
const ways: readonly [string, Partial<LoomSetup> & { pegs: number }, ShortRowWish, string][] = [
  [
    'a heel of German turns',
    { pegs: 12, shape: 'ring' },
    { ...heelWish, turn: 'German turn', closeCorners: true },
    '1-7, 6-2, 3-6, 5-3, 4-7, 6-2, 3-8, 7-1, 2-12',
  ],
  [
    'a heel of wraps',
    { pegs: 12, shape: 'ring' },
    { ...heelWish, turn: 'wrap', closeCorners: true },
    '1-6, 6-3, 3-5, 5-4, 4-6, 6-3, 3-7, 7-2, 2-12',
  ],
  [
    'a heel whose lower corner lies over the join of the round',
    { pegs: 12, shape: 'ring' },
    { ...heelWish, run: { from: 0, to: 5 }, turned: 1, turn: 'German turn', closeCorners: true },
    '1-6, 5-1, 2-7, 6-1 | 12-12',
  ],
  [
    'a wedge of wraps on a bar',
    { pegs: 10, shape: 'bar' },
    { ...heelWish, shape: 'wedge', turn: 'wrap', closeCorners: false },
    '1-6, 6-3, 3-5, 5-4, 4-10',
  ],
  [
    'a wedge of German turns at the last peg of a bar',
    { pegs: 10, shape: 'bar' },
    {
      ...heelWish,
      shape: 'wedge',
      turn: 'German turn',
      run: { from: 0, to: 7 },
      turned: 3,
      step: 2,
      sides: 'last',
      closeCorners: false,
      beside: null,
    },
    '1-8, 7-1 | 1-6, 5-1 | 1-4, 3-1',
  ],
  [
    'a wedge of wraps at the first peg of a bar',
    { pegs: 10, shape: 'bar' },
    {
      ...heelWish,
      shape: 'wedge',
      turn: 'wrap',
      run: { from: 2, to: 9 },
      step: 3,
      sides: 'first',
      closeCorners: false,
      beside: null,
    },
    '10-4, 4-10 | 10-7, 7-10',
  ],
]

/** The lines of a drawing, each with its points; and the heads of its arrows. */
function linesOf({ layers }: Scene): { lines: Point[][]; heads: Point[][] } {
  const items = layers.find(({ key }) => key === 'yarn')?.items ?? []
  const [lines = [], heads = []] = items.map((item) =>
    item.kind === 'path' ? item.d.split('M').slice(1).map(pointsOf) : [],
  )
  return { lines, heads }
}

/** The cells that the line passes, in its order. */
const placesOf = ({ geometry, ...scene }: FlatScene | RingScene): number[][] =>
  linesOf(scene)
    .lines.flat()
    .map(([x, y]) => {
      const hit = geometry.at(x, y)
      return hit ? [hit.row, hit.peg] : []
    })

const pointsOf = (part: string): Point[] =>
  part.split(/[LZ]/).flatMap((pair) => {
    const [x, y] = pair.trim().split(' ').map(Number)
    return x === undefined || y === undefined ? [] : [[x, y] as const]
  })

describe.each(directions)('worked %s the yarn of', (direction) => {
  describe.each(ways)('%s', (_, loom, wish, way) => {
    const work = workSection(wish, { ...loom, direction })
    /** Rows that the yarn is followed along, and which of them begin a line. */
    const told = way.split(' | ').flatMap((line) =>
      line.split(', ').map((row, at) => {
        const [first = 0, last = 0] = row.split('-').map((peg) => Number(peg) - 1)
        return { first, last, begins: at === 0 }
      }),
    )
    /** Do pegs rise along a row? One of one peg only goes on as the row before. */
    const rises = (at: number): boolean => {
      const { first = 0, last = 0 } = told[at] ?? {}
      return first === last ? rises(at - 1) : last > first
    }
    const firstRow = wish.sides === 'first' ? 1 : 0

    test('begins, turns and ends where its rows do, in the row chart', () => {
      const scene = flatChart(work)
      const { geometry } = scene
      const { lines, heads } = linesOf(scene)
      expect(lines).toHaveLength(told.filter(({ begins }) => begins).length)
      expect(heads).toHaveLength(told.length)
      const points = lines.flat()
      expect(points).toHaveLength(2 * told.length)
      const { width, height } = geometry.cellOf(0)
      // Rows upwards; peg 1 at the right on a loom worked clockwise, else at the left.
      const leftward = direction === 'clockwise'
      const middleOf = (peg: number) =>
        leftward ? geometry.right - (peg + 0.5) * width : geometry.left + (peg + 0.5) * width
      let at = 0
      for (const line of lines) {
        // A line begins anew where a row goes on and does not turn.
        expect(told[at]?.begins).toBe(true)
        for (let point = 0; point < line.length; point += 2, at++) {
          const { first = -1, last = -1 } = told[at] ?? {}
          const [from, to] = [line[point] as Point, line[point + 1] as Point]
          const toRight = rises(at) !== leftward
          const y = geometry.bottom - (at + firstRow + 0.5) * height
          expect([from[1], to[1]]).toEqual([expect.closeTo(y, 1), expect.closeTo(y, 1)])
          // In its first cell where the yarn comes in, in its last one past the middle.
          const into = (x: number, peg: number) => (x - middleOf(peg)) * (toRight ? 1 : -1)
          expect(into(from[0], first)).toBeGreaterThan(-width / 2)
          expect(into(from[0], first)).toBeLessThan(0)
          expect(into(to[0], last)).toBeGreaterThanOrEqual(0)
          expect(into(to[0], last)).toBeLessThan(width / 2)
          // The head has its tip there and points on the way.
          const [tip, ...base] = heads[at] as [Point, ...Point[]]
          expect(tip).toEqual(to)
          for (const [x] of base) expect((tip[0] - x) * (toRight ? 1 : -1)).toBeGreaterThan(0)
        }
      }
    })

    test('passes every peg of its rows in their order, in either chart', () => {
      const rows = told.map(({ first, last }, at) => {
        const step = last < first ? -1 : 1
        const pegs = Array.from({ length: Math.abs(last - first) + 1 }, (_, n) => first + n * step)
        return pegs.map((peg) => [at + firstRow, peg])
      })
      const ends = rows.flatMap((pegs) => [pegs[0], pegs.at(-1)])
      expect(placesOf(flatChart(work))).toEqual(ends)
      if (loom.shape !== 'ring') return
      const ring = placesOf(ringChart(work)).map((place) => place.join())
      expect(ring.filter((place, at) => place !== ring[at - 1])).toEqual(
        rows.flat().map((place) => place.join()),
      )
    })
  })
})

test('drawn from the last drawing it follows an edit of a short row', () => {
  const before = flatChart(workPattern(heel))
  const edited = setRun(heel, 2, { from: 3, to: 9 })
  const layer = (scene: typeof before) => scene.layers.find(({ key }) => key === 'yarn')
  expect(layer(flatChart(workPattern(edited), {}, before))).toEqual(
    layer(flatChart(workPattern(edited))),
  )
})

test('on a sheet that does not hold all of a row the line comes from its edge and goes on over it', () => {
  // Pegs 3 to 10 of the heel: its first row comes from peg 1 and turns on peg 13, beyond the sheet.
  const scene = flatChart(workPattern(heel), { slots: { from: 2, to: 9 } })
  const [line, heads] = scene.layers.find(({ key }) => key === 'yarn')?.items ?? []
  if (line?.kind !== 'path' || heads?.kind !== 'path') throw new Error('no yarn is drawn')
  const [first = ''] = line.d.split('M').filter(Boolean)
  const points = first.split('L').map((text) => text.trim().split(/[ ,]/).map(Number))
  const { point } = scene.geometry
  const [start, end] = [point(0, 0.5), point(8, 0.5)]
  expect(points[0]?.[0]).toBeCloseTo(start[0], 1)
  expect(points.at(-1)?.[0]).toBeCloseTo(end[0], 1)
  // Arrows stand only where a row ends on the sheet.
  const rows = workPattern(heel).firstRuns.filter(({ row, before }) => {
    const isPart = row.end !== 'on' || row.from > 0 || row.to < before.stacks.length - 1
    return isPart && row.from <= 9 && row.to >= 2
  })
  const ended = rows.filter(({ row, heading }) => {
    const last = heading === 'forward' ? row.to : row.from
    return last >= 2 && last <= 9
  })
  expect(ended.length).toBeLessThan(rows.length)
  expect(heads.d.split('Z').filter(Boolean)).toHaveLength(ended.length)
})
