import { bindOffs, castOns, type BindOff, type CastOn } from '../../loom/move'
import { pegsIn } from '../../pattern/generate/wish'
import type { Pattern, Run, ShortRowWish } from '../../pattern/pattern'
import type { Step, StepKind } from '../../pattern/piece'
import type { PieceWork } from '../../pattern/workPiece'
import { centimetres } from '../../pattern/size'
import { rowsCounted } from '../../drawing/piece/length'
import { languages, termOf } from '../../languages/languages'
import { upperFirst } from '../../languages/english/forms'
import { pegsFromTo } from '../../languages/english/pegs'

/** Each kind of step, in the order in which a piece first needs them, as its button is called. */
export const kindNames: Readonly<Record<StepKind, string>> = {
  'cast on': 'Cast on',
  chart: 'Chart',
  plain: 'Plain rows',
  pegs: 'Pegs you work',
  note: 'Note',
  'bind off': 'Bind off',
}
export const stepKinds = Object.keys(kindNames) as StepKind[]

export const castOnLabels = Object.fromEntries(castOns.map((how) => [how, how])) as Record<
  CastOn,
  string
>

export const bindOffLabels: Readonly<Record<BindOff, string>> = {
  ...(Object.fromEntries(bindOffs.map((how) => [how, how])) as Record<BindOff, string>),
  sewn: 'sewn stretchy',
}

/** "pegs 3 to 9"; pegs are 0-based. */
const pegsText = ({ from, to }: Run): string => pegsFromTo(from + 1, to + 1)

/** What a step is called in a list. */
export function stepTitle(step: Step, { style }: Pick<Pattern, 'style'>): string {
  const { words } = languages[style.terms]
  switch (step.kind) {
    case 'cast on':
      return upperFirst(words.castOn)
    case 'chart':
      return step.times > 1 ? `${step.chart} × ${step.times}` : step.chart
    case 'plain':
      return `Plain ${termOf(step.stitch, style.terms).name}`
    case 'pegs':
      return kindNames.pegs
    case 'note':
      return 'Note'
    case 'bind off':
      return upperFirst(words.bindOff)
  }
}

/** What there is to say of a step besides, the rows and the length first: "12 rounds", "4.5 cm". */
export function stepFacts(
  { steps, pattern }: PieceWork,
  index: number,
  length: number,
): readonly string[] {
  const work = steps[index]
  if (!work) return []
  const { step } = work
  const rows = rowsCounted(work, pattern.style.terms)
  const facts = rows ? [rows] : []
  if (rows && pattern.gauge && length > 0) facts.push(centimetres(length))
  switch (step.kind) {
    case 'chart':
      return facts.length > 0 ? facts : ['chart not found']
    case 'plain':
      return facts.length > 0 || !('mm' in step.amount)
        ? facts
        : [`${centimetres(step.amount.mm)}, no gauge`]
    case 'cast on':
      return [step.how, ...(step.pegs ? [pegsText(step.pegs)] : [])]
    case 'bind off':
      return [step.how, ...(step.pegs ? [pegsText(step.pegs)] : [])]
    case 'pegs':
      return [
        step.run === null ? 'all pegs' : pegsText(step.run),
        work.toAndFro ? 'back and forth' : 'in the round',
      ]
    case 'note': {
      const [line = ''] = step.text.trim().split('\n')
      return [line === '' ? 'empty' : line.length > 40 ? `${line.slice(0, 39)}…` : line]
    }
  }
}

/** What a chart is made from: "a heel on 24 pegs, 8 turned at each side". */
export const wishText = ({ shape, run, turned, sides }: ShortRowWish): string =>
  `a ${shape} on ${pegsIn(run)} pegs, ${turned} turned${sides === 'both' ? ' at each side' : ''}`
