import { runsRightToLeft } from '../loom/direction'
import type { Layout } from '../pattern/layout'
import type { Chart, Row, Run } from '../pattern/pattern'
import type { Work } from '../pattern/work'

/** What stands side by side in a drawing: the chart's columns, or all pegs of the loom. */
export const columnKinds = ['chart', 'loom'] as const
export type ColumnKind = (typeof columnKinds)[number]

/**
 * What shows a chart as it is worked: its columns, as a rule; all pegs where some row works a column in
 * one copy of the repeat and leaves it out in another, so that one column cannot stand for both.
 */
export const usualColumns = ({ rows }: Chart, layout: Layout): ColumnKind =>
  layout.copyRuns.length > 1 && rows.some((row) => row.run && partsCopies(row.run, layout))
    ? 'loom'
    : 'chart'

/** Does a row over these pegs work a column in one copy of the repeat and leave it out in another? */
function partsCopies(run: Run, { copyRuns, columnOf }: Layout): boolean {
  const first = copyRuns[0]?.from ?? 0
  const width = (copyRuns[1]?.from ?? 0) - first
  const last = first + copyRuns.length * width
  const works = (peg: number) => peg >= run.from && peg <= run.to
  return columnOf.some(
    (_, peg) => peg >= first + width && peg < last && works(peg) !== works(peg - width),
  )
}

/**
 * The places of a drawn row, in peg order. `leftward`: rising pegs go to the left, as the right
 * side is seen (a loom worked clockwise).
 */
export interface Slots {
  readonly kind: ColumnKind
  readonly leftward: boolean
  readonly count: number
  /** Column or peg of the first slot. */
  readonly first: number
  /** Chart column of each slot; -1 where the chart does not reach. */
  readonly columnOf: readonly number[]
  /** Peg of each slot; inside the repeat, its peg in the first copy; -1 for a column without one. */
  readonly pegOf: readonly number[]
  /** The slot a peg is drawn in; undefined when it is not drawn. */
  readonly slotOf: (peg: number) => number | undefined
  /** First and last slot of each copy of the repeat that is drawn, as far as it is drawn. */
  readonly copies: readonly Run[]
  /**
   * Slots before which a stitch is cut though its columns stand side by side: the edges of a repeat
   * of which there are several copies.
   */
  readonly cutBefore: readonly number[]
  /** Slots that a row works. */
  readonly covers: (row: Row) => (slot: number) => boolean
}

/** The slots of a drawing; `part`: only these of them. */
export function slotsOf(
  { chart: { columns, repeat }, layout, pattern: { loom } }: Work,
  kind: ColumnKind,
  part?: Run,
): Slots {
  const all = kind === 'chart' ? columns : layout.pegs
  const first = Math.max(0, part?.from ?? 0)
  const last = Math.min(all - 1, part?.to ?? all - 1)
  const firstPeg = new Map<number, number>()
  layout.columnOf.forEach((column, peg) => {
    if (!firstPeg.has(column)) firstPeg.set(column, peg)
  })
  const columnOf: number[] = []
  const pegOf: number[] = []
  for (let place = first; place <= last; place++) {
    columnOf.push(kind === 'chart' ? place : (layout.columnOf[place] ?? -1))
    pegOf.push(kind === 'chart' ? (firstPeg.get(place) ?? -1) : place)
  }
  const whole = kind === 'chart' ? (repeat ? [repeat] : []) : layout.copyRuns
  const copies = whole
    .filter(({ from, to }) => from <= last && to >= first)
    .map(({ from, to }) => ({
      from: Math.max(from, first) - first,
      to: Math.min(to, last) - first,
    }))
  const cutBefore =
    kind === 'chart' && repeat && layout.copies > 1
      ? [repeat.from - first, repeat.to + 1 - first]
      : []
  const slotOf = (peg: number): number | undefined => {
    const place = kind === 'chart' ? (layout.columnOf[peg] ?? -1) : peg
    return place >= first && place <= last ? place - first : undefined
  }
  const covers = ({ run }: Row): ((slot: number) => boolean) => {
    if (!run) return (slot) => columnOf[slot] !== -1
    if (kind === 'loom')
      return (slot) => columnOf[slot] !== -1 && slot + first >= run.from && slot + first <= run.to
    const worked = new Set(layout.columnOf.slice(Math.max(0, run.from), run.to + 1))
    return (slot) => worked.has(slot + first)
  }
  return {
    kind,
    leftward: runsRightToLeft(loom.direction),
    count: columnOf.length,
    first,
    columnOf,
    pegOf,
    slotOf,
    copies,
    cutBefore,
    covers,
  }
}
