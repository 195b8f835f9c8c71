import { withChart } from '../../../src/pattern/edits/chart'
import { expect } from 'vitest'
import { stepPicture } from '../../../src/drawing/pegs/figures/step'
import type { StripDrawing } from '../../../src/drawing/pegs/strip/strip'
import type { Item } from '../../../src/drawing/scene'
import type { Move } from '../../../src/loom/move'
import type { Moment } from '../../../src/loom/walk'
import { newPattern, type Pattern, type Row } from '../../../src/pattern/pattern'
import { cellsFrom } from '../../cells'

export const piece = (
  cells: readonly string[],
  direction: Pattern['loom']['direction'],
  rest: Partial<Row> = {},
): Pattern => {
  const pattern = newPattern(cells.length)
  const row: Row = { cells: cellsFrom(cells), run: null, heading: null, end: 'on', ...rest }
  return withChart(
    {
      ...pattern,
      loom: { ...pattern.loom, direction },
      making: { ...pattern.making, crossing: 'move then knit', knit: 'u-wrap' },
    },
    { columns: cells.length, repeat: null, bands: [], rows: [row] },
  )
}

export const plain = (count: number): string[] => Array.from({ length: count }, () => 'k')

/** The figure of all moves of a kind, which follow one another. */
export function drawn(
  moments: readonly Moment[],
  pattern: Pattern,
  what: Move['do'],
): StripDrawing {
  const indices = moments.flatMap(({ move }, index) => (move?.do === what ? [index] : []))
  const [first, last] = [indices[0] ?? 0, indices.at(-1) ?? 0]
  expect(last - first + 1).toBe(indices.length)
  return stepPicture(moments[first - 1] as Moment, moments[last] as Moment, pattern.loom, {
    trail: moments.slice(0, first - 1),
    moves: moments.slice(first, last + 1),
  })
}

export const layer = ({ scene }: StripDrawing, key: string): readonly Item[] =>
  scene.layers.find((one) => one.key === key)?.items ?? []

export const textsIn = (items: readonly Item[]): string[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))

/** The heights of all points of a path of whole coordinates. */
export const yOf = (item: Item | undefined): number[] =>
  (item?.kind === 'path' ? (item.d.match(/-?[\d.]+/g) ?? []) : [])
    .map(Number)
    .filter((_, index) => index % 2 === 1)

/** Where all points of a path of whole coordinates stand from left to right. */
export const xOf = (item: Item | undefined): number[] =>
  (item?.kind === 'path' ? (item.d.match(/-?[\d.]+/g) ?? []) : [])
    .map(Number)
    .filter((_, index) => index % 2 === 0)

/** The first and the last point of a path. */
export function endsOf(item: Item | undefined): readonly [number, number][] {
  const numbers = item?.kind === 'path' ? (item.d.match(/-?[\d.]+/g) ?? []).map(Number) : []
  const [x = NaN, y = NaN] = numbers
  const [lastX = NaN, lastY = NaN] = numbers.slice(-2)
  return [
    [x, y],
    [lastX, lastY],
  ]
}
