import { inQuotes } from '../pattern/excerpt'
import type { Band, Chart, NamedChart, Row, Run } from '../pattern/pattern'
import { limits } from '../pattern/pattern'
import { plural, readCells, writeCells } from './formatCells'
import type { PatternFile, RowEntry, RunEntry } from './formatSchema'
import { standardVocabulary } from '../stitches/vocabulary'

type ChartEntry = PatternFile['charts'][number]

/** Parts that are right one by one but do not fit together. */
export class Misfit extends Error {}

/** A chart of a file. `alone`: the file has no other, so that messages need not name it. */
export function toChart(entry: ChartEntry, alone: boolean): NamedChart {
  const { name, columns, repeat, bands, rows, words, aside } = entry
  try {
    const chart: Chart = {
      columns,
      repeat: repeat && toRun(repeat, 'The repeat', 'column', columns),
      bands: toBands(bands, rows.length),
      rows: rows.map((row, index) => toRow(row, index + 1, columns)),
    }
    return { name, chart, words: words && toWords(words), aside }
  } catch (error) {
    if (!alone && error instanceof Misfit)
      throw new Misfit(`In the chart ${inQuotes(name)}: ${error.message}`)
    throw error
  }
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

function toBands(bands: ChartEntry['bands'], rows: number): Band[] {
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
  const read = readCells(stitches, limits.columns.most, standardVocabulary)
  if (!read.ok) throw new Misfit(`Row ${number}, column ${read.column}: ${read.reason}.`)
  const { cells } = read
  if (cells.length !== columns)
    throw new Misfit(
      `Row ${number} has ${plural(cells.length, 'column')}; the chart has ${columns}.`,
    )
  return {
    cells,
    // The loom may have been made smaller since: the run may then end beyond it.
    run: pegs ? toRun(pegs, `Row ${number}`, 'peg', limits.pegs.most) : null,
    heading: heading ?? null,
    end: end ?? 'on',
  }
}

export const toChartEntry = ({
  name,
  chart: { columns, repeat, bands, rows },
  words,
  aside,
}: NamedChart): ChartEntry => ({
  name,
  columns,
  repeat: repeat && toEntry(repeat),
  bands: bands.map((band) => ({ ...toEntry(band), times: band.times })),
  rows: rows.map(({ cells, run, heading, end }) => ({
    stitches: writeCells(cells),
    ...(run && { pegs: toEntry(run) }),
    ...(heading && { heading }),
    ...(end !== 'on' && { end }),
  })),
  words: words === null ? null : words.split('\n'),
  aside: [...aside],
})

export const toEntry = ({ from, to }: Run): RunEntry => ({ from: from + 1, to: to + 1 })
