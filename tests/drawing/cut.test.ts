import { withChart } from '../../src/pattern/edits/chart'
import { expect, it } from 'vitest'
import { flatChart } from '../../src/drawing/flat'
import { signScene } from '../../src/drawing/key'
import { ringChart } from '../../src/drawing/ring'
import { rotateColumns } from '../../src/pattern/edits/turn-round'
import type { Item, Scene } from '../../src/drawing/scene'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { traditions } from '../../src/stitches/sign'
import { cellsFrom } from '../cells'

const pieceOf = (cells: readonly string[], more: Partial<Pattern> = {}): Pattern => {
  const made = newPattern(cells.length, 1)
  return withChart(
    { ...made, ...more },
    {
      columns: cells.length,
      rows: [{ cells: cellsFrom(cells), run: null, heading: null, end: 'on' }],
    },
  )
}
const ink = (items: readonly Item[] = []): string =>
  items.flatMap((item) => (item.kind === 'path' && item.ink === 'line' ? [item.d] : [])).join('')
const drawn = ({ layers }: Scene): string =>
  ink(layers.find(({ key }) => key.startsWith('row-'))?.items)
/** x of every point of a path of straight lines, from the row's own left edge. */
const xs = (d: string): number[] => [...d.matchAll(/[ML](-?[\d.]+)/g)].map(([, x]) => Number(x))

const four = ['3/3 LC', '', '', '', '', ''].slice(0, 4)

it.each(['flat', 'ring'] as const)(
  'draws a 3/3 cut to four pegs as no healthy 2/2 (%s)',
  (kind) => {
    const draw = { flat: flatChart, ring: ringChart }[kind]
    for (const symbols of traditions) {
      const style = { ...newPattern().style, symbols }
      const cut = drawn(draw(workPattern(pieceOf(['k', 'k', ...four], { style }))))
      const whole = drawn(draw(workPattern(pieceOf(['k', 'k', '2/2 LC', '', '', ''], { style }))))
      const six = drawn(draw(workPattern(pieceOf([...four, '', ''], { style }))))
      expect(cut).not.toBe(whole)
      // The torn edge alone has seven points, which no whole sign of this kind has.
      expect(cut).toMatch(/M[^ML]*(L[^ML]*){6}/)
      expect(cut).not.toBe(six)
    }
  },
)

it('keeps what is left of a sign in true size inside its columns', () => {
  const whole = xs(drawn(flatChart(workPattern(pieceOf([...four, '', '', 'k', 'k'])))))
  const cut = xs(drawn(flatChart(workPattern(pieceOf([...four, 'k', 'k', 'k', 'k'])))))
  const cell = flatChart(workPattern(pieceOf(['k', 'k', 'k', 'k']))).geometry.smallest.width
  expect(Math.max(...cut)).toBeCloseTo(Math.max(...whole), 2)
  expect(Math.min(...cut)).toBeCloseTo(4 * cell, 1)
  expect(Math.min(...whole)).toBeLessThan(3 * cell)
})

it('draws a cross over the edge of a repeat torn on both sides of it', () => {
  const made = pieceOf(['k', 'k', '2/2 LC', '', '', '', 'k', 'k'])
  const pattern: Pattern = withChart(
    { ...made, loom: { ...made.loom, pegs: 12 } },
    { repeat: { from: 0, to: 3 } },
  )
  const teeth = drawn(flatChart(workPattern(pattern))).match(/M[^ML]*(L[^ML]*){6}/g)
  expect(teeth).toHaveLength(2)
})

it('tears no stitch where only the drawing ends', () => {
  const work = workPattern(pieceOf(['k', 'k', '2/2 LC', '', '', '']))
  const part = drawn(flatChart(work, { slots: { from: 0, to: 3 } }))
  expect(part).not.toBe('')
  expect(part).not.toMatch(/M[^ML]*(L[^ML]*){6}/)
})

it('shows the part that stands in the chart in the key, on its side', () => {
  const turned = rotateColumns(pieceOf(['p', 'p', '2/2 LC', '', '', '', 'p', 'p']), 4)
  const cut = workPattern(turned).run.rows[0]?.row.sites.find(({ stitch }) => stitch.cut)?.stitch
  if (!cut) throw new Error('No stitch is cut.')
  const [right, left] = [true, false].map((leftward) =>
    ink(signScene(cut, 'cyc', { leftward }).layers[0]?.items),
  )
  expect(signScene(cut, 'cyc').width).toBeLessThan(9)
  expect(right).not.toBe(left)
  expect(Math.min(...xs(right ?? ''))).toBeCloseTo(0, 1)
  expect(Math.max(...xs(left ?? ''))).toBeCloseTo(8, 1)
})
