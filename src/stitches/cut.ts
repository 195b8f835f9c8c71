import type { CutBy, Stitch } from './stitch'
import { standardVocabulary } from './vocabulary'

const made = new Map<Stitch, Map<string, Stitch>>()

/**
 * What stands on the loom where only `columns` pegs are left of a stitch: these are knitted plain,
 * and every reading names the stitch that was cut and where. Its id is the one that the cells hold.
 * The same object for the same question, since stitches are told apart by identity.
 */
export function cutStitch(of: Stitch, columns: number, by: CutBy): Stitch {
  let ofStitch = made.get(of)
  if (!ofStitch) made.set(of, (ofStitch = new Map<string, Stitch>()))
  const key = `${columns} ${by}`
  let cut = ofStitch.get(key)
  if (!cut) ofStitch.set(key, (cut = declareCut(of, columns, by)))
  return cut
}

function declareCut(of: Stitch, columns: number, by: CutBy): Stitch {
  const { id, family, mirror } = of
  return {
    id,
    family,
    takes: columns,
    makes: columns,
    width: columns,
    mirror,
    look: 'knit',
    cut: { of, by },
    moves: Array.from({ length: columns }, (_, peg) => ({ do: 'work', peg })),
  }
}

/** Stitches in the order of the vocabulary, what is left of each behind it. */
export function byVocabulary(stitches: Iterable<Stitch>): Stitch[] {
  const place = (stitch: Stitch): number =>
    standardVocabulary.placeOf(stitch) + (stitch.cut ? 1 - stitch.width / 100 : 0)
  return [...new Set(stitches)].sort((a, b) => place(a) - place(b))
}
