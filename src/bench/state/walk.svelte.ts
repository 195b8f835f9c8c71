import type { Moment } from '../../loom/walk'
import { actingIn } from '../../drawing/pegs/acting'
import type { Spot } from '../../pattern/history'
import { pegInSecond } from '../../pattern/pair'
import { isOneChart } from '../../pattern/charts'
import { chartStretches, pieceStretches, type Stretch } from '../../pattern/stretches'
import { habitsOf } from '../../pattern/habits'
import type { StretchMoves } from '../../booklet/stepPictures'
import type { Bench } from './bench.svelte'
import { memo } from '../../pattern/memo'
import { onItsOwn } from './onItsOwn.svelte'
import { KeptMoments } from './keptMoments'
import { firstAt, stitchAround } from '../../loom/moves'

/** What is walked: the chart on the bench by itself, or the whole piece. */
type WalkSource = 'chart' | 'piece'

/** Where the walk stands, and the place on the bench that goes with it. */
interface Standing {
  readonly source: WalkSource
  readonly stretch: number
  readonly moment: number
  readonly spot: Spot | null
  /** Was the second of a pair looked at? */
  readonly second: boolean
}

interface MarkedMove {
  readonly run: Stretch['run']
  readonly stretch: number
  readonly moment: number
}

/** Rows that pictures are made of at once. */
export const mostRowsInPictures = 40

/**
 * The walk through the work, one move of the hands after the other. It stands where the bench's
 * place is: when that is moved elsewhere, the walk is at the stitch there. Nothing runs after
 * anything, so the two cannot chase each other.
 */
export class WalkState {
  playing = $state(false)
  /** Moves a minute while it plays. */
  pace = $state(40)
  /** Is there a pane to see it in? */
  shown = $state(false)
  #standing = $state.raw<Standing>({
    source: 'chart',
    stretch: 0,
    moment: 0,
    spot: null,
    second: false,
  })
  #mark = $state.raw<MarkedMove | null>(null)
  readonly #kept = new KeptMoments()
  readonly #bench: Bench

  constructor(bench: Bench) {
    this.#bench = bench
  }

  readonly source: WalkSource = $derived(this.#standing.source)
  readonly stretches: readonly Stretch[] = $derived.by(() =>
    this.source === 'chart'
      ? chartStretches(this.#bench.work)
      : pieceStretches(this.#bench.piece.work),
  )
  readonly #place = $derived.by(() => this.#find())
  readonly stretchIndex: number = $derived(this.#place.stretch)
  readonly stretch: Stretch | undefined = $derived(this.stretches[this.stretchIndex])
  readonly moments: readonly Moment[] = $derived(this.stretch ? this.#momentsOf(this.stretch) : [])
  /** Index of the current moment: so many moves of the stretch are done. */
  readonly done: number = $derived(this.#place.moment)
  readonly moment: Moment | undefined = $derived(this.moments[this.done])
  readonly before: Moment | undefined = $derived(this.moments[this.done - 1])
  readonly moves: number = $derived(Math.max(0, this.moments.length - 1))
  readonly atStart: boolean = $derived(this.stretchIndex === 0 && this.done === 0)
  readonly atEnd: boolean = $derived(
    this.stretchIndex >= this.stretches.length - 1 && this.done === this.moves,
  )

  /** Is there more of the piece than the chart that is walked? */
  readonly goesOn: boolean = $derived.by(
    () => this.source === 'chart' && !isOneChart(this.#bench.pattern),
  )

  /** One move on, into the next row at the end of one. False when all is done. */
  forward(): boolean {
    const { stretchIndex, done, moves } = this
    if (done < moves) this.#stand(stretchIndex, done + 1)
    else if (stretchIndex < this.stretches.length - 1) this.#stand(stretchIndex + 1, 1)
    else return false
    return true
  }

  /** One move back. A row begins with the loom that the row before left: that is shown once. */
  back(): boolean {
    const { stretchIndex, done } = this
    if (done > (stretchIndex === 0 ? 0 : 1)) this.#stand(stretchIndex, done - 1)
    else if (stretchIndex > 0) this.#stand(stretchIndex - 1, Infinity)
    else return false
    return true
  }

  toMove(done: number): void {
    this.#stand(this.stretchIndex, done)
  }

  /** To the first move of the next row, or of this one or the one before. */
  nextRow(): void {
    if (this.stretchIndex < this.stretches.length - 1) this.#stand(this.stretchIndex + 1, 1)
    else this.#stand(this.stretchIndex, Infinity)
  }

  rowBefore(): void {
    if (this.done > 1 || this.stretchIndex === 0) this.#stand(this.stretchIndex, 1)
    else this.#stand(this.stretchIndex - 1, 1)
  }

  /** To the stitch on this peg in the row that is walked. */
  toPeg(peg: number): void {
    this.#stand(this.stretchIndex, firstAt(this.moments, peg))
  }

  /** Walk the chart on the bench, or the piece from this step on. */
  walk(source: WalkSource, step = 0): void {
    this.#mark = null
    this.playing = false
    if (source === 'chart') {
      this.#standing = { source, stretch: 0, moment: 0, spot: null, second: this.#bench.isSecond }
      return
    }
    const all = pieceStretches(this.#bench.piece.work)
    const first = all.findIndex((stretch) => stretch.step === step)
    this.#standing = {
      source,
      stretch: 0,
      moment: 0,
      spot: this.#bench.spot,
      second: this.#bench.isSecond,
    }
    this.#stand(Math.max(0, first), 1)
  }

  /** Moves `from`.. of a row of the chart on the bench. */
  toChartMove(row: number, move: number): void {
    if (this.source !== 'chart') this.walk('chart')
    const index = this.stretches.findIndex(({ chart }) => chart?.row === row)
    if (index >= 0) this.#stand(index, move + 1)
  }

  readonly marked: { readonly stretch: number; readonly moment: number } | null = $derived.by(
    () => {
      const mark = this.#mark
      return mark && this.stretches[mark.stretch]?.run === mark.run ? mark : null
    },
  )

  /** Pictures begin with the move that is shown; once more, and they do so no longer. */
  toggleMark(): void {
    const { stretch, stretchIndex, done, marked } = this
    this.#mark =
      marked || !stretch
        ? null
        : { run: stretch.run, stretch: stretchIndex, moment: Math.max(0, done - 1) }
  }

  /** Rows from the mark to here. */
  readonly markedRows: number = $derived(
    this.marked ? Math.abs(this.marked.stretch - this.stretchIndex) + 1 : 1,
  )

  /** The moves between the mark and here, or those of the stitch here. */
  parts(): readonly StretchMoves[] {
    const { stretch, stretchIndex, done, marked } = this
    if (!stretch || this.markedRows > mostRowsInPictures) return []
    /** The move that is shown: the last one done. */
    const here = { stretch: stretchIndex, moment: done - 1 }
    if (!marked || (done === 0 && marked.stretch === stretchIndex)) {
      const run = stitchAround(this.moments, done)
      return run ? [{ stretch, ...run }] : []
    }
    const isLater =
      marked.stretch > here.stretch ||
      (marked.stretch === here.stretch && marked.moment > here.moment)
    const [first, last] = isLater ? [here, marked] : [marked, here]
    const parts: StretchMoves[] = []
    for (let index = first.stretch; index <= last.stretch; index++) {
      const one = this.stretches[index]
      if (!one) continue
      const from = index === first.stretch ? Math.max(0, first.moment) : 0
      const to = index === last.stretch ? last.moment : this.#momentsOf(one).length - 2
      if (to >= from) parts.push({ stretch: one, from, to })
    }
    return parts
  }

  /** The moments of some parts, each from the one before its first move. */
  momentsIn(parts: readonly StretchMoves[]): readonly Moment[] {
    return parts.flatMap(({ stretch, from, to }) => this.#momentsOf(stretch).slice(from, to + 2))
  }

  #momentsOf(stretch: Stretch): readonly Moment[] {
    return this.#kept.of(stretch, habitsOf(this.#bench.pattern))
  }

  #find(): { stretch: number; moment: number } {
    const { stretches } = this
    const { stretch, moment, spot } = this.#standing
    const now = this.#bench.spot
    const last = Math.max(0, stretches.length - 1)
    const stay = Math.min(stretch, last)
    if (spot && this.#isThere(spot, now)) return this.#within(stay, moment)
    const there = this.#nearest(now.row, stay)
    const at = stretches[there]
    if (!at) return this.#within(stay, moment)
    return { stretch: there, moment: firstAt(this.#momentsOf(at), now.peg) }
  }

  /** Looking at the other one of a pair moves the place to the same stitch there. */
  #isThere(spot: Spot, now: Spot): boolean {
    const { first, isSecond } = this.#bench
    const peg = this.#standing.second === isSecond ? spot.peg : pegInSecond(first, spot.peg)
    return spot.row === now.row && peg === now.peg
  }

  /** The working of a chart row that is nearest to a stretch; the first one of a chart by itself. */
  #nearest(row: number, to: number): number {
    const { on } = this.#bench
    let best = -1
    this.stretches.forEach(({ chart }, index) => {
      if (chart?.row !== row || chart.chart !== on) return
      const nearer = this.source === 'piece' && Math.abs(index - to) < Math.abs(best - to)
      if (best < 0 || nearer) best = index
    })
    return best
  }

  #within(stretch: number, moment: number): { stretch: number; moment: number } {
    const at = this.stretches[stretch]
    const last = at ? this.#momentsOf(at).length - 1 : 0
    return { stretch, moment: Math.max(0, Math.min(moment, last)) }
  }

  #stand(to: number, wished: number): void {
    const { stretch, moment } = this.#within(to, wished)
    const bench = this.#bench
    const at = this.stretches[stretch]
    if (at?.chart?.chart === bench.on) {
      const peg = this.#pegOf(at, moment)
      bench.goTo({ row: at.chart.row, peg: peg ?? bench.spot.peg })
    }
    if (at && at.step !== null) bench.piece.chosen = at.step
    this.#standing = {
      source: this.source,
      stretch,
      moment,
      spot: bench.spot,
      second: bench.isSecond,
    }
  }

  /** The peg at which a moment has the hands; null where they are at none in particular. */
  #pegOf(stretch: Stretch, done: number): number | null {
    const moment = this.#momentsOf(stretch)[done]
    const acting = actingIn(moment?.move ?? null).peg
    if (acting !== null) return acting
    if (moment?.site) return moment.site.peg
    if (done > 0 || stretch.kind === 'edge') return null
    const { row, heading } = stretch.run
    return heading === 'forward' ? row.from : row.to
  }
}

/** The walk of a bench; the same one each time. */
export const walkOf = memo((bench: Bench) => onItsOwn(() => new WalkState(bench)))
