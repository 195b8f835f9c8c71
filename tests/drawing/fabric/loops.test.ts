import type { Row } from '../../../src/pattern/pattern'
import { withChart } from '../../../src/pattern/edits/chart'
import { chartOn } from '../../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { directions } from '../../../src/loom/direction'
import type { TracedLoop } from '../../../src/loom/trace'
import { workPattern } from '../../../src/pattern/work'
import { arbitraryOneChart } from '../../arbitraries'
import { piece } from '../../loom/pieces'
import { crossOrders } from '../../published/data/standards'
import { cells, turnedHeel } from '../pieces'
import { draw, pathsOf, place, pointsOf, rowLayers, shapesIn, traced } from './helpers'

/** Made and used up within one row: it lies inside the stitch that it became. */
const isInner = (loops: readonly TracedLoop[], { into, row }: TracedLoop): boolean =>
  into >= 0 && loops[into]?.row === row

const counted = (kinds: readonly string[]): Record<string, number> => {
  const counts: Record<string, number> = {}
  for (const kind of kinds) counts[kind] = (counts[kind] ?? 0) + 1
  return counts
}

describe('the loops of the fabric', () => {
  it('are those of the strands, row by row, each once', () => {
    fc.assert(
      fc.property(arbitraryOneChart({ rows: 5 }), (pattern) => {
        const { loops } = traced(pattern)
        const rows = place(pattern)
        const passes = workPattern(pattern).run.rows.length
        expect(rows).toHaveLength(passes + 1)
        rows.forEach(({ loops: drawn }, index) => {
          const made = loops.filter((loop) => loop.row === index - 1 && !isInner(loops, loop))
          const kinds = made.map(({ kind, site }) =>
            site && 'look' in site.stitch && site.stitch.look === 'bobble' ? 'bobble' : kind,
          )
          expect(counted(drawn.map(({ kind }) => kind))).toEqual(counted(kinds))
        })
      }),
      { numRuns: 60 },
    )
  })

  it('stand on the pegs where their row leaves them, peg 1 on its own side', () => {
    for (const direction of directions) {
      const rows = place(piece([cells(['k', 'p', 'k', 'k', 'p', 'p', 'p'])], { direction }))
      const kinds = rows[1]?.loops.map(({ kind }) => (kind === 'purl' ? 'p' : 'k')).join('')
      expect(kinds).toBe(direction === 'clockwise' ? 'pppkkpk' : 'kpkkppp')
      expect(rows[1]?.loops.map(({ head }) => head)).toEqual(
        [-3, -2, -1, 0, 1, 2, 3].map((x) => ({ x, y: 1 })),
      )
    }
  })

  it('come out of the loops below, where these stand', () => {
    const rows = place(piece([cells(['k', 'k', 'k', 'k']), cells(['k', 'p', 'k', 'p'])]))
    for (const { loops } of rows.slice(1))
      for (const { head, bases } of loops) {
        expect(bases).toHaveLength(1)
        expect(bases[0]).toMatchObject({ x: head.x, y: 0 })
      }
  })
})

describe('how stitches are drawn', () => {
  const legs = (pattern: ReturnType<typeof piece>, row: number) =>
    shapesIn(pathsOf(rowLayers(draw(pattern))[row + 1]?.items ?? [], 'loop'))

  it('two legs for a knitted loop; a bump more, and the strand between, for purled ones', () => {
    expect(legs(piece([cells(['k', 'k', 'k', 'k']), cells(['k', 'k', 'k', 'k'])]), 0)).toBe(8)
    expect(legs(piece([cells(['p', 'k', 'p', 'k']), cells(['k', 'k', 'k', 'k'])]), 0)).toBe(10)
    expect(legs(piece([cells(['p', 'p', 'p', 'p']), cells(['k', 'k', 'k', 'k'])]), 0)).toBe(15)
  })

  it('a slipped loop reaches over two rows; the yarn shows where it passes in front', () => {
    const slipped = (id: string) =>
      piece([cells(['k', 'k', 'k']), cells(['k', id, 'k']), cells(['k', 'k', 'k'])])
    for (const id of ['sl', 'slf']) {
      const rows = place(slipped(id))
      expect(rows[1]?.loops.map(({ head }) => head.y)).toEqual([1, 2, 1])
      expect(rows[2]?.loops).toHaveLength(2)
      expect(rows[3]?.loops.map(({ bases }) => bases[0]?.y)).toEqual([0, 0, 0])
    }
    expect(place(slipped('sl'))[2]?.bars).toEqual([])
    expect(place(slipped('slf'))[2]?.bars).toEqual([{ x: 0, y: 0 }])
  })

  it('a yarn over comes out of nothing, and a hole shows there', () => {
    const lace = piece([cells(['k', 'k2tog', 'yo', 'k', 'k'])])
    const yarnOver = place(lace)[1]?.loops.find(({ kind }) => kind === 'yarn over')
    expect(yarnOver?.bases).toEqual([{ x: yarnOver?.head.x, y: 0, opened: 0, laid: false }])
    const filled = (pattern: ReturnType<typeof piece>) =>
      (rowLayers(draw(pattern))[1]?.items ?? []).filter(
        (item) => item.kind === 'path' && item.ink === 'loop-edge' && item.fill,
      )
    expect(filled(lace)).toHaveLength(1)
    expect(filled(piece([cells(['k', 'k', 'k', 'k', 'k'])]))).toHaveLength(0)
  })

  it('of loops worked as one, the lowest shows in front: k2tog leans right, ssk left', () => {
    // Common practice: k2tog leans to the right as it is seen, ssk to the left.
    for (const direction of directions)
      for (const [id, way] of [
        ['k2tog', 1],
        ['ssk', -1],
      ] as const)
        for (const row of [
          ['k', 'yo', id, 'k', 'k'],
          ['k', id, 'yo', 'k', 'k'],
        ]) {
          const rows = place(piece([cells(['k', 'k', 'k', 'k', 'k']), cells(row)], { direction }))
          const gathered = rows[2]?.loops.find(({ bases }) => bases.length > 1)
          const [front, behind] = gathered?.bases ?? []
          expect(Math.sign((behind?.x ?? 0) - (front?.x ?? 0))).toBe(way)
          expect(gathered?.over).toBe(true)
        }
  })

  it('a bobble is one large bump', () => {
    const rows = place(piece([cells(['k', 'mb', 'k'])]))
    expect(rows[1]?.loops.map(({ kind }) => kind)).toEqual(['knit', 'bobble', 'knit'])
  })
})

describe('crosses', () => {
  const plain = ['k', 'k', 'k', 'k']

  /**
   * Published chart symbols show a cross as the right side looks: in a left cross the strands in
   * front lean to the left going up (Craft Yarn Council, knit chart symbols: 2/2 LC).
   */
  it.each([
    ['2/2 LC', -1],
    ['2/2 RC', 1],
  ] as const)('%s: the strands in front lean as its sign does', (id, way) => {
    for (const direction of directions) {
      const pattern = piece([plain, cells([id]), plain], { direction })
      const front = place(pattern)[2]?.loops.filter(({ depth }) => depth === 'front') ?? []
      expect(front).toHaveLength(2)
      for (const { head, bases } of front) expect(Math.sign(head.x - (bases[0]?.x ?? 0))).toBe(way)
      // The last strands of the row lie over the others: their legs go from base to head.
      const items = rowLayers(draw(pattern))[2]?.items ?? []
      const last = items.findLast((item) => item.kind === 'path' && item.ink === 'loop')
      const starts = last?.kind === 'path' ? last.d.split('M').slice(1) : []
      expect(starts).toHaveLength(4)
      for (const leg of starts) {
        const [foot, , , head] = pointsOf(leg)
        expect(Math.sign((head?.[0] ?? 0) - (foot?.[0] ?? 0))).toBe(way)
        expect(head?.[1]).toBeLessThan(foot?.[1] ?? 0)
      }
    }
  })

  it.each(crossOrders.values)('%s: each loop is drawn from the peg the order says', (id, order) => {
    const width = order.length
    const rows = place(
      piece([
        plain.slice(0, width).concat(['k', 'k', 'k', 'k']).slice(0, 6),
        cells([id, ...Array.from({ length: 6 - width }, () => 'k')]),
      ]),
    )
    // Clockwise: peg 1 is the last from the left. Places are compared in stitch widths, unbent.
    const { loops = [] } = rows[2] ?? {}
    const below = rows[1]?.loops ?? []
    order.forEach((old, peg) => {
      const loop = loops[5 - peg]
      expect(loop?.bases[0]?.x).toBe(below[5 - (old - 1)]?.head.x)
    })
  })
})

describe('short rows', () => {
  it('open the fabric, with faint lines to the loops that waited, and the title says so', () => {
    const heel = turnedHeel()
    expect(draw(heel).scene.title).toContain('opened flat at the short rows')
    const pattern = withChart(heel, {
      rows: [...chartOn(heel).rows.slice(0, 2), chartOn(heel).rows[0] as Row],
    })
    const last = place(pattern).at(-1)?.loops ?? []
    const opened = last.filter(({ bases }) => bases.some((base) => base.opened > 0))
    expect(opened).toHaveLength(4)
    const faint = rowLayers(draw(pattern)).at(-1)?.items ?? []
    expect(shapesIn(pathsOf(faint, 'grid'))).toBe(8)
  })

  it('a piece of whole rows is not opened', () => {
    expect(draw(piece([cells(['k', 'k', 'k'])])).scene.title).not.toContain('opened')
  })
})

describe('a strand that is followed', () => {
  it('has its tone on every row, where the simulator has it', () => {
    const cross = cells(['2/2 LC', '2/2 RC', 'k'])
    const plain = cells(['k', 'k', 'k', 'k', 'k', 'k', 'k', 'k', 'k'])
    const pattern = piece([plain, cross, plain, cells(['k', '2/2 LC', '2/2 RC']), plain])
    const follow = [3, 6]
    const rows = place(pattern, 0, follow)
    const { run } = workPattern(pattern)
    run.rows.forEach(({ after }, row) => {
      follow.forEach((wale, index) => {
        const peg = after.stacks.findIndex((stack) => stack.some((item) => item.wale === wale))
        const toned = rows[row + 1]?.loops.filter(({ tone }) => tone === index + 1) ?? []
        expect(toned).toHaveLength(1)
        // Clockwise with peg 1 in the middle: peg p stands p places to the left, round the tube.
        const seen = peg <= 4 ? -peg : 9 - peg
        expect(toned[0]?.home).toBe(seen)
        const layer = rowLayers(draw(pattern, { follow }))[row + 1]
        expect(
          shapesIn(pathsOf(layer?.items ?? [], index === 0 ? 'tone-1' : 'tone-2')),
        ).toBeGreaterThan(1)
      })
    })
  })
})
