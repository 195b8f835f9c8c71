import type { Knit } from '../loom/move'
import { crossId, crosses } from './crosses'
import { decreases, increases, knitAndPurl, slips, textures } from './plain'
import type { Cross, Role, Stitch } from './stitch'

/**
 * The stitches that a pattern can be made of. What another folder builds from all of them (letters,
 * spellings) is asked of `made`, and so belongs to the vocabulary as well.
 */
export class Vocabulary {
  readonly #byId: ReadonlyMap<string, Stitch>
  readonly #byRole: ReadonlyMap<Role | undefined, Stitch>
  readonly #places: ReadonlyMap<Stitch, number>
  readonly #made = new Map<unknown, unknown>()
  /** Pegs of the widest of them. */
  readonly widest: number

  /** `stitches`: in the order of the tray and the key. */
  constructor(readonly stitches: readonly Stitch[]) {
    this.#byId = new Map(stitches.map((stitch) => [stitch.id, stitch]))
    this.#byRole = new Map(stitches.map((stitch) => [stitch.role, stitch]))
    this.#places = new Map(stitches.map((stitch, place) => [stitch, place]))
    this.widest = stitches.reduce((most, { width }) => Math.max(most, width), 1)
  }

  find(id: string): Stitch | undefined {
    return this.#byId.get(id)
  }

  /** The stitch of this id. Throws for an unknown one: ids are checked where they enter. */
  stitch(id: string): Stitch {
    const found = this.#byId.get(id)
    if (!found)
      throw new RangeError(`There is no stitch "${id}" among the ${this.#byId.size} known.`)
    return found
  }

  /** The stitch that the house takes for this. Throws where the vocabulary has none. */
  withRole(role: Role): Stitch {
    const found = this.#byRole.get(role)
    if (!found) throw new RangeError(`No stitch of the vocabulary has the role "${role}".`)
    return found
  }

  findCross(cross: Cross): Stitch | undefined {
    return this.#byId.get(crossId(cross))
  }

  mirrorOf({ mirror }: Stitch): Stitch {
    return this.stitch(mirror)
  }

  /** What "knit" means in a pattern that knits so; any other stitch is meant as it stands. */
  meant(stitch: Stitch, knit: Knit): Stitch {
    return stitch.role === 'knit' ? this.withRole(knit) : stitch
  }

  /** As it looks from behind; undefined where the vocabulary has no such stitch. */
  behind({ behind }: Stitch): Stitch | undefined {
    return behind === undefined ? undefined : this.#byId.get(behind)
  }

  /** Its place in the order of the vocabulary, that of a cut stitch is the whole one's; -1: not in it. */
  placeOf(stitch: Stitch): number {
    return this.#places.get(stitch.cut?.of ?? stitch) ?? -1
  }

  /** What `make` makes of the vocabulary: made when it is first asked for, then kept. */
  made<T>(make: (vocabulary: Vocabulary) => T): T {
    if (!this.#made.has(make)) this.#made.set(make, make(this))
    return this.#made.get(make) as T
  }
}

/** The stitches of this house. */
export const standardVocabulary = new Vocabulary([
  ...knitAndPurl,
  ...slips,
  ...increases,
  ...decreases,
  ...textures,
  ...crosses,
])

export const findStitch = (id: string): Stitch | undefined => standardVocabulary.find(id)
export const stitchOf = (id: string): Stitch => standardVocabulary.stitch(id)
