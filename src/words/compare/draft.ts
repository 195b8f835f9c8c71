import type { Pattern } from '../../pattern/pattern'
import type { Difference } from './comparison'
import type { Plan } from './rewrite'

/** A difference with the repairs that may be tried for it. */
export interface Draft extends Omit<Difference, 'severity' | 'pegs' | 'fixes'> {
  readonly rewrites: readonly { readonly label: string; readonly plan: () => Partial<Plan> }[]
  readonly edits: readonly {
    readonly label: string
    readonly edit: (pattern: Pattern) => Pattern
  }[]
}
