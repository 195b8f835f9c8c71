import { runsRightToLeft, type Direction, type Heading } from '../../loom/direction'
import type { Move } from '../../loom/move'
import { emptyStack, type Stack } from '../../loom/strand'
import type { Moment } from '../../loom/walk'
import {
  pegsOfMove,
  pegsPassed,
  stitchAt,
  type Done,
  type DoneOf,
  type HandsContext,
} from '../hands'
import { castOnWays, lastOfChain, letGoWays, inWay, verbOf, ways } from './ways'
import { movedPast, putBackPast } from './passing'
import { strandWords, type StrandWords } from './strands'
import { numberWord, upperFirst } from './forms'
import { namePegs } from './pegs'

export type Doing = Move['do']
type Say<D extends Doing> = (list: readonly DoneOf<D>[], context: HandsContext) => string

/** One sentence for moves that are done alike, one after the other. */
export function sayMoves(list: readonly Done[], context: HandsContext): string {
  const [first] = list
  if (!first) return ''
  const say = sentences[first.move.do] as Say<Doing>
  return say(list, context)
}

/** The first of the moves; a list of them is never empty. */
export const firstOf = <D extends Doing>(list: readonly DoneOf<D>[]): DoneOf<D> =>
  list[0] as DoneOf<D>

export const stackBefore = ({ before }: Done, peg: number): Stack =>
  before.stacks[peg] ?? emptyStack

export const pegsIn = (list: readonly Done[]): number[] => list.flatMap((done) => pegsOfMove(done))

/** What lies on the first peg before it is touched; moves that are told as one find alike on every peg. */
function stackOn([first]: readonly Done[]): Stack {
  return first ? stackBefore(first, pegsOfMove(first)[0] ?? 0) : emptyStack
}
const wordsOn = (list: readonly Done[]): StrandWords => strandWords(stackOn(list))
const isBare = (list: readonly Done[]): boolean => stackOn(list) === emptyStack

/** "the loop of peg 5", "the loops of pegs 5, 6 and 7", "both loops of peg 5". */
const loopsOn = (list: readonly Done[], joint: 'of' | 'on'): string =>
  `${list.length > 1 ? 'the loops' : wordsOn(list).all} ${joint} ${namePegs(pegsIn(list))}`

function sayWork(
  list: readonly DoneOf<'work'>[],
  { knit, direction, saysWay }: HandsContext,
): string {
  const first = firstOf(list)
  const { how, peg } = first.move
  const pegs = pegsIn(list)
  const samePeg = pegs.every((one) => one === peg)
  const words = wordsOn(list)
  if (isBare(list))
    return `Lay the yarn across the front of ${namePegs(samePeg ? [peg] : pegs)}: there is no loop to lift over it.`
  const verb = upperFirst(verbOf(how))
  const way = how === knit ? '' : inWay(how)
  const along = saysWay ? ` ${wayOf(direction, first.after.heading)}` : ''
  const [lead, pegWord] = samePeg
    ? ([
        `${words.many ? `${verb} ${words.all} on ${namePegs([peg])} as one` : `${verb} ${namePegs([peg])}`}${way}` +
          (list.length > 1 ? `, ${numberWord(list.length)} times one after the other` : ''),
        'the peg',
      ] as const)
    : ([
        `${verb} ${namePegs(pegs)}${way}, one after the other${along}${words.many ? `, ${words.all} on each as one` : ''}`,
        'each peg',
      ] as const)
  return `${lead}: ${ways[how](pegWord, words)}.`
}

const wayOf = (direction: Direction, heading: Heading): string =>
  runsRightToLeft(direction, heading) ? 'from right to left' : 'from left to right'

const layAcross = (list: readonly Done[], which = ''): string =>
  `Lay the yarn across the front of ${which}${namePegs(pegsIn(list))} and partly round ${list.length > 1 ? 'each' : 'it'}`

const laying: Readonly<Record<(Move & { do: 'lay' })['as'], Say<'lay'>>> = {
  'yarn over': (list) =>
    isBare(list)
      ? `${layAcross(list, 'the empty ')}, and lift nothing over: this yarn over is the new loop there and leaves a hole.`
      : `${layAcross(list)}, above ${wordsOn(list).all}, and lift nothing over (a yarn over).`,
  tuck: (list) =>
    `${layAcross(list)}, above ${wordsOn(list).all}, and lift nothing over (a tuck): both are worked as one later.`,
  wrap: (list, { shape }) => {
    const first = firstOf(list)
    const peg = namePegs([first.move.peg])
    const round = `behind ${isBare(list) ? peg : 'the peg'} first, then across its front, back towards ${comesFrom(first, shape)}`
    if (isBare(list)) return `Lay the yarn round ${peg}, which has no loop: ${round} (a wrap).`
    const { all, it } = wordsOn(list)
    return `Take ${all} off ${peg} onto the spare needle and let ${it} wait inside the loom; lead the yarn ${round}; put ${all} back on top of that strand (a wrap).`
  },
  'German turn': (list, { shape }) => {
    const first = firstOf(list)
    const { move, after } = first
    const strands = after.stacks[move.peg]?.length ?? 2
    const words = wordsOn(list)
    const peg = namePegs([move.peg])
    const loop = words.many ? `the ${numberWord(strands - 1)} strands on it` : 'its loop'
    return `Lay the yarn back across the front of ${peg}, above ${loop}, towards ${comesFrom(first, shape)}, and partly round ${peg}, so that ${words.many ? 'those' : 'its loop'} and this strand lie on ${peg} together (a German turn); they are worked as one later.`
  },
}

/** The neighbour from which work comes to the peg of a move: "peg 3". */
function comesFrom({ move: { peg }, after }: DoneOf<'lay'>, shape: 'ring' | 'bar'): string {
  const { length } = after.stacks
  const other = peg + (after.heading === 'forward' ? -1 : 1)
  if (shape === 'bar' && (other < 0 || other >= length)) return 'the side where work comes from'
  return `peg ${((other + length) % length) + 1}`
}

function sayPass(list: readonly DoneOf<'pass'>[]): string {
  const behind = firstOf(list).move.yarn === 'inside'
  const pegs = namePegs(pegsIn(list))
  const several = list.length > 1
  const { all, it, many } = wordsOn(list)
  if (isBare(list))
    return behind
      ? `Carry the yarn behind ${pegs}, inside the loom.`
      : `Take the yarn on past ${pegs}, in front of the fabric.`
  return behind
    ? `Leave ${loopsOn(list, 'on')} as ${several || many ? 'they are' : 'it is'} and carry the yarn behind ${pegs}, inside the loom.`
    : `Take ${all} off ${pegs}${several ? ', one after the other' : ''}, lay the yarn behind ${several ? 'each' : 'the'} peg but in front of the fabric, and put ${it} back.`
}

/** Is the yarn carried the way work goes? Otherwise it is brought back. */
export const carriesOn = (done: DoneOf<'carry'>): boolean =>
  done.move.gap > (pegsPassed(done)[0] ?? 0) === (done.after.heading === 'forward')

function sayCarry(list: readonly DoneOf<'carry'>[], { shape }: HandsContext): string {
  const done = firstOf(list)
  const passed = pegsPassed(done)
  if (carriesOn(done)) return `Carry the yarn behind ${namePegs(passed)}, inside the loom.`
  const next = nextPeg(done.after, shape)
  const ready = next === null ? '' : `, ready for peg ${next + 1}`
  return `Bring the yarn back behind ${namePegs(passed)}, inside the loom${ready}.`
}

/** The peg that the yarn comes to next, 0-based; null past the end of a bar. */
function nextPeg({ gap, heading, stacks }: Moment, shape: 'ring' | 'bar'): number | null {
  const peg = heading === 'forward' ? gap : gap - 1
  if (shape === 'ring') return (peg + stacks.length) % stacks.length
  return peg < 0 || peg >= stacks.length ? null : peg
}

function sayTake(list: readonly DoneOf<'take'>[]): string {
  const where = firstOf(list).move.to === 'inside' ? 'inside the loom' : 'outside, in front of it'
  if (list.length === 1) {
    const { all, it } = wordsOn(list)
    return `Take ${all} off ${namePegs(pegsIn(list))} onto the spare needle and let ${it} wait ${where}.`
  }
  return `Take ${loopsOn(list, 'of')} onto the spare needle, in this order, and let them wait ${where}.`
}

function sayPut(list: readonly DoneOf<'put'>[]): string {
  const first = firstOf(list)
  const pegs = pegsIn(list)
  const onTop = isBare(list) ? '' : `, on top of ${wordsOn(list).all} already there`
  const waiting = first.before.needle.length
  const past = putBackPast(first)
  if (list.length > 1)
    return `Put the waiting loops from the spare needle on ${namePegs(pegs)}${onTop}${past}: the first loop on comes off first, from the other end of the needle.`
  const words = strandWords(first.before.needle[0]?.stack ?? emptyStack)
  const what = words.many ? 'loops' : 'loop'
  return waiting > 1
    ? `Of the loops on the spare needle, put ${words.many ? 'those that were' : 'the one that was'} taken first on ${namePegs(pegs)}${onTop}${past}: ${words.many ? 'they come' : 'it comes'} off the other end of the needle.`
    : `Put the waiting ${what} from the spare needle on ${namePegs(pegs)}${onTop}${past}.`
}

function sayMoved(list: readonly DoneOf<'move'>[], { direction, shape }: HandsContext): string {
  const first = firstOf(list)
  const { from, to, under } = first.move
  const { length } = first.before.stacks
  // A bind-off that goes round a ring goes over its join.
  const overJoin = shape === 'ring' && 2 * Math.abs(to - from) > length
  const distance = overJoin ? length - Math.abs(to - from) : Math.abs(to - from)
  const onward = to > from !== overJoin
  const side = onward === runsRightToLeft(direction) ? 'left' : 'right'
  const way = `${numberWord(distance)} ${distance === 1 ? 'peg' : 'pegs'} to the ${side}`
  if (list.length > 1) {
    const loops = namePegs(list.map(({ move }) => move.from))
    const targets = namePegs(list.map(({ move }) => move.to))
    return `Move the loops of ${loops}, one after the other, ${way}, to ${targets}${movedPast(first)}.`
  }
  const moved = wordsOn(list)
  const lead = `Move ${moved.all} of peg ${from + 1} ${way}`
  if (stackBefore(first, to) === emptyStack)
    return `${lead}, to the empty peg ${to + 1}${movedPast(first)}.`
  const there = strandWords(stackBefore(first, to))
  return under
    ? `Lift ${there.all} of peg ${to + 1} off onto the spare needle inside the loom, put ${moved.all} of peg ${from + 1} on peg ${to + 1}, and put the ${there.many ? 'loops' : 'loop'} from the needle back on top of ${moved.it}.`
    : `${lead}, to peg ${to + 1}, on top of ${there.all} there.`
}

function sayDraw(list: readonly DoneOf<'draw'>[], { direction }: HandsContext): string {
  const { from, to } = firstOf(list).move
  const side = to > from === runsRightToLeft(direction) ? 'left' : 'right'
  return `Draw a new loop of the yarn through the loop on peg ${from + 1} and put it on the empty peg ${to + 1} to the ${side}; the old loop stays on peg ${from + 1}.`
}

function sayBar(list: readonly DoneOf<'bar'>[]): string {
  const { move, after } = firstOf(list)
  const stitch = stitchAt(after.site)
  const twist = stitch?.role === 'make right' ? ', twisted to the right' : ', twisted to the left'
  return `Lift the strand of yarn that lies beside peg ${move.peg + 1}, below its neighbour’s loop, onto the empty peg ${move.peg + 1}${stitch ? twist : ''}.`
}

function sayLift(list: readonly DoneOf<'lift'>[]): string {
  const lower = stackOn(list).length - 1
  const which = lower > 1 ? `the ${lower} lower loops` : 'the lower loop'
  return `Lift ${which} on ${namePegs(pegsIn(list))} over the top one and off the peg.`
}

function sayTurn(list: readonly DoneOf<'turn'>[], { direction, shape }: HandsContext): string {
  const { after } = firstOf(list)
  const way = wayOf(direction, after.heading)
  const next = nextPeg(after, shape)
  return `Turn back: from here, work ${way}${next === null ? '' : `, peg ${next + 1} first`}; the loom itself is not turned.`
}

function sayCastOn(list: readonly DoneOf<'cast on'>[]): string {
  const pegs = namePegs(pegsIn(list))
  const { how, last } = firstOf(list).move
  const way = last && how === 'chain' ? lastOfChain : castOnWays[how]
  return list.length > 1
    ? `On ${pegs}, one after the other: ${way('each peg')}.`
    : `${upperFirst(way(pegs))}.`
}

function sayDrop(list: readonly DoneOf<'drop'>[]): string {
  return `The stitch count of this row is off: take ${loopsOn(list, 'of')} off without working ${list.length > 1 ? 'them' : wordsOn(list).it}.`
}

function sayLetGo(list: readonly DoneOf<'let go'>[]): string {
  const first = firstOf(list)
  const { how } = first.move
  const loops = list.length > 1 ? 'the loops' : wordsOn(list).all
  const pegs = pegsIn(list)
  return letGoWays[how](
    how === 'graft' && list.length > 2 ? nameFacing(pegs) : namePegs(pegs),
    loops,
    (list.at(-1) ?? first).after.stacks.some((stack) => stack !== emptyStack),
  )
}

/** Pegs that lie across from one another: "pegs 1 and 8, then 2 and 7, and so on". */
const nameFacing = (pegs: readonly number[]): string => {
  const [a, b, c, d] = pegs.map((peg) => `${peg + 1}`)
  return `pegs ${a} and ${b}, then ${c}${d ? ` and ${d}` : ''}${pegs.length > 4 ? ', and so on,' : ''}`
}

const sentences: { readonly [D in Doing]: Say<D> } = {
  work: sayWork,
  lay: (list, context) => laying[firstOf(list).move.as](list, context),
  pass: sayPass,
  carry: sayCarry,
  take: sayTake,
  put: sayPut,
  move: sayMoved,
  draw: sayDraw,
  bar: sayBar,
  base: (list) =>
    `Lift the lowest of the loops just knitted on ${namePegs(pegsIn(list))} back onto the peg, so that two loops lie on it.`,
  turn: sayTurn,
  'cast on': sayCastOn,
  lift: sayLift,
  'let go': sayLetGo,
  drop: sayDrop,
}
