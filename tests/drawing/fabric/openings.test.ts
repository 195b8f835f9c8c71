import { describe, expect, test } from 'vitest'
import { fabricDrawing, type FabricDrawing } from '../../../src/drawing/fabric/fabric'
import type { Pattern } from '../../../src/pattern/pattern'
import { secondOf } from '../../../src/pattern/pair'
import { pieceStretches } from '../../../src/pattern/stretches'
import { habitsOf, type PatternRun } from '../../../src/pattern/work'
import { workPiece } from '../../../src/pattern/workPiece'
import { starterCharts } from '../../../src/shelf/seeds'

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
    const second = secondOf({ ...first, piece: { ...first.piece, pair: 'mirrored' } })
    const mirrored = loopsOf(draw(second))
    const edge = mirrored.filter((loop) => loop.bound).map(({ x }) => x)
    expect(edge).toHaveLength(6)
    expect(Math.min(...edge)).toBe(Math.min(...mirrored.map(({ x }) => x)))
  })
})
