import { pegsOf } from '../../loom/gather'
import type { Move } from '../../loom/move'
import type { Site } from '../../loom/row'
import { emptyStack } from '../../loom/strand'
import type { Moment } from '../../loom/walk'
import {
  pegsOfMove,
  stitchAt,
  type Again,
  type Done,
  type HandsContext,
} from '../../languages/hands'
import { strandWords } from '../../languages/english/strands'
import { languages } from '../../languages/languages'

/** A picture worth drawing: moves `first`..`last` of the list of moments, both included. */
export interface StepFigure {
  /** Index of the moment after its first move; the loom before it is one earlier. */
  readonly first: number
  /** Index of the moment after its last move. */
  readonly last: number
  /** What these moves belong to: "2/2 left cross on pegs 5 to 8". */
  readonly heading: string
  readonly sentence: string
}

interface Group {
  readonly first: number
  readonly moves: readonly Done[]
}

/**
 * The moves of a list of moments as figures, in order, so that each move is in one of them. Moves
 * that are done alike on neighbouring pegs are one figure; so is what repeats earlier figures.
 */
export function stepFigures(
  moments: readonly Moment[],
  context: HandsContext,
): readonly StepFigure[] {
  const groups = groupsOf(moments)
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

function groupsOf(moments: readonly Moment[]): readonly Group[] {
  const groups: { first: number; moves: Done[] }[] = []
  moments.forEach((after, index) => {
    const before = moments[index - 1]
    if (!after.move || !before) return
    const done = { move: after.move, before, after }
    // Between two rows stands a moment that no move led to.
    const open = before.move ? groups.at(-1) : undefined
    if (open && joins(open.moves, done)) open.moves.push(done)
    else groups.push({ first: index, moves: [done] })
  })
  return groups
}

const alone: readonly Move['do'][] = ['carry', 'draw', 'bar', 'base', 'turn', 'lift']

/** Is the next move done like those before it, on the next peg or the same? */
function joins(moves: readonly Done[], next: Done): boolean {
  const last = moves.at(-1)
  const previous = moves.at(-2)
  if (!last || alone.includes(next.move.do) || !alike(last, next) || !sameStitch(last, next))
    return false
  const { move, after } = next
  if (after.heading !== last.after.heading) return false
  if (move.do === 'let go' && move.how === 'graft') return true
  // In a bind-off each knitted loop is the first step of its own round of steps.
  if (move.do === 'work' && after.site === null) return false
  const step = stepBetween(last, next)
  if (step === null || Math.abs(step) > 1) return false
  if (step === 0) return move.do === 'work' && after.site === last.after.site
  return !previous || stepBetween(previous, last) === step
}

/** Moves of one stitch, or of stitches of one kind that stand on a peg each. */
function sameStitch({ after: a }: Done, { after: b }: Done): boolean {
  if (a.site === b.site) return true
  const [one, other] = [stitchAt(a.site), stitchAt(b.site)]
  return one !== null && one === other && one.width === 1
}

/** All that a sentence says of a move beside its pegs. */
function manner({ move, before, after }: Done): string {
  const loops = (peg: number) => strandWords(before.stacks[peg] ?? emptyStack).all
  const empty = (peg: number) => (before.stacks[peg] ?? emptyStack) === emptyStack
  const { do: what } = move
  switch (move.do) {
    case 'work':
      return [what, move.how, empty(move.peg), loops(move.peg)].join('/')
    case 'lay':
      return [what, move.as, empty(move.peg), loops(move.peg)].join('/')
    case 'pass':
      return [what, move.yarn, empty(move.peg), loops(move.peg)].join('/')
    case 'take':
      return [what, move.to, loops(move.peg)].join('/')
    case 'put':
      return [what, empty(move.peg), strandWords(before.needle[0]?.stack ?? emptyStack).all].join(
        '/',
      )
    case 'move':
      return [what, move.to - move.from, empty(move.to), move.under, loops(move.from)].join('/')
    case 'cast on':
      return [what, move.how, move.last && move.how === 'chain'].join('/')
    case 'let go':
      return [what, move.how, loops(move.peg)].join('/')
    case 'bar':
      return [what, stitchAt(after.site)?.id].join('/')
    case 'lift':
    case 'drop':
      return [what, loops(move.peg)].join('/')
    case 'carry':
    case 'draw':
    case 'base':
    case 'turn':
      return what
  }
}

/** Loops that are moved one after the other are told as one where all land on empty pegs. */
const alike = (a: Done, b: Done): boolean =>
  manner(a) === manner(b) && (b.move.do !== 'move' || !b.before.stacks[b.move.to]?.length)

/** How far the next move's pegs are from the last one's; null when they are not shifted alike. */
function stepBetween(last: Done, next: Done): number | null {
  const from = pegsOfMove(last)
  const to = pegsOfMove(next)
  const step = (to[0] ?? 0) - (from[0] ?? 0)
  if (from.length !== to.length) return null
  return from.every((peg, index) => (to[index] ?? 0) - peg === step) ? step : null
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
