import { pegInSecond } from '../../pattern/pair'
import type { PieceRule } from '../rule'
import { forSteps, stepNamed } from './steps'

/** "pegs 2 to 25", "Peg 7", "pegs 3-9". */
const pegsNamed = /\bpegs?\s+(\d{1,3})(?:\s*(?:to|and|[-–])\s*(\d{1,3}))?/i

/** A note is printed with both of a pair, in the words in which it was written. */
export const notePegs: PieceRule = {
  id: 'piece-note-pegs',
  title: 'Peg numbers in a note are others in the second of a pair',
  severity: 'warning',
  scope: 'piece',
  check: (work) => {
    const { pair, loom } = work.pattern
    if (pair !== 'mirrored') return []
    return forSteps(work, ({ step }, index) => {
      const found = step.kind === 'note' ? pegsNamed.exec(step.text) : null
      if (!found) return null
      const numbers = found.slice(1).flatMap((text) => (text ? [Number(text)] : []))
      if (numbers.some((peg) => peg < 1 || peg > loom.pegs)) return null
      const others = numbers.map((peg) => pegInSecond(work.pattern, peg - 1) + 1)
      if (pegs(others) === pegs(numbers)) return null
      return {
        step: index,
        message: `${stepNamed(work, index)} names ${pegs(numbers)}; in the second of the pair, its mirror image, they are ${pegs(others)}.`,
        advice: 'Say it without numbers, for example “the pegs of the heel”.',
      }
    })
  },
}

const pegs = (numbers: readonly number[]): string =>
  `${numbers.length === 1 ? 'peg' : 'pegs'} ${numbers.toSorted((a, b) => a - b).join(' to ')}`
