import { opposite, type Heading } from '../../loom/direction'
import { stitchOf } from '../../stitches/vocabulary'
import { headingsOf } from '../headings'
import type { Chart, LoomSetup, Pattern, Row, Run } from '../pattern'
import { withAllCharts } from './piece'
import { reverseCells, reverseRun, withStepPegs } from './turn-round'

/**
 * Mirror the design, for the second of a pair, in every section: crosses and leans swap, columns
 * reverse, the loom goes on being worked the same way. A heel is placed on the other half of the
 * loom and worked as before, since its rows begin where the yarn is. Rows of a part of the pegs
 * that are no such section are turned over and head the other way.
 */
export function mirror(pattern: Pattern): Pattern {
  const { loom } = pattern
  return withStepPegs(
    withAllCharts(pattern, (chart) => mirrorChart(chart, loom)),
    loom.pegs,
  )
}

/** Rows `from`..`to` that turn or cover a part of the pegs; `shift` null: they are turned over. */
interface Stretch extends Run {
  readonly shift: number | null
}

function mirrorChart(chart: Chart, loom: LoomSetup): Chart {
  const headings = headingsOf({ chart, loom })
  const stretches = loom.shape === 'ring' ? stretchesOf(chart.rows, headings, loom.pegs) : []
  const anyTurnedOver = stretches.some(({ shift }) => shift === null)
  return {
    ...chart,
    repeat: reverseRun(chart.repeat, chart.columns),
    rows: chart.rows.map((row, index) => {
      const cells = reverseCells(row.cells, (id) => stitchOf(id).mirror)
      const now = headings[index] ?? 'forward'
      const stretch = stretches.find(({ from, to }) => index >= from && index <= to)
      if (!stretch) return { ...row, cells, run: reverseRun(row.run, loom.pegs) }
      if (stretch.shift === null)
        return { ...row, cells, run: reverseRun(row.run, loom.pegs), heading: opposite(now) }
      const run = row.run && placeElsewhere(row.run, row, now, index, stretch, loom.pegs)
      return { ...row, cells, run, heading: anyTurnedOver ? now : row.heading }
    }),
  }
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
    stretches.push({ from, to, shift: shiftOf(rows, headings, { from, to }, pegs) })
    from = to
  }
  return stretches
}

/**
 * How many pegs a short-row section moves when it is placed where its mirror image lies: the pegs
 * that are turned on keep their distance from the other end. Null where it does not begin and end
 * at the start of the round, or would not fit.
 */
function shiftOf(
  rows: readonly Row[],
  headings: readonly Heading[],
  stretch: Run,
  pegs: number,
): number | null {
  const turned: number[] = []
  for (let index = stretch.from; index <= stretch.to; index++) {
    const row = rows[index] as Row
    const heading = headings[index] ?? 'forward'
    if (row.end === 'on') continue
    if (!row.run) return null
    const { from, to } = row.run
    const beyond = row.end === 'wrap' ? 1 : 0
    turned.push(heading === 'forward' ? to + beyond : from - beyond)
  }
  const low = Math.min(...turned)
  const high = Math.max(...turned)
  if (turned.length === 0 || low < 0 || high >= pegs) return null
  const first = rows[stretch.from] as Row
  const last = rows[stretch.to] as Row
  const lastHeading = headings[stretch.to] ?? 'forward'
  if (!startsAtJoin(first.run, headings[stretch.from] ?? 'forward', pegs)) return null
  if (last.end === 'on' && !endsAtJoin(last.run, lastHeading, pegs)) return null
  const shift = pegs - 1 - high - low
  for (let index = stretch.from; index <= stretch.to; index++) {
    const row = rows[index] as Row
    if (!row.run) continue
    const heading = headings[index] ?? 'forward'
    const moved = placeElsewhere(row.run, row, heading, index, { ...stretch, shift }, pegs)
    if (moved.from < 0 || moved.to >= pegs || moved.from > moved.to) return null
  }
  return shift
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
