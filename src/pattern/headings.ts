import { opposite, type Heading } from '../loom/direction'
import type { Pattern } from './pattern'

/**
 * Which way each row is worked, in chart order: its own heading, or what the row before leads to
 * (a turn turns; a bar turns at its edges).
 */
export function headingsOf({ chart, loom }: Pick<Pattern, 'chart' | 'loom'>): readonly Heading[] {
  let next: Heading = 'forward'
  return chart.rows.map(({ heading, run, end }) => {
    const now = heading ?? next
    const last = now === 'forward' ? (run?.to ?? loom.pegs - 1) : (run?.from ?? 0)
    const atEdge = last === (now === 'forward' ? loom.pegs - 1 : 0)
    next = end !== 'on' || (loom.shape === 'bar' && atEdge) ? opposite(now) : now
    return now
  })
}
