import type { Report } from '../../checks/check'
import { checkPiece } from '../../checks/piece/check'
import { worstFirst, type Finding, type Severity } from '../../pattern/finding'
import { attempt } from '../../words/attempt'
import { reader } from '../words/reader.svelte'
import { lengthsOf } from '../../drawing/piece/length'
import { footLength } from '../../drawing/piece/foot'
import { profileOf, type Slice } from '../../drawing/piece/profile'
import { totalsOf, type PieceTotals } from '../../pattern/totals'
import type { Spot } from '../../pattern/history'
import type { Step } from '../../pattern/piece'
import { workPiece, type PieceWork } from '../../pattern/workPiece'
import { namedOn } from '../../pattern/charts'
import type { Pattern, Sheet } from '../../pattern/pattern'
import { restedForGood } from './rested.svelte'

/** More loops than this, and the whole piece follows when the hand rests. */
const mostLiveLoops = 20_000

/** What lies on the bench, and what is said of it. */
interface Looked {
  readonly pattern: Sheet
  readonly report: Report
  readonly spot: Spot
  /** Another object when another piece comes on the bench. */
  readonly arrived: object
}

/** A step that was chosen, and the place then. */
interface Choice {
  readonly index: number
  readonly step: Step | undefined
  readonly steps: number
  readonly spot: Spot
  readonly arrived: object
}

/** The whole piece, as the bench shows it: worked, checked and counted. */
export class PieceState {
  #choice = $state.raw<Choice | null>(null)
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

  /** The step that was chosen last, wherever it stands now; null: none, or it is gone. */
  readonly #chosen: number | null = $derived.by(() => {
    const choice = this.#choice
    const { steps } = this.#bench.pattern
    if (!choice?.step) return null
    const at = steps.indexOf(choice.step)
    if (at >= 0) return at
    // What was changed in its place is the same step.
    const isSame = choice.arrived === this.#bench.arrived && steps.length === choice.steps
    const now = isSame ? steps[choice.index] : undefined
    return now?.kind === choice.step.kind ? choice.index : null
  })
  get chosen(): number | null {
    return this.#chosen
  }
  set chosen(index: number | null) {
    const { pattern, spot, arrived } = this.#bench
    const { steps } = pattern
    this.#choice =
      index === null ? null : { index, step: steps[index], steps: steps.length, spot, arrived }
  }

  /**
   * The step that the current place lies in: the chosen one, while it works the chart on the bench or
   * the place has not moved since; else the first one that works this chart.
   */
  readonly here: number | null = $derived.by(() => {
    const { pattern, spot } = this.#bench
    const { steps } = pattern
    const { name } = namedOn(pattern)
    const works = (step: Step | undefined) => step?.kind === 'chart' && step.chart === name
    const chosen = this.#chosen
    if (chosen !== null && (works(steps[chosen]) || this.#choice?.spot === spot)) return chosen
    const first = steps.findIndex(works)
    return first < 0 ? null : first
  })

  readonly work: PieceWork = $derived.by(
    () => (this.#last = workPiece(this.#pattern.value, this.#last)),
  )
  readonly findings: readonly Finding[] = $derived.by(() => {
    const { work } = this
    const { name } = namedOn(this.#bench.pattern)
    const ofWords = attempt([() => reader()?.otherWords(work, name) ?? []], () => []).result
    return worstFirst([...checkPiece(work, name), ...ofWords])
  })
  /** The piece from the side, from cast-on to bind-off. */
  readonly slices: readonly Slice[] = $derived(profileOf(this.work))
  /** How long each step makes the piece, mm. */
  readonly lengths: readonly number[] = $derived(lengthsOf(this.slices, this.work.steps.length))
  /** Of a sock, mm from heel to toe; null for other pieces, and without a gauge. */
  readonly foot: number | null = $derived.by(() =>
    this.work.pattern.gauge ? footLength(this.slices) : null,
  )
  readonly totals: PieceTotals = $derived(totalsOf(this.work))
  /** Errors in the chart on the bench: they stand among its own findings. */
  readonly #chartErrors: number = $derived.by(
    () => this.#bench.report.findings.filter(({ severity }) => severity === 'error').length,
  )

  /** How many errors the chart that a step works has, where it is the one on the bench. */
  errorsIn(index: number): number {
    const { pattern } = this.#bench
    const step = pattern.steps[index]
    return step?.kind === 'chart' && step.chart === namedOn(pattern).name ? this.#chartErrors : 0
  }

  /** The worst that there is to say of a step. */
  worstAt(index: number): Severity | null {
    if (this.errorsIn(index) > 0) return 'error'
    return this.findings.find(({ place }) => place.step === index)?.severity ?? null
  }
}
