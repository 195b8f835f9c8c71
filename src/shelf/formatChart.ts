import { inQuotes } from '../pattern/excerpt'
import { shortRowChart } from '../pattern/generate/shortRows'
import type { Band, Cell, LoomSetup, NamedChart, Row, Run, ShortRowWish } from '../pattern/pattern'
import { limits } from '../pattern/pattern'
import { plural, readCells, writeCells } from './formatCells'
import type { PatternFile, RowEntry, RunEntry, WishEntry } from './formatSchema'
import { standardVocabulary } from '../stitches/vocabulary'

type ChartEntry = PatternFile['charts'][number]
type RowChartEntry = Extract<ChartEntry, { rows: unknown }>

/** Parts that are right one by one but do not fit together. */
export class Misfit extends Error {}

/** A chart of a file. `alone`: the file has no other, so that messages need not name it. */
export function toChart(entry: ChartEntry, loom: LoomSetup, alone: boolean): NamedChart {
  const { name, words, aside } = entry
  try {
    const made = 'wish' in entry ? madeFrom(entry.wish, loom) : toRows(entry)
    return { name, ...made, words: words && toWords(words), aside }
  } catch (error) {
    if (!alone && error instanceof Misfit)
      throw new Misfit(`In the chart ${inQuotes(name)}: ${error.message}`)
    throw error
  }
}

type Made = Pick<NamedChart, 'chart' | 'wish'>

const toRows = ({ columns, repeat, bands, rows }: RowChartEntry): Made => ({
  wish: null,
  chart: {
    columns,
    repeat: repeat && toRun(repeat, 'The repeat', 'column', columns),
    bands: toBands(bands, rows.length),
    rows: rows.map((row, index) => toRow(row, index + 1, columns)),
  },
})

/** The rows that a wish makes on the loom of the file. */
function madeFrom({ pegs, beside, ...entry }: WishEntry, loom: LoomSetup): Made {
  const wish: ShortRowWish = {
    ...entry,
    run: toRun(pegs, 'The wish', 'peg', limits.pegs.most),
    beside: beside
      ? [
          toCells(beside[0], 'The first row beside the wish', loom.pegs),
          toCells(beside[1], 'The second row beside the wish', loom.pegs),
        ]
      : null,
  }
  const made = shortRowChart(loom, wish)
  if (!made.ok)
    throw new Misfit(`The wish cannot be worked on this loom. ${made.message} ${made.advice}`)
  return { chart: made.chart, wish }
}

export function toWords(lines: readonly string[]): string {
  const words = lines.join('\n')
  const { most } = limits.words
  if (words.length > most)
    throw new Misfit(`"words" has ${plural(words.length, 'character')}; it can have up to ${most}.`)
  return words
}

export function toRun({ from, to }: RunEntry, what: string, noun: string, most: number): Run {
  if (from > to)
    throw new Misfit(`${what} runs from ${noun} ${from} to ${noun} ${to}, which stands before it.`)
  if (to > most)
    throw new Misfit(`${what} runs to ${noun} ${to}; there are only ${plural(most, noun)}.`)
  return { from: from - 1, to: to - 1 }
}

function toBands(bands: RowChartEntry['bands'], rows: number): Band[] {
  return bands.map(({ times, ...band }, index) => {
    const run = toRun(band, `Band ${index + 1}`, 'row', rows)
    const last = bands[index - 1]
    if (last && band.from <= last.to)
      throw new Misfit(
        `Band ${index + 1} starts at row ${band.from}, but band ${index} goes to row ${last.to}; bands must follow one another.`,
      )
    return { ...run, times }
  })
}

function toRow({ stitches, pegs, heading, end }: RowEntry, number: number, columns: number): Row {
  return {
    cells: toCells(stitches, `Row ${number}`, columns),
    // The loom may have been made smaller since: the run may then end beyond it.
    run: pegs ? toRun(pegs, `Row ${number}`, 'peg', limits.pegs.most) : null,
    heading: heading ?? null,
    end: end ?? 'on',
  }
}

function toCells(stitches: string, what: string, columns: number): readonly Cell[] {
  const read = readCells(stitches, limits.columns.most, standardVocabulary)
  if (!read.ok) throw new Misfit(`${what}, column ${read.column}: ${read.reason}.`)
  const { cells } = read
  if (cells.length !== columns)
    throw new Misfit(`${what} has ${plural(cells.length, 'column')}; the chart has ${columns}.`)
  return cells
}

export const toChartEntry = (named: NamedChart): ChartEntry => ({
  name: named.name,
  ...(named.wish ? { wish: toWishEntry(named.wish) } : toRowEntries(named)),
  words: named.words === null ? null : named.words.split('\n'),
  aside: [...named.aside],
})

const toRowEntries = ({ chart: { columns, repeat, bands, rows } }: NamedChart) => ({
  columns,
  repeat: repeat && toEntry(repeat),
  bands: bands.map((band) => ({ ...toEntry(band), times: band.times })),
  rows: rows.map(({ cells, run, heading, end }) => ({
    stitches: writeCells(cells),
    ...(run && { pegs: toEntry(run) }),
    ...(heading && { heading }),
    ...(end !== 'on' && { end }),
  })),
})

const toWishEntry = (wish: ShortRowWish): WishEntry => ({
  shape: wish.shape,
  turn: wish.turn,
  pegs: toEntry(wish.run),
  turned: wish.turned,
  step: wish.step,
  sides: wish.sides,
  closeCorners: wish.closeCorners,
  ...(wish.beside && { beside: [writeCells(wish.beside[0]), writeCells(wish.beside[1])] }),
})

export const toEntry = ({ from, to }: Run): RunEntry => ({ from: from + 1, to: to + 1 })
