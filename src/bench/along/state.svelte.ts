import type { Moment } from '../../loom/walk'
import { habitsOf } from '../../pattern/habits'
import { memo } from '../../pattern/memo'
import { secondKey } from '../../shelf/knitting'
import { alongPiece, bandOf, readStop, type Along, type Stop } from '../../words/along/along'
import {
  back,
  clamp,
  isDone,
  next,
  start,
  stopAt,
  toCopy,
  toStint,
  type Place,
  type Stride,
} from '../../words/along/place'
import { momentsOfStints, type Stint } from '../../words/along/stints'
import { handsContext } from '../../words/hands/context'
import type { Bench } from '../state/bench.svelte'
import type { Keeper } from '../state/keeper.svelte'
import { KeptMoments } from '../state/keptMoments'
import { onItsOwn } from '../state/onItsOwn.svelte'
import { keptFrom, keptMeanwhile, keptNow } from './kept'
import { toldBetween, type Told } from './names'
import { goBack } from './returning'

/** The most that an own count can be set to. */
export const mostCounted = 9999

const noStints: readonly Stint[] = []

/** What keeps the place, and the piece with it. */
type Home = Pick<Keeper, 'knitting' | 'id' | 'keepThis'>

/** Somebody knits the piece on the bench: where they are in it, and what they count. */
export class AlongState {
  stride = $state<Stride>('row')
  /** The knitter's own counter. */
  count = $state(0)
  /** Is the screen to stay awake? */
  awake = $state(true)
  /** What was said of the place when it was taken up; until the first step on. */
  said = $state.raw<readonly string[]>([])
  isChanged = $state(false)
  /** Why the place is not kept; empty while it is. */
  notKept = $state('')
  /** The place is known. */
  ready = $state(false)
  #place = $state.raw<Place>(start)
  /** Which sentence of the stitch is told. */
  #told = $state(0)
  #key = ''
  #home: Home | null = null
  readonly #last = keptMeanwhile()
  readonly #kept = new KeptMoments()
  readonly #bench: Bench

  constructor(bench: Bench) {
    this.#bench = bench
  }

  readonly along: Along = $derived.by(() => alongPiece(this.#bench.piece.work))
  readonly place: Place = $derived(clamp(this.along, this.#place))
  readonly stop: Stop | null = $derived(stopAt(this.along, this.place))
  readonly before: Stop | null = $derived(this.along.stops[this.place.stop - 1] ?? null)
  readonly then: Stop | null = $derived(this.along.stops[this.place.stop + 1] ?? null)
  readonly isDone: boolean = $derived(isDone(this.along, this.place))
  readonly #read = $derived(this.stop && readStop(this.along, this.stop))
  readonly spans = $derived(this.#read?.spans ?? [])
  readonly stints: readonly Stint[] = $derived(this.#read?.stints ?? noStints)
  readonly stint: Stint | null = $derived(this.stints[this.place.stint] ?? null)
  readonly band = $derived(this.stop && bandOf(this.along, this.stop))

  readonly moments: readonly Moment[] = $derived.by(() =>
    this.stop ? this.#kept.of(this.stop.stretch, habitsOf(this.#bench.pattern)) : [],
  )
  /** What the hands do for the stitch now, sentence by sentence. */
  readonly sentences: readonly Told[] = $derived.by(() => {
    const { stop, stint, moments } = this
    if (!stop) return []
    const context = handsContext(this.#bench.pattern)
    if (stop.stretch.kind === 'edge')
      return toldBetween(moments, 0, moments.length - 1, context, true)
    const run = stint && momentsOfStints(moments, this.stints)[this.place.stint]
    return run ? toldBetween(moments, run.from, run.to, context, false) : []
  })
  readonly toldIndex: number = $derived(
    Math.min(this.#told, Math.max(0, this.sentences.length - 1)),
  )
  readonly told: Told | null = $derived(this.sentences[this.toldIndex] ?? null)

  /** Take up the place that was kept in this piece. */
  async begin(home: Home): Promise<void> {
    const key = this.#bench.isSecond ? secondKey(home.id) : home.id
    this.#home = home
    this.#key = key
    this.ready = false
    const kept = keptFrom(await home.knitting.recover(key)) ?? this.#last.get(key) ?? null
    if (key !== this.#key) return
    this.#told = 0
    this.#place = start
    this.said = []
    this.isChanged = false
    this.count = kept?.count ?? 0
    this.stride = kept?.stride ?? 'row'
    this.awake = kept?.awake ?? true
    if (kept) {
      const { place, said, isChanged } = goBack(this.along, kept)
      this.#place = place
      this.said = said
      this.isChanged = isChanged
    }
    this.ready = true
  }

  forward(by: Stride = this.stride): void {
    this.#go(next(this.along, this.place, by))
  }

  back(by: Stride = this.stride): void {
    this.#go(back(this.along, this.place, by))
  }

  toStint(stint: number): void {
    this.#go(toStint(this.place, stint))
  }

  /** To the beginning of another row or edge. */
  toStop(stop: number): void {
    this.#go({ stop: Math.max(0, stop), stint: 0, left: 0 })
  }

  /** To the stitch of a span that was pressed, in the copy of the repeat that is worked now. */
  toSpan(span: number): void {
    const here = this.stint?.copy?.at
    const all = this.stints.flatMap((stint, index) => (stint.span === span ? [index] : []))
    const inCopy = all.find((index) => this.stints[index]?.copy?.at === here)
    const to = inCopy ?? all[0]
    if (to !== undefined) this.toStint(to)
  }

  /** To the same stitch in another copy of the repeat, from 0. */
  toCopy(copy: number): void {
    const { copy: here } = this.stint ?? {}
    if (here) this.#go(toCopy(this.along, this.place, Math.max(0, Math.min(copy, here.of - 1))))
  }

  /** To another sentence of the same stitch. */
  tell(index: number): void {
    this.#told = Math.max(0, Math.min(index, this.sentences.length - 1))
  }

  setCount(count: number): void {
    this.count = Math.max(0, Math.min(Math.round(count), mostCounted))
    this.#keep()
  }

  set(settings: Partial<Pick<AlongState, 'stride' | 'awake'>>): void {
    Object.assign(this, settings)
    this.#keep()
  }

  #go(place: Place): void {
    this.said = []
    this.#told = 0
    this.#place = place
    this.#keep()
  }

  #keep(): void {
    const { place, along, count, stride, awake } = this
    const record = keptNow(along, place, { count, stride, awake })
    this.#last.set(this.#key, record)
    this.#home?.keepThis()
    void this.#home?.knitting.keep(this.#key, record).then((reason) => {
      this.notKept = reason ?? ''
    })
  }
}

/** The knitting of a bench; the same one each time. */
export const alongOf = memo((bench: Bench) => onItsOwn(() => new AlongState(bench)))
