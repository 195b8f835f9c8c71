import type { Pictures, Piece, Section, Step } from '../pattern/piece'
import { inQuotes } from '../pattern/excerpt'
import { keepsItsLoop } from '../stitches/stitch'
import { findStitch } from '../stitches/vocabulary'
import { Misfit, toChart, toChartEntry, toEntry, toRun, toWords } from './formatChart'
import type { PatternFile, RunEntry, StepEntry } from './formatSchema'
import { limits, type Run } from '../pattern/pattern'

type PieceEntry = PatternFile['piece']

export function toPiece(entry: PieceEntry): Piece {
  const { onBench, steps, sections, pair, pace, swatch, pictures } = entry
  const names = [onBench, ...sections.map(({ name }) => name)]
  const twice = names.find((name, index) => names.indexOf(name) !== index)
  if (twice !== undefined)
    throw new Misfit(`Two sections are called ${inQuotes(twice)}; names must differ.`)
  return {
    onBench,
    others: sections.map(toSection),
    steps: steps.map((step, index) => toStep(step, index + 1, names)),
    pair,
    pace,
    swatch,
    pictures: pictures.map((picture, index) => toPictures(picture, index + 1, names)),
  }
}

function toPictures(
  { section, row, from, to }: PieceEntry['pictures'][number],
  number: number,
  names: readonly string[],
): Pictures {
  if (!names.includes(section))
    throw new Misfit(
      `Picture ${number} is of section ${inQuotes(section)}, which is not in the file.`,
    )
  if (from > to)
    throw new Misfit(
      `Picture ${number} runs from move ${from} to move ${to}, which stands before it.`,
    )
  return { section, row: row - 1, from: from - 1, to: to - 1 }
}

const toSection = ({ name, chart, words, aside }: PieceEntry['sections'][number]): Section => ({
  name,
  chart: toChart(chart, `In section ${inQuotes(name)}: `),
  words: words && toWords(words),
  aside,
})

function toStep(entry: StepEntry, number: number, names: readonly string[]): Step {
  const pegs = (run: RunEntry | undefined): Run | null =>
    run ? toRun(run, `Step ${number}`, 'peg', limits.pegs.most) : null
  switch (entry.step) {
    case 'cast on':
      return { kind: 'cast on', how: entry.how, pegs: pegs(entry.pegs) }
    case 'bind off':
      return { kind: 'bind off', how: entry.how, pegs: pegs(entry.pegs) }
    case 'chart':
      if (!names.includes(entry.section))
        throw new Misfit(
          `Step ${number} works section ${inQuotes(entry.section)}, which is not in the file.`,
        )
      return { kind: 'chart', section: entry.section, times: entry.times }
    case 'plain': {
      const { stitch, rows, mm } = entry
      const found = findStitch(stitch)
      if (!found || !keepsItsLoop(found))
        throw new Misfit(
          `Step ${number} works rows of ${inQuotes(stitch)}; it must be a stitch that makes one loop of one, such as "k".`,
        )
      if ((rows === undefined) === (mm === undefined))
        throw new Misfit(`Step ${number} needs either "rows" or "mm".`)
      return { kind: 'plain', stitch, amount: rows === undefined ? { mm: mm ?? 1 } : { rows } }
    }
    case 'pegs':
      return { kind: 'pegs', run: pegs(entry.pegs), toAndFro: entry.toAndFro }
    case 'note':
      return { kind: 'note', text: entry.text }
  }
}

export const toPieceEntry = (piece: Piece): PieceEntry => ({
  onBench: piece.onBench,
  steps: piece.steps.map(toStepEntry),
  sections: piece.others.map(({ name, chart, words, aside }) => ({
    name,
    chart: toChartEntry(chart),
    words: words === null ? null : words.split('\n'),
    aside: [...aside],
  })),
  pair: piece.pair,
  pace: piece.pace,
  swatch: piece.swatch && {
    stitches: piece.swatch.stitches,
    rows: piece.swatch.rows,
    grams: piece.swatch.grams,
  },
  pictures: piece.pictures.map(({ section, row, from, to }) => ({
    section,
    row: row + 1,
    from: from + 1,
    to: to + 1,
  })),
})

function toStepEntry(step: Step): StepEntry {
  const some = (run: Run | null) => (run ? { pegs: toEntry(run) } : {})
  switch (step.kind) {
    case 'cast on':
      return { step: 'cast on', how: step.how, ...some(step.pegs) }
    case 'bind off':
      return { step: 'bind off', how: step.how, ...some(step.pegs) }
    case 'chart':
      return { step: 'chart', section: step.section, times: step.times }
    case 'plain':
      return { step: 'plain', stitch: step.stitch, ...step.amount }
    case 'pegs':
      return { step: 'pegs', ...some(step.run), toAndFro: step.toAndFro }
    case 'note':
      return { step: 'note', text: step.text }
  }
}
