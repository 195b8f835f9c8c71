import { changeOf } from '../pattern/changes'
import type { PatternRun, Work } from '../pattern/work'
import type { Geometry } from './geometry'
import { arrowHead, polyline, short, type Point } from './path'
import type { Item, Layer } from './scene'
import { weights } from './sizes'
import { filled, stroked } from './items'

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

/** The path of the yarn along the rows of short rows, an arrow at the end of each row. */
export function yarnLayer({ firstRuns }: Work, geometry: Geometry): Layer {
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
    if (!along.begins) finish()
    points.push(...along.points)
    if (along.ends) heads.push(headOf(along.points, geometry, row))
    if (run.row.end === 'on' || !along.ends) finish()
  }
  finish()
  const items: Item[] = []
  if (lines.length > 0) {
    items.push(stroked(lines.join(''), 'band', weights.heavy), filled(heads.join(''), 'band'))
  }
  return { key: 'yarn', x: 0, y: 0, items }
}

interface Along {
  readonly points: readonly Point[]
  /** Does the row begin and end in what is drawn, or does it come from and go to pegs beside it? */
  readonly begins: boolean
  readonly ends: boolean
}

/** Points along the middle of a row, from where it begins to where it ends; null where none of it is drawn. */
function alongRow({ row, heading }: PatternRun, index: number, geometry: Geometry): Along | null {
  const { slots, point, kind } = geometry
  const pegs = Array.from({ length: row.to - row.from + 1 }, (_, peg) => row.from + peg)
  if (heading === 'back') pegs.reverse()
  const isDrawn = (peg: number): boolean => slots.slotOf(peg) !== undefined
  const [first, last] = [pegs.find(isDrawn), pegs.findLast(isDrawn)]
  if (first === undefined || last === undefined) return null
  const [begins, ends] = [first === pegs[0], last === pegs.at(-1)]
  const [from, to] = [slots.slotOf(first) ?? 0, slots.slotOf(last) ?? 0]
  const step = to > from || (to === from && heading === 'forward') ? 1 : -1
  const start = from + 0.5 - (begins ? 0.36 : 0.5) * step
  const end = to + 0.5 + (ends ? 0.02 : 0.5) * step
  const count = kind === 'flat' ? 1 : Math.max(1, Math.ceil(Math.abs(end - start) * 2))
  return {
    points: Array.from({ length: count + 1 }, (_, part) =>
      point(start + ((end - start) * part) / count, index + 0.5),
    ),
    begins,
    ends,
  }
}

function headOf(along: readonly Point[], geometry: Geometry, row: number): string {
  const tip = along.at(-1) ?? [0, 0]
  const before = along.at(-2) ?? tip
  const angle = Math.atan2(tip[0] - before[0], before[1] - tip[1])
  const { width, height } = geometry.cellOf(row)
  return arrowHead(tip, angle, short(Math.min(width, height) * 0.34))
}
