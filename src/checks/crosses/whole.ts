import { chartOn } from '../../pattern/charts'
import { eraseAll, paint } from '../../pattern/edits/paint'
import { whyCut } from '../../pattern/columns/cut'
import type { Layout } from '../../pattern/layout'
import type { Row, Run, Sheet } from '../../pattern/pattern'
import { placed, placedAt, type Placed } from '../../pattern/row'
import type { CutBy, Stitch } from '../../stitches/stitch'
import { fix, type Fix } from '../../pattern/finding'
import { paintColumns } from '../mending'
import { nothing } from '../nothing'
import type { Noted, RowView } from '../rule'
import { inEachRepeat } from '../wording'
import { plainGroups } from './groups'
import { languages } from '../../languages/languages'
import { counted } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'

export interface CutCross {
  readonly item: Placed
  readonly why: CutBy
  /** Pegs of what there is of it, in the first copy. */
  readonly pegs: Run
  /** In how many copies of the repeat it is cut: where the last copy meets what stands beside it, it can be whole. */
  readonly cutIn: number
}

let lastView: RowView | null = null
let lastFound: readonly CutCross[] = nothing

/** The stitches of several columns that are not whole, each with its reason. */
export function brokenIn(view: RowView): readonly CutCross[] {
  // Several rules ask this of one row, one after the other.
  if (view !== lastView) lastFound = findBroken(view)
  lastView = view
  return lastFound
}

const wide = new WeakMap<Row, readonly Placed[]>()

/** The stitches of a row that need several columns. */
function wideIn(row: Row): readonly Placed[] {
  let items = wide.get(row)
  if (!items) {
    items = placed(row).filter(({ stitch }) => stitch.width > 1)
    wide.set(row, items)
  }
  return items
}

function findBroken({ row, layout }: RowView): readonly CutCross[] {
  const items = wideIn(row)
  if (items.length === 0) return nothing
  const pieces: CutCross[] = []
  for (const item of items) {
    const why = whyCut(item, row, layout)
    if (!why) continue
    const peg = layout.columnOf.indexOf(item.column)
    if (peg < 0) continue
    const pegs = { from: peg, to: lastPegOf(item, peg, layout) }
    if (row.run && (pegs.to < row.run.from || peg > row.run.to)) continue
    pieces.push({ item, why, pegs, cutIn: cutCopies(item, layout) })
  }
  return pieces
}

function cutCopies(item: Placed, layout: Layout): number {
  const starts = layout.columnOf.flatMap((column, peg) => (column === item.column ? peg : []))
  return starts.filter((peg) => lastPegOf(item, peg, layout) - peg + 1 < item.stitch.width).length
}

/** Up to which peg its columns lie side by side, from this peg on. */
function lastPegOf({ column, columns }: Placed, peg: number, { columnOf }: Layout): number {
  let last = peg
  while (last + 1 < peg + columns && columnOf[last + 1] === column + last + 1 - peg) last++
  return last
}

/**
 * Note every stitch that is broken for this reason. `needs` says what it needs and lacks; `mend` is given the
 * repair that is always there, to knit its pegs.
 */
export const noteBroken = (
  view: RowView,
  why: CutBy,
  needs: (piece: CutCross) => string,
  advice: string,
  mend: (piece: CutCross, row: number, plain: Fix) => readonly Fix[],
): readonly Noted[] => {
  const broken = brokenIn(view)
  if (broken.length === 0) return nothing
  return broken
    .filter((piece) => piece.why === why)
    .map((piece) => {
      const { item, pegs, cutIn } = piece
      const language = languages[view.setting.terms]
      const { abbr } = language.term(item.stitch)
      return {
        pegs,
        say: (row) =>
          `${row}: ${abbr} on ${pegsNamed(pegs)} is ${language.cut[why]}: it needs ${needs(piece)}${inEachRepeat(view.layout, pegs.from, cutIn)}.`,
        advice,
        mend: (row) => mend(piece, row, workPlain(piece, row)),
      }
    })
}

/** "2 are", of the pegs that are there for it. */
export const left = ({ from, to }: Run): string => (from === to ? '1 is' : `${to - from + 1} are`)

/** What is left of the stitch becomes plain knit, which is how the loom worked it anyway. */
const workPlain = ({ item, pegs }: CutCross, row: number): Fix =>
  fix(
    item.columns === pegs.to - pegs.from + 1
      ? `Knit ${pegsNamed(pegs)} instead`
      : 'Knit all its pegs instead',
    paintColumns(
      'knit',
      row,
      Array.from({ length: item.columns }, (_, offset) => item.column + offset),
    ),
  )

/**
 * Does what stands on the columns that the cross would cover have the looks that it gives them? Its own
 * columns (`item.columns` from `own` on) may be anything, as may be what `isFree` says of.
 */
export function fitsOn(
  pattern: Sheet,
  { stitch, columns }: Placed,
  row: number,
  column: number,
  own: number,
  isFree: (stitch: Stitch) => boolean = () => false,
): boolean {
  const there = chartOn(pattern).rows[row]
  const { cross } = stitch
  if (!there || !cross) return false
  return plainGroups(cross, pattern.loom.direction, 'after').every((texture, offset) => {
    const at = column + offset
    if (at >= own && at < own + columns) return true
    const found = placedAt(there, at)?.stitch
    return found?.width === 1 && (found.look === texture || isFree(found))
  })
}

/** The nearest columns at which the cross stands whole, on pegs that look as it makes them look. */
export function moveInside({ item }: CutCross, row: number, most: number): Fix[] {
  const { stitch, column, columns } = item
  const moved = (by: number) => (pattern: Sheet) => {
    if (!fitsOn(pattern, item, row, column + by, column)) return pattern
    const own = { from: column, to: column + columns - 1 }
    const cleared = eraseAll(pattern, { from: row, to: row }, own)
    const painted = paint(cleared, stitch, row, column + by)
    return painted === cleared ? pattern : painted
  }
  const steps: Fix[] = []
  for (let by = 1; by <= most; by++) {
    steps.push(
      fix(`Move it ${counted(by, 'peg')} earlier`, moved(-by)),
      fix(`Move it ${counted(by, 'peg')} later`, moved(by)),
    )
  }
  return steps
}
