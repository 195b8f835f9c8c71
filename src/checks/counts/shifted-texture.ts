import { withRow } from '../../pattern/edits/chart'
import type { Run } from '../../pattern/pattern'
import { inFirstCopy } from '../copies'
import { windowed } from '../digest'
import { fix } from '../mending'
import { nothing } from '../nothing'
import type { ChartView, Noted, PlacedNote, RowDigest } from '../rule'
import { inEachRepeat, pegsNamed } from '../wording'

/** A stretch this long that moves aside for one row only is no motif any more. */
const leastPegs = 6
/** So many pegs of it must look different from the row below. */
const leastChanged = 2

type Texture = readonly string[]

const textures = new WeakMap<RowDigest['run']['row'], Texture>()

/** The stitch on every peg of a row over all of them; null for a short row. */
function textureOf(digest: RowDigest | undefined): Texture | null {
  if (!digest || digest.turning || digest.run.miscount) return null
  const { row } = digest.run
  let texture = textures.get(row)
  if (!texture) {
    const made: string[] = []
    for (const { stitch } of row.sites)
      for (let offset = 0; offset < stitch.width; offset++)
        made.push(offset === 0 ? stitch.id : `${stitch.id}+${offset}`)
    textures.set(row, (texture = made))
  }
  return texture
}

interface Shifted extends Noted {
  readonly pegs: Run
}

/** Around: two rows below, the row, two rows above. */
const findShifted = windowed((around): readonly Shifted[] => {
  const [lower, below, here, above, upper] = around.map((digest) => textureOf(digest))
  const digest = around[2]
  if (!digest || !below || !here || !above || (!lower && !upper)) return nothing
  if (below === here) return nothing
  const { layout, setting } = digest
  const pegs = here.length
  const steady = (peg: number): boolean =>
    above[peg] === below[peg] &&
    (!lower || lower[peg] === below[peg]) &&
    (!upper || upper[peg] === below[peg])
  const at = (peg: number): string | undefined =>
    setting.shape === 'ring' ? below[(peg + pegs) % pegs] : below[peg]
  const found: Shifted[] = []
  for (const side of [1, -1]) {
    for (let from = 0; from < pegs;) {
      let to = from
      while (to < pegs && here[to] === at(to + side) && steady(to)) to++
      const run = { from, to: to - 1 }
      if (matters(run, below, here) && inFirstCopy(layout, run.from))
        found.push(noteShifted(run, side, digest))
      from = Math.max(to, from + 1)
    }
  }
  return found
})

function matters({ from, to }: Run, below: Texture, here: Texture): boolean {
  if (to - from + 1 < leastPegs) return false
  let changed = 0
  let periodic = true
  for (let peg = from; peg <= to; peg++) {
    if (here[peg] !== below[peg]) changed++
    if (peg + 2 <= to && below[peg] !== below[peg + 2]) periodic = false
  }
  return changed >= leastChanged && !periodic
}

function noteShifted(pegs: Run, side: number, { layout }: RowDigest): Shifted {
  return {
    pegs,
    say: (row) =>
      `${row}: on ${pegsNamed(pegs)} the stitches stand one peg ${side > 0 ? 'lower' : 'higher'} than in the row below and the row above${inEachRepeat(layout, pegs.from)}.`,
    advice: `Look for a stitch too few near one end of ${pegsNamed(pegs)} and one too many near the other: the count is right, the texture is not.`,
    mend: (row) => [
      fix(`Work ${pegsNamed(pegs)} as in the row below`, (pattern) => {
        const below = pattern.chart.rows[row - 1]
        const here = pattern.chart.rows[row]
        if (!below || !here) return pattern
        const columns = new Set(layout.columnOf.slice(pegs.from, pegs.to + 1))
        const cells = here.cells.map((cell, column) =>
          columns.has(column) ? (below.cells[column] ?? cell) : cell,
        )
        return withRow(pattern, row, { cells })
      }),
    ],
  }
}

/** Stretches that stand one peg aside in one row only; a row that comes again is a design. */
export function shiftedTextures({ digests }: ChartView): PlacedNote[] {
  const notes: PlacedNote[] = []
  const digestAt = (row: number) => digests[row]
  for (let row = 1; row < digests.length - 1; row++)
    for (const noted of findShifted(digestAt, row, 2, 2))
      if (noted.pegs && !comesAgain(digests, row, noted.pegs)) notes.push({ row, noted })
  return notes
}

function comesAgain(digests: readonly RowDigest[], row: number, { from, to }: Run): boolean {
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
