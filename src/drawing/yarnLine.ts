import { changeOf } from '../pattern/changes'
import type { PatternRun, Work } from '../pattern/work'
import type { Geometry } from './geometry'
import { keeper } from './keep'
import { arrowHead, polyline, short, type Point } from './path'
import type { Item, Layer } from './scene'
import { weights } from './sizes'

/** Rows over a part of the pegs, or that turn: where a reader has to follow the yarn. */
const isPart = ({ row, before }: PatternRun): boolean =>
  row.end !== 'on' || row.from > 0 || row.to < before.stacks.length - 1

/** Did a change touch a row in which the yarn is followed? */
export function yarnLineChanged(work: Work, before: Work): boolean {
  const { from, to, oldTo } = changeOf(work.firstRuns, before.firstRuns)
  return (
    work.firstRuns.slice(from, to).some(isPart) || before.firstRuns.slice(from, oldTo).some(isPart)
  )
}

const keepYarn = keeper<Layer>()

/** The path of the yarn along the rows of short-row sections, an arrow at the end of each row. */
export function yarnLayer({ firstRuns }: Work, geometry: Geometry): Layer {
  const { firstRow, lastRow } = geometry
  let parts = ''
  for (let row = firstRow; row <= lastRow; row++) {
    const run = firstRuns[row]
    if (run && isPart(run))
      parts += `${row}:${run.row.from}-${run.row.to} ${run.heading} ${run.row.end};`
  }
  return keepYarn([geometry.key, parts], () => drawYarn(firstRuns, geometry))
}

function drawYarn(firstRuns: readonly PatternRun[], geometry: Geometry): Layer {
  const { firstRow, lastRow } = geometry
  const lines: string[] = []
  const heads: string[] = []
  let points: Point[] = []
  const finish = () => {
    if (points.length > 1) lines.push(polyline(points))
    points = []
  }
  for (let row = firstRow; row <= lastRow; row++) {
    const run = firstRuns[row]
    if (!run || !isPart(run)) {
      finish()
      continue
    }
    const along = alongRow(run, row, geometry)
    if (!along) {
      finish()
      continue
    }
    points.push(...along)
    heads.push(headOf(along, geometry, row))
    if (run.row.end === 'on') finish()
  }
  finish()
  const items: Item[] = []
  if (lines.length > 0) {
    items.push(
      { kind: 'path', d: lines.join(''), ink: 'band', stroke: weights.heavy, fill: false },
      { kind: 'path', d: heads.join(''), ink: 'band', stroke: 0, fill: true },
    )
  }
  return { key: 'yarn', x: 0, y: 0, items }
}

/** Points along the middle of a row, from where it begins to where it ends. */
function alongRow({ row, heading }: PatternRun, index: number, geometry: Geometry): Point[] | null {
  const { slots, point, kind } = geometry
  const [first, last] = heading === 'forward' ? [row.from, row.to] : [row.to, row.from]
  const from = slots.slotOf(first)
  const to = slots.slotOf(last)
  if (from === undefined || to === undefined) return null
  const step = to > from || (to === from && heading === 'forward') ? 1 : -1
  const start = from + 0.5 - 0.36 * step
  const end = to + 0.5 + 0.02 * step
  const count = kind === 'flat' ? 1 : Math.max(1, Math.ceil(Math.abs(end - start) * 2))
  return Array.from({ length: count + 1 }, (_, part) =>
    point(start + ((end - start) * part) / count, index + 0.5),
  )
}

function headOf(along: readonly Point[], geometry: Geometry, row: number): string {
  const tip = along.at(-1) ?? [0, 0]
  const before = along.at(-2) ?? tip
  const angle = Math.atan2(tip[0] - before[0], before[1] - tip[1])
  const { width, height } = geometry.cellOf(row)
  return arrowHead(tip, angle, short(Math.min(width, height) * 0.34))
}
