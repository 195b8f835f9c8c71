import { chartOn } from '../../../src/pattern/charts'
import type { Direction, Heading } from '../../../src/loom/direction'
import { emptyLoom, castOn as loopsOnAll, type LoomState } from '../../../src/loom/state'
import { firstMoment, momentsFrom, walkRow, type Moment } from '../../../src/loom/walk'
import { bindOffPegs, castOnPegs } from '../../../src/loom/edges'
import type { BindOff, CastOn } from '../../../src/loom/move'
import type { Pattern, Row } from '../../../src/pattern/pattern'
import { habitsOf } from '../../../src/pattern/habits'
import { workPattern, type PatternRun } from '../../../src/pattern/work'
import { stitchAt } from '../../../src/languages/hands'
import { handsContext } from '../../../src/words/hands/context'
import { stepFigures } from '../../../src/words/hands/figures'
import { sayMove } from '../../../src/words/hands/say'
import { pieceOf } from '../helpers'

/** A piece of these rows, worked this way. */
export const piece = (
  rows: readonly Row[],
  direction: Direction = 'clockwise',
  making: Partial<Pattern['making']> = {},
): Pattern => {
  const pattern = pieceOf(rows)
  return {
    ...pattern,
    loom: { ...pattern.loom, direction },
    making: { ...pattern.making, ...making },
  }
}

/** The moments of a row of a piece, its last one unless said otherwise. */
export function walk(pattern: Pattern, row = chartOn(pattern).rows.length - 1): readonly Moment[] {
  const run = workPattern(pattern).run.rows[row] as PatternRun
  return walkRow(run, habitsOf(pattern))
}

/** What is said of each move; of one stitch's, or of the row's own where `id` is null. */
export function said(pattern: Pattern, id?: string | null): string[] {
  const moments = walk(pattern)
  const context = handsContext(pattern)
  return moments.slice(1).flatMap((moment, index) => {
    const stitch = stitchAt(moment.site)
    return id === undefined || (stitch?.id ?? null) === id
      ? [sayMove(moment, moments[index] as Moment, context)]
      : []
  })
}

export const figures = (pattern: Pattern) => stepFigures(walk(pattern), handsContext(pattern))

/** The moments of an edge on a loom of `pegs`. */
export function walkEdge(
  pattern: Pattern,
  edge: { castOn: CastOn } | { bindOff: BindOff },
): readonly Moment[] {
  const { pegs } = pattern.loom
  const before: LoomState = 'castOn' in edge ? emptyLoom(pegs) : loopsOnAll(pegs)
  const { moments, record } = momentsFrom(firstMoment(before))
  const habits = habitsOf(pattern)
  if ('castOn' in edge) castOnPegs(before, habits, edge.castOn, 0, pegs - 1, record)
  else bindOffPegs(before, habits, edge.bindOff, 0, pegs - 1, null, record)
  return moments
}

/** Every peg that a text names, from 1: "pegs 5 to 8", "pegs 5, 6 and 7", "peg 5". */
export function pegsNamed(text: string): number[] {
  const lists = text.matchAll(/\bpegs? (\d+(?:(?:, then |, | and | to )\d+)*)/g)
  return [...lists].flatMap(([, list = '']) => {
    const [, from, to] = /^(\d+) to (\d+)$/.exec(list) ?? []
    if (from === undefined) return (list.match(/\d+/g) ?? []).map(Number)
    const [a, b] = [Number(from), Number(to)]
    const step = Math.sign(b - a)
    return Array.from({ length: Math.abs(b - a) + 1 }, (_, index) => a + index * step)
  })
}

export const back: { heading: Heading } = { heading: 'back' }
