import { usualEdges, type Section } from './piece'
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

/** The sections that the steps work, in the order in which they first do. */
export function usedSections(pattern: Pattern): readonly Section[] {
  const { steps } = pattern.piece
  return sectionsOf(pattern).filter(({ name }) =>
    steps.some((step) => step.kind === 'chart' && step.section === name),
  )
}

/** Is the piece no more than its one chart, worked once between casting on and binding off? */
export function isOneChart({ piece }: Pattern): boolean {
  const [first, chart, last] = piece.steps
  return (
    piece.others.length === 0 &&
    piece.pair === 'none' &&
    piece.steps.length === 3 &&
    first?.kind === 'cast on' &&
    first.pegs === null &&
    chart?.kind === 'chart' &&
    chart.section === piece.onBench &&
    chart.times === 1 &&
    last?.kind === 'bind off' &&
    last.pegs === null
  )
}

/** Is it that, and cast on and bound off in the plainest way? Its words need not say how. */
export function isPlainPiece(pattern: Pattern): boolean {
  const { castOn, bindOff } = usualEdges
  return (
    isOneChart(pattern) &&
    pattern.piece.steps.every(
      (step) =>
        (step.kind !== 'cast on' || step.how === castOn) &&
        (step.kind !== 'bind off' || step.how === bindOff),
    )
  )
}

/** Are the loops of the section on the bench grafted or otherwise joined straight after it, as those of a toe are? */
export function isJoinedAfter({ piece }: Pattern): boolean {
  const steps = piece.steps.filter(({ kind }) => kind !== 'note')
  const ends = steps.flatMap((step, index) =>
    step.kind === 'chart' && step.section === piece.onBench
      ? [step.times === 1 ? steps[index + 1] : undefined]
      : [],
  )
  return (
    ends.length > 0 &&
    ends.every(
      (end) => end?.kind === 'bind off' && (end.how === 'graft' || end.how === 'three-needle'),
    )
  )
}
