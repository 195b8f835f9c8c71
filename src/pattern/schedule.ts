import type { Band, Chart } from './pattern'

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

/** All rows as they are worked, bands unrolled. The same array for the same bands and rows. */
export function schedule({ bands, rows }: Pick<Chart, 'bands' | 'rows'>): readonly Pass[] {
  let lists = known.get(bands)
  if (!lists) known.set(bands, (lists = new Map<number, readonly Pass[]>()))
  let list = lists.get(rows.length)
  if (!list) lists.set(rows.length, (list = unroll(bands, rows.length)))
  return list
}

function unroll(bands: readonly Band[], rows: number): Pass[] {
  const passes: Pass[] = []
  const add = (row: number, time: number) => passes.push({ row, time, number: passes.length + 1 })
  for (let row = 0; row < rows;) {
    const band = bands.find(({ from }) => from === row)
    if (!band || band.to >= rows) {
      add(row++, 0)
      continue
    }
    for (let time = 0; time < band.times; time++)
      for (let inside = band.from; inside <= band.to; inside++) add(inside, time)
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
