import { tornBy, within, type Area, type At } from '../../pattern/blocks/area'
import {
  areaOf,
  insideAt,
  tornByBlock,
  tornByMove,
  type Block,
  type Corner,
} from '../../pattern/blocks/block'
import type { History, Version } from '../../pattern/history'
import type { Chart, Sheet } from '../../pattern/pattern'

/** What lies on the bench. */
interface Looked {
  readonly pattern: Sheet
  readonly chart: Chart
  readonly history: History
  /** Name of the chart. */
  readonly on: string
  /** Another object when another piece comes on the bench. */
  readonly arrived: object
  readonly isSecond: boolean
}

/** The last copy, kept here whatever becomes of the clipboard. */
export interface Kept {
  readonly block: Block
  readonly text: string
  /** Did the clipboard take it? */
  readonly isOutside: boolean
}

/** A block that lies on the chart before it is put there. */
export interface Preview {
  readonly block: Block
  readonly at: Corner
  /** A stamp stays in the hand after it was put; a block that is moved leaves where it was. */
  readonly how: 'paste' | 'stamp' | 'move'
  /** Where a block that is moved is now. */
  readonly from: Area | null
}

/** What would be done, and what that would cut: asked before anything is. */
export interface Question {
  readonly says: string
  readonly torn: readonly At[]
  /** On the button beside it. */
  readonly label: string
  readonly run: () => void
  /** The same elsewhere, where nothing is cut; null: there is no such place. */
  readonly instead: {
    readonly label: string
    readonly key: string
    readonly run: () => void
  } | null
}

/** What was laid or asked belongs to one chart, and a question to one version of it. */
interface Bound<Value> {
  readonly value: Value
  readonly on: string
  readonly arrived: object
  readonly version: Version
}

/** Blocks in the hand: the copy that is kept, the one that lies on the chart, and what is asked before it is done. */
export class BlockState {
  kept = $state.raw<Kept | null>(null)
  #preview = $state.raw<Bound<Preview> | null>(null)
  #question = $state.raw<Bound<Question> | null>(null)

  readonly preview: Preview | null = $derived.by(() => this.#here(this.#preview))
  readonly question: Question | null = $derived.by(() => {
    const asked = this.#question
    return asked?.version === this.bench.history.present ? this.#here(asked) : null
  })
  /** The cells that the preview takes. */
  readonly area: Area | null = $derived.by(
    () => this.preview && within(areaOf(this.preview.block, this.preview.at), this.bench.chart),
  )
  /** What would be cut. */
  readonly torn: readonly At[] = $derived.by(() =>
    this.preview ? this.tornAt(this.preview, this.preview.at) : (this.question?.torn ?? []),
  )

  constructor(private readonly bench: Looked) {}

  lay(preview: Preview): void {
    this.leave()
    const at = insideAt(this.bench.pattern, preview.block, preview.at)
    this.#preview = this.#bound({ ...preview, at })
  }

  ask(question: Question): void {
    this.leave()
    this.#question = this.#bound(question)
  }

  /** Nothing of it is done. */
  leave(): void {
    this.#preview = this.#question = null
  }

  /** What a block would cut at a place. */
  tornAt({ block, from }: Preview, at: Corner): readonly At[] {
    const { pattern } = this.bench
    return from ? tornByMove(pattern, from, block, at) : tornByBlock(pattern, block, at)
  }

  /** What the edges of these columns go through in all rows. */
  tornByColumns(from: number, to: number): readonly At[] {
    const { chart } = this.bench
    return tornBy(chart, { rows: { from: 0, to: chart.rows.length - 1 }, columns: { from, to } })
  }

  #bound<Value>(value: Value): Bound<Value> {
    const { on, arrived, history } = this.bench
    return { value, on, arrived, version: history.present }
  }

  #here<Value>(bound: Bound<Value> | null): Value | null {
    const { bench } = this
    const isHere = bound?.on === bench.on && bound.arrived === bench.arrived && !bench.isSecond
    return isHere ? bound.value : null
  }
}
