import { chartOn } from './charts'
import type { Chart, LoomSetup, Run, Sheet } from './pattern'

/** How a chart's columns lie on a loom's pegs. */
export interface Layout {
  readonly shape: LoomSetup['shape']
  readonly pegs: number
  /** Column of each peg that the chart covers; shorter than `pegs` when it does not fill the loom. */
  readonly columnOf: readonly number[]
  /** How many copies of the repeat there are (0 without one). */
  readonly copies: number
  /** Pegs left over when no whole copy fits any more; 0 when the loom is filled. */
  readonly over: number
  /** First and last peg of each copy. */
  readonly copyRuns: readonly Run[]
}

const known = new WeakMap<object, Map<string, Layout>>()
const noRepeat = {}

/** Lay the chart on the loom, as many whole copies as fit. The same object for the same shape. */
export function layOut(
  { columns, repeat }: Pick<Chart, 'columns' | 'repeat'>,
  pegs: number,
  shape: LoomSetup['shape'] = 'ring',
): Layout {
  const store = repeat ?? noRepeat
  let layouts = known.get(store)
  if (!layouts) known.set(store, (layouts = new Map<string, Layout>()))
  const key = `${columns}/${pegs}/${shape}`
  let layout = layouts.get(key)
  if (!layout) layouts.set(key, (layout = makeLayout(columns, repeat, pegs, shape)))
  return layout
}

function makeLayout(
  columns: number,
  repeat: Run | null,
  pegs: number,
  shape: LoomSetup['shape'],
): Layout {
  const columnOf: number[] = []
  const copyRuns: Run[] = []
  if (!repeat) {
    for (let column = 0; column < Math.min(columns, pegs); column++) columnOf.push(column)
    return { shape, pegs, columnOf, copies: 0, over: pegs - columns, copyRuns }
  }
  const width = repeat.to - repeat.from + 1
  const edges = columns - width
  const copies = Math.max(0, Math.floor((pegs - edges) / width))
  for (let column = 0; column < repeat.from; column++) columnOf.push(column)
  for (let copy = 0; copy < copies; copy++) {
    copyRuns.push({ from: columnOf.length, to: columnOf.length + width - 1 })
    for (let column = repeat.from; column <= repeat.to; column++) columnOf.push(column)
  }
  for (let column = repeat.to + 1; column < columns; column++) columnOf.push(column)
  columnOf.length = Math.min(columnOf.length, pegs)
  return { shape, pegs, columnOf, copies, over: pegs - edges - copies * width, copyRuns }
}

export const layoutOf = (sheet: Sheet): Layout =>
  layOut(chartOn(sheet), sheet.loom.pegs, sheet.loom.shape)
