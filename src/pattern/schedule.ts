import { limits, type Band, type Chart } from './pattern'
import { pieceLimits } from './piece'

/** One working of a chart row. */
export interface Pass {
  /** 0-based chart row. */
  readonly row: number
  /** Which time its band is worked, from 0. */
  readonly time: number
  /** The round as a knitter counts them, from 1. */
  readonly number: number
}

const known = new WeakMap<readonly Band[], Map<number, readonly Pass[]>>()

/**
 * All rows as they are worked, bands unrolled. The same array for the same bands and rows. A chart that
 * comes to more rows than a piece can have is not unrolled beyond them: its long bands are worked fewer times
 * here, though at least once, and the numbers still count every round.
 */
export function schedule({ bands, rows }: Pick<Chart, 'bands' | 'rows'>): readonly Pass[] {
  let lists = known.get(bands)
  if (!lists) known.set(bands, (lists = new Map<number, readonly Pass[]>()))
  let list = lists.get(rows.length)
  if (!list) lists.set(rows.length, (list = unroll(bands, rows.length)))
  return list
}

const timesOf = ({ times }: Band): number =>
  Math.min(Math.max(1, Math.round(times) || 1), limits.times.most)

/** How often each chart row is worked. */
export function timesWorked({ bands, rows }: Pick<Chart, 'bands' | 'rows'>): readonly number[] {
  const times = rows.map(() => 1)
  for (const band of bands)
    if (band.to < rows.length) times.fill(timesOf(band), band.from, band.to + 1)
  return times
}

function unroll(bands: readonly Band[], rows: number): Pass[] {
  const passes: Pass[] = []
  let number = 0
  let more = Math.max(0, pieceLimits.rows.most - rows)
  for (let row = 0; row < rows;) {
    const band = bands.find(({ from }) => from === row)
    if (!band || band.to >= rows) {
      passes.push({ row: row++, time: 0, number: ++number })
      continue
    }
    const length = band.to - band.from + 1
    const again = Math.min(timesOf(band) - 1, Math.floor(more / length))
    more -= again * length
    for (let time = 0; time <= again; time++)
      for (let inside = band.from; inside <= band.to; inside++)
        passes.push({ row: inside, time, number: number + time * length + inside - band.from + 1 })
    number += timesOf(band) * length
    row = band.to + 1
  }
  return passes
}

const labels = new WeakMap<readonly Pass[], readonly number[]>()

/**
 * The number of each chart row: the round in which it is first worked. A row after a band counts
 * on from the band's last working, so chart, words and row counter agree.
 */
export function rowNumbers(chart: Pick<Chart, 'bands' | 'rows'>): readonly number[] {
  const passes = schedule(chart)
  let list = labels.get(passes)
  if (!list) {
    list = passes.filter(({ time }) => time === 0).map(({ number }) => number)
    labels.set(passes, list)
  }
  return list
}
