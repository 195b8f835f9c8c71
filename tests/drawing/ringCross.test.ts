import { describe, expect, test } from 'vitest'
import { crossSetting } from '../../src/drawing/ringCross'
import { ringGeometry } from '../../src/drawing/ring'
import { newPattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'

const sizes = [
  [36, 12],
  [24, 30],
  [80, 8],
] as const

describe.each(sizes)('a cross in a ring of %d pegs and %d rounds', (pegs, rounds) => {
  test.each(['outside', 'inside'] as const)(
    'keeps its form in every round, cast-on edge %s',
    (castOn) => {
      const geometry = ringGeometry(workPattern(newPattern(pegs, rounds)), { castOn })
      const [x, y] = geometry.centrePoint
      for (let row = 0; row < rounds; row++)
        for (const columns of [2, 4, 8]) {
          const cell = geometry.cellOf(row)
          const point = (u: number, v: number) => {
            const [px, py] = geometry.point(u, v)
            return [px - x, py - y] as const
          }
          const { setting, ratio } = crossSetting(3, columns, {
            slots: geometry.slots,
            point,
            row,
            cell,
          })
          const far = (a: readonly [number, number], b: readonly [number, number]) =>
            Math.hypot(a[0] - b[0], a[1] - b[1])
          const { place } = setting
          const middle = columns / 2
          // As high as its row, and no wider for that than it is read.
          expect(far(place(middle, 0), place(middle, 1))).toBeCloseTo(cell.height)
          expect(ratio).toBeGreaterThanOrEqual(0.6 - 1e-9)
          expect(far(place(middle, 0.5), place(middle + 1, 0.5)) / cell.height).toBeLessThan(1.67)
          // In the middle of its own cells, the right side up and not mirrored.
          const up = geometry.point(3 + middle, row + 0.9)
          expect(far(place(middle, 0.1), [up[0] - x, up[1] - y])).toBeLessThan(0.3 * cell.height)
          const aside = point(3 + middle + (geometry.slots.leftward ? -0.4 : 0.4), row + 0.5)
          expect(far(place(middle + 0.4, 0.5), aside)).toBeLessThan(
            far(place(middle - 0.4, 0.5), aside),
          )
        }
    },
  )
})
