import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FabricDrawing, FabricOptions } from '../../../src/drawing/fabric/fabric'
import { fabricDetails } from '../../../src/drawing/fabric/fabric'
import { writeSvg } from '../../../src/drawing/svg'
import { directions } from '../../../src/loom/direction'
import { mirror } from '../../../src/pattern/edits/mirror'
import { reverseDirection } from '../../../src/pattern/edits/turn-round'
import type { Pattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { arbitraryOneChart } from '../../arbitraries'
import { editedPiece } from '../../edits'
import { arbitraryBalancedCells, arbitrarySteadyCells, piece } from '../../loom/pieces'
import { ribCuff, withCell } from '../pieces'
import { draw, drawWork, pathsOf, place, pointsOf, rowLayers } from './helpers'

const arbitrarySetup = fc.record({
  shape: fc.constantFrom('ring' as const, 'bar' as const),
  direction: fc.constantFrom(...directions),
})

/** Knit front and back draws its new loop to the peg worked next, so it has a side. */
const hasNoSide = (rows: readonly string[][]): boolean => !rows.flat().includes('kfb')

const arbitraryOptions: fc.Arbitrary<FabricOptions> = fc.record({
  detail: fc.constantFrom(...fabricDetails),
  view: fc.constantFrom('flat' as const, 'tube' as const),
  follow: fc.constantFrom([], [2], [4, 1, 7]),
})

const drawn = (pattern: Pattern, options: FabricOptions): string[] =>
  rowLayers(draw(pattern, options)).map(({ items }) => JSON.stringify(items))

// Whole rows; what is true of short rows stands in heelLaws.test.ts.
describe('reversing the working direction', () => {
  it('leaves the drawing as it is, row by row, when the same place stays in the middle', () => {
    fc.assert(
      fc.property(
        fc.array(arbitraryBalancedCells(12), { minLength: 1, maxLength: 6 }),
        arbitrarySetup,
        fc.constantFrom(...fabricDetails),
        fc.constantFrom('flat' as const, 'tube' as const),
        fc.option(fc.nat(11)),
        (rows, loom, detail, view, middle) => {
          fc.pre(hasNoSide(rows))
          const pattern = piece(rows, loom)
          const turn = (peg: number | null) => (peg === null ? {} : { turn: peg })
          expect(
            drawn(reverseDirection(pattern), {
              detail,
              view,
              ...turn(middle === null ? null : 11 - middle),
            }),
          ).toEqual(drawn(pattern, { detail, view, ...turn(middle) }))
        },
      ),
      { numRuns: 100 },
    )
  })
})

describe('mirroring the design', () => {
  it('mirrors every loop', () => {
    fc.assert(
      fc.property(
        fc.array(arbitrarySteadyCells(12), { minLength: 1, maxLength: 6 }),
        arbitrarySetup,
        (rows, loom) => {
          const pattern = piece(rows, loom)
          const turned = place(mirror(pattern)).map(({ loops }) =>
            loops
              .map(({ head, bases, ...rest }) => ({
                ...rest,
                home: -rest.home + 0,
                x: -head.x + 0,
                y: head.y,
                bases: bases.map((base) => ({ ...base, x: -base.x + 0 })),
              }))
              .sort((a, b) => a.home - b.home || (a.kind < b.kind ? -1 : 1)),
          )
          const own = place(pattern).map(({ loops }) =>
            loops.map(({ head, ...rest }) => ({ ...rest, ...head })),
          )
          turned.forEach((loops, row) => {
            expect(loops).toHaveLength(own[row]?.length ?? -1)
            loops.forEach((loop, i) => {
              const other = own[row]?.[i]
              expect(loop.kind).toBe(other?.kind)
              expect(loop.depth).toBe(other?.depth)
              expect(loop.x).toBeCloseTo(other?.x ?? NaN, 6)
              expect(loop.y).toBe(other?.y)
              loop.bases.forEach((base, n) => {
                expect(base.x).toBeCloseTo(other?.bases[n]?.x ?? NaN, 6)
                expect(base.y).toBe(other?.bases[n]?.y)
              })
            })
          })
        },
      ),
    )
  })

  it('draws the mirrored points', () => {
    const lace = piece([
      ['k', 'k', 'k2tog', 'yo', 'p', 'p', 'k', 'k'],
      ['k', '2/2 LC', '', '', '', 'p', 'k', 'sl'],
      ['p', '2/1 RPC', '', '', 'ssk', 'yo', 'k', 'k'],
    ])
    for (const direction of directions)
      for (const detail of fabricDetails) {
        const pattern = { ...lace, loom: { ...lace.loom, direction } }
        const { scene } = draw(pattern, { detail })
        const points = (drawing: FabricDrawing, flip: boolean): string[] =>
          rowLayers(drawing)
            // A cast-on edge slants with the way it is made.
            .slice(1)
            .flatMap(({ y, items }) =>
              pointsOf(pathsOf(items)).map(
                ([px, py]) =>
                  `${Math.round((flip ? scene.width - px : px) * 20)} ${Math.round((y + py) * 20)}`,
              ),
            )
            .sort()
        const own = points(draw(pattern, { detail }), false)
        const other = points(draw(mirror(pattern), { detail }), true)
        expect(other).toHaveLength(own.length)
        const missing = own.filter((point) => !other.includes(point))
        // Rounding to hundredths may tip a few over.
        expect(missing.length).toBeLessThanOrEqual(own.length * 0.02)
      }
  })

  it('twice is nothing', () => {
    fc.assert(
      fc.property(fc.array(arbitrarySteadyCells(9), { minLength: 1, maxLength: 4 }), (rows) => {
        const pattern = piece(rows)
        expect(drawn(mirror(mirror(pattern)), {})).toEqual(drawn(pattern, {}))
      }),
      { numRuns: 40 },
    )
  })
})

describe('a drawing made from the one before', () => {
  it('is the one made from nothing, after any edits', () => {
    fc.assert(
      fc.property(editedPiece(), arbitraryOptions, ([first, edits], options) => {
        let pattern = first
        let work = workPattern(pattern)
        let drawing = drawWork(work, options)
        for (const edit of edits) {
          pattern = edit(pattern)
          work = workPattern(pattern, work)
          drawing = drawWork(work, options, drawing)
          expect(writeSvg(drawing.scene)).toBe(writeSvg(draw(pattern, options).scene))
        }
      }),
      { numRuns: 30 },
    )
  })

  it('hands back the layers that look the same', () => {
    const before = workPattern(ribCuff())
    const after = workPattern(withCell(before.pattern, 7, 0, 'k'), before)
    const old = drawWork(before)
    const now = drawWork(after, {}, old)
    const changed = now.scene.layers.filter((layer, i) => layer !== old.scene.layers[i])
    expect(changed.map(({ key }) => key)).toEqual([`row-${before.run.rows.length - 1}`])
    expect(
      drawWork(after, {}, now).scene.layers.every((layer, i) => layer === now.scene.layers[i]),
    ).toBe(true)
  })
})

describe('any chart at all', () => {
  it('is drawn in numbers, a few paths for each row', () => {
    fc.assert(
      fc.property(
        arbitraryOneChart({ rows: 5, cut: true }),
        arbitraryOptions,
        (pattern, options) => {
          const { scene } = draw(pattern, options)
          for (const { items } of scene.layers) {
            expect(items.length).toBeLessThanOrEqual(40)
            expect(pathsOf(items)).not.toMatch(/NaN|Infinity|undefined/)
          }
          expect(scene.width).toBeGreaterThan(0)
          expect(scene.height).toBeGreaterThan(0)
        },
      ),
      { numRuns: 30 },
    )
  })
})
