import type { Run } from '../../pattern/pattern'

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
  /**
   * Columns that stand on two sheets: where some stitch stands across every line near by, the next
   * sheet begins so much earlier that each stitch is whole on one of the two. Most often none.
   */
  readonly shared: readonly Run[]
}

export interface CellSize {
  readonly width: number
  readonly height: number
}

/** A chart as the tiling sees it: counted from column 0, row 0. */
export interface TiledChart {
  readonly columns: number
  readonly rows: number
  /** How many columns a stitch that stands across the line before this one reaches back; else 0. */
  readonly reach: (column: number) => number
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

/** Stitches are no wider than this. */
const widestStitch = 8

/**
 * Cut `count` rows or columns into runs of at most `most`, about equal. A cut stands where `reach`
 * is least; of equal ones at a multiple of `every` near by, then where the runs are most even. After a cut
 * through a stitch the next run begins where that stitch does.
 */
export function cut(
  count: number,
  most: number,
  every: number,
  reach: (before: number) => number = () => 0,
): Run[] {
  const runs: Run[] = []
  let from = 0
  while (count - from > most) {
    const at = bestCut(from, count - from, most, every, reach)
    runs.push({ from, to: at - 1 })
    const back = at - reach(at)
    from = back > from ? back : at
  }
  runs.push({ from, to: count - 1 })
  return runs
}

function bestCut(
  from: number,
  left: number,
  most: number,
  every: number,
  reach: (before: number) => number,
): number {
  const sheets = Math.ceil(left / most)
  const even = from + Math.ceil(left / sheets)
  const fewest = Math.max(1, left - (sheets - 1) * most)
  let best = from + most
  let bestRank: readonly number[] = [Infinity]
  // Runs shorter than `fewest` make one sheet more; they are tried only for a cut past no stitch.
  for (
    let at = from + Math.max(1, Math.min(fewest, most - widestStitch));
    at <= from + most;
    at++
  ) {
    const rank = [
      // The next run must begin after this one does, or it would lose the stitch it goes back for.
      at - reach(at) > from ? 0 : 1,
      reach(at),
      at - from < fewest ? 1 : 0,
      every > 0 && at % every === 0 && Math.abs(at - even) < every ? 0 : 1,
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
    chart.reach,
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
    shared: columnRuns.flatMap(({ from }, i) => {
      const last = columnRuns[i - 1]
      return last && last.to >= from ? [{ from, to: last.to }] : []
    }),
  }
}

/**
 * The tiling with the fewest sheets, and of these the one with the largest cells. Widths from
 * `least` to `most` mm are tried; `sizeOf` gives the cell and the room for cells at a width.
 */
export function bestTiling(
  chart: TiledChart,
  { least, most }: { readonly least: number; readonly most: number },
  sizeOf: (width: number) => { readonly cell: CellSize; readonly room: Room },
): Tiling {
  const tilingAt = (width: number): Tiling => {
    const { cell, room } = sizeOf(width)
    return tile(chart, cell, room)
  }
  let best = tilingAt(most)
  for (let tenths = Math.round(10 * most) - 1; tenths >= Math.round(10 * least); tenths--) {
    const tiling = tilingAt(tenths / 10)
    if (tiling.sheets.length < best.sheets.length) best = tiling
  }
  return best
}
