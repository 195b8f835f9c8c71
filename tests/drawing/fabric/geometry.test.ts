import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { directions } from '../../../src/loom/direction'
import { workPattern } from '../../../src/pattern/work'
import { arbitrarySmallPiece } from '../../edits'
import { piece } from '../../loom/pieces'
import { cells, ribCuff } from '../pieces'
import { draw } from './helpers'

const knits = (pegs: number) => cells(Array.from({ length: pegs }, () => 'k'))

describe('places in the fabric', () => {
  it('are found again, flat and on the tube', () => {
    fc.assert(
      fc.property(
        arbitrarySmallPiece,
        fc.constantFrom('flat' as const, 'tube' as const),
        fc.option(fc.nat(40)),
        (pattern, view, middle) => {
          const turn = middle === null ? {} : { turn: middle % pattern.loom.pegs }
          const { geometry } = draw(pattern, { view, ...turn })
          workPattern(pattern).run.rows.forEach((run, row) => {
            for (let peg = 0; peg < pattern.loom.pegs; peg++) {
              const centre = geometry.centre(row, peg)
              if (centre) expect(geometry.at(...centre)).toEqual({ row, peg })
              else if (view === 'flat' || pattern.loom.shape === 'bar')
                expect(
                  peg >= run.row.from && peg <= run.row.to && run.after.stacks[peg]?.length,
                ).toBeFalsy()
            }
          })
        },
      ),
    )
  })

  it('have peg 1 on its own side, and the cast-on below', () => {
    for (const direction of directions) {
      const { geometry } = draw(piece([knits(9), knits(9)], { direction }))
      const [x0 = 0, y0 = 0] = geometry.centre(0, 0) ?? []
      const [x8 = 0] = geometry.centre(0, 8) ?? []
      const [, y1 = 0] = geometry.centre(1, 0) ?? []
      expect(x0 > x8).toBe(direction === 'clockwise')
      expect(y1).toBeLessThan(y0)
    }
  })

  it('stand apart as the gauge says, at true size or any other', () => {
    const pattern = ribCuff()
    for (const stitch of [undefined, 10]) {
      const { geometry } = draw(pattern, stitch === undefined ? {} : { stitch })
      const [x0 = 0, y0 = 0] = geometry.centre(0, 0) ?? []
      const [x1 = 0] = geometry.centre(0, 1) ?? []
      const [, y1 = 0] = geometry.centre(1, 0) ?? []
      // 22 stitches and 28 rows to 100 mm.
      expect(x0 - x1).toBeCloseTo(stitch ?? 100 / 22, 6)
      expect((y0 - y1) / (x0 - x1)).toBeCloseTo(22 / 28, 6)
    }
  })
})

describe('the tube', () => {
  it('shows its front half, the peg it is turned to in the middle, narrowing to the sides', () => {
    const pattern = piece([knits(25)])
    for (const turn of [0, 7, 20]) {
      const { geometry, scene } = draw(pattern, { view: 'tube', turn, stitch: 4 })
      const radius = (25 * 4) / (2 * Math.PI)
      const seen = Array.from({ length: 25 }, (_, peg) => peg).filter((peg) =>
        geometry.centre(0, peg),
      )
      expect(seen).toHaveLength(13)
      for (const peg of seen) {
        const [x = 0] = geometry.centre(0, peg) ?? []
        const angle = ((turn - peg) * 2 * Math.PI) / 25
        expect(x).toBeCloseTo(scene.width / 2 + radius * Math.sin(angle), 6)
      }
    }
  })

  it('a bar stays flat', () => {
    const bar = piece([knits(8)], { shape: 'bar' })
    expect(draw(bar, { view: 'tube', turn: 3 }).scene).toEqual(draw(bar).scene)
  })
})
