import type { Run } from '../pattern/pattern'

/** One sheet of a chart that is spread over several. Columns and rows as the tiling counts them. */
export interface Sheet {
  /** A, B, ... Z, AA, AB, ... in the order the sheets are worked: along the rows, then up. */
  readonly letter: string
  readonly rows: Run
  readonly columns: Run
  /** Place in the overview: 0 holds column 0, 0 holds row 0. */
  readonly across: number
  readonly up: number
}

export interface Tiling {
  /** Width and height of a cell in mm, the same on all sheets. */
  readonly cell: CellSize
  readonly sheets: readonly Sheet[]
  readonly across: number
  readonly up: number
  /** Columns before which the chart is cut although a stitch stands across; empty if it can be. */
  readonly cuts: readonly number[]
}

export interface CellSize {
  readonly width: number
  readonly height: number
}

/** A chart as the tiling sees it: counted from column 0, row 0. */
export interface TiledChart {
  readonly columns: number
  readonly rows: number
  /** How many stitches stand across the line before this column. */
  readonly crossing: (column: number) => number
  /** Sheets are cut at multiples of this where that costs no sheet; 0 for none. */
  readonly every: number
}

export interface Room {
  readonly width: number
  readonly height: number
}

/** A, B, ... Z, AA, AB, ... */
export function sheetLetter(index: number): string {
  const last = String.fromCharCode(65 + (index % 26))
  return index < 26 ? last : sheetLetter(Math.floor(index / 26) - 1) + last
}

/**
 * Cut `count` rows or columns into runs of at most `most`, about equal. A cut stands where `cost`
 * is least; of equal ones at a multiple of `every`, then where the runs are most even.
 */
export function cut(
  count: number,
  most: number,
  every: number,
  cost: (before: number) => number = () => 0,
): Run[] {
  const runs: Run[] = []
  let from = 0
  while (from < count) {
    const left = count - from
    if (left <= most) {
      runs.push({ from, to: count - 1 })
      break
    }
    const sheets = Math.ceil(left / most)
    const next = bestCut(from, left, most, sheets, every, cost)
    runs.push({ from, to: next - 1 })
    from = next
  }
  return runs
}

function bestCut(
  from: number,
  left: number,
  most: number,
  sheets: number,
  every: number,
  cost: (before: number) => number,
): number {
  const even = from + Math.ceil(left / sheets)
  const fewest = Math.max(1, left - (sheets - 1) * most)
  let best = from + Math.min(most, left)
  let bestRank: readonly number[] = [Infinity]
  // Shorter runs than `fewest` make one sheet more; they are tried only for a cut without cost.
  for (let at = from + Math.max(1, Math.min(fewest, most - 8)); at <= from + most; at++) {
    const rank = [
      cost(at),
      at - from < fewest ? 1 : 0,
      every > 0 && at % every === 0 ? 0 : 1,
      Math.abs(at - even),
    ]
    if (isLess(rank, bestRank)) {
      best = at
      bestRank = rank
    }
  }
  return best
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) {
    const [left = 0, right = 0] = [a[i], b[i]]
    if (left !== right) return left < right
  }
  return false
}

/** Spread a chart with cells of this size over sheets with so much room for cells. */
export function tile(chart: TiledChart, cell: CellSize, room: Room): Tiling {
  const columnRuns = cut(
    chart.columns,
    Math.max(1, Math.floor(room.width / cell.width + 1e-9)),
    chart.every,
    chart.crossing,
  )
  const rowRuns = cut(
    chart.rows,
    Math.max(1, Math.floor(room.height / cell.height + 1e-9)),
    chart.every,
  )
  const sheets = rowRuns.flatMap((rows, up) =>
    columnRuns.map((columns, across) => ({
      letter: sheetLetter(up * columnRuns.length + across),
      rows,
      columns,
      across,
      up,
    })),
  )
  return {
    cell,
    sheets,
    across: columnRuns.length,
    up: rowRuns.length,
    cuts: columnRuns.map(({ from }) => from).filter((from) => from > 0 && chart.crossing(from) > 0),
  }
}

/**
 * The tiling with the fewest sheets, and of these the one with the largest cells.
 * `ratio` is a cell's height over its width; widths from `least` to `most` mm are tried.
 */
export function bestTiling(
  chart: TiledChart,
  ratio: number,
  room: Room,
  { least, most }: { readonly least: number; readonly most: number },
): Tiling {
  let best: Tiling | undefined
  for (let tenths = Math.round(10 * most); tenths >= Math.round(10 * least); tenths--) {
    const width = tenths / 10
    const tiling = tile(chart, { width, height: width * ratio }, room)
    if (!best || tiling.sheets.length < best.sheets.length) best = tiling
  }
  return best ?? tile(chart, { width: least, height: least * ratio }, room)
}
