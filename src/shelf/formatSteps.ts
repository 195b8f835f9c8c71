import type { Pictures, Step } from '../pattern/piece'
import { inQuotes } from '../pattern/excerpt'
import { keepsItsLoop } from '../stitches/stitch'
import { standardVocabulary } from '../stitches/vocabulary'
import { Misfit, toEntry, toRun } from './formatChart'
import type { PatternFile, RunEntry, StepEntry } from './formatSchema'
import { limits, type Run } from '../pattern/pattern'

type PicturesEntry = PatternFile['pictures'][number]

/** Steps and step pictures name charts; `names` are those of the file. */
export function toPictures(
  { chart, row, from, to }: PicturesEntry,
  number: number,
  names: readonly string[],
): Pictures {
  if (!names.includes(chart))
    throw new Misfit(`Picture ${number} is of chart ${inQuotes(chart)}, which is not in the file.`)
  if (from > to)
    throw new Misfit(
      `Picture ${number} runs from move ${from} to move ${to}, which stands before it.`,
    )
  return { chart, row: row - 1, from: from - 1, to: to - 1 }
}

export const toPicturesEntry = ({ chart, row, from, to }: Pictures): PicturesEntry => ({
  chart,
  row: row + 1,
  from: from + 1,
  to: to + 1,
})

export function toStep(entry: StepEntry, number: number, names: readonly string[]): Step {
  const pegs = (run: RunEntry | undefined): Run | null =>
    run ? toRun(run, `Step ${number}`, 'peg', limits.pegs.most) : null
  switch (entry.step) {
    case 'cast on':
      return { kind: 'cast on', how: entry.how, pegs: pegs(entry.pegs) }
    case 'bind off':
      return { kind: 'bind off', how: entry.how, pegs: pegs(entry.pegs) }
    case 'chart':
      if (!names.includes(entry.chart))
        throw new Misfit(
          `Step ${number} works chart ${inQuotes(entry.chart)}, which is not in the file.`,
        )
      return { kind: 'chart', chart: entry.chart, times: entry.times }
    case 'plain': {
      const { stitch, rows, mm } = entry
      const found = standardVocabulary.find(stitch)
      if (!found || !keepsItsLoop(found))
        throw new Misfit(
          `Step ${number} works rows of ${inQuotes(stitch)}; it must be a stitch that makes one loop of one, such as "k".`,
        )
      if ((rows === undefined) === (mm === undefined))
        throw new Misfit(`Step ${number} needs either "rows" or "mm".`)
      const amount = rows === undefined ? { mm: mm ?? 1 } : { rows }
      return { kind: 'plain', stitch: found, amount }
    }
    case 'pegs':
      return { kind: 'pegs', run: pegs(entry.pegs), toAndFro: entry.toAndFro }
    case 'note':
      return { kind: 'note', text: entry.text }
  }
}

export function toStepEntry(step: Step): StepEntry {
  const some = (run: Run | null) => (run ? { pegs: toEntry(run) } : {})
  switch (step.kind) {
    case 'cast on':
      return { step: 'cast on', how: step.how, ...some(step.pegs) }
    case 'bind off':
      return { step: 'bind off', how: step.how, ...some(step.pegs) }
    case 'chart':
      return { step: 'chart', chart: step.chart, times: step.times }
    case 'plain':
      return { step: 'plain', stitch: step.stitch.id, ...step.amount }
    case 'pegs':
      return { step: 'pegs', ...some(step.run), toAndFro: step.toAndFro }
    case 'note':
      return { step: 'note', text: step.text }
  }
}
