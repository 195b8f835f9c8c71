import { languages, termOf } from '../../languages/languages'
import { counted, listed, ordinal, upperFirst } from '../../languages/english/forms'
import { pegsFromTo } from '../../languages/english/pegs'
import { stitchAt, type HandsContext } from '../../languages/hands'
import type { Moment } from '../../loom/walk'
import type { Stretch } from '../../pattern/stretches'
import { bandOf, type Along, type Stop } from '../../words/along/along'
import type { Span } from '../../words/spans'
import type { Stint } from '../../words/along/stints'
import { groupsOf, isDoneAlike, type Group } from '../../words/hands/groups'
import { stepFigures } from '../../words/hands/figures'
import { stepTitle } from '../piece/stepWords'

/** "Round 15", "Row 3", "Cast on"; behind the last of them "The end". */
export function stopName({ piece }: Along, stop: Stop | null): string {
  if (!stop) return 'The end'
  const { stretch } = stop
  const { words } = languages[piece.pattern.style.terms]
  if (stretch.kind === 'edge')
    return upperFirst(stretch.edge.kind === 'cast on' ? words.castOn : words.bindOff)
  return `${unitName(stretch)} ${stretch.number}`
}

const unitName = (stretch: Stretch): string => (stretch.isRound ? 'Round' : 'Row')

/** What the large button says: "Round done", "Cast on done". */
export const doneName = (stop: Stop | null): string =>
  !stop ? 'Done' : stop.stretch.kind === 'edge' ? 'Done' : `${unitName(stop.stretch)} done`

/** The step of a stop, with its number: "2 Band". */
export const stepName = (along: Along, stop: Stop | null): string =>
  stop ? `${(stop.stretch.step ?? 0) + 1} ${titleOf(along, stop)}` : 'All is worked'

/** That without its number; of a chart its name. */
function titleOf({ piece }: Along, { stretch }: Stop): string {
  const step = piece.steps[stretch.step ?? 0]?.step
  if (!step) return ''
  return step.kind === 'chart' ? step.chart : stepTitle(step, piece.pattern)
}

/** How far a step is worked: this row from 1, and how many there are once through; null for an edge. */
export function rowOfStep(
  { piece }: Along,
  { stretch, pass }: Stop,
): { at: number; of: number } | null {
  const all = piece.steps[stretch.step ?? 0]?.rows?.rows.length ?? 0
  if (stretch.kind === 'edge' || all === 0) return null
  return stretch.chart
    ? { at: stretch.number, of: Math.ceil(all / Math.max(1, stretch.times)) }
    : { at: pass + 1, of: all }
}

/** "as round 7, 2nd time of 3": a row of a band that was worked before; empty for others. */
export function asBefore(along: Along, stop: Stop): string {
  const band = bandOf(along, stop)
  if (!band || band.at === 0) return ''
  const first = stop.stretch.number - band.at * band.rows
  return `as ${unitName(stop.stretch).toLowerCase()} ${first}, ${ordinal(band.at + 1)} time of ${band.of}`
}

/** Several stops by their names: "rounds 3 and 5, round 2 of Heel"; null for none. */
export function listStops(along: Along, indexes: readonly number[], most = 6): string {
  const { stops } = along
  const steps = new Set(indexes.map((index) => stops[index]?.stretch.step))
  const groups = new Map<string, number[]>()
  const others: string[] = []
  for (const index of indexes.slice(0, most)) {
    const stop = stops[index]
    if (!stop) continue
    if (stop.stretch.kind === 'edge') {
      others.push(stopName(along, stop).toLowerCase())
      continue
    }
    const of = steps.size > 1 ? ` of ${titleOf(along, stop)}` : ''
    const key = `${unitName(stop.stretch).toLowerCase()}/${of}`
    groups.set(key, [...(groups.get(key) ?? []), stop.stretch.number])
  }
  const named = [...groups].map(([key, numbers]) => {
    const [unit = '', of = ''] = key.split('/')
    return `${unit}${numbers.length > 1 ? 's' : ''} ${runsOf(numbers)}${of}`
  })
  const more = indexes.length - most
  const rest = more > 0 ? [`${counted(more, 'more row')}`] : []
  return listed([...others, ...named, ...rest])
}

/** "3, 5 to 8" */
function runsOf(numbers: readonly number[]): string {
  const runs: [number, number][] = []
  for (const number of numbers) {
    const last = runs.at(-1)
    if (last && number === last[1] + 1) last[1] = number
    else runs.push([number, number])
  }
  return listed(
    runs.flatMap<number | string>(([from, to]) =>
      from === to ? [from] : to === from + 1 ? [from, to] : [`${from} to ${to}`],
    ),
  )
}

/** What is told of a stitch at one go: a sentence, and the moments that it leads from and to. */
export interface Told {
  readonly sentence: string
  /** Index of the moment after the first move, and of that after the last. */
  readonly first: number
  readonly last: number
}

/**
 * What the hands do from one moment (by index) to another, sentence by sentence. Plain stitches are told in
 * few words.
 */
export function toldBetween(
  moments: readonly Moment[],
  from: number,
  to: number,
  context: HandsContext,
  isEdge: boolean,
): readonly Told[] {
  const part = moments.slice(from, to + 1)
  if (isEdge)
    return stepFigures(part, context).map(({ sentence, first, last }) => ({
      sentence,
      first: from + first,
      last: from + last,
    }))
  return groupsOf(part, isDoneAlike).map((group) => ({
    sentence: sentenceOf(group, context),
    first: from + group.first,
    last: from + group.first + group.moves.length - 1,
  }))
}

function sentenceOf({ moves }: Group, context: HandsContext): string {
  const { hands } = languages[context.terms]
  const isPlain = moves.every(({ move, before, after }) => {
    if (move.do !== 'work') return false
    const { stitch } = after.site ?? {}
    return stitch === undefined || (before.stacks[move.peg]?.length ?? 0) === 1
  })
  return isPlain ? `${upperFirst(hands.inShort(moves, context))}.` : hands.moves(moves, context)
}

/** "2/2 right cross, pegs 5 to 8": a stint by itself, as it is said aloud. */
export function stintName({ piece }: Along, { sites, pegs }: Stint): string {
  const { terms } = piece.pattern.style
  const [site] = sites
  const stitch = site ? stitchAt(site) : null
  const where = pegsFromTo(pegs.from + 1, pegs.to + 1)
  if (!stitch) return where
  const { name } = termOf(stitch, terms)
  return sites.length > 1 ? `${name} ${sites.length}, ${where}` : `${name}, ${where}`
}

/** A row as it is read aloud: names in place of abbreviations. */
export function spokenStop(
  along: Along,
  stop: Stop,
  spans: readonly Span[],
  stints: readonly Stint[],
): string {
  const { terms } = along.piece.pattern.style
  const words = spans.map(({ text, kind }, index) => {
    if (kind === 'between') return text.replaceAll(/[*()[\]]/g, ' ')
    if (kind === 'repeat')
      return text.replace('rep from *', 'repeat').replace(/\bsts?\b/, 'stitches')
    const stint = stints.find(({ span }) => span === index)
    const [site] = stint?.sites ?? []
    const stitch = site ? stitchAt(site) : null
    if (!stint || !stitch) return text
    const { name } = termOf(stitch, terms)
    return /\d$/.test(text) ? `${name} ${stint.sites.length}` : name
  })
  return `${stopName(along, stop)}. ${words.join('')}`
}
