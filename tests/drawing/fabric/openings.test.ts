import { describe, expect, test } from 'vitest'
import { fabricDrawing, type FabricDrawing } from '../../../src/drawing/fabric/fabric'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { secondOf } from '../../../src/pattern/pair'
import { pieceStretches } from '../../../src/pattern/stretches'
import { habitsOf } from '../../../src/pattern/habits'
import type { PatternRun } from '../../../src/pattern/work'
import { workPiece } from '../../../src/pattern/workPiece'
import { starterCharts } from '../../../src/shelf/seeds'
import { withSteps } from '../../words/piece/pieces'
import { pathsOf, shapesIn } from './helpers'
import { stitchOf } from '../../../src/stitches/vocabulary'

const mitt = (): Pattern => {
  const chart = starterCharts.find(({ id }) => id.startsWith('shingle'))
  if (!chart) throw new Error('no mitt among the starter charts')
  return chart.pattern()
}

const rowsOf = (pattern: Pattern): readonly PatternRun[] =>
  pieceStretches(workPiece(pattern)).flatMap((one) => (one.kind === 'row' ? [one.run] : []))

const draw = (pattern: Pattern): FabricDrawing =>
  fabricDrawing(rowsOf(pattern), habitsOf(pattern), pattern.loom, pattern.gauge)

/** Loops of the drawing with their height in the whole piece, in rows, from left to right. */
const loopsOf = ({ placed }: FabricDrawing) =>
  placed.flatMap(({ level, loops }, at) =>
    loops.map(({ kind, bound, open, home, head, bases }) => ({
      ...{ at, kind, bound, open, x: home, top: level + head.y },
      opened: Math.max(0, ...bases.map((base) => base.opened)),
    })),
  )

describe('the fabric of a mitt with an opening', () => {
  const drawing = draw(mitt())
  const loops = loopsOf(drawing)
  const bound = loops.filter((loop) => loop.bound)
  const castOn = loops.filter(({ kind, at }) => kind === 'cast-on' && at > 0)

  test('has a bound-off edge of six pegs below and a cast-on edge of the same pegs above it', () => {
    expect(bound).toHaveLength(6)
    expect(castOn.map(({ x }) => x)).toEqual(bound.map(({ x }) => x))
    // 25 rounds of the wrist lie below; two rows go by beside it.
    expect(bound.map(({ top }) => top)).toEqual(Array(6).fill(25))
    expect(castOn.map(({ top }) => top)).toEqual(Array(6).fill(27))
    expect(loops.filter(({ open, top }) => open && top < 49)).toEqual([])
  })

  test('shows nothing between the edges, and no loops led on over the gap', () => {
    const { geometry } = drawing
    const across = loops.filter(({ opened }) => opened > 0)
    expect(across).toEqual([])
    expect(geometry.opened).toBe(false)
    for (let peg = 26; peg <= 31; peg++)
      for (const row of [25, 26]) expect(geometry.centre(row, peg)).toBeNull()
    expect(geometry.centre(25, 25)).not.toBeNull()
    expect(geometry.centre(27, 26)).not.toBeNull()
  })

  test('has it at the right where the loom is worked to the right; in the second, on the other side', () => {
    expect(Math.max(...bound.map(({ x }) => x))).toBe(Math.max(...loops.map(({ x }) => x)))
    const first = mitt()
    const second = secondOf({ ...first, pair: 'mirrored' })
    const mirrored = loopsOf(draw(second))
    const edge = mirrored.filter((loop) => loop.bound).map(({ x }) => x)
    expect(edge).toHaveLength(6)
    expect(Math.min(...edge)).toBe(Math.min(...mirrored.map(({ x }) => x)))
  })
})

describe('pegs bound off and cast on again with no row between', () => {
  const six = { from: 4, to: 9 }
  const plain = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })
  const slit = withSteps(newPattern(24, 1), [
    { kind: 'cast on', how: 'e-wrap', pegs: null },
    plain(10),
    { kind: 'bind off', how: 'basic', pegs: six },
    { kind: 'cast on', how: 'e-wrap', pegs: six },
    plain(10),
    { kind: 'bind off', how: 'basic', pegs: null },
  ])
  const drawing = draw(slit)
  const loops = loopsOf(drawing)
  const bound = loops.filter((loop) => loop.bound)
  const castOn = loops.filter(({ kind, at }) => kind === 'cast-on' && at > 0)

  test('have a bound-off edge, a cast-on edge, and more than a row of nothing between', () => {
    expect(bound).toHaveLength(6)
    expect(castOn.map(({ x }) => x)).toEqual(bound.map(({ x }) => x))
    expect(new Set(bound.map(({ top }) => top))).toEqual(new Set([9]))
    expect(new Set(castOn.map(({ top }) => top))).toEqual(new Set([11]))
  })

  test('leave the ground of their columns open there, and all other columns whole', () => {
    const groundOf = (pattern: Pattern) => pathsOf(draw(pattern).scene.layers[0]?.items ?? [])
    const whole = withSteps(newPattern(24, 1), [
      { kind: 'cast on', how: 'e-wrap', pegs: null },
      plain(20),
      { kind: 'bind off', how: 'basic', pegs: null },
    ])
    expect(shapesIn(groundOf(whole))).toBe(1)
    // At the right of them, at the left, and below and above the slit on each peg.
    expect(shapesIn(groundOf(slit))).toBe(2 + 2 * 6)
  })

  test('the rows beside lie closer, and the piece is no higher for it', () => {
    expect(drawing.geometry.cloth.height).toBe(20 * drawing.geometry.stitch.height)
    expect(drawing.geometry.opened).toBe(false)
    const column = loops.filter(({ x }) => x === bound[0]?.x).map(({ top }) => top)
    const apart = column.toSorted((a, b) => a - b).map((top, i, all) => top - (all[i - 1] ?? -1))
    expect(Math.min(...apart)).toBeCloseTo(2 / 3)
    expect(Math.max(...apart)).toBe(2)
    expect(column.at(-1)).toBe(20)
  })
})
