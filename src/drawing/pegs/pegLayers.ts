import type { Stack } from '../../loom/strand'
import { memo } from '../../pattern/memo'
import type { Layer } from '../scene'

interface Kept<T> {
  readonly stack: Stack
  readonly fresh: string
  readonly made: T
}

const keptFor = memo((_geometry: object) => new Map<number, Kept<unknown>>())

/** What is drawn of one peg. */
export interface PegLayer<B> {
  readonly peg: number
  readonly layer: Layer
  /** One for each strand, bottom to top. */
  readonly bands: readonly B[]
}

/** The same object while the peg's stack, its fresh strands and the geometry stay the same. */
export function keptPeg<B>(
  geometry: object,
  peg: number,
  stack: Stack,
  fresh: string,
  make: () => PegLayer<B>,
): PegLayer<B> {
  const pegs = keptFor(geometry)
  const found = pegs.get(peg)
  if (found?.stack === stack && found.fresh === fresh) return found.made as PegLayer<B>
  const made = make()
  pegs.set(peg, { stack, fresh, made })
  return made
}
