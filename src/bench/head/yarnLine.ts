import type { PieceWork } from '../../pattern/workPiece'
import { stepFacts, stepTitle } from '../piece/stepWords'

/** How much of a step the line tells, from most to least. */
export type Told = 'all' | 'name' | 'number'

/** Px, of the letters of the line: what a text takes at most, and what stands round it. */
const letter = { bold: 8.4, quiet: 7.2 }
const around = 34
const between = 14

const widthOf = (told: Told, title: string, facts: string): number =>
  around +
  14 +
  (told === 'number' ? 0 : title.length * letter.bold) +
  (told === 'all' && facts ? 8 + facts.length * letter.quiet : 0)

/** What is told of one step. */
export interface LineStep {
  readonly title: string
  readonly facts: string
  readonly told: Told
}

/**
 * The steps as they fit into a line, px: those furthest from the place are told in short first, and
 * of all the facts go before the names.
 */
export function lineSteps(
  work: PieceWork,
  lengths: readonly number[],
  here: number | null,
  room: number,
): readonly LineStep[] {
  const steps = work.steps.map(({ step }, index) => ({
    title: stepTitle(step, work.pattern),
    facts: stepFacts(work, index, lengths[index] ?? 0).join(' · '),
  }))
  const told = steps.map((): Told => 'all')
  const widths = steps.map(({ title, facts }) => widthOf('all', title, facts))
  let wide = widths.reduce((sum, width) => sum + width + between, 0)
  const far = (index: number) => Math.abs(index - (here ?? 0))
  const furthest = steps.map((_, index) => index).toSorted((a, b) => far(b) - far(a))
  for (const less of ['name', 'number'] as const)
    for (const index of furthest) {
      const step = steps[index]
      if (wide <= room || !step || (less === 'number' && index === here)) continue
      const width = widthOf(less, step.title, step.facts)
      wide -= (widths[index] ?? 0) - width
      widths[index] = width
      told[index] = less
    }
  return steps.map((step, index) => ({ ...step, told: told[index] ?? 'all' }))
}
