import { runsRightToLeft } from '../../loom/direction'
import { flatChart } from '../../drawing/flat'
import { ringChart, type RingOptions } from '../../drawing/ring'
import type { Run } from '../../pattern/pattern'
import type { Unit } from '../../languages/unit'
import type { Work } from '../../pattern/work'
import { heading, paragraph, pictureBlock, type Column } from '../page/blocks'
import { drawnSlots } from './sheets'
import type { Block } from '../page/flow'
import { markSpace, marksScene } from './marks'
import { neighbours, overviewScene } from './overview'
import type { QuietPegs } from './quietPegs'
import { type PagePicture } from '../page/page'
import type { Sheet, Tiling } from './tiling'
import { languages, termOf } from '../../languages/languages'
import { unitOfRow } from '../../pattern/unit'

const peg1AtRight = ({ pattern }: Work): boolean => runsRightToLeft(pattern.loom.direction)

const sheetChart = (
  work: Work,
  { cell }: Tiling,
  { rows, columns }: Sheet,
  { type: { numbers } }: Column,
) => flatChart(work, { cell: cell.width, leastText: numbers, rows, slots: columns })

/** What stands over a chart, over its ring and over each of its sheets. */
export interface ChartTitles {
  readonly chart: string
  readonly ring: string
  readonly sheet: (letter: string) => string
  /** Lines under the title: how often the chart is worked, which pegs are not drawn. */
  readonly asides: readonly string[]
}

/** The titles of the one chart there is, or of the one of this name. */
export function chartTitles({ pattern }: Work, name: string | null): ChartTitles {
  const { chart, ringChart, sheet, ringOf, sheetOf, timesWorked } =
    languages[pattern.style.terms].booklet
  if (name === null) return { chart, ring: ringChart, sheet, asides: [] }
  const times = pattern.steps.flatMap((step) =>
    step.kind === 'chart' && step.chart === name ? [step.times] : [],
  )
  return {
    chart: name,
    ring: ringOf(name),
    sheet: (letter) => sheetOf(name, letter),
    asides: times.some((one) => one > 1) ? [timesWorked(times)] : [],
  }
}

/** The whole chart under its heading. */
export function oneSheetBlocks(
  work: Work,
  tiling: Tiling,
  column: Column,
  { chart, asides }: ChartTitles,
): Block[] {
  const [sheet] = tiling.sheets
  if (!sheet) return []
  const scene = sheetChart(work, tiling, sheet, column)
  return [
    heading(chart, column),
    ...asideBlocks(asides, column),
    pictureBlock({ x: 0, y: 0, scale: column.type.chart, scene }, column),
  ]
}

const asideBlocks = (asides: readonly string[], column: Column): Block[] =>
  asides.map((text) => ({ ...paragraph(text, column), withNext: true }))

/** What the words of a chart call its rows; where they have both, as in a heel, all are rows. */
const unitOfChart = ({ run: { rows, habits } }: Work): Unit =>
  rows.every((row) => unitOfRow(row, habits.shape) === 'round') ? 'round' : 'row'

/** What pegs do that are not drawn, in a line. */
export function quietLine(work: Work, { from, to, rests, worked }: QuietPegs): string {
  const { style } = work.pattern
  const numbered = (run: Run): Run => ({
    from: work.numbers[run.from] ?? run.from + 1,
    to: work.numbers[run.to] ?? run.to + 1,
  })
  return languages[style.terms].booklet.quiet({
    unit: unitOfChart(work),
    pegs: { from: from + 1, to: to + 1 },
    rests: rests.map(numbered),
    worked: worked.map((run) => ({
      ...numbered(run),
      abbr: termOf(run.stitch, style.terms).abbr,
    })),
  })
}

/** How the sheets join, as a picture, on the page of the first of them where that has room for both. */
export function overviewBlocks(
  work: Work,
  tiling: Tiling,
  column: Column,
  { chart, asides }: ChartTitles,
): Block[] {
  const { type } = column
  const { terms } = work.pattern.style
  const phrases = languages[terms].booklet
  const scene = overviewScene(tiling, {
    peg1AtRight: peg1AtRight(work),
    letter: type.text,
    terms,
  })
  // Many sheets ask for more room than there is, each for its letter.
  const scale = Math.min(1, column.width / scene.width, column.width / scene.height)
  return [
    heading(chart, column),
    ...asideBlocks(asides, column),
    { ...paragraph(phrases.sheetsJoin(tiling.sheets.length), column), withNext: true },
    { ...pictureBlock({ x: 0, y: 0, scale, scene }, column, 1), beforeNext: 1 },
  ]
}

/** Each sheet, never cut: letter, what stands on it, the chart and where it goes on. */
export const sheetBlocks = (
  work: Work,
  tiling: Tiling,
  column: Column,
  titles: ChartTitles,
): Block[] => tiling.sheets.flatMap((sheet) => oneOfSeveral(work, tiling, sheet, column, titles))

function oneOfSeveral(
  work: Work,
  tiling: Tiling,
  sheet: Sheet,
  column: Column,
  titles: ChartTitles,
): Block[] {
  const { type } = column
  const chart = sheetChart(work, tiling, sheet, column)
  const space = markSpace * type.small
  const size = { width: type.chart * chart.width, height: type.chart * chart.height }
  const marks = marksScene(
    size,
    neighbours(tiling, sheet, peg1AtRight(work)),
    type.small,
    languages[work.pattern.style.terms].drawings.goesOn,
  )
  const pictures: PagePicture[] = [
    { x: 0, y: 0, scale: 1, scene: marks },
    { x: space, y: space, scale: type.chart, scene: chart },
  ]
  const strip = { height: size.height + 2 * space, texts: [], pictures }
  return [
    heading(titles.sheet(sheet.letter), column),
    { ...paragraph(sheetLine(work, tiling, sheet), column), withNext: true },
    { strips: [strip], before: 0 },
  ]
}

/** Which rounds and pegs a sheet holds, and which of them its neighbour holds too. */
function sheetLine(work: Work, { shared }: Tiling, { rows, columns }: Sheet): string {
  const { style } = work.pattern
  const phrases = languages[style.terms].booklet
  const { pegOf } = drawnSlots(work)
  const peg = (slot: number) => Math.max(0, pegOf[slot] ?? 0) + 1
  const parts = phrases.rowsAndColumns({
    unit: unitOfChart(work),
    firstRow: work.numbers[rows.from] ?? rows.from + 1,
    lastRow: work.numbers[rows.to] ?? rows.to + 1,
    firstPeg: peg(columns.from),
    lastPeg: peg(columns.to),
  })
  const both = shared
    .filter(({ from, to }) => from >= columns.from && to <= columns.to)
    .map(({ from, to }) => phrases.overlap(peg(from), peg(to)))
  return [`${parts}.`, ...both].join(' ')
}

/** The ring chart under its heading. */
export function ringBlocks(
  work: Work,
  sizes: RingOptions,
  column: Column,
  { ring, asides }: ChartTitles,
): Block[] {
  const scene = ringChart(work, sizes)
  const { chart: scale } = column.type
  const x = Math.max(0, (column.width - scale * scene.width) / 2)
  return [
    heading(ring, column),
    ...asideBlocks(asides, column),
    pictureBlock({ x, y: 0, scale, scene }, column),
  ]
}
