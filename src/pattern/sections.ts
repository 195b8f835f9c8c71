import type { Section } from './piece'
import type { Pattern } from './pattern'

/** The section on the bench, as the others are kept. */
export const sectionOnBench = ({ piece, chart, words, checks }: Pattern): Section => ({
  name: piece.onBench,
  chart,
  words,
  aside: checks.aside,
})

/** The section of this name; undefined when there is none. */
export const findSection = (pattern: Pattern, name: string): Section | undefined =>
  name === pattern.piece.onBench
    ? sectionOnBench(pattern)
    : pattern.piece.others.find((section) => section.name === name)

/** All sections, in the order in which the steps first use them; those that none uses come last. */
export function sectionsOf(pattern: Pattern): readonly Section[] {
  const all = [sectionOnBench(pattern), ...pattern.piece.others]
  const used = pattern.piece.steps.flatMap((step) => (step.kind === 'chart' ? [step.section] : []))
  const place = ({ name }: Section): number => {
    const index = used.indexOf(name)
    return index < 0 ? used.length : index
  }
  return all.toSorted((a, b) => place(a) - place(b))
}

/** The pattern with this section's chart on the bench; the same when it is there, or not known. */
export function withOnBench(pattern: Pattern, name: string): Pattern {
  const section = pattern.piece.others.find((other) => other.name === name)
  if (!section) return pattern
  const put = sectionOnBench(pattern)
  return {
    ...pattern,
    chart: section.chart,
    words: section.words,
    checks: { ...pattern.checks, aside: section.aside },
    piece: {
      ...pattern.piece,
      onBench: name,
      others: pattern.piece.others.map((other) => (other === section ? put : other)),
    },
  }
}
