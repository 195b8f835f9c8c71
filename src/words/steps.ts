import { runsRightToLeft, type Heading } from '../loom/direction'
import type { Knit, Move } from '../loom/move'
import { loomRow, type Site } from '../loom/row'
import { castOn } from '../loom/state'
import { workRow, type Habits } from '../loom/work'
import type { Stitch, Terms } from '../stitches/stitch'
import { stitchOf } from '../stitches/vocabulary'
import type { Language, MovePlace } from './language'
import { languages } from './languages'

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

/** The stitch that is worked in the pattern's own way of knitting. */
const plainKnit = 'k'
const stitchOfKnit: Readonly<Record<Knit, string>> = {
  'e-wrap': 'ew',
  'u-wrap': 'uw',
  flat: 'fk',
  true: 'tk',
}

/**
 * What the hands do for any stitch: from its moves where loops change their pegs, else from its
 * declaration. A decrease is told with the emptied peg after it and before it, since the moves
 * differ.
 */
export function stepsOfStitch(
  stitch: Stitch,
  habits: Habits,
  heading: Heading,
  terms: Terms = 'us',
): string {
  const language = languages[terms]
  if (stitch.cross) return stepsOfCross(stitch, habits, heading, terms)
  if (stitch.id === plainKnit) {
    const meant = stitchOf(stitchOfKnit[habits.knit])
    return language.knitSteps(meant[terms].name, meant.steps)
  }
  if (stitch.takes <= stitch.makes) return stitch.steps
  const yarnOver = stitchOf('yo')
  const rows =
    stitch.takes === 2
      ? [
          [stitch, yarnOver],
          [yarnOver, stitch],
        ]
      : [[yarnOver, stitch, yarnOver]]
  return rows
    .map((row) => {
      const names = row.map((one) => one[terms].abbr).join(', ')
      return `${names}: ${tellMoves(row, habits, heading, language)}.`
    })
    .join(' ')
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
