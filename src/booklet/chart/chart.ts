import type { Work } from '../../pattern/work'
import type { Column } from '../page/blocks'
import {
  chartTitles,
  oneSheetBlocks,
  overviewBlocks,
  quietLine,
  ringBlocks,
  sheetBlocks,
  type ChartTitles,
} from './blocks'
import { wishedWidth } from './cellWish'
import { planOneSheet, planSheets } from './sheets'
import { heightOfChain } from '../page/flow'
import { withoutQuietPegs } from './quietPegs'
import { papers } from '../page/paper'
import type { Context, Laid } from '../part'
import { largestRing } from './ringSize'
import type { Tiling } from './tiling'
import { cellSizes } from '../page/typeScale'

/** What a chart is printed with. */
export interface ChartRoom extends Pick<Context, 'settings' | 'column' | 'area'> {
  /** How much of the page that the chart comes to is full, mm. */
  readonly filled: number
}

/** A chart as rows, as a ring or as both; `section` stands over it where there are several. */
export function chartBlocks(work: Work, room: ChartRoom, section: string | null): Laid {
  const titles = chartTitles(work, section)
  const wishes = room.settings.chart
  const ring = wishes === 'flat' ? null : ringPart(work, room, titles, section)
  // Without a ring that can be read, the flat chart takes its place: no chart is left out silently.
  const flat = wishes !== 'ring' || ring?.blocks.length === 0 ? flatPart(work, room, titles) : null
  return {
    blocks: [...(flat?.blocks ?? []), ...(ring?.blocks ?? [])],
    warnings: [...(ring?.warnings ?? []), ...(flat?.warnings ?? [])],
  }
}

/** Room for lines under a heading, each of which may be broken once. */
const asideHeight = (asides: readonly string[], { type }: Column): number =>
  2 * type.unit * asides.length

/** Height of a heading over a chart, with the line under it. */
const headingHeight = ({ type }: Column): number => 3 * type.unit

function flatPart(
  work: Work,
  { settings, column, area, filled }: ChartRoom,
  titles: ChartTitles,
): Laid {
  const { unit, chart: scale } = column.type
  const { width: wished, warnings } = wishedWidth(work.pattern, settings.cell, scale)
  const fewer = withoutQuietPegs(work)
  const quiet = fewer ? fewer.quiet.map((quiet) => quietLine(work, quiet)) : []
  const said = { ...titles, asides: [...titles.asides, ...quiet] }
  const under = ({ asides }: ChartTitles) =>
    area.height - headingHeight(column) - unit - asideHeight(asides, column)
  for (const drawn of fewer ? [null, fewer] : [null]) {
    const height = under(drawn ? said : titles)
    const { good, least: smallest } = cellSizes
    const below = { height: height - filled - unit, least: good }
    for (const { height: free, least } of [below, { height, least: smallest }]) {
      const room = { width: area.width / scale, height: free / scale }
      const tiling = free > 0 ? planOneSheet(work, room, column, { wished, drawn, least }) : null
      if (tiling)
        return { blocks: oneSheetBlocks(work, tiling, column, drawn ? said : titles), warnings }
    }
  }
  const plan = (height: number): Tiling =>
    planSheets(work, { width: area.width / scale, height: height / scale }, column, {
      wished,
      drawn: fewer,
    })
  const tiling = plan(under(said))
  if (tiling.sheets.length === 1)
    return { blocks: oneSheetBlocks(work, tiling, column, said), warnings }
  // Not for one sheet more.
  const sketch = heightOfChain(overviewBlocks(work, tiling, column, said))
  const left = area.height - sketch - headingHeight(column) - 2.5 * unit
  const lower = left > 0 ? plan(left) : tiling
  const sheets = lower.sheets.length === tiling.sheets.length ? lower : tiling
  return {
    blocks: [
      ...overviewBlocks(work, sheets, column, said),
      ...sheetBlocks(work, sheets, column, titles),
    ],
    warnings,
  }
}

function ringPart(
  work: Work,
  { settings, column, area }: ChartRoom,
  titles: ChartTitles,
  section: string | null,
): Laid {
  const lines = asideHeight(titles.asides, column)
  const room = Math.min(area.width, area.height - headingHeight(column) - lines)
  const { chart: scale } = column.type
  const { least, most } = cellSizes
  const { side, options } = largestRing(work, room / scale, most)
  if (options && side >= least - 1e-9)
    return { blocks: ringBlocks(work, options, column, titles), warnings: [] }
  const { pegs } = work.pattern.loom
  const rows = work.chart.rows.length
  const paper = papers[settings.paper].name
  const name = section === null ? '' : ` (${section})`
  return {
    blocks: [],
    warnings: [
      {
        message: `A ring chart of ${pegs} pegs and ${rows} rows${name} would have cells of ${Math.floor(10 * scale * side + 1e-9) / 10} mm on ${paper}; ${Math.round(10 * scale * least) / 10} mm is the least that can be read, so it is left out.`,
        advice: 'The flat chart is printed; it can stand on several sheets.',
      },
    ],
  }
}
