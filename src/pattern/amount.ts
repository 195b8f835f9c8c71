import type { Gauge, Pattern } from './pattern'
import { pieceLimits, type Amount } from './piece'

/** Far more than a piece can have: what goes beyond its own limit is said as left out, with its number. */
const mostPlainRows = 1_000_000

/** Rows of an amount; none for a length without a gauge. */
export function plainRows({ gauge }: Pick<Pattern, 'gauge'>, amount: Amount): number {
  if (!('rows' in amount) && !gauge) return 0
  const rows = 'rows' in amount ? amount.rows : (amount.mm * (gauge?.rows ?? 0)) / 100
  return Math.min(Math.max(1, Math.round(rows) || 1), mostPlainRows)
}

/** Plain rows and a length before either is known. */
const usual = { rows: 10, mm: 50 } as const

const within = (value: number, { least, most }: { least: number; most: number }): number =>
  Math.min(most, Math.max(least, value))

/**
 * The same amount of plain rows in the other unit: a length is what the rows come to, mm, so that they stay as
 * many; null where no length that a piece can have does.
 */
export function inOtherUnit(amount: Amount, gauge: Gauge | null): Amount | null {
  const rows = plainRows({ gauge }, amount)
  if (!('rows' in amount)) return { rows: within(rows || usual.rows, pieceLimits.plainRows) }
  if (!gauge) return { mm: usual.mm }
  const mm = within(Math.round((rows * 100) / gauge.rows), pieceLimits.length)
  return plainRows({ gauge }, { mm }) === rows ? { mm } : null
}
