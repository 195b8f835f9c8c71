import { keepsItsLoop, type Stitch } from '../../stitches/stitch'
import { eachChart, withChart } from '../edits/chart'
import { chartOn } from '../charts'
import type { Chart, Row, Sheet } from '../pattern'
import { allOf, placesOf, type Area } from './area'

/** Where stitches are swapped. */
export const swapScopes = ['here', 'chart', 'piece'] as const
export type SwapScope = (typeof swapScopes)[number]

/** Only stitches of equal width take each other's place. */
export const canSwap = (from: Stitch, to: Stitch): boolean => from !== to && from.width === to.width

/** Stitch `to` in place of each `from`. The area counts only where they are swapped here. */
export function swapStitches(
  sheet: Sheet,
  from: Stitch,
  to: Stitch,
  scope: SwapScope,
  area: Area,
): Sheet {
  if (!canSwap(from, to)) return sheet
  const chart = chartOn(sheet)
  if (scope !== 'piece') {
    const swapped = inChart(chart, from, to, scope === 'here' ? area : allOf(chart))
    return swapped === chart ? sheet : withChart(sheet, swapped)
  }
  const charts = eachChart(sheet.charts, (named) => {
    const swapped = inChart(named.chart, from, to, allOf(named.chart))
    return swapped === named.chart ? named : { ...named, chart: swapped, wish: null }
  })
  // Plain rows are worked in one stitch, which keeps its loop.
  const steps = sheet.steps.map((step) =>
    step.kind === 'plain' && step.stitch === from && keepsItsLoop(to)
      ? { ...step, stitch: to }
      : step,
  )
  const isSame = (list: readonly unknown[], was: readonly unknown[]) =>
    list.every((one, at) => one === was[at])
  return isSame(charts, sheet.charts) && isSame(steps, sheet.steps)
    ? sheet
    : { ...sheet, charts, steps }
}

function inChart(chart: Chart, from: Stitch, to: Stitch, area: Area): Chart {
  const rows: Row[] = [...chart.rows]
  const places = placesOf(chart, from, area)
  for (const { row, column } of places) {
    const at = rows[row]
    if (at) rows[row] = { ...at, cells: at.cells.with(column, to) }
  }
  return places.length === 0 ? chart : { ...chart, rows }
}

/** How many there are of a stitch in each of these. */
export const countOf = (sheet: Sheet, stitch: Stitch, scope: SwapScope, area: Area): number =>
  scope === 'piece'
    ? sheet.charts.reduce((sum, { chart }) => sum + placesOf(chart, stitch, allOf(chart)).length, 0)
    : placesOf(chartOn(sheet), stitch, scope === 'here' ? area : allOf(chartOn(sheet))).length
