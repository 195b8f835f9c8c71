import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flatChart } from '../../src/drawing/flat'
import { ringChart } from '../../src/drawing/ring'
import type { Item, Layer, Scene } from '../../src/drawing/scene'
import { writeSvg } from '../../src/drawing/svg'
import type { Pattern } from '../../src/pattern/pattern'
import { workPattern, type Work } from '../../src/pattern/work'
import { editedPiece } from '../edits'
import { arbitraryPiece } from './arbitrary'
import { ribCuff, row, turnedHeel, withCell } from './pieces'
import { stitchOf } from '../../src/stitches/vocabulary'
import { copyOf } from '../cells'

const rowsOf = ({ layers }: Scene): Layer[] => layers.filter(({ key }) => key.startsWith('row-'))
const draw = { flat: flatChart, ring: ringChart }
/** A drawing, and the next version's made from it. */
const redrawn = {
  flat: (before: Work, after: Work) => {
    const old = flatChart(before)
    return { old, drawn: flatChart(after, {}, old) }
  },
  ring: (before: Work, after: Work) => {
    const old = ringChart(before)
    return { old, drawn: ringChart(after, {}, old) }
  },
}
const pathOf = (items: readonly Item[] | undefined, ink: Item['ink']): string =>
  (items ?? [])
    .flatMap((item) => (item.kind === 'path' && item.ink === ink ? [item.d] : []))
    .join('')
const dots = (d: string): number => d.split('Z').length - 1

describe.each(['flat', 'ring'] as const)('an edit of one row (%s)', (kind) => {
  const before = workPattern(ribCuff())
  const after = workPattern(withCell(before.pattern, 3, 6, 'p'), before)

  it('draws that row again and hands back every other layer as it was', () => {
    const { old, drawn } = redrawn[kind](before, after)
    const changed = drawn.layers.flatMap((layer, i) => (layer === old.layers[i] ? [] : [i]))
    expect(changed).toEqual([drawn.layers.indexOf(rowsOf(drawn)[3] as Layer)])
  })

  it('draws the same as from nothing', () => {
    expect(writeSvg(redrawn[kind](before, after).drawn)).toBe(
      writeSvg(draw[kind](workPattern(copyOf(after.pattern)))),
    )
  })
})

describe('a drawing made from the one before', () => {
  const options = [{}, { columns: 'loom' as const }, { rows: { from: 1, to: 4 }, cell: 5 }]
  const marks = fc.array(
    fc.record({
      row: fc.nat(7),
      pegs: fc.constantFrom(null, { from: 0, to: 1 }),
      severity: fc.constantFrom('error' as const, 'warning' as const, 'hint' as const),
    }),
    { maxLength: 2 },
  )

  it('is the one made from nothing, after any edits', () => {
    fc.assert(
      fc.property(
        editedPiece(),
        fc.constantFrom(...options),
        fc.array(marks, { minLength: 1 }),
        ([first, edits], option, found) => {
          let work = workPattern(first)
          let flat = flatChart(work, option)
          let ring = ringChart(work)
          edits.forEach((edit, i) => {
            const list = found[i % found.length] ?? []
            work = workPattern(edit(work.pattern), work)
            flat = flatChart(work, { ...option, marks: list }, flat)
            ring = ringChart(work, { marks: list }, ring)
            const fresh = workPattern(copyOf(work.pattern))
            expect(writeSvg(flat)).toBe(writeSvg(flatChart(fresh, { ...option, marks: list })))
            expect(writeSvg(ring)).toBe(writeSvg(ringChart(fresh, { marks: list })))
            for (const { layers } of [flat, ring])
              expect(new Set(layers.map(({ key }) => key)).size).toBe(layers.length)
          })
        },
      ),
      { numRuns: 150 },
    )
  })

  it('hands back every layer but that of the edited row, also after undo', () => {
    const before = workPattern(ribCuff())
    const after = workPattern(withCell(before.pattern, 3, 6, 'p'), before)
    const again = workPattern(before.pattern, after)
    const first = flatChart(before)
    const edited = flatChart(after, {}, first)
    const undone = flatChart(again, {}, edited)
    const differ = (a: Scene, b: Scene) =>
      a.layers.filter(({ items }, i) => items !== b.layers[i]?.items)
    expect(differ(first, edited)).toEqual([rowsOf(first)[3]])
    expect(differ(first, undone)).toEqual([])
  })
})

describe('rows as layers', () => {
  it('move without being drawn again when a row is put in below them', () => {
    const pattern = ribCuff()
    const { rows } = chartOn(pattern)
    const bands = [{ from: 2, to: 5, times: 3 }]
    const longer = withChart(pattern, {
      bands,
      rows: [rows[0], ...rows].flatMap((r) => r ?? []),
    })
    const drawing = redrawn.flat(workPattern(pattern), workPattern(longer))
    const [old, moved] = [rowsOf(drawing.old), rowsOf(drawing.drawn)]
    expect(moved.slice(2).map(({ items }) => items)).toEqual(old.slice(1).map(({ items }) => items))
    moved.slice(2).forEach(({ items }, i) => expect(items).toBe(old[i + 1]?.items))
  })

  it('have keys of their own, also for a row that stands twice', () => {
    fc.assert(
      fc.property(arbitraryPiece, fc.boolean(), (pattern, flat) => {
        const { rows } = chartOn(pattern)
        const twice = withChart(pattern, { rows: [...rows, ...rows] })
        const { layers } = (flat ? flatChart : ringChart)(workPattern(twice))
        expect(new Set(layers.map(({ key }) => key)).size).toBe(layers.length)
        expect(rowsOf({ layers } as Scene)).toHaveLength(2 * rows.length)
      }),
      { numRuns: 40 },
    )
  })

  it('have at most one path for each ink and weight but the grid', () => {
    for (const { items } of rowsOf(flatChart(workPattern(ribCuff())))) {
      const looks = items.map((item) => `${item.ink} ${item.kind === 'path' ? item.stroke : ''}`)
      expect(new Set(looks).size).toBe(items.length)
      expect(items.length).toBeLessThanOrEqual(6)
    }
  })

  it('hold only numbers that can be drawn', () => {
    fc.assert(
      fc.property(arbitraryPiece, (pattern) => {
        const work = workPattern(pattern)
        for (const scene of [
          flatChart(work),
          flatChart(work, { columns: 'loom' }),
          ringChart(work),
        ])
          expect(writeSvg(scene)).not.toMatch(/NaN|undefined|Infinity|\de-/)
      }),
      { numRuns: 25 },
    )
  })
})

describe('what a row shows', () => {
  const one = (ids: readonly string[], background = 'k'): Pattern => {
    const pattern = ribCuff()
    const columns = row(ids).cells.length
    return withChart(
      {
        ...pattern,
        loom: { ...pattern.loom, pegs: columns },
        style: { ...pattern.style, background: stitchOf(background) },
      },
      { columns, repeat: null, bands: [], rows: [row(ids)] },
    )
  }
  const items = (pattern: Pattern) => rowsOf(flatChart(workPattern(pattern)))[0]?.items

  it('leaves the background stitch blank, and only that', () => {
    expect(items(one(['k', 'k', 'k', 'k']))).toEqual([])
    const onKnit = items(one(['k', 'p', 'p', 'k']))
    expect(dots(pathOf(onKnit, 'solid'))).toBe(2)
    expect(pathOf(onKnit, 'line')).toBe('')
    const onPurl = items(one(['k', 'p', 'p', 'k'], 'p'))
    expect(pathOf(onPurl, 'line').match(/M/g)).toHaveLength(2)
    expect(pathOf(onPurl, 'solid')).toBe('')
  })

  it('draws a sign for each peg of the loom, or each column of the chart', () => {
    const purls = chartOn(ribCuff()).rows[0]?.cells.filter((cell) => cell?.id === 'p').length ?? 0
    const work = workPattern(ribCuff())
    const solid = (scene: Scene) => dots(pathOf(rowsOf(scene)[0]?.items, 'solid'))
    expect(solid(flatChart(work))).toBe(purls)
    expect(solid(flatChart(work, { columns: 'loom' }))).toBe(3 * purls)
    expect(solid(ringChart(work))).toBe(3 * purls)
  })

  it('shades a square without a stitch and leaves pegs out of work without a sign', () => {
    expect(pathOf(items(one(['p', 'none', 'p'])), 'shade').match(/Z/g)).toHaveLength(1)
    const pattern = one(['p', 'p', 'p', 'p', 'p', 'p'])
    const short = withChart(pattern, {
      rows: [row(['p', 'p', 'p', 'p', 'p', 'p'], { from: 1, to: 3 })],
    })
    expect(dots(pathOf(items(short), 'solid'))).toBe(3)
    expect(pathOf(items(short), 'unworked').match(/Z/g)).toHaveLength(2)
  })

  it('leans a cross the same way in the flat chart whatever the working direction', () => {
    // The front band of a left cross goes up to the left, as the right side is seen.
    for (const direction of ['clockwise', 'counterclockwise'] as const) {
      const pattern = one(['1/1 LC'])
      const drawn = items({ ...pattern, loom: { ...pattern.loom, direction } })
      const [band = ''] = pathOf(drawn, 'ground').split('Z')
      const points = [...band.matchAll(/[ML](\S+) ([^MLZ]+)/g)].map(([, x, y]) => [
        Number(x),
        Number(y),
      ])
      const top = points.filter(([, y = 0]) => y < 2).map(([x = 0]) => x)
      const bottom = points.filter(([, y = 0]) => y > 2).map(([x = 0]) => x)
      expect(Math.max(...top)).toBeLessThan(Math.max(...bottom))
    }
  })

  it('marks turns beyond the last peg, German and wrapped by different shapes', () => {
    const turns = rowsOf(flatChart(workPattern(turnedHeel()))).map(({ items: drawn }) =>
      pathOf(drawn, 'note'),
    )
    expect(turns.map((d) => (d === '' ? '' : d.includes('a') ? 'round' : 'hook'))).toEqual([
      '',
      'hook',
      'hook',
      'hook',
      'round',
      'round',
      'round',
      '',
    ])
  })
})
