import type { Finding, Severity } from '../pattern/finding'
import type { Run } from '../pattern/pattern'
import type { Geometry } from './geometry'
import { circlePath, polyline, short, mm, type Point } from './path'
import type { InkRole, Item } from './scene'
import { stroked } from './items'

/** What is drawn of a finding in one of its rows; null: the whole row. All 0-based. */
export interface FindingMark {
  readonly row: number
  readonly pegs: Run | null
  readonly severity: Severity
}

/** What is marked of findings: each of their rows and runs of pegs, as bad as they are or as this says. */
export const marksOf = (findings: readonly Finding[], as?: Severity): readonly FindingMark[] =>
  findings.flatMap(({ place: { rows, pegs }, severity }) =>
    rows.flatMap((row) =>
      (pegs.length > 0 ? pegs : [null]).map((run) => ({
        row,
        pegs: run,
        severity: as ?? severity,
      })),
    ),
  )

/** The mark of a finding on a field of 16 by 16. Shape carries the meaning, colour is an extra. */
export const findingShapes: Readonly<Record<FindingMark['severity'], string>> = {
  error: 'M2 2 L14 14 M14 2 L2 14',
  warning: 'M8 2 L15 14 H1 Z M8 6.5 V10 M8 11.8 V12.2',
  hint: 'M8 3.5 A4.5 4.5 0 1 1 7.99 3.5 Z',
}

interface MarkLook {
  /** Sign in the margin: filled or outlined, round a point. */
  readonly sign: (centre: Point, size: number) => string
  readonly filled: boolean
  readonly stroke: number
  /** Of the frame round the cells. */
  readonly dash?: string
}

/** Findings differ by shape as well as by ink: diamond and solid frame, triangle and dashes, dots. */
const looks: Readonly<Record<FindingMark['severity'], MarkLook>> = {
  error: {
    sign: ([x, y], r) => mm`M${x} ${y - r}L${x + r} ${y}L${x} ${y + r}L${x - r} ${y}Z`,
    filled: true,
    stroke: 0.45,
  },
  warning: {
    sign: ([x, y], r) => mm`M${x} ${y - 0.9 * r}L${x + r} ${y + 0.8 * r}L${x - r} ${y + 0.8 * r}Z`,
    filled: false,
    stroke: 0.4,
    dash: '1.1 0.9',
  },
  hint: {
    sign: (centre, r) => circlePath(centre, 0.62 * r),
    filled: false,
    stroke: 0.4,
    dash: '0.01 0.9',
  },
}

const severities = ['hint', 'warning', 'error'] as const satisfies InkRole[]

/** Slots that hold these pegs, as runs of neighbours. */
function slotRuns({ slots }: Geometry, pegs: Run | null): Run[] {
  if (!pegs) return slots.count > 0 ? [{ from: 0, to: slots.count - 1 }] : []
  const found = new Set<number>()
  for (let peg = pegs.from; peg <= pegs.to; peg++) {
    const slot = slots.slotOf(peg)
    if (slot !== undefined) found.add(slot)
  }
  const runs: { from: number; to: number }[] = []
  for (const slot of [...found].sort((a, b) => a - b)) {
    const last = runs.at(-1)
    if (last && last.to === slot - 1) last.to = slot
    else runs.push({ from: slot, to: slot })
  }
  return runs
}

/** Strokes across the corners of an error's frame, so that it is told from a box of the chart. */
function cornerStrokes(geometry: Geometry, row: number, { from, to }: Run): string {
  const { width, height } = geometry.cellOf(row)
  const [du, dv] = [
    Math.min(0.34, (0.34 * height) / width),
    Math.min(0.34, (0.34 * width) / height),
  ]
  const [left, right, low, high] = [from, to + 1, row, row + 1]
  const stroke = (u: number, v: number, su: number, sv: number): string =>
    polyline([geometry.point(u + su * du, v), geometry.point(u, v + sv * dv)])
  return (
    stroke(left, low, 1, 1) +
    stroke(right, low, -1, 1) +
    stroke(left, high, 1, -1) +
    stroke(right, high, -1, -1)
  )
}

/** Where the sign of a row's finding stands in the margin. */
export type MarginPlace = (row: number) => Point

/** Frames round the cells of findings, and a sign beside each of their rows. */
export function findingItems(
  marks: readonly FindingMark[],
  geometry: Geometry,
  marginPlace: MarginPlace,
): Item[] {
  const items: Item[] = []
  const worst = new Map<number, FindingMark['severity']>()
  const radius = Math.min(1.2, geometry.text * 0.42)
  for (const severity of severities) {
    const look = looks[severity]
    let frames = ''
    for (const { row, pegs, severity: own } of marks) {
      if (own !== severity) continue
      if (row < geometry.firstRow || row > geometry.lastRow) continue
      worst.set(row, severity)
      for (const run of slotRuns(geometry, pegs)) {
        frames += geometry.outline(run.from, run.to, row, row)
        if (severity === 'error') frames += cornerStrokes(geometry, row, run)
      }
    }
    if (frames === '') continue
    const { stroke, dash } = look
    const frame = stroked(frames, severity, stroke)
    items.push(dash === undefined ? frame : { ...frame, dash })
  }
  for (const severity of severities) {
    const { sign, filled } = looks[severity]
    const d = [...worst]
      .filter(([, own]) => own === severity)
      .map(([row]) => sign(marginPlace(row), short(radius)))
      .join('')
    if (d) items.push({ kind: 'path', d, ink: severity, stroke: 0.3, fill: filled })
  }
  return items
}
