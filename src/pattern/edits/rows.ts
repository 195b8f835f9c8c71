import { chartOn } from '../charts'
import type { Band, Chart, Sheet, Row } from '../pattern'
import { limits, blankRow } from '../pattern'
import { withChart } from './chart'
import { movePictures } from './piece'

/** Bands after `count` rows came in before row `at`: a band grows when they come inside it. */
const bandsAfterInsert = (bands: readonly Band[], at: number, count: number): Band[] =>
  bands.map((band) => ({
    ...band,
    from: band.from >= at ? band.from + count : band.from,
    to: band.to >= at ? band.to + count : band.to,
  }))

const insert = (pattern: Sheet, at: number, added: readonly Row[]): Sheet => {
  const { rows, bands } = chartOn(pattern)
  const room = limits.rows.most - rows.length
  const taken = added.slice(0, Math.max(0, room))
  if (taken.length === 0) return pattern
  const moved = movePictures(pattern, (row) => (row >= at ? row + taken.length : row))
  return withChart(moved, {
    rows: rows.toSpliced(at, 0, ...taken),
    bands: bandsAfterInsert(bands, at, taken.length),
  })
}

/** Put these rows in before row `at`; nothing happens when there is no room for all of them. */
export const putRows = (pattern: Sheet, at: number, rows: readonly Row[]): Sheet =>
  chartOn(pattern).rows.length + rows.length > limits.rows.most
    ? pattern
    : insert(pattern, at, rows)

/** Insert background rows before row `at` (0-based; rows.length appends). At most 600 rows in all. */
export const insertRows = (pattern: Sheet, at: number, count = 1): Sheet =>
  insert(
    pattern,
    at,
    Array.from({ length: Math.min(count, limits.rows.most) }, () =>
      blankRow(chartOn(pattern).columns, pattern.style.background),
    ),
  )

/** Copy rows `from`..`to` and put the copy after them. Bands that lie within them are copied too. */
export function duplicateRows(pattern: Sheet, from: number, to: number): Sheet {
  const { rows, bands } = chartOn(pattern)
  const copied = rows.slice(from, to + 1).map((row) => ({ ...row }))
  const made = insert(pattern, to + 1, copied)
  const added = chartOn(made).rows.length - rows.length
  const within = bands.filter((band) => band.from >= from && band.to <= to)
  if (added < copied.length || within.length === 0) return made
  const moved = within.map((band) => ({ ...band, from: band.from + added, to: band.to + added }))
  return withChart(made, {
    bands: [...chartOn(made).bands, ...moved].sort((a, b) => a.from - b.from),
  })
}

/**
 * Delete rows `from`..`to`; one row always stays. Bands shrink, and go when they are empty; step
 * pictures of the rows go with them.
 */
export function deleteRows(pattern: Sheet, from: number, to: number): Sheet {
  const { rows, bands } = chartOn(pattern)
  const count = to - from + 1
  if (count <= 0 || count >= rows.length) return pattern
  const kept = bands
    .map((band) => {
      const before = (row: number) => row - Math.max(0, Math.min(row, to + 1) - from)
      const start = before(band.from)
      const end = before(band.to + 1) - 1
      return { ...band, from: start, to: end }
    })
    .filter((band) => band.to >= band.from)
  const moved = movePictures(pattern, (row) => (row < from ? row : row <= to ? null : row - count))
  return withChart(moved, { rows: rows.toSpliced(from, count), bands: kept })
}

/** Bands that rows `from`..`to` touch, other than a band of just these rows: they have no room in one another. */
export const otherBands = ({ bands }: Chart, from: number, to: number): readonly Band[] =>
  bands.filter(
    (band) => band.from <= to && band.to >= from && (band.from !== from || band.to !== to),
  )

/** Work rows `from`..`to` `times` times in all. Bands they touch are replaced. */
export function setBand(pattern: Sheet, from: number, to: number, times: number): Sheet {
  const { bands } = chartOn(pattern)
  const wanted = Math.min(Math.round(times), limits.times.most)
  const kept = bands.filter((band) => band.to < from || band.from > to)
  const replaced = bands.filter((band) => !kept.includes(band))
  const added = times >= limits.times.least ? [{ from, to, times: wanted }] : []
  const isSo = (band: Band) =>
    added.some((one) => one.from === band.from && one.to === band.to && one.times === band.times)
  if (replaced.length === added.length && replaced.every(isSo)) return pattern
  return withChart(pattern, { bands: [...kept, ...added].sort((a, b) => a.from - b.from) })
}

export const removeBand = (pattern: Sheet, index: number): Sheet =>
  withChart(pattern, { bands: chartOn(pattern).bands.toSpliced(index, 1) })
