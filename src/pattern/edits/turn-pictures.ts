import { walkRow } from '../../loom/walk'
import type { Pattern } from '../pattern'
import type { Pictures } from '../piece'
import { findChart } from '../charts'
import { habitsOf } from '../habits'
import type { PatternRun } from '../work'
import { workOnce } from '../workOnce'

/** Moves of one stitch in its row, both ends included, 0-based, and the pegs it lies on. */
interface Moves {
  readonly peg: number
  readonly width: number
  readonly from: number
  readonly to: number
}

/**
 * Step pictures of a piece whose pegs are counted from the other end: those of the same stitches, as these are
 * worked now. What a stretch leaves out of its first and last stitch is left out again.
 */
export function turnPictures(pattern: Pattern, turned: Pattern): readonly Pictures[] {
  const { pictures } = pattern
  if (pictures.length === 0) return pictures
  const runs = new Map<string, readonly [before: Rows, after: Rows]>()
  for (const { chart } of pictures)
    if (!runs.has(chart)) runs.set(chart, [rowsOf(pattern, chart), rowsOf(turned, chart)])
  return pictures.map((one) => {
    const [before, after] = runs.get(one.chart) ?? []
    const [was, is] = [before?.[one.row], after?.[one.row]]
    if (!was || !is) return one
    const count = lengthOf(was, pattern)
    // What shows the turn goes on showing it, with as much before it.
    if (was.row.end !== 'on' && one.to >= count - movesOfTurn)
      return fromEnd(one, count, lengthOf(is, turned))
    return turnOne(one, movesIn(was, pattern), movesIn(is, turned), pattern.loom.pegs)
  })
}

/** A row ends with the strand that is laid, and the turn. */
const movesOfTurn = 2

const lengthOf = (run: PatternRun, pattern: Pattern): number =>
  walkRow(run, habitsOf(pattern)).length - 1

function fromEnd(pictures: Pictures, count: number, countNow: number): Pictures {
  const to = Math.max(0, countNow - (count - pictures.to))
  return { ...pictures, from: Math.max(0, to - (pictures.to - pictures.from)), to }
}

type Rows = readonly PatternRun[]

const rowsOf = (pattern: Pattern, chart: string): Rows =>
  findChart(pattern, chart) ? workOnce(pattern, chart).firstRuns : []

/** The stitches of a row in working order. */
function movesIn(run: PatternRun, pattern: Pattern): readonly Moves[] {
  const list: { peg: number; width: number; from: number; to: number }[] = []
  const moments = walkRow(run, habitsOf(pattern))
  moments.slice(1).forEach(({ site }, move) => {
    if (!site) return
    const last = list.at(-1)
    if (last?.peg === site.peg) last.to = move
    else list.push({ peg: site.peg, width: site.stitch.width, from: move, to: move })
  })
  return list
}

function turnOne(
  pictures: Pictures,
  was: readonly Moves[],
  is: readonly Moves[],
  pegs: number,
): Pictures {
  const covered = was.filter(({ from, to }) => to >= pictures.from && from <= pictures.to)
  const [first, last] = [covered[0], covered.at(-1)]
  const now = (moves: Moves | undefined) =>
    moves && is.find(({ peg }) => peg === pegs - moves.peg - moves.width)
  const [firstNow, lastNow] = [now(first), now(last)]
  if (!first || !last || !firstNow || !lastNow) return pictures
  const skipped = Math.max(0, pictures.from - first.from)
  const leftOut = Math.max(0, last.to - pictures.to)
  const sameOrder = firstNow.from <= lastNow.from
  const [from, to] = sameOrder
    ? [after(firstNow, skipped), before(lastNow, leftOut)]
    : [after(lastNow, leftOut), before(firstNow, skipped)]
  return from <= to ? { ...pictures, from, to } : { ...pictures, from: to, to: from }
}

/** A move of a stitch, so many after its first one or before its last one. */
const after = ({ from, to }: Moves, count: number): number => Math.min(from + count, to)
const before = ({ from, to }: Moves, count: number): number => Math.max(to - count, from)
