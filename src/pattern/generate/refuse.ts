import { limits, type LoomSetup, type ShortRowWish } from '../pattern'
import { mostTurns, pegsIn } from './wish'
import { counted } from '../../languages/english/forms'

/** Why something cannot be worked, and what can be. */
export interface Refusal {
  readonly message: string
  readonly advice: string
}

const peg = (index: number): string => `peg ${index + 1}`

/** What is not a whole number: an end of the run, its turned pegs, or its step. */
function notWhole({ run: { from, to }, turned, step }: ShortRowWish): Refusal | null {
  const wrong = Number.isInteger(from) ? (Number.isInteger(to) ? null : 'last') : 'first'
  if (wrong) {
    const at = wrong === 'first' ? from : to
    return {
      message: Number.isFinite(at) ? `There is no ${peg(at)}.` : `The ${wrong} peg is missing.`,
      advice: 'Enter the first and the last peg as whole numbers.',
    }
  }
  if (!Number.isInteger(turned))
    return {
      message: Number.isFinite(turned)
        ? `${turned} pegs cannot be turned.`
        : 'The number of turned pegs is missing.',
      advice: 'Enter a whole number of turned pegs, 1 or more.',
    }
  if (!Number.isInteger(step))
    return {
      message: Number.isFinite(step)
        ? `From turn to turn there cannot be ${step} pegs.`
        : 'How many pegs there are from turn to turn is missing.',
      advice: 'Enter a whole number of pegs from turn to turn, 1 or more.',
    }
  return null
}

/** Rows in all, or two more: a corner over the join of the round takes a row of its own. */
const mostRows = ({ shape, turned, sides, closeCorners }: ShortRowWish): number =>
  shape === 'wedge' ? turned * 2 + 2 : turned * 4 + (closeCorners && sides === 'both' ? 4 : 0)

/** The first thing that keeps these short rows from being worked on this loom; null when nothing does. */
export function refuse(
  { pegs, shape: loomShape }: Pick<LoomSetup, 'pegs' | 'shape'>,
  wish: ShortRowWish,
): Refusal | null {
  const { run, turned, step, sides, shape, closeCorners } = wish
  const { from, to } = run
  const parted = notWhole(wish)
  if (parted) return parted
  if (from > to)
    return {
      message: `The first peg, ${from + 1}, comes after the last, ${to + 1}.`,
      advice: 'Enter the lower number as the first peg.',
    }
  if (from < 0 || to >= pegs)
    return {
      message: `The ${shape} runs from ${peg(from)} to ${peg(to)}, but the loom has ${pegs} pegs.`,
      advice: `Choose pegs from 1 to ${pegs}.`,
    }
  if (step < 1 || turned < 1)
    return {
      message:
        turned < 1
          ? `A ${shape} turns at least one peg.`
          : 'From turn to turn there is at least one peg.',
      advice: `Enter 1 or more.`,
    }
  const most = mostTurns(run, step, sides)
  const where = sides === 'both' ? 'at each side' : 'at one side'
  if (turned > most) {
    return {
      message: `${counted(turned, 'turned peg')} ${where}, ${counted(step, 'peg')} apart, do not fit on ${counted(pegsIn(run), 'peg')}: at least one peg ${sides === 'both' ? 'in the middle ' : ''}must stay without a turn.`,
      advice:
        most > 0
          ? `Turn at most ${counted(most, 'peg')} ${where}, or choose more pegs.`
          : 'Choose at least 3 pegs.',
    }
  }
  const rows = mostRows(wish)
  if (rows > limits.rows.most)
    return {
      message: `${counted(turned, 'turned peg')} ${where} make about ${rows} rows; a chart can have ${limits.rows.most}.`,
      advice: 'Turn fewer pegs, or step by more.',
    }
  if (sides !== 'both') {
    if (loomShape === 'ring')
      return {
        message: `In the round there is no edge to turn back at: a ${shape} turns at both ends.`,
        advice: 'Turn at both ends, or work it on a rake.',
      }
    const edge = sides === 'last' ? from === 0 : to === pegs - 1
    if (!edge)
      return {
        message: `A ${shape} that turns only at its ${sides} peg must reach the other edge of the rake; it runs from ${peg(from)} to ${peg(to)} of ${pegs}.`,
        advice: sides === 'last' ? 'Begin it on peg 1.' : `End it on peg ${pegs}.`,
      }
  }
  if (shape === 'heel' && closeCorners && sides === 'both') {
    if (loomShape === 'bar' && (from === 0 || to === pegs - 1))
      return {
        message: `The heel ${from === 0 ? 'begins on peg 1' : `ends on peg ${pegs}`}: there is no peg past that end to close the corner on.`,
        advice: 'Leave one peg free at each side, or leave the corners open.',
      }
    if (pegsIn(run) > pegs - 2)
      return {
        message: `The heel lies on ${pegsIn(run)} of ${pegs} pegs: both corners would be closed on the same peg.`,
        advice: 'Choose fewer pegs, or leave the corners open.',
      }
  }
  return null
}
