import { pegsOf } from '../../loom/gather'
import type { Site } from '../../loom/row'
import type { Moment } from '../../loom/walk'
import {
  pegsOfMove,
  stitchAt,
  type Again,
  type Done,
  type HandsContext,
} from '../../languages/hands'
import { languages } from '../../languages/languages'
import { groupsOf, isDoneAlike, manner, stepBetween, type Group } from './groups'

/** A picture worth drawing: moves `first`..`last` of the list of moments, both included. */
export interface StepFigure {
  /** Index of the moment after its first move; the loom before it is one earlier. */
  readonly first: number
  /** Index of the moment after its last move. */
  readonly last: number
  /** What these moves belong to: "2/2 left cross on pegs 5 to 8". */
  readonly heading: string
  readonly sentence: string
  /** It stands for earlier figures that are done again. */
  readonly isAgain: boolean
}

/**
 * The moves of a list of moments as figures, in order, so that each move is in one of them. Moves
 * that are done alike on neighbouring pegs are one figure; so is what repeats earlier figures.
 */
export function stepFigures(
  moments: readonly Moment[],
  context: HandsContext,
): readonly StepFigure[] {
  const groups = groupsOf(moments, isDoneAlike)
  const figures: StepFigure[] = []
  let saysWay = true
  for (let at = 0; at < groups.length;) {
    const repeat = findRepeat(groups, at)
    const once = groups.slice(at, at + (repeat?.period ?? 1))
    for (const group of once) {
      figures.push(figureOf(group, moments, { ...context, saysWay }))
      if (tellsWay(group)) saysWay = false
    }
    at += once.length
    if (!repeat) continue
    const again = groups.slice(at, at + repeat.period * repeat.more)
    figures.push(repeatOf(again, repeat, context))
    at += again.length
  }
  return figures
}

interface Repeat {
  /** Figures that are repeated. */
  readonly period: number
  /** How often, after the first time. */
  readonly more: number
  /** Pegs from one time to the next, move by move. */
  readonly steps: readonly number[]
}

const longestPeriod = 16
/** Fewer figures less are not worth the reader's looking back. */
const leastSaved = 2

/** The repeat of the figures from `at` on that saves most figures; null where none saves enough. */
function findRepeat(groups: readonly Group[], at: number): Repeat | null {
  let best: Repeat | null = null
  let most = leastSaved - 1
  for (let period = 1; period <= longestPeriod; period++) {
    const steps = stepsAgain(groups, at, period)
    if (!steps || steps.includes(0)) continue
    const key = steps.join()
    let more = 1
    while (stepsAgain(groups, at + more * period, period)?.join() === key) more++
    const saved = more * period - 1
    if (saved > most) {
      best = { period, more, steps }
      most = saved
    }
  }
  return best
}

/**
 * How many pegs on each move of `period` groups is done again right after; null where they are not.
 * Only where loops of facing pegs are joined may the moves go different ways.
 */
function stepsAgain(groups: readonly Group[], at: number, period: number): number[] | null {
  const steps: number[] = []
  let anyStitch = false
  for (let index = at; index < at + period; index++) {
    const one = groups[index]
    const other = groups[index + period]
    if (!one || !other || one.moves.length !== other.moves.length) return null
    for (let n = 0; n < one.moves.length; n++) {
      const shift = shiftOfMove(one.moves[n] as Done, other.moves[n] as Done)
      if (shift === null) return null
      if (one.moves[n]?.after.site) anyStitch = true
      steps.push(shift)
    }
  }
  return anyStitch && !allSame(steps) ? null : steps
}

const allSame = (steps: readonly number[]): boolean => steps.every((step) => step === steps[0])

function shiftOfMove(one: Done, other: Done): number | null {
  if (one.move.do === 'turn' || manner(one) !== manner(other)) return null
  if (stitchAt(one.after.site) !== stitchAt(other.after.site)) return null
  return stepBetween(one, other)
}

/** Peg by peg, once each, in the order they are come to. */
const pegsIn = (moves: readonly Done[]): number[] => [
  ...new Set(moves.flatMap((done) => pegsOfMove(done))),
]

function headingFor(group: Group, moments: readonly Moment[], context: HandsContext): string {
  const { moves } = group
  const { heading } = (moves[0] as Done).after
  const site = siteOf(group, moments)
  const stitch = stitchAt(site)
  const { hands } = languages[context.terms]
  if (!site || !stitch) return hands.edge((moves[0] as Done).after)
  const sites = new Set(moves.map(({ after }) => after.site))
  const pegs = sites.size > 1 ? pegsIn(moves) : pegsOf(site, heading)
  return hands.stitch(stitch, pegs, context)
}

/** A loop that is moved along belongs to the stitch that is worked where it comes to lie. */
function siteOf({ first, moves }: Group, moments: readonly Moment[]): Site | null {
  const { move, after } = moves[0] as Done
  const { site } = after
  if (!site || move.do !== 'move') return site
  const holds = (one: Site | null) =>
    one !== null && move.to >= one.peg && move.to < one.peg + one.stitch.width
  if (holds(site)) return site
  for (let index = first; index < moments.length; index++) {
    const later = moments[index]?.site ?? null
    if (holds(later)) return later
    if (!later) break
  }
  return site
}

function figureOf(group: Group, moments: readonly Moment[], context: HandsContext): StepFigure {
  const { first, moves } = group
  const round = startsRound(group, moments, context)
  const { hands } = languages[context.terms]
  const sentence = hands.moves(moves, round ? { ...context, saysWay: true } : context)
  return {
    first,
    last: first + moves.length - 1,
    heading: headingFor(group, moments, context),
    sentence: round ? hands.inNextRound(sentence) : sentence,
    isAgain: false,
  }
}

/** Only of several pegs can it be said which way they are worked; a turn says it always. */
const tellsWay = ({ moves: [first, second] }: Group): boolean =>
  first?.move.do === 'turn' ||
  (first?.move.do === 'work' && second?.move.do === 'work' && first.move.peg !== second.move.peg)

/** Does the work go on over the join into another row, without a turn? */
function startsRound(
  { first, moves }: Group,
  moments: readonly Moment[],
  { shape }: HandsContext,
): boolean {
  const last = moments[first - 2]
  const next = moves[0]
  if (!next || shape !== 'ring' || next.before.move || !last?.move) return false
  return last.move.do !== 'turn' && next.after.heading === last.heading
}

function repeatOf(
  groups: readonly Group[],
  { period, more, steps }: Repeat,
  context: HandsContext,
): StepFigure {
  const first = groups[0] as Group
  const last = groups.at(-1) as Group
  const { hands } = languages[context.terms]
  const moment = (first.moves[0] as Done).after
  return {
    first: first.first,
    last: last.first + last.moves.length - 1,
    heading: moment.site ? hands.sameAgain : hands.edge(moment),
    sentence: hands.again(period, more, whereAgain(groups, steps, period)),
    isAgain: true,
  }
}

function whereAgain(groups: readonly Group[], steps: readonly number[], period: number): Again {
  const pegs = groups.flatMap(({ moves }) => pegsIn(moves))
  if (!allSame(steps))
    return { inwardsTo: groups.slice(-period).flatMap(({ moves }) => pegsIn(moves)) }
  return {
    from: pegs[0] ?? 0,
    to: (steps[0] ?? 0) > 0 ? Math.max(...pegs) : Math.min(...pegs),
  }
}
