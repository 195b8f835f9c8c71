import type { Move } from '../../loom/move'
import { emptyStack, noWale, type Stack } from '../../loom/strand'
import type { Moment } from '../../loom/walk'
import { pegsOfMove, stitchAt, type Done } from '../../languages/hands'

/** Moves that are told as one. */
export interface Group {
  /** Index of the moment after the first of them. */
  readonly first: number
  readonly moves: readonly Done[]
}

/** Is the next move told together with those before it? */
export type Joins = (moves: readonly Done[], next: Done) => boolean

/** The moves of a list of moments, in order; a move that `joins` those before it is told with them. */
export function groupsOf(moments: readonly Moment[], joins: Joins): readonly Group[] {
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
export const isDoneAlike: Joins = (moves, next) => {
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

/** Is the next move told in the same few words as those before it? Each loop that is moved has its own. */
export const isShortlyAlike: Joins = (moves, next) => {
  const last = moves.at(-1)
  if (!last || last.move.do !== next.move.do || alone.includes(next.move.do)) return false
  return next.move.do === 'move' || manner(last) === manner(next)
}

/** All that a sentence says of a move beside its pegs and its stitch. */
export function manner(done: Done): string {
  const { move, before } = done
  // What the yarn is carried past is not said, nor which peg is the last, but of a chain.
  const pegs = move.do === 'carry' ? [] : pegsOfMove(done)
  const said = move.do === 'cast on' && move.how !== 'chain' ? { ...move, last: false } : move
  return [
    ...Object.values<unknown>(said).filter((value) => typeof value !== 'number'),
    ...pegs.map((peg) => strandsOf(before.stacks[peg])),
    move.do === 'put' ? strandsOf(before.needle[0]?.stack) : '',
  ].join('/')
}

/** Loops, and by their kinds the strands that are only laid on them. */
const strandsOf = (stack: Stack = emptyStack): string =>
  stack
    .map(({ kind, wale }) => (wale === noWale ? kind : 'loop'))
    .sort()
    .join()

/** Loops that are moved one after the other are told as one where all land on empty pegs. */
const alike = (a: Done, b: Done): boolean =>
  manner(a) === manner(b) && (b.move.do !== 'move' || !b.before.stacks[b.move.to]?.length)

/** How far the next move's pegs are from the last one's; null when they are not shifted alike. */
export function stepBetween(last: Done, next: Done): number | null {
  const from = pegsOfMove(last)
  const to = pegsOfMove(next)
  const step = (to[0] ?? 0) - (from[0] ?? 0)
  if (from.length !== to.length) return null
  return from.every((peg, index) => (to[index] ?? 0) - peg === step) ? step : null
}
