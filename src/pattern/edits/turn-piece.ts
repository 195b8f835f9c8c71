import type { Direction } from '../../loom/direction'
import { withWishes } from '../generate/anew'
import type { Pattern, ShortRowWish } from '../pattern'
import { isPart, type Heels } from './part-rows'
import { withAllCharts } from './chart'
import { reverseCells, reverseRun, turnOver } from './turn-over'
import { turnPictures } from './turn-pictures'
import { firstFault, worksAlike, worksTheSame, type Fault } from './works-alike'
import type { Stitch } from '../../stitches/stitch'

export interface Turn {
  readonly direction: Direction
  readonly rename?: (stitch: Stitch) => Stitch
  /** Is it to have no more changes of the way between rounds than before? */
  readonly sameWays?: true
}

export type Turned =
  | { readonly ok: true; readonly pattern: Pattern }
  | {
      readonly ok: false
      /** Where it cannot be worked as it is, or else as it would be; null: pegs would differ. */
      readonly fault: Fault | null
      readonly isNow: boolean
    }

/**
 * The piece with the pegs counted from the other end, in every chart and step. Short rows are
 * placed if the piece can then be worked as well as before, else turned over; else it is refused.
 * What is done can be undone in the same way: turned again it is this piece.
 */
export function turnPiece(pattern: Pattern, turn: Turn): Turned {
  const placed = numberedAnew(pattern, turn, 'placed')
  if (!hasParts(pattern)) return done(pattern, placed, turn)
  const back = { ...turn, direction: pattern.loom.direction }
  const alike = (own: Pattern, turned: Pattern) => worksAlike(own, turned, turn.sameWays)
  const comesBack = (turned: Pattern, heels: Heels) =>
    worksTheSame(numberedAnew(turned, back, heels), pattern)
  if (comesBack(placed, 'placed') && alike(pattern, placed)) return done(pattern, placed, turn)
  const over = numberedAnew(pattern, turn, 'turned over')
  const overAgain = numberedAnew(over, back, 'placed')
  if (comesBack(over, 'turned over') && alike(pattern, over) && !alike(over, overAgain))
    return done(pattern, over, turn)
  const now = firstFault(pattern)
  return { ok: false, fault: now ?? firstFault(placed), isNow: now !== null }
}

const done = (pattern: Pattern, turned: Pattern, { rename }: Turn): Turned => ({
  ok: true,
  pattern: {
    ...withWishes(turned, pattern, (wish) => turnWish(wish, pattern.loom.pegs, rename)),
    pictures: turnPictures(pattern, turned),
  },
})

const otherSide = { both: 'both', first: 'last', last: 'first' } as const

const turnWish = (wish: ShortRowWish, pegs: number, rename: Turn['rename']): ShortRowWish => ({
  ...wish,
  run: reverseRun(wish.run, pegs),
  sides: otherSide[wish.sides],
  beside: wish.beside && [
    reverseCells(wish.beside[0], rename),
    reverseCells(wish.beside[1], rename),
  ],
})

function numberedAnew(pattern: Pattern, { direction, rename }: Turn, heels: Heels): Pattern {
  const { loom } = pattern
  const turned = withAllCharts(pattern, (chart) => turnOver(chart, loom, heels, rename))
  return withStepPegs({ ...turned, loom: { ...loom, direction } }, loom.pegs)
}

/** Without rows or steps of a part of the pegs nothing hangs on the end at which they are begun. */
function hasParts(pattern: Pattern): boolean {
  const { pegs } = pattern.loom
  return (
    pattern.charts.some(({ chart }) => chart.rows.some((row) => isPart(row, pegs))) ||
    pattern.steps.some(
      (step) =>
        (step.kind === 'pegs' && step.run !== null) ||
        ((step.kind === 'cast on' || step.kind === 'bind off') && step.pegs !== null),
    )
  )
}

/** Pegs named by steps, counted from the other end. */
const withStepPegs = (pattern: Pattern, pegs: number): Pattern => ({
  ...pattern,
  steps: pattern.steps.map((step) => {
    if (step.kind === 'pegs') return step.run ? { ...step, run: reverseRun(step.run, pegs) } : step
    if (step.kind !== 'cast on' && step.kind !== 'bind off') return step
    return step.pegs ? { ...step, pegs: reverseRun(step.pegs, pegs) } : step
  }),
})
