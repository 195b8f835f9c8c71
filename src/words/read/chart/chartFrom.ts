import type { Heading } from '../../../loom/direction'
import type { LoomRow } from '../../../loom/row'
import { withNamed } from '../../../pattern/edits/chart'
import {
  limits,
  newPattern,
  type Gauge,
  type Pattern,
  type Row,
  type Run,
  blankRow,
  type Cell,
} from '../../../pattern/pattern'
import { habitsOf } from '../../../pattern/habits'
import type { Step } from '../../../pattern/piece'
import { bandsOf, type LaidRow } from './bands'
import { layStitches, widthOf } from '../loops/lay'
import { Places, type LoomThen } from '../loops/place'
import type { Reading, ReadRow, ReadSettings, Remark } from '../reading'
import { noRoom, statedGaugeRemark, tooManyRows } from '../remarks/charting'
import { statedGauge } from '../lines/stated'
import { withSmallestRepeat } from './smallestRepeat'
import type { Stitch } from '../../../stitches/stitch'

export interface ChartMade {
  readonly pattern: Pattern
  /** What could not be laid as the words say. */
  readonly remarks: readonly Remark[]
}

/** An empty piece on a loom like the one that words are read for. */
export function patternFor({ pegs, shape, direction, knit, terms }: ReadSettings): Pattern {
  const piece = newPattern(Math.min(limits.pegs.most, Math.max(limits.pegs.least, pegs)), 1)
  return {
    ...piece,
    loom: { ...piece.loom, shape, direction },
    making: { ...piece.making, knit },
    style: { ...piece.style, terms },
  }
}

/** The plain knit that the words state is that of the piece. */
const knitOf = ({ stated: { knit } }: Reading) => (knit ? { knit } : {})

/**
 * Put the rows of a reading on the loom of a pattern, as its chart: a column for each peg, or the
 * smallest repeat of columns there is. Pegs that a decrease empties get no-stitch cells beside it;
 * increases go to the nearest empty peg. A title and a gauge that the words state are taken up where
 * the pattern has none. What has no room is left out, with a remark.
 */
export function chartFrom(
  reading: Reading,
  pattern: Pattern = patternFor({ ...reading.settings, ...knitOf(reading) }),
): ChartMade {
  const { pegs, shape } = pattern.loom
  const remarks: Remark[] = []
  const places = new Places(habitsOf(pattern))
  const background = pattern.style.background
  let place = places.start(pegs)
  const laid = reading.rows.map((read, index): LaidRow => {
    const covers = coversOn(read, reading, pegs)
    const { fitted, left } = fitting(read, covers, place)
    if (left > 0) remarks.push(noRoom(read, index, left, covers, shape))
    const row = rowOf(read, fitted, pegs, place.heading, background)
    place = places.after(place, fitted)
    // A plain turn turns as well: the next row says its way itself.
    return { row, goes: read.goes }
  })
  const { rows, bands, leftOut } = bandsOf(laid, reading.bands)
  const { gauge, title } = reading.stated
  const other = gauge && pattern.gauge && !isSameGauge(gauge, pattern.gauge)
  if (other)
    remarks.push(
      statedGaugeRemark(
        gauge,
        pattern.gauge,
        statedGauge(reading.text)?.range ?? { from: 0, to: 0 },
      ),
    )
  if (leftOut > 0) remarks.push(tooManyRows(reading, leftOut))
  return {
    pattern: withNamed(
      {
        ...pattern,
        steps: endedAs(reading, pattern.steps),
        title: hasTitle(pattern) ? pattern.title : (title ?? pattern.title),
        gauge: pattern.gauge ?? gauge ?? null,
      },
      {
        chart: withSmallestRepeat({
          columns: pegs,
          repeat: null,
          bands,
          rows: rows.length > 0 ? rows : [blankRow(pegs, background)],
        }),
      },
    ),
    remarks,
  }
}

/** The last bind-off is the one that the words name at their end. */
function endedAs({ edges, rows }: Reading, steps: readonly Step[]): readonly Step[] {
  const end = edges.at(-1)
  const last = steps.at(-1)
  if (!end?.how || end.row < rows.length || last?.kind !== 'bind off') return steps
  return [...steps.slice(0, -1), { ...last, how: end.how }]
}

const untitled = newPattern().title
const hasTitle = ({ title }: Pattern): boolean => title !== '' && title !== untitled
const isSameGauge = (a: Gauge, b: Gauge): boolean => a.stitches === b.stitches && a.rows === b.rows

/** The pegs of a row on this loom, which may have others than the words were read for. */
function coversOn({ covers, run, goes }: ReadRow, { settings }: Reading, pegs: number): Run {
  const whole: Run = { from: 0, to: pegs - 1 }
  if (!covers) return run ? clip(run, pegs) : whole
  if (!run && covers.from === 0 && covers.to >= Math.min(settings.pegs, pegs) - 1) return whole
  if (!run && goes === 'forward' && covers.to === settings.pegs - 1)
    return clip({ from: covers.from, to: pegs - 1 }, pegs)
  return clip(covers, pegs)
}

const clip = ({ from, to }: Run, pegs: number): Run => {
  const first = Math.min(Math.max(0, from), pegs - 1)
  return { from: first, to: Math.min(Math.max(first, to), pegs - 1) }
}

/** The row as it is laid; of one with too many stitches only as many as there is room for. */
function fitting(
  { stitches, goes, end }: ReadRow,
  covers: Run,
  place: LoomThen,
): { fitted: LoomRow<Stitch>; left: number } {
  const kept = stitches.map(({ stitch }) => stitch)
  let over = widthOf(kept) - (covers.to - covers.from + 1)
  while (over > 0) over -= kept.pop()?.width ?? over
  const fitted = layStitches(place, covers, goes, end, kept)
  return { fitted: fitted as LoomRow<Stitch>, left: stitches.length - kept.length }
}

function rowOf(
  { goes, end }: ReadRow,
  { sites, from, to }: LoomRow<Stitch>,
  pegs: number,
  heading: Heading,
  background: Stitch,
): Row {
  const cells = Array.from({ length: pegs }, (): Cell => background)
  for (const { stitch, peg } of sites) {
    cells.fill(null, peg, peg + stitch.width)
    cells[peg] = stitch
  }
  const all = from === 0 && to === pegs - 1
  return {
    cells,
    run: all ? null : { from, to },
    heading: goes === heading ? null : goes,
    end,
  }
}
