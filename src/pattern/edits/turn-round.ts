import { chartOn } from '../charts'
import type { Sheet } from '../pattern'
import { mendOrphans } from './columns'
import { withCells, withChart } from './chart'
import { otherDirection } from '../../loom/direction'
import { turnPiece, type Turned } from './turn-piece'
import type { Fault } from './works-alike'
import { upperFirst } from '../../languages/english/forms'

/**
 * Start the round elsewhere: column `by` becomes the first one of the run of columns that goes
 * round (the repeat, or the whole chart without one). Stitches stay whole unless the new edge of
 * that run goes through them.
 */
export function rotateColumns(pattern: Sheet, by: number): Sheet {
  const { columns, repeat, rows } = chartOn(pattern)
  const { from, to } = repeat ?? { from: 0, to: columns - 1 }
  const width = to - from + 1
  const offset = ((by % width) + width) % width
  if (offset === 0) return pattern
  return withChart(pattern, {
    rows: withCells(rows, (cells) => {
      const round = cells.slice(from, to + 1)
      const turned = [...round.slice(offset), ...round.slice(0, offset)]
      return mendOrphans(
        [...cells.slice(0, from), ...turned, ...cells.slice(to + 1)],
        pattern.style.background,
      )
    }),
  })
}

/**
 * Work the loom the other way round and keep the look of the fabric, in every chart: peg 1
 * changes sides, so columns and pegs are renumbered; crosses and leans stay as they look. A heel is
 * begun from the other end of the round. Moves and words follow. The same pattern where that cannot
 * be: see `whyNotReversed`.
 */
export function reverseDirection(pattern: Sheet): Sheet {
  const turned = reversed(pattern)
  return turned.ok ? turned.pattern : pattern
}

const reversed = (pattern: Sheet): Turned =>
  turnPiece(pattern, { direction: otherDirection(pattern.loom.direction) })

/** Why the piece cannot be worked the other way with the same fabric; null when it can. */
export function whyNotReversed(pattern: Sheet): string | null {
  const turned = reversed(pattern)
  if (turned.ok) return null
  const place = turned.fault && placeOf(turned.fault, pattern)
  if (turned.isNow)
    return `${upperFirst(place ?? 'A row')} cannot be worked as it is: mend that first, then the piece can be turned.`
  const begun =
    pattern.loom.shape === 'bar'
      ? 'Begun at the other end of the rake'
      : 'Worked the other way round'
  const why = place
    ? `${place} would not begin where the yarn is`
    : 'some pegs would be worked more often and others less'
  return `${begun}, this piece cannot have the same fabric: ${why}.`
}

function placeOf(fault: Fault, { steps }: Sheet): string {
  if ('row' in fault) return `row ${fault.row + 1} of the chart “${fault.chart}”`
  const step = steps[fault.step]
  const named = step?.kind === 'chart' ? step.chart : step?.kind === 'plain' ? 'plain rows' : null
  return `step ${fault.step + 1}${named === null ? '' : ` (${named})`}`
}
