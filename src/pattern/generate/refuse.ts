import { limits, type LoomSetup } from '../pattern'
import { mostTurns, pegsIn, type ShortRowWish } from './wish'

/** Why something cannot be worked, and what can be. */
export interface Refusal {
  readonly message: string
  readonly advice: string
}

const peg = (index: number): string => `peg ${index + 1}`
const count = (n: number, noun: string): string => `${n} ${noun}${n === 1 ? '' : 's'}`

/** What is not a whole number: an end of the section, its turned pegs, or its step. */
function notWhole({ run: { from, to }, turned, step }: ShortRowWish): Refusal | null {
  if (!Number.isInteger(from) || !Number.isInteger(to)) {
    const [first, last] = [from, to].map((at) => (Number.isFinite(at) ? peg(at) : 'no peg'))
    return {
      message: `The section runs from ${first} to ${last}; a loom has whole pegs only.`,
      advice: 'Give the first and the last peg as whole numbers.',
    }
  }
  if (!Number.isInteger(turned))
    return {
      message: Number.isFinite(turned)
        ? `A section cannot turn ${turned} pegs: only a whole peg can be turned.`
        : 'The number of turned pegs is missing.',
      advice: 'Give the turned pegs as a whole number, 1 or more.',
    }
  if (!Number.isInteger(step))
    return {
      message: Number.isFinite(step)
        ? `A section cannot step by ${step} pegs: the turns would lie between the pegs.`
        : 'The step from one turned peg to the next is missing.',
      advice: 'Give the step as a whole number of pegs, 1 or more.',
    }
  return null
}

/** Rows of the section, or two more: a corner over the join of the round takes a row of its own. */
const mostRows = ({ shape, turned, sides, closeCorners }: ShortRowWish): number =>
  shape === 'wedge' ? turned * 2 + 2 : turned * 4 + (closeCorners && sides === 'both' ? 4 : 0)

/** The first thing that keeps this section from being worked on this loom; null when nothing does. */
export function refuse(
  { pegs, shape: loomShape }: Pick<LoomSetup, 'pegs' | 'shape'>,
  wish: ShortRowWish,
): Refusal | null {
  const { run, turned, step, sides, shape, closeCorners } = wish
  const { from, to } = run
  const parted = notWhole(wish)
  if (parted) return parted
  if (from < 0 || to >= pegs || from > to)
    return {
      message: `The section runs from ${peg(from)} to ${peg(to)}; the loom has pegs 1 to ${pegs}.`,
      advice: 'Choose a first and a last peg on the loom.',
    }
  if (step < 1 || turned < 1)
    return {
      message: `A section with ${count(turned, 'turned peg')} a side and a step of ${step} has no turn.`,
      advice: 'Turn at least one peg at each side, and step by at least one.',
    }
  const most = mostTurns(run, step, sides)
  if (turned > most) {
    const where = sides === 'both' ? 'at each side' : 'at one side'
    return {
      message: `${count(turned, 'turned peg')} ${where}, ${count(step, 'peg')} apart, need more than the ${count(pegsIn(run), 'peg')} of the section: no peg would be left between them.`,
      advice:
        most > 0
          ? `Turn at most ${count(most, 'peg')} ${where}, or choose more pegs.`
          : 'Choose at least 3 pegs.',
    }
  }
  const rows = mostRows(wish)
  if (rows > limits.rows.most)
    return {
      message: `${count(turned, 'turned peg')} a side make about ${rows} rows; a chart can have ${limits.rows.most}.`,
      advice: 'Turn fewer pegs, or step by more.',
    }
  if (sides !== 'both') {
    if (loomShape === 'ring')
      return {
        message:
          'In the round there is no edge to go back from: a section that turns at one side only would turn on the same peg again and again at the other.',
        advice: 'Turn at both sides, or work it on a bar.',
      }
    const edge = sides === 'last' ? from === 0 : to === pegs - 1
    if (!edge)
      return {
        message: `A section that turns at its ${sides} peg only must reach the other edge of the bar; it runs from ${peg(from)} to ${peg(to)} of ${pegs}.`,
        advice: sides === 'last' ? 'Begin it on peg 1.' : `End it on peg ${pegs}.`,
      }
  }
  if (shape === 'heel' && closeCorners && sides === 'both') {
    if (loomShape === 'bar' && (from === 0 || to === pegs - 1))
      return {
        message: `The section ${from === 0 ? 'begins on peg 1' : `ends on peg ${pegs}`}, so its corner lies beyond the edge of the bar.`,
        advice: 'Move it so that one peg is free on each side, or leave the corners open.',
      }
    if (pegsIn(run) > pegs - 2)
      return {
        message: `The section lies on ${pegsIn(run)} of ${pegs} pegs, so both its corners would be turned on the same peg.`,
        advice: 'Choose fewer pegs, or leave the corners open.',
      }
  }
  return null
}
