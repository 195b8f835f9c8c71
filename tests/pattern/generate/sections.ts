/** Generated short-row sections, and what the loom and the checks say of them. Pegs are 0-based. */
import { withChart } from '../../../src/pattern/edits/chart'
import { checkPattern } from '../../../src/checks/check'
import type { Heading } from '../../../src/loom/direction'
import { shortRowChart } from '../../../src/pattern/generate/shortRows'
import type { ShortRowWish } from '../../../src/pattern/pattern'
import { newPattern, type LoomSetup, type Pattern } from '../../../src/pattern/pattern'
import { workPattern, type Work } from '../../../src/pattern/work'

export const turnKinds = ['German turn', 'wrap'] as const
export type TurnKind = (typeof turnKinds)[number]

/** A pattern of nothing but the section, with a gauge, so that only turns are left to remark on. */
export function sectionPattern(
  wish: ShortRowWish,
  loom: Pick<LoomSetup, 'pegs'> & Partial<LoomSetup>,
): Pattern {
  const empty = newPattern(loom.pegs)
  const setup = { ...empty.loom, ...loom }
  const made = shortRowChart(setup, wish)
  if (!made.ok) throw new Error(`${made.message} ${JSON.stringify({ wish, loom })}`)
  const pattern = withChart(
    { ...empty, gauge: { stitches: 22, rows: 30 }, loom: setup },
    made.chart,
  )
  return wish.shape === 'toe' ? grafted(pattern) : pattern
}

const grafted = (pattern: Pattern): Pattern => ({
  ...pattern,
  steps: pattern.steps.map((step) => (step.kind === 'bind off' ? { ...step, how: 'graft' } : step)),
})

export const workSection = (...section: Parameters<typeof sectionPattern>): Work =>
  workPattern(sectionPattern(...section))

/** A row that turns. */
export interface TurnIn {
  /** 0-based row. */
  readonly index: number
  readonly heading: Heading
  /** The peg that gets the strand; a wrap over the join of the round lies on peg -1 or past the last. */
  readonly peg: number
}

/** Where the section turns, row by row. */
export const turnsOf = ({ run: { rows } }: Work): TurnIn[] =>
  rows.flatMap(({ row: { from, to, end }, heading }, index) => {
    if (end === 'on') return []
    const beyond = end === 'wrap' ? 1 : 0
    return [{ index, heading, peg: heading === 'forward' ? to + beyond : from - beyond }]
  })

/** Ids of the rules that find something: errors and warnings, or hints. */
export function rulesThatFind(work: Work): { faults: string[]; hints: string[] } {
  const { findings } = checkPattern(work)
  const of = (hint: boolean) => [
    ...new Set(
      findings.filter((one) => (one.severity === 'hint') === hint).map(({ rule }) => rule),
    ),
  ]
  return { faults: of(false), hints: of(true).sort() }
}

/**
 * Is a toe ready to be grafted: one loop on each peg, its own, and besides on the last peg turned the strand of that
 * turn, and the yarn beside its first peg, or where a toe turned at one end only ends?
 */
export function isReadyToGraft({ run, pattern: { loom } }: Work, wish: ShortRowWish): boolean {
  const corner = wish.sides === 'first' ? wish.run.from : wish.run.to
  const ends = wish.sides === 'first' ? [loom.pegs] : [wish.run.from]
  const { stacks, yarn } = run.end
  return (
    stacks.every(
      (stack, peg) =>
        stack.some(({ wale }) => wale === peg) &&
        (peg === corner ? stack.length > 1 : stack.length === 1),
    ) && ends.includes(yarn.gap)
  )
}

/** Does each peg hold one loop, its own, and is the yarn at peg 1 to go on forward? */
export function isClosed({ run, pattern: { loom } }: Work): boolean {
  const { stacks, yarn, heading } = run.end
  return (
    stacks.every((stack, peg) => stack.length === 1 && stack[0]?.wale === peg) &&
    // In the round past the last peg is before the first.
    yarn.gap % (loom.shape === 'ring' ? loom.pegs : Infinity) === 0 &&
    heading === 'forward'
  )
}
