import { opposite, type Heading } from '../../loom/direction'
import { headingsOf } from '../pegs/headings'
import type { Chart, LoomSetup, Row, Run, Cell } from '../pattern'
import { placedRuns, stretchesOf, swapInstep, type Heels, type PartRows } from './part-rows'
import type { Stitch } from '../../stitches/stitch'

/** Cells in the opposite order; a stitch of several columns keeps its place in its lowest one. */
export function reverseCells(
  cells: readonly Cell[],
  rename: (stitch: Stitch) => Stitch = (stitch) => stitch,
): Cell[] {
  const reversed: Cell[] = []
  let tail: null[] = []
  for (let column = cells.length - 1; column >= 0; column--) {
    const cell = cells[column] ?? null
    if (cell === null) tail.push(null)
    else {
      reversed.push(rename(cell), ...tail)
      tail = []
    }
  }
  return [...reversed, ...tail]
}

export const reverseRun = <Some extends Run | null>(run: Some, count: number): Some =>
  (run && { from: count - 1 - run.to, to: count - 1 - run.from }) as Some

/**
 * The chart with its columns and pegs in the opposite order, its stitches renamed. Whole rows are
 * worked the way they were; rows that turn or cover a part of the pegs are placed or turned over.
 */
export function turnOver(
  chart: Chart,
  loom: LoomSetup,
  heels: Heels = 'placed',
  rename: (stitch: Stitch) => Stitch = (stitch) => stitch,
): Chart {
  const { pegs } = loom
  const headings = headingsOf(chart, loom)
  const stretches = stretchesOf(chart, loom, headings, heels)
  const ways = headings.slice()
  let rows: readonly Row[] = chart.rows.map((row) => ({
    ...row,
    cells: reverseCells(row.cells, rename),
    run: reverseRun(row.run, pegs),
  }))
  for (const stretch of stretches) {
    const { from, to, becomes } = stretch
    if (becomes.how === 'placed') {
      const runs = placedRuns(chart, loom, headings, stretch, becomes)
      rows = rows.map((row, at) =>
        isIn(stretch, at) ? { ...row, run: runs[at - from] ?? null } : row,
      )
      rows = swapInstep(rows, stretch, becomes, chart, loom)
    } else for (let at = from; at <= to; at++) ways[at] = opposite(headings[at] as Heading)
  }
  const order = orderOf(rows.length, stretches)
  const turned: Chart = {
    ...chart,
    repeat: reverseRun(chart.repeat, chart.columns),
    rows: order.map((at) => rows[at] as Row),
  }
  if (stretches.length === 0) return turned
  return headingAs(
    turned,
    loom,
    order.map((at) => ways[at] as Heading),
  )
}

const isIn = ({ from, to }: Run, at: number): boolean => at >= from && at <= to

/** Indices of the rows in the order in which they are worked then. */
function orderOf(rows: number, stretches: readonly PartRows[]): readonly number[] {
  const order = Array.from({ length: rows }, (_, at) => at)
  for (const { from, to, becomes } of stretches) {
    if (becomes.how === 'placed' || becomes.passes === null) continue
    order.splice(becomes.passes, 1)
    order.splice(becomes.passes > to ? from : to, 0, becomes.passes)
  }
  return order
}

/**
 * The chart whose rows are worked these ways. Headings that are there stay if they lead so;
 * otherwise a row has one only where the row before leads the other way.
 */
function headingAs(chart: Chart, loom: LoomSetup, ways: readonly Heading[]): Chart {
  const leads = (given: Chart) => headingsOf(given, loom)
  if (leads(chart).every((way, at) => way === ways[at])) return chart
  const said = {
    ...chart,
    rows: chart.rows.map((row, at) => ({ ...row, heading: ways[at] ?? null })),
  }
  const rows = said.rows.map((row, at) => {
    const before = at === 0 ? 'forward' : wayAfter(said, loom, at)
    return before === row.heading ? { ...row, heading: null } : row
  })
  return { ...chart, rows }
}

/** Which way row `at` goes if it does not say so itself. */
const wayAfter = ({ rows, ...chart }: Chart, loom: LoomSetup, at: number): Heading | undefined => {
  const pair = [rows[at - 1] as Row, { ...(rows[at] as Row), heading: null }]
  return headingsOf({ ...chart, rows: pair }, loom)[1]
}
