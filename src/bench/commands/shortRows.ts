import { putRows } from '../../pattern/edits/rows'
import { limits, type Row } from '../../pattern/pattern'
import type { Bench } from '../state/bench.svelte'

/** Why so many rows cannot be put into the chart on the bench; null when they can. */
export function roomForRowsHere({ pattern }: Bench, count: number): string | null {
  const there = pattern.chart.rows.length
  const { most } = limits.rows
  return there + count > most
    ? `The chart has ${there} rows and can have ${most}: there is no room for ${count} more.`
    : null
}

/** Put the rows of a heel, toe or wedge in after the current row, and go to the first of them. */
export function putRowsHere(bench: Bench, thing: string, rows: readonly Row[]): void {
  const reason = roomForRowsHere(bench, rows.length)
  if (reason) {
    bench.say(reason)
    return
  }
  const at = bench.spot.row + 1
  if (!bench.apply(`Add a ${thing.toLowerCase()}`, (p) => putRows(p, at, rows))) return
  bench.goTo({ row: at, peg: 0 })
  bench.say(`${rows.length} rows are added after row ${at}.`)
}
