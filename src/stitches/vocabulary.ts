import { crosses } from './crosses'
import { decreases, increases, knitAndPurl, slips, textures } from './plain'
import type { Stitch } from './stitch'

/** The whole vocabulary, in the order of the tray and the key. */
export const vocabulary: readonly Stitch[] = [
  ...knitAndPurl,
  ...slips,
  ...increases,
  ...decreases,
  ...textures,
  ...crosses,
]

const byId = new Map(vocabulary.map((stitch) => [stitch.id, stitch]))

export const findStitch = (id: string): Stitch | undefined => byId.get(id)

/** The stitch of this id. Throws for an unknown one: ids are checked where they enter. */
export function stitchOf(id: string): Stitch {
  const found = byId.get(id)
  if (!found) throw new RangeError(`There is no stitch "${id}" among the ${byId.size} known.`)
  return found
}
