import type { Heading } from '../../loom/direction'
import { afterRow } from '../../loom/rowEnd'
import type { Chart, LoomSetup } from '../pattern'

/**
 * Which way each row is worked, in chart order: its own heading, or what the row before leads to
 * (a turn turns; a bar turns at its edges).
 */
export function headingsOf(chart: Chart, loom: LoomSetup): readonly Heading[] {
  let next: Heading = 'forward'
  return chart.rows.map(({ heading, run, end }) => {
    const now = heading ?? next
    next = afterRow({ ...(run ?? { from: 0, to: loom.pegs - 1 }), end }, now, loom).heading
    return now
  })
}
