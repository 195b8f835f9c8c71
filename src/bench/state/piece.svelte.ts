import { checkPiece } from '../../checks/piece/check'
import type { PieceFinding } from '../../checks/piece/rule'
import { lengthsOf } from '../../drawing/piece/length'
import { profileOf } from '../../drawing/piece/profile'
import { totalsOf, type PieceTotals } from '../../pattern/totals'
import { workPiece, type PieceWork } from '../../pattern/workPiece'
import type { Pattern } from '../../pattern/pattern'
import { rested } from './rested.svelte'

/** More loops than this, and the whole piece follows when the hand rests. */
const mostLiveLoops = 20_000

/** The whole piece, as the bench shows it: worked, checked and counted. */
export class PieceState {
  /** The step that is looked at. */
  chosen = $state<number | null>(null)

  readonly #bench: { readonly pattern: Pattern }
  readonly #pattern: { readonly value: Pattern }
  #last: PieceWork | undefined

  constructor(bench: { readonly pattern: Pattern }) {
    this.#bench = bench
    this.#pattern = rested(
      () => this.#bench.pattern,
      () => (this.#last?.rows ?? 0) * this.#bench.pattern.loom.pegs > mostLiveLoops,
    )
  }

  readonly work: PieceWork = $derived.by(
    () => (this.#last = workPiece(this.#pattern.value, this.#last)),
  )
  readonly findings: readonly PieceFinding[] = $derived(checkPiece(this.work))
  /** How long each step makes the piece, mm. */
  readonly lengths: readonly number[] = $derived(
    lengthsOf(profileOf(this.work), this.work.steps.length),
  )
  readonly totals: PieceTotals = $derived(totalsOf(this.work))
}
