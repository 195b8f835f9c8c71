import type { Fix } from '../../../pattern/finding'
import type { Comparison, Difference } from '../comparison'
import type { Changes } from '../mend/rewrite'

/** A repair of the words. */
export interface Rewrite extends Pick<Fix, 'label'> {
  /** null: it cannot be done. */
  readonly changes: () => Changes | null
  /** What the words must come to besides. */
  readonly holds?: (before: Comparison, after: Comparison) => boolean
}

/** A difference with the repairs that may be tried for it. */
export interface Draft extends Omit<Difference, 'severity' | 'pegs' | 'fixes' | 'lacking'> {
  /** What its repairs do, as "Adding it to the words"; absent: they need no reason. */
  readonly doing?: { readonly words: string; readonly chart: string }
  /** Found when someone looks. */
  readonly rewrites: () => readonly Rewrite[]
  readonly edits: readonly Fix[]
}
