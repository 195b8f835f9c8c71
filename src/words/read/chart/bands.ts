import type { Heading } from '../../../loom/direction'
import { limits, type Band, type Row } from '../../../pattern/pattern'
import type { ReadBand } from '../reading'

/** One real row on the pegs of the loom. */
export interface LaidRow {
  readonly row: Row
  readonly goes: Heading
}

/** Rows of the chart, with the bands that the words tell. */
export interface Banded {
  readonly rows: readonly Row[]
  readonly bands: readonly Band[]
  /** Rows for which the chart has no room. */
  readonly leftOut: number
}

/**
 * Bands as the words tell them, each row once. A band is written out where its rows come out
 * differently in a later time, where it lies inside another, or where it is repeated too often.
 */
export function bandsOf(laid: readonly LaidRow[], said: readonly ReadBand[]): Banded {
  const chosen = chooseBands(laid, said)
  const rows: Row[] = []
  const bands: Band[] = []
  for (let at = 0; at < laid.length;) {
    const band = chosen.get(at)
    if (!band) {
      rows.push((laid[at] as LaidRow).row)
      at++
      continue
    }
    const height = band.to - band.from + 1
    bands.push({ from: rows.length, to: rows.length + height - 1, times: band.times })
    for (let row = 0; row < height; row++) rows.push(bandRow(laid, at + row, height, band.times))
    at += height * band.times
  }
  const most = limits.rows.most
  return {
    rows: rows.slice(0, most),
    bands: bands.filter(({ to }) => to < most),
    leftOut: Math.max(0, rows.length - most),
  }
}

/** Outer bands first; none that overlaps one already chosen. By the index of their first row. */
function chooseBands(laid: readonly LaidRow[], said: readonly ReadBand[]): Map<number, ReadBand> {
  const chosen = new Map<number, ReadBand>()
  const taken = new Uint8Array(laid.length)
  const span = ({ from, to, times }: ReadBand) => (to - from + 1) * times
  for (const band of [...said].sort((a, b) => span(b) - span(a))) {
    const end = band.from + span(band)
    const { times } = band
    if (times < limits.times.least || times > limits.times.most || end > laid.length) continue
    if (taken.subarray(band.from, end).includes(1) || !comesOutAlike(laid, band)) continue
    taken.fill(1, band.from, end)
    chosen.set(band.from, band)
  }
  return chosen
}

function comesOutAlike(laid: readonly LaidRow[], { from, to, times }: ReadBand): boolean {
  const height = to - from + 1
  for (let at = from + height; at < from + height * times; at++) {
    const first = laid[from + ((at - from) % height)] as LaidRow
    if (!isAlike(first, laid[at] as LaidRow)) return false
  }
  return true
}

const isAlike = (a: LaidRow, b: LaidRow): boolean =>
  // Both simply go on, or both go the same way.
  ((a.row.heading === null && b.row.heading === null) || a.goes === b.goes) &&
  a.row.end === b.row.end &&
  a.row.run?.from === b.row.run?.from &&
  a.row.run?.to === b.row.run?.to &&
  (a.row === b.row || a.row.cells.every((cell, column) => cell === b.row.cells[column]))

/** A row of a band says its way itself if in one of its times it does not follow from the last. */
function bandRow(laid: readonly LaidRow[], first: number, height: number, times: number): Row {
  const { row, goes } = laid[first] as LaidRow
  for (let time = 1; time < times; time++)
    if ((laid[first + time * height] as LaidRow).row.heading !== row.heading)
      return { ...row, heading: goes }
  return row
}
