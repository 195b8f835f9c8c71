import { opposite, type Heading } from '../../loom/direction'
import { headingsOf } from '../headings'
import type { Chart, LoomSetup, Row, Run } from '../pattern'

/** Cells in the opposite order; a stitch of several columns keeps its id in its lowest one. */
export function reverseCells(
  cells: readonly string[],
  rename: (id: string) => string = (id) => id,
): string[] {
  const reversed: string[] = []
  let tail: string[] = []
  for (let column = cells.length - 1; column >= 0; column--) {
    const cell = cells[column] as string
    if (cell === '') tail.push('')
    else {
      reversed.push(rename(cell), ...tail)
      tail = []
    }
  }
  return [...reversed, ...tail]
}

export const reverseRun = (run: Run | null, count: number): Run | null =>
  run && { from: count - 1 - run.to, to: count - 1 - run.from }

/** Rows `from`..`to` that turn or cover a part of the pegs; `shift` null: they are turned over. */
interface Stretch extends Run {
  readonly shift: number | null
  /** Where it is placed: from the lowest to the highest peg that is turned on. */
  readonly zone: Run | null
}

/**
 * The chart with its columns and pegs in the opposite order, its stitches renamed. On a ring a
 * heel is placed on the other half and worked as before, since its rows begin where the yarn is;
 * other rows of a part of the pegs are turned over and head the other way.
 */
export function turnOver(
  chart: Chart,
  loom: LoomSetup,
  rename: (id: string) => string = (id) => id,
): Chart {
  const headings = headingsOf({ chart, loom })
  const stretches = loom.shape === 'ring' ? stretchesOf(chart.rows, headings, loom.pegs) : []
  const anyTurnedOver = stretches.some(({ shift }) => shift === null)
  const rows = chart.rows.map((row, index): Row => {
    const cells = reverseCells(row.cells, rename)
    const now = headings[index] ?? 'forward'
    const stretch = stretches.find(({ from, to }) => index >= from && index <= to)
    if (!stretch) return { ...row, cells, run: reverseRun(row.run, loom.pegs) }
    if (stretch.shift === null)
      return { ...row, cells, run: reverseRun(row.run, loom.pegs), heading: opposite(now) }
    const run = row.run && placeElsewhere(row.run, row, now, index, stretch, loom.pegs)
    return { ...row, cells, run, heading: anyTurnedOver ? now : row.heading }
  })
  const turned = stretches.reduce<readonly Row[]>(
    (all, stretch) => swapInstep(all, stretch, chart, loom),
    rows,
  )
  return { ...chart, repeat: reverseRun(chart.repeat, chart.columns), rows: turned }
}

const isPart = (row: Row | undefined): boolean =>
  row !== undefined && (row.run !== null || row.end !== 'on')

function stretchesOf(
  rows: readonly Row[],
  headings: readonly Heading[],
  pegs: number,
): readonly Stretch[] {
  const stretches: Stretch[] = []
  for (let from = 0; from < rows.length; from++) {
    if (!isPart(rows[from])) continue
    let to = from
    while (isPart(rows[to + 1])) to++
    stretches.push({ from, to, ...placeOf(rows, headings, { from, to }, pegs) })
    from = to
  }
  return stretches
}

const turnedOver = { shift: null, zone: null }

/**
 * How many pegs a short-row section moves when it is placed where its mirror image lies: the pegs
 * that are turned on keep their distance from the other end. Without a shift where it does not
 * begin and end at the start of the round, or would not fit.
 */
function placeOf(
  rows: readonly Row[],
  headings: readonly Heading[],
  stretch: Run,
  pegs: number,
): Pick<Stretch, 'shift' | 'zone'> {
  const turned: number[] = []
  for (let index = stretch.from; index <= stretch.to; index++) {
    const row = rows[index] as Row
    const heading = headings[index] ?? 'forward'
    if (row.end === 'on') continue
    if (!row.run) return turnedOver
    const { from, to } = row.run
    const beyond = row.end === 'wrap' ? 1 : 0
    turned.push(heading === 'forward' ? to + beyond : from - beyond)
  }
  const low = Math.min(...turned)
  const high = Math.max(...turned)
  if (turned.length === 0 || low < 0 || high >= pegs) return turnedOver
  const first = rows[stretch.from] as Row
  const last = rows[stretch.to] as Row
  const lastHeading = headings[stretch.to] ?? 'forward'
  if (!startsAtJoin(first.run, headings[stretch.from] ?? 'forward', pegs)) return turnedOver
  if (last.end === 'on' && !endsAtJoin(last.run, lastHeading, pegs)) return turnedOver
  const shift = pegs - 1 - high - low
  for (let index = stretch.from; index <= stretch.to; index++) {
    const row = rows[index] as Row
    if (!row.run) continue
    const heading = headings[index] ?? 'forward'
    const moved = placeElsewhere(
      row.run,
      row,
      heading,
      index,
      { ...stretch, shift, zone: null },
      pegs,
    )
    if (moved.from < 0 || moved.to >= pegs || moved.from > moved.to) return turnedOver
  }
  return { shift, zone: { from: low + shift, to: high + shift } }
}

const startsAtJoin = (run: Run | null, heading: Heading, pegs: number): boolean =>
  heading === 'forward' ? (run?.from ?? 0) === 0 : (run?.to ?? pegs - 1) === pegs - 1

const endsAtJoin = (run: Run | null, heading: Heading, pegs: number): boolean =>
  startsAtJoin(run, opposite(heading), pegs)

/** The run moved along the loom; its first row still starts, its last one still ends, at the join. */
function placeElsewhere(
  { from, to }: Run,
  { end }: Row,
  heading: Heading,
  index: number,
  stretch: Stretch,
  pegs: number,
): Run {
  const shift = stretch.shift ?? 0
  const starts = index === stretch.from && startsAtJoin({ from, to }, heading, pegs)
  const ends = index === stretch.to && end === 'on' && endsAtJoin({ from, to }, heading, pegs)
  const keepsFrom = heading === 'forward' ? starts : ends
  const keepsTo = heading === 'forward' ? ends : starts
  return { from: keepsFrom ? from : from + shift, to: keepsTo ? to : to + shift }
}

/**
 * The first row of a heel comes to its pegs over those before them, the last one leaves it over
 * those behind; on the other half they change parts, so they change the stitches of these pegs too.
 * Only where each column is a peg, and no stitch stands over the edge of the heel.
 */
function swapInstep(
  rows: readonly Row[],
  { from, to, zone }: Stretch,
  { columns, repeat }: Chart,
  { pegs }: LoomSetup,
): readonly Row[] {
  const first = rows[from] as Row
  const last = rows[to] as Row
  if (!zone || from === to || last.end !== 'on' || repeat || columns !== pegs) return rows
  const edges = [zone.from, zone.to + 1]
  if ([first, last].some(({ cells }) => edges.some((edge) => cells[edge] === ''))) return rows
  const within = (column: number) => column >= zone.from && column <= zone.to
  const mixed = (inside: Row, outside: Row): Row => ({
    ...inside,
    cells: inside.cells.map((cell, at) => (within(at) ? cell : (outside.cells[at] as string))),
  })
  return rows.with(from, mixed(first, last)).with(to, mixed(last, first))
}
