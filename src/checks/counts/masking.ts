import type { Noted, RowDigest, Rule } from '../rule'
import { nothing } from '../nothing'
import { inEachRepeat } from '../wording'
import { comesAgain, isShifted, shiftedTextures } from './shifted-texture'
import { shiftedLoops } from './shifted-loops'
import { repeatBalance } from './balance'
import { counted } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'

const memory = new WeakMap<RowDigest, readonly Noted[]>()

/** Within the row: totals agree, but only because one error makes up for another. */
function inRow(digest: RowDigest): readonly Noted[] {
  let notes = memory.get(digest)
  if (!notes) memory.set(digest, (notes = lookInside(digest)))
  return notes
}

function lookInside({ run, layout }: RowDigest): readonly Noted[] {
  if (run.miscount) return nothing
  const stretches = shiftedLoops(run, layout)
  if (stretches === null) return nothing
  const balance = repeatBalance(run, layout)
  if (balance && balance.perCopy !== 0) {
    const { perCopy, copies, inEdges } = balance
    const side = (count: number) =>
      `${counted(Math.abs(count), 'stitch', 'stitches')} too ${count > 0 ? 'many' : 'few'}`
    return [
      {
        pegs: null,
        say: (row) =>
          `${row} adds up only because two errors hide each other: each of the ${copies} repeats has ${side(perCopy)}, the edges have ${side(inEdges)}.`,
        advice: 'Correct both: the repeat has to come out even, and so have the edges.',
      },
    ]
  }
  return stretches.map(({ pegs, by }) => ({
    pegs,
    say: (row) =>
      `${row} adds up, but on ${pegsNamed(pegs)} every stitch is worked ${by === 1 ? 'one peg' : `${by} pegs`} away from its own${inEachRepeat(layout, pegs.from)}.`,
    advice: `Look before peg ${pegs.from + 1} and after peg ${pegs.to + 1}: one of the two may be an error that the other hides.`,
  }))
}

function check(around: readonly (RowDigest | undefined)[]): readonly Noted[] {
  const here = around[2]
  if (!here) return nothing
  const inside = inRow(here)
  const aside = shiftedTextures(around)
  return inside.length === 0 ? aside : [...inside, ...aside]
}

/** Totals that agree prove nothing: two errors that mask each other are a known printing error. */
export const masking: Rule = {
  id: 'masking',
  title: 'Two errors that hide each other',
  severity: 'warning',
  scope: 'near',
  of: 'rows',
  reach: () => ({ before: 2, after: 2 }),
  check,
  stands: (noted, row, digests) => !isShifted(noted) || !comesAgain(digests, row, noted.pegs),
}
