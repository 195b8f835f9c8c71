import { middlePeg, turnedBy, type FabricView } from '../../drawing/fabric/fabric'
import { tones } from '../../drawing/fabric/place'
import { crossStrands, strandEnds, waleAt, type CrossStrands } from '../../drawing/fabric/strands'
import type { Bundle } from '../../drawing/fabric/tags'
import { isOneChart } from '../../pattern/charts'
import { pieceStretches } from '../../pattern/stretches'
import type { PatternRun } from '../../pattern/work'
import type { Bench } from './bench.svelte'
import { memo } from '../../pattern/memo'
import { onItsOwn } from './onItsOwn.svelte'
import { pegsNamed } from '../../languages/english/pegs'

/** Whose fabric is shown: that of the chart on the bench, or of the whole piece. */
type FabricSource = 'chart' | 'piece'

/** A row of the fabric: which chart row it is, where it is one. 0-based. */
interface FabricRow {
  readonly run: PatternRun
  readonly chart: string | null
  readonly row: number
  /** Index of its step; null: the chart by itself. */
  readonly step: number | null
}

const none: Readonly<Record<FabricSource, readonly Bundle[]>> = { chart: [], piece: [] }

/** How the fabric is looked at, and which strands are followed. It lasts while other panes are shown. */
export class FabricState {
  source = $state<FabricSource>('chart')
  #view = $state<FabricView>('flat')
  #turn = $state<number | null>(null)
  #bundles = $state.raw(none)
  /** The working of the current row that was pointed at last. */
  #near = $state.raw(0)
  #arrived: unknown
  #chart: string
  readonly #bench: Bench

  constructor(bench: Bench) {
    this.#bench = bench
    this.#arrived = bench.arrived
    this.#chart = bench.on
    this.source = this.#usual
  }

  readonly #list: readonly FabricRow[] = $derived.by(() => {
    const bench = this.#bench
    if (this.source === 'piece')
      return pieceStretches(bench.piece.work).flatMap((stretch) =>
        stretch.kind === 'row'
          ? [
              {
                run: stretch.run,
                chart: stretch.chart?.chart ?? null,
                row: stretch.chart?.row ?? stretch.number - 1,
                step: stretch.step,
              },
            ]
          : [],
      )
    const { run, passes, name } = bench.work
    return run.rows.map((row, index) => ({
      run: row,
      chart: name,
      row: passes[index]?.row ?? 0,
      step: null,
    }))
  })

  readonly rows: readonly PatternRun[] = $derived.by(() =>
    this.source === 'chart' ? this.#bench.work.run.rows : this.#list.map(({ run }) => run),
  )

  /** `workings[row]`: the rows of the fabric that are this row of the chart on the bench. */
  readonly workings: ReadonlyMap<number, readonly number[]> = $derived.by(() => {
    const { on } = this.#bench
    // eslint-disable-next-line svelte/prefer-svelte-reactivity -- made anew each time
    const found = new Map<number, number[]>()
    this.#list.forEach(({ chart, row }, index) => {
      if (chart !== on) return
      const list = found.get(row)
      if (list) list.push(index)
      else found.set(row, [index])
    })
    return found
  })

  /** The row of the fabric at the current place; -1 where it has none. */
  readonly here: number = $derived.by(() => {
    let best = -1
    const near = this.#near
    for (const index of this.workings.get(this.#bench.spot.row) ?? [])
      if (best < 0 || Math.abs(index - near) < Math.abs(best - near)) best = index
    return best
  })

  readonly isRing: boolean = $derived.by(() => this.#bench.pattern.loom.shape === 'ring')
  readonly view: FabricView = $derived(this.isRing ? this.#view : 'flat')
  readonly lastPeg: number = $derived.by(() => this.#bench.pattern.loom.pegs - 1)
  /** The peg at the middle, 0-based, parts of pegs too. */
  readonly turn: number = $derived.by(() =>
    this.#turn === null
      ? middlePeg(this.#bench.pattern.loom)
      : turnedBy(this.#bench.pattern.loom, this.#turn, 0),
  )
  readonly bundles: readonly Bundle[] = $derived.by(() => this.#bundles[this.source])

  show(view: FabricView): void {
    this.#view = view
  }

  turnTo(peg: number): void {
    this.#turn = peg
  }

  /** Turn what lies in front by so many pegs to the right, as it is seen. */
  turnBy(pegs: number): void {
    this.#turn = turnedBy(this.#bench.pattern.loom, this.turn, pegs)
  }

  /** Another piece has other strands, and is looked at anew; another chart has other strands. */
  begin(arrived: unknown, chart: string): void {
    if (arrived !== this.#arrived) {
      this.#turn = null
      this.#bundles = none
      this.source = this.#usual
    } else if (chart !== this.#chart) this.#bundles = { ...this.#bundles, chart: none.chart }
    this.#arrived = arrived
    this.#chart = chart
  }

  /** One of several charts says little alone. */
  get #usual(): FabricSource {
    return isOneChart(this.#bench.pattern) ? 'chart' : 'piece'
  }

  /** Make the place of a row of the fabric the current one. */
  goTo(index: number, peg: number): void {
    const at = this.#list[index]
    const bench = this.#bench
    if (!at) return
    this.#near = index
    if (at.chart === bench.on) {
      bench.goTo({ row: at.row, peg })
      if (at.step !== null) bench.piece.chosen = at.step
    } else if (at.chart === null)
      bench.say(`This is plain row ${at.row + 1} of a step; no chart shows it.`)
    else
      bench.say(
        `This is row ${at.row + 1} of “${at.chart}”, which is not on the bench. Choose it under Steps to work on it.`,
      )
  }

  /** The strand that lies at the current place; -1 where there is none. */
  readonly waleHere: number = $derived.by(() => {
    const run = this.rows[this.here]
    return run ? waleAt(run, this.#bench.spot.peg) : -1
  })

  readonly crossHere: CrossStrands | null = $derived.by(() => {
    const run = this.rows[this.here]
    return run ? crossStrands(run, this.#bench.spot.peg, this.#bench.pattern.loom) : null
  })

  /** The bundle that one strand belongs to. */
  bundleOf(wale: number): Bundle | undefined {
    return this.bundles.find(({ wales }) => wales.includes(wale))
  }

  /** Is there a tone left? */
  readonly hasRoom: boolean = $derived(this.bundles.length < tones)

  /** Follow those of these strands that are not followed yet as one, while there is a tone left. */
  follow(wales: readonly number[]): void {
    const fresh = wales.filter((wale) => !this.bundleOf(wale))
    const taken = this.bundles.map((bundle) => bundle.number)
    const number = Array.from({ length: tones }, (_, i) => i + 1).find(
      (one) => !taken.includes(one),
    )
    if (fresh.length === 0 || number === undefined) return
    const next = [...this.bundles, { number, wales: fresh }].sort((a, b) => a.number - b.number)
    this.#bundles = { ...this.#bundles, [this.source]: next }
  }

  letGo(number: number): void {
    const left = this.bundles.filter((bundle) => bundle.number !== number)
    this.#bundles = { ...this.#bundles, [this.source]: left }
  }

  /** Where the strands of a bundle come from and where they end, in words. */
  wayOf({ wales }: Bundle): string {
    const ends = wales.flatMap((wale) => strandEnds(this.rows, wale) ?? [])
    if (ends.length === 0) return 'in no row now'
    const from = pegsText(ends.map(({ first }) => first.peg))
    const to = pegsText(ends.map(({ last }) => last.peg))
    return from === to ? from : `${from} to ${to}`
  }
}

function pegsText(pegs: readonly number[]): string {
  return pegsNamed({ from: Math.min(...pegs), to: Math.max(...pegs) })
}

/** The fabric of a bench; the same state each time. */
export const fabricOf = memo((bench: Bench) => onItsOwn(() => new FabricState(bench)))
