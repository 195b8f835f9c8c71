import { withChart } from '../edits/chart'
import { deleteRows, putRows, removeBand, setBand } from '../edits/rows'
import { layoutOf } from '../layout'
import { chartOn } from '../charts'
import type { Chart, Row, Sheet, Cell, ShortRowWish } from '../pattern'
import { schedule } from '../schedule'
import { workPattern } from '../work'
import type { Refusal } from './refuse'
import { besides, isWhole, roundOf } from './round'
import { makeShortRows } from './shortRows'
import { standardVocabulary } from '../../stitches/vocabulary'
import type { Stitch } from '../../stitches/stitch'

export type PutIn =
  | {
      readonly ok: true
      readonly pattern: Sheet
      /** Rows that came in. */ readonly rows: number
    }
  | ({ readonly ok: false } & Refusal)

/**
 * Put a heel, toe or wedge into the chart, before row `at`, from 0. The other pegs go on with the rows that follow:
 * row `at` is worked on after the last turn, and the row after it takes in what is left of the turns. So the
 * texture is nowhere interrupted and comes to no round more. Where that cannot be worked, the short rows have rows
 * of their own to end with, as in a chart of their own. The same pattern when there is no room.
 */
export function putShortRows(
  pattern: Sheet,
  at: number,
  wish: ShortRowWish,
  stitch = standardVocabulary.withRole('knit'),
): PutIn {
  const made = makeShortRows(pattern.loom, wish, stitch, chartOn(pattern).columns)
  if (!made.ok) return made
  const plain = putRows(pattern, at, made.rows)
  const going =
    wish.shape === 'toe' || wish.sides !== 'both'
      ? null
      : goOn(pattern, at, wish, made.rows, stitch)
  const best = going && mistakes(going) <= mistakes(plain) ? going : plain
  return { ok: true, pattern: best, rows: chartOn(best).rows.length - chartOn(pattern).rows.length }
}

/** What cannot be worked in a chart: counts that do not agree, and rows where the loom is not as they need it. */
const mistakes = (pattern: Sheet): number =>
  workPattern(pattern).run.rows.reduce(
    (sum, { miscount, faults }) => sum + (miscount ? 1 : 0) + faults.length,
    0,
  )

/** Null where no whole row follows. */
function goOn(
  pattern: Sheet,
  at: number,
  wish: ShortRowWish,
  made: readonly Row[],
  stitch: Stitch,
): Sheet | null {
  const chart = chartOn(pattern)
  const passes = schedule(chart)
  // After its last row a chart is worked again from its first.
  const next = chart.rows[at] ?? chart.rows[passes[0]?.row ?? 0]
  const run = made.at(-2)?.run
  if (!next || !isWhole(next) || !run) return null
  const own = { ...next, cells: clipped(pattern, next, run.from, stitch), run }
  const rows = [...begin(pattern, next, wish, made.slice(0, -2), stitch), own]
  const band = chart.bands.findIndex(({ from }) => from === at)
  const { to = at, times = 1 } = chart.bands[band] ?? {}
  if (times > 1) rows.push(...chart.rows.slice(at + 1, to + 1))
  const put = putRows(pattern, at, rows)
  if (put === pattern) return null
  const after = at + rows.length
  const taken =
    at >= chart.rows.length
      ? put
      : times > 1
        ? fewer(put, band, times - 1)
        : chart.rows.length === 1
          ? withChart(put, { rows: chartOn(put).rows.slice(0, after) })
          : deleteRows(put, after, after)
  if (chartOn(taken).rows.length > at + rows.length || times > 1) return taken
  const second = chart.rows[passes[at < chart.rows.length ? 0 : 1 % passes.length]?.row ?? 0]
  return second && isWhole(second) ? putRows(taken, chartOn(taken).rows.length, [second]) : null
}

/** A band is worked once less: its first time is told in rows of its own. */
function fewer(pattern: Sheet, band: number, times: number): Sheet {
  const { from, to } = chartOn(pattern).bands[band] ?? { from: 0, to: 0 }
  return times > 1 ? setBand(pattern, from, to, times) : removeBand(pattern, band)
}

const onePegAColumn = ({ columns, repeat }: Chart, pegs: number): boolean =>
  repeat === null && columns === pegs

/** The cells of a row that begins on a later peg; what its start would cut becomes `stitch`. */
function clipped(pattern: Sheet, row: Row, from: number, stitch: Stitch): readonly Cell[] {
  const { pegs } = pattern.loom
  if (!onePegAColumn(chartOn(pattern), pegs)) return row.cells
  const before = { from: 0, to: from - 1 }
  return besides(roundOf(row, layoutOf(pattern)), pegs, before, { from: 0, to: pegs - 1 }, stitch)
}

/** The short rows, the pegs before them with the stitches of `row`. */
function begin(
  pattern: Sheet,
  row: Row,
  wish: ShortRowWish,
  short: readonly Row[],
  stitch: Stitch,
): readonly Row[] {
  const { loom } = pattern
  const chart = chartOn(pattern)
  if (onePegAColumn(chart, loom.pegs)) {
    const made = makeShortRows(loom, { ...wish, beside: [row.cells, row.cells] }, stitch)
    return made.ok ? made.rows.slice(0, short.length) : short
  }
  const { from } = wish.run
  const [first, ...others] = short
  const round = roundOf(row, layoutOf(pattern))
  const isPlain = round.every((site) => site.peg >= from || site.stitch === stitch)
  if (isPlain || !first?.run || first.run.from >= from) return short
  return [
    { ...row, run: { from: 0, to: from - 1 } },
    { ...first, run: { from, to: first.run.to } },
    ...others,
  ]
}
