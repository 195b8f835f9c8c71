import { turnPegOf } from '../../loom/rowEnd'
import { opposite, type Heading } from '../../loom/direction'
import type { Chart, LoomSetup, Row, Run } from '../pattern'

/**
 * What rows `from`..`to`, which turn or cover a part of the pegs, become on a loom that is numbered
 * from the other end.
 */
export interface PartRows extends Run {
  readonly becomes: Placed | TurnedOver
}

/** As far from the other end, worked as before: its yarn comes from the same side. */
export interface Placed {
  readonly how: 'placed'
  /** Pegs that it moves. */
  readonly shift: number
  /** Where it lies then: from the lowest to the highest peg that is turned on. */
  readonly zone: Run
}

/** Each row heads the other way, from the same loops: its yarn comes from the other side. */
export interface TurnedOver {
  readonly how: 'turned over'
  /** On a bar, the whole row beside it that changes places with it, so that the yarn is there. */
  readonly passes: number | null
}

/** Where short rows go if they can: see `Stretch`. */
export type Heels = 'placed' | 'turned over'

export const pegsOf = ({ run }: Row, pegs: number): Run => run ?? { from: 0, to: pegs - 1 }

export const isWhole = ({ from, to }: Run, pegs: number): boolean => from === 0 && to === pegs - 1

/** Does a row turn, or cover a part of the pegs? */
export const isPart = (row: Row, pegs: number): boolean =>
  row.end !== 'on' || !isWhole(pegsOf(row, pegs), pegs)

/** The stretches of a chart; a whole row that begins where the last of them turned is part of it. */
export function stretchesOf(
  chart: Chart,
  loom: LoomSetup,
  headings: readonly Heading[],
  heels: Heels,
): readonly PartRows[] {
  const { rows } = chart
  const stretches: PartRows[] = []
  const passed = new Set<number>()
  const partAt = (index: number) => {
    const row = rows[index]
    return row !== undefined && isPart(row, loom.pegs)
  }
  for (let from = 0; from < rows.length; from++) {
    if (!partAt(from)) continue
    let to = from
    while (partAt(to + 1)) to++
    if (rows[to]?.end !== 'on' && to + 1 < rows.length) to++
    const lines = linesOf(chart, loom, headings, { from, to })
    const placed = heels === 'placed' ? placeOf(lines, loom) : null
    const passes = placed || loom.shape === 'ring' ? null : rowToPass(chart, lines, passed)
    if (passes !== null) passed.add(passes)
    stretches.push({ from, to, becomes: placed ?? { how: 'turned over', passes } })
    from = to
  }
  return stretches
}

/** A row of a stretch, with what follows from the loom. */
interface Line {
  readonly index: number
  readonly row: Row
  readonly heading: Heading
  readonly pegs: Run
  readonly startsAtEnd: boolean
  readonly endsAtEnd: boolean
}

const linesOf = (
  { rows }: Chart,
  loom: LoomSetup,
  headings: readonly Heading[],
  { from, to }: Run,
): readonly Line[] =>
  rows.slice(from, to + 1).map((row, at) => {
    const heading = headings[from + at] ?? 'forward'
    const pegs = pegsOf(row, loom.pegs)
    const starts = (way: Heading) =>
      way === 'forward' ? pegs.from === 0 : pegs.to === loom.pegs - 1
    return {
      index: from + at,
      row,
      heading,
      pegs,
      startsAtEnd: starts(heading),
      endsAtEnd: row.end === 'on' && starts(opposite(heading)),
    }
  })

/**
 * A stretch of short rows moves so that the pegs it turns on keep their distance from the other end.
 * null where it does not begin at one end of the pegs and end at the other, or would not fit.
 */
function placeOf(lines: readonly Line[], { pegs, shape }: LoomSetup): Placed | null {
  const turned = lines.flatMap(
    ({ row, heading, pegs: run }) => turnPegOf({ ...run, end: row.end }, heading) ?? [],
  )
  const low = Math.min(...turned)
  const high = Math.max(...turned)
  const first = lines[0]
  const last = lines.at(-1)
  if (turned.length === 0 || !first?.startsAtEnd || !last) return null
  if (shape === 'bar' && (low < 0 || high >= pegs || last.heading !== first.heading)) return null
  if (last.row.end === 'on' && !last.endsAtEnd) return null
  const shift = pegs - 1 - high - low
  const fits = lines.every((line) => {
    const { from, to } = placedRun(line, lines, shift)
    return from >= 0 && to < pegs && from <= to
  })
  return fits ? { how: 'placed', shift, zone: { from: low + shift, to: high + shift } } : null
}

/** The pegs of a row moved; the first row still starts, the last one still ends, at an end. */
function placedRun(line: Line, lines: readonly Line[], shift: number): Run {
  const { heading, pegs } = line
  const starts = line === lines[0] && line.startsAtEnd
  const ends = line === lines.at(-1) && line.endsAtEnd
  const [keepsFrom, keepsTo] = heading === 'forward' ? [starts, ends] : [ends, starts]
  return {
    from: keepsFrom ? pegs.from : pegs.from + shift,
    to: keepsTo ? pegs.to : pegs.to + shift,
  }
}

/** The runs of a placed stretch, row by row; null for all pegs. */
export function placedRuns(
  chart: Chart,
  loom: LoomSetup,
  headings: readonly Heading[],
  stretch: Run,
  { shift }: Placed,
): readonly (Run | null)[] {
  const lines = linesOf(chart, loom, headings, stretch)
  return lines.map((line) => {
    const run = placedRun(line, lines, shift)
    const wasWhole = isWhole(line.pegs, loom.pegs)
    return isWhole(run, loom.pegs) ? (wasWhole ? line.row.run : null) : run
  })
}

/**
 * On a bar a wedge that begins and ends at one end needs the yarn at the other when it is turned
 * over: the whole row after it comes before it, or the other way about. Its stitches must be those
 * of the wedge, so that each peg has the same ones in the same order. null where there is none.
 */
function rowToPass(
  { rows, bands }: Chart,
  lines: readonly Line[],
  passed: ReadonlySet<number>,
): number | null {
  const first = lines[0]
  const last = lines.at(-1)
  if (!first?.startsAtEnd || !last?.endsAtEnd || first.heading === last.heading) return null
  const index = first.heading === 'forward' ? last.index + 1 : first.index - 1
  const beside = rows[index]
  if (!beside || beside.run !== null || beside.end !== 'on' || passed.has(index)) return null
  const bandAt = (row: number) => bands.findIndex(({ from, to }) => from <= row && row <= to)
  if (lines.some((line) => bandAt(line.index) !== bandAt(index))) return null
  const alike = lines.every(({ row }) => row.cells.every((cell, at) => cell === beside.cells[at]))
  return alike ? index : null
}

/**
 * The first row of a heel comes to its pegs over those before them, the last one leaves it over
 * those behind; on the other half they change parts, so they change the stitches of these pegs too.
 * Only where each column is a peg, and no stitch stands over the edge of the heel.
 */
export function swapInstep(
  rows: readonly Row[],
  { from, to }: Run,
  { zone }: Placed,
  { columns, repeat }: Chart,
  { pegs }: LoomSetup,
): readonly Row[] {
  const first = rows[from] as Row
  const last = rows[to] as Row
  if (from === to || last.end !== 'on' || repeat || columns !== pegs) return rows
  const edges = [zone.from, zone.to + 1]
  if ([first, last].some(({ cells }) => edges.some((edge) => cells[edge] === null))) return rows
  const within = (column: number) => column >= zone.from && column <= zone.to
  const mixed = (inside: Row, outside: Row): Row => ({
    ...inside,
    cells: inside.cells.map((cell, at) => (within(at) ? cell : (outside.cells[at] ?? null))),
  })
  return rows.with(from, mixed(first, last)).with(to, mixed(last, first))
}
