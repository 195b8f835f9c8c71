import { runsRightToLeft, type Heading } from '../loom/direction'
import type { Move } from '../loom/move'
import { loomRow, type Site } from '../loom/row'
import { castOn } from '../loom/state'
import { workRow, type Habits } from '../loom/work'
import type { Terms } from '../languages/terms'
import type { Stitch } from '../stitches/stitch'
import { standardVocabulary } from '../stitches/vocabulary'
import { emptiesPegs, unknownFates, type Fates, type PegFate } from './emptied'
import type { Language, MovePlace } from '../languages/language'
import { languages, termOf } from '../languages/languages'

/** A move as it was done, with what the words need of the loom around it. */
interface Step {
  readonly move: Move
  /** Loops on the peg before it was worked, or on the peg a loop was moved to. */
  readonly loops: number
}

/**
 * What the hands do for a cross, move by move, as the loom recorded it: pegs are numbered in the
 * order work comes to them. The same appearance takes other moves in the other direction.
 */
export function stepsOfCross(
  stitch: Stitch,
  habits: Habits,
  heading: Heading,
  terms: Terms = 'us',
): string {
  const language = languages[terms]
  return language.crossSteps(stitch.width, tellMoves([stitch], habits, heading, language))
}

/**
 * What the hands do for any stitch: from its moves where loops change their pegs, else from its
 * declaration. A stitch that empties pegs is told in each of the ways in which the pattern uses it:
 * `uses` says what becomes of those pegs.
 */
export function stepsOfStitch(
  stitch: Stitch,
  habits: Habits,
  heading: Heading,
  terms: Terms = 'us',
  uses: readonly Fates[] = [],
): string {
  const language = languages[terms]
  if (stitch.cross) return stepsOfCross(stitch, habits, heading, terms)
  if (stitch.role === 'knit') {
    const meant = standardVocabulary.meant(stitch, habits.knit)
    return language.knitSteps(termOf(meant, terms).name, language.steps(meant))
  }
  if (!emptiesPegs(stitch)) return language.steps(stitch)
  const told = (uses.length > 0 ? uses : [unknownFates(stitch)]).map((fates) => ({
    label: isMade(fates) || uses.length > 1 ? labelOf(stitch, fates, terms) : null,
    moves: [movesOf(stitch, fates, habits, heading, language), ...fateOf(fates, language)].join(
      '; ',
    ),
  }))
  return language.decreaseSteps(stitch.takes, told)
}

/** Does the chart make a loop on one of the emptied pegs, which is then part of the recipe? */
const isMade = (fates: Fates): boolean =>
  fates.some((fate) => typeof fate === 'object' && fate.makes > 0)

/** "yo, k2tog", in working order. */
function labelOf(stitch: Stitch, fates: Fates, terms: Terms): string {
  const names = fates.flatMap((fate) =>
    fate === 'own'
      ? [termOf(stitch, terms).abbr]
      : typeof fate === 'object'
        ? [termOf(fate, terms).abbr]
        : [],
  )
  const alone = names.length === 1 && fates.length > 1
  return alone ? languages[terms].emptied.noneLeft(termOf(stitch, terms).abbr) : names.join(', ')
}

/** How the loops come to lie on one peg, and are worked there. */
function movesOf(
  stitch: Stitch,
  fates: Fates,
  habits: Habits,
  heading: Heading,
  language: Language,
): string {
  const row = fates.map((fate) =>
    fate === 'own' ? stitch : standardVocabulary.withRole('no stitch'),
  )
  return tellMoves(row, habits, heading, language)
}

/** What is done with the emptied pegs; those on which a stitch is made stand in the label. */
function fateOf(fates: Fates, { emptied }: Language): string[] {
  const pegs = (is: (fate: PegFate) => boolean) =>
    fates.flatMap((fate, index) => (is(fate) ? [index + 1] : []))
  const left = pegs((fate) => typeof fate === 'object' && fate.makes === 0)
  const after = pegs((fate) => fate === 'filled from after')
  const before = pegs((fate) => fate === 'filled from before')
  const open = pegs((fate) => fate === 'open')
  return [
    ...(left.length > 0 ? [emptied.left(left)] : []),
    ...(after.length > 0 ? [emptied.filled(after, 'after')] : []),
    ...(before.length > 0 ? [emptied.filled(before, 'before')] : []),
    ...(open.length > 0 ? [emptied.open(open)] : []),
  ]
}

/** The moves of a few stitches on a loom of just their pegs, in working order, as one phrase. */
function tellMoves(
  stitches: readonly Stitch[],
  habits: Habits,
  heading: Heading,
  language: Language,
): string {
  const pegs = stitches.reduce((sum, { width }) => sum + width, 0)
  return tell(recordMoves(stitches, pegs, habits, heading), pegs, heading, language)
}

function recordMoves(
  stitches: readonly Stitch[],
  pegs: number,
  habits: Habits,
  heading: Heading,
): Step[] {
  let peg = 0
  const inPegOrder = heading === 'forward' ? stitches : stitches.toReversed()
  const sites = inPegOrder.map((stitch): Site<Stitch> => {
    const site = { stitch, peg }
    peg += stitch.width
    return site
  })
  const start = castOn(pegs)
  const before =
    heading === 'forward' ? start : { ...start, heading, yarn: { ...start.yarn, gap: pegs } }
  const steps: Step[] = []
  const stacks = before.stacks.map(({ length }) => length)
  workRow(before, loomRow(sites, 0, pegs - 1, heading, 'on'), habits, (move, loom, site) => {
    const target = move.do === 'move' ? move.to : move.do === 'work' ? move.peg : 0
    const loops = stacks[target] ?? 0
    if (site && !(move.do === 'lay' && move.as === 'yarn over')) steps.push({ move, loops })
    loom.stacks.forEach(({ length }, index) => (stacks[index] = length))
  })
  return steps
}

/** Put neighbouring moves of one kind into one phrase, with the pegs in working order from 1. */
function tell(steps: readonly Step[], pegs: number, heading: Heading, { moves }: Language): string {
  const forward = heading === 'forward'
  const order = (peg: number) => (forward ? peg + 1 : pegs - peg)
  const position = (gap: number) => (forward ? gap : pegs - gap)
  let yarnAt = 0
  const phrases: string[] = []
  for (let at = 0; at < steps.length;) {
    const { move, loops } = steps[at] as Step
    let end = at + 1
    while (end < steps.length && sameKind(steps[at] as Step, steps[end] as Step)) end++
    const alike = steps.slice(at, end)
    const list = alike.map(({ move: one }) => order('peg' in one ? one.peg : 0))
    switch (move.do) {
      case 'work':
        phrases.push(
          list.every((peg) => peg === list[0])
            ? moves.work(move.how, list.slice(0, 1), loops, list.length)
            : moves.work(move.how, list, loops, 1),
        )
        yarnAt = list.at(-1) ?? yarnAt
        break
      case 'lay':
        phrases.push(moves.lay(move.as, list))
        break
      case 'pass':
        phrases.push(moves.pass(move.yarn, list))
        break
      case 'carry': {
        const to = position(move.gap)
        phrases.push(to > yarnAt ? moves.carryOn(countUp(yarnAt + 1, to)) : moves.carryBack(to + 1))
        yarnAt = to
        break
      }
      case 'take':
        phrases.push(moves.take(move.to, list))
        break
      case 'put':
        phrases.push(moves.put(list))
        break
      case 'move':
        phrases.push(moves.move(alike.flatMap((step) => movedFrom(step, order))))
        break
      case 'draw':
        phrases.push(moves.draw(order(move.from), order(move.to)))
        break
      case 'bar':
        phrases.push(moves.bar(order(move.peg)))
        break
      case 'base':
        phrases.push(moves.base(order(move.peg)))
        break
      // A stitch that stands in the abbreviations does none of these.
      case 'turn':
      case 'cast on':
      case 'lift':
      case 'let go':
      case 'drop':
        break
    }
    at = end
  }
  return phrases.join('; ')
}

function movedFrom({ move, loops }: Step, order: (peg: number) => number) {
  if (move.do !== 'move') return []
  const place: MovePlace = loops === 0 ? 'alone' : move.under ? 'underneath' : 'on top'
  return [{ from: order(move.from), to: order(move.to), place }]
}

const sameKind = (a: Step, b: Step): boolean =>
  a.move.do === b.move.do &&
  (a.move.do !== 'work' ||
    (b.move.do === 'work' && a.move.how === b.move.how && a.loops === b.loops)) &&
  (a.move.do !== 'take' || (b.move.do === 'take' && a.move.to === b.move.to)) &&
  !['carry', 'draw'].includes(a.move.do)

const countUp = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, index) => from + index)

/** The name of the way work goes, as the right side is seen. */
export const wayOf = ({ direction }: Habits, heading: Heading, terms: Terms): string => {
  const language = languages[terms]
  return runsRightToLeft(direction, heading) ? language.rightToLeft : language.leftToRight
}
