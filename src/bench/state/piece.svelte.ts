import type { Report } from '../../checks/check'
import { checkPiece } from '../../checks/piece/check'
import type { Severity } from '../../checks/finding'
import type { PieceFinding } from '../../checks/piece/rule'
import { lengthsOf } from '../../drawing/piece/length'
import { footLength } from '../../drawing/piece/foot'
import { profileOf, type Slice } from '../../drawing/piece/profile'
import { totalsOf, type PieceTotals } from '../../pattern/totals'
import { workPiece, type PieceWork } from '../../pattern/workPiece'
import type { Pattern } from '../../pattern/pattern'
import { restedForGood } from './rested.svelte'

/** More loops than this, and the whole piece follows when the hand rests. */
const mostLiveLoops = 20_000

/** What lies on the bench, and what is said of it. */
interface Looked {
  readonly pattern: Pattern
  readonly report: Report
}

/** The whole piece, as the bench shows it: worked, checked and counted. */
export class PieceState {
  /** The step that is looked at. */
  chosen = $state<number | null>(null)

  readonly #bench: Looked
  readonly #pattern: { readonly value: Pattern }
  #last: PieceWork | undefined

  constructor(bench: Looked) {
    this.#bench = bench
    this.#pattern = restedForGood(
      () => this.#bench.pattern,
      () => (this.#last?.rows ?? 0) * this.#bench.pattern.loom.pegs > mostLiveLoops,
    )
  }

  readonly work: PieceWork = $derived.by(
    () => (this.#last = workPiece(this.#pattern.value, this.#last)),
  )
  readonly findings: readonly PieceFinding[] = $derived(checkPiece(this.work))
  readonly #profile: readonly Slice[] = $derived(profileOf(this.work))
  /** How long each step makes the piece, mm. */
  readonly lengths: readonly number[] = $derived(lengthsOf(this.#profile, this.work.steps.length))
  /** Of a sock, mm from heel to toe; null for other pieces, and without a gauge. */
  readonly foot: number | null = $derived.by(() =>
    this.work.pattern.gauge ? footLength(this.#profile) : null,
  )
  readonly totals: PieceTotals = $derived(totalsOf(this.work))
  /** Errors in the chart on the bench: they stand among its own findings. */
  readonly #chartErrors: number = $derived.by(
    () => this.#bench.report.findings.filter(({ severity }) => severity === 'error').length,
  )

  /** How many errors the chart that a step works has, where it is the one on the bench. */
  errorsIn(index: number): number {
    const { piece } = this.#bench.pattern
    const step = piece.steps[index]
    return step?.kind === 'chart' && step.section === piece.onBench ? this.#chartErrors : 0
  }

  /** The worst that there is to say of a step. */
  worstAt(index: number): Severity | null {
    if (this.errorsIn(index) > 0) return 'error'
    return this.findings.find(({ step }) => step === index)?.severity ?? null
  }
}
