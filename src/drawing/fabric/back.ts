import type { PatternRun } from '../../pattern/work'
import type { InkRole, Item, Layer } from '../scene'
import type { Across } from './across'
import type { Bend, Frame } from './geometry'
import type { Heights } from './heights'
import { area } from './inked'
import { Pen } from './pen'
import type { StitchSize } from './shapes'
import type { Slit } from './slits'

/** Does the row leave a loop on this peg? */
export const coversOf =
  (rows: readonly PatternRun[]) =>
  (row: number, peg: number): boolean => {
    const run = rows[row]
    if (!run || peg < run.row.from || peg > run.row.to) return false
    return (run.after.stacks[peg]?.length ?? 0) > 0
  }

/** Fabric from `from` to `to` rows high, in columns from left to right. */
interface Column {
  readonly x: number
  readonly from: number
  readonly to: number
}

function columnsOf(
  rows: readonly PatternRun[],
  { base }: Heights,
  slits: ReadonlyMap<number, readonly Slit[]>,
  across: Across,
): readonly Column[] {
  const covers = coversOf(rows)
  const columns: Column[] = []
  for (let peg = 0; peg < across.pegs; peg++) {
    const x = across.of(peg)
    let open: { from: number; to: number } | undefined
    for (let row = 0; row < rows.length; row++) {
      if (!covers(row, peg)) continue
      const level = base[row]?.[peg] ?? 0
      const slit = slits.get(peg)?.find((one) => one.row === row)
      if (open?.to === level && !slit) open.to++
      else {
        if (open) columns.push({ x, from: open.from, to: open.to - (slit?.below ?? 0) })
        open = { from: level + (slit?.above ?? 0), to: level + 1 }
      }
    }
    if (open) columns.push({ x, ...open })
  }
  return columns.sort((a, b) => a.x - b.x || a.from - b.from)
}

/** What shows between the strands. */
export function backLayer(
  rows: readonly PatternRun[],
  heights: Heights,
  slits: ReadonlyMap<number, readonly Slit[]>,
  across: Across,
  { width, height }: StitchSize,
  bend: Bend,
  frame: Frame,
  ink: InkRole,
  was: Layer | undefined,
): Layer {
  const pen = new Pen({ x: (x) => frame.middle + bend.x(x), shows: bend.shows })
  const seen = columnsOf(rows, heights, slits, across).filter(({ x }) => bend.shows(x * width))
  for (let i = 0; i < seen.length; i++) {
    const first = seen[i] as Column
    let last = first
    for (let next = seen[i + 1]; next && joins(last, next); next = seen[i + 1]) {
      last = next
      i++
    }
    const [left, right] = [(first.x - 0.5) * width, (last.x + 0.5) * width]
    const [top, low] = [-first.to * height, -(first.from - (first.from === 0 ? 0.3 : 0)) * height]
    pen.area([left, top], [left, low], [right, low], [right, top])
  }
  const items: Item[] = area(pen.d, ink)
  if (was && was.y === frame.bottom && sameItems(was.items, items)) return was
  return { key: 'back', x: 0, y: frame.bottom, items }
}

const joins = (a: Column, b: Column): boolean =>
  a.from === b.from && a.to === b.to && Math.abs(b.x - a.x - 1) < 1e-6

const sameItems = (a: readonly Item[], b: readonly Item[]): boolean =>
  a.length === b.length &&
  a.every((item, i) => {
    const other = b[i]
    return (
      item.kind === 'path' && other?.kind === 'path' && item.d === other.d && item.ink === other.ink
    )
  })
