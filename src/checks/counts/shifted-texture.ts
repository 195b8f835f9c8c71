import { fix } from '../../pattern/finding'
import { chartOn } from '../../pattern/charts'
import { withRow } from '../../pattern/edits/chart'
import type { Run } from '../../pattern/pattern'
import { inFirstCopy } from '../copies'
import type { RowLook } from '../look'
import { nothing } from '../nothing'
import type { Noted, RowDigest } from '../rule'
import { inEachRepeat } from '../wording'
import { pegsNamed } from '../../languages/english/pegs'
import { unitOfRow } from '../../pattern/unit'

/** A stretch this long that moves aside for one row only is no motif any more. */
const leastPegs = 6
/** So many pegs of it must look different from the row below. */
const leastChanged = 2

type Texture = RowLook['texture']

/** The stitches of a row over all pegs; null for a short row. */
const textureOf = (digest: RowDigest | undefined): Texture | null =>
  !digest || digest.turning || digest.run.miscount ? null : digest.look.texture

interface Shifted extends Noted {
  readonly pegs: Run
}

const shifted = new WeakSet<Noted>()

export const isShifted = (noted: Noted): noted is Shifted => shifted.has(noted)

/** Stretches that stand one peg aside. Around: two rows below, the row, two rows above. */
export function shiftedTextures(around: readonly (RowDigest | undefined)[]): readonly Noted[] {
  const digest = around[2]
  const here = textureOf(digest)
  const below = textureOf(around[1])
  const above = textureOf(around[3])
  if (!digest || !below || !here || !above || below === here) return nothing
  const lower = textureOf(around[0])
  const upper = textureOf(around[4])
  if (!lower && !upper) return nothing
  const pegs = here.length
  const ring = digest.setting.shape === 'ring'
  let found: Shifted[] | null = null
  for (let side = 1; side >= -1; side -= 2) {
    let from = 0
    while (from + leastPegs <= pegs) {
      // From the far end back, so that what is not aside is left behind in a step or two.
      let peg = from + leastPegs - 1
      while (peg >= from && isAside(peg, side, ring, here, below, above, lower, upper)) peg--
      if (peg < from) {
        peg = from + leastPegs
        while (peg < pegs && isAside(peg, side, ring, here, below, above, lower, upper)) peg++
        const run = { from, to: peg - 1 }
        if (matters(run, below, here) && inFirstCopy(digest.layout, from))
          (found ??= []).push(noteShifted(run, side, digest))
      }
      from = peg + 1
    }
  }
  return found ?? nothing
}

/** Does this peg hold what its neighbour in the row below does, in this row only? */
function isAside(
  peg: number,
  side: number,
  ring: boolean,
  here: Texture,
  below: Texture,
  above: Texture,
  lower: Texture | null,
  upper: Texture | null,
): boolean {
  const usual = below[peg]
  if (above[peg] !== usual) return false
  if ((lower && lower[peg] !== usual) || (upper && upper[peg] !== usual)) return false
  const { length } = here
  const other = peg + side
  const beside = ring ? below[(other + length) % length] : below[other]
  return here[peg] === beside
}

function matters({ from, to }: Run, below: Texture, here: Texture): boolean {
  let changed = 0
  let periodic = true
  for (let peg = from; peg <= to; peg++) {
    if (here[peg] !== below[peg]) changed++
    if (peg + 2 <= to && below[peg] !== below[peg + 2]) periodic = false
  }
  return changed >= leastChanged && !periodic
}

function noteShifted(pegs: Run, side: number, { layout, run, setting }: RowDigest): Shifted {
  const unit = unitOfRow(run, setting.shape)
  const noted: Shifted = {
    pegs,
    say: (row) =>
      `${row}: on ${pegsNamed(pegs)} the stitches stand one peg ${side > 0 ? 'earlier' : 'later'} than in the ${unit}s below and above${inEachRepeat(layout, pegs.from)}.`,
    advice: `The count is right. Look for a stitch too many near one end of ${pegsNamed(pegs)}, and one too few near the other.`,
    mend: (row) => [
      fix(`Work ${pegsNamed(pegs)} as in the ${unit} below`, (pattern) => {
        const { rows } = chartOn(pattern)
        const [below, here] = [rows[row - 1], rows[row]]
        if (!below || !here) return pattern
        const columns = new Set(layout.columnOf.slice(pegs.from, pegs.to + 1))
        const cells = here.cells.map((cell, column) =>
          columns.has(column) ? (below.cells[column] ?? cell) : cell,
        )
        return withRow(pattern, row, { cells })
      }),
    ],
  }
  shifted.add(noted)
  return noted
}

/** A row that comes again is a design. */
export function comesAgain(digests: readonly RowDigest[], row: number, { from, to }: Run): boolean {
  const here = textureOf(digests[row])
  if (!here) return false
  const same = (other: number): boolean => {
    const texture = textureOf(digests[other])
    if (!texture) return false
    for (let peg = from; peg <= to; peg++) if (texture[peg] !== here[peg]) return false
    return true
  }
  for (let away = 1; away < digests.length; away++)
    if (same(row - away) || same(row + away)) return true
  return false
}
