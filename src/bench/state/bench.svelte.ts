import { SvelteMap } from 'svelte/reactivity'
import { checkPattern, type Report } from '../../checks/check'
import {
  add,
  begin,
  look,
  redo,
  undo,
  type History,
  type Spot,
  type Version,
} from '../../pattern/history'
import { pegInSecond, secondOf } from '../../pattern/pair'
import { wishesLetGo } from '../../pattern/generate/anew'
import { newPattern, type Chart, type Pattern, type Run, type Sheet } from '../../pattern/pattern'
import { chartOn, findChart, namedOn, onChart, withoutOn } from '../../pattern/charts'
import { workPattern, type Work } from '../../pattern/work'
import type { Turning } from '../../turning/turnings'
import { writeWords, type Words } from '../../words/write'
import { WordsState } from '../words/state.svelte'
import { grown } from '../../pattern/blocks/area'
import { BlockState } from './block.svelte'
import { Panes } from './panes.svelte'
import { PieceState } from './piece.svelte'
import { marksOf, type FindingMark } from '../../drawing/marks'
import { listed, lowerFirst } from '../../languages/english/forms'
import { standardVocabulary } from '../../stitches/vocabulary'

/** What a press on the chart does. */
export const hands = ['paint', 'erase', 'pick up', 'mark'] as const
export type Hand = (typeof hands)[number]

export type Edit = (sheet: Sheet) => Sheet

/** Which piece of a pair is looked at. */
export const places = ['first', 'second'] as const
export type PlaceInPair = (typeof places)[number]

/** All that is asked in dialogs. */
export type DialogName =
  | Turning
  | 'pieces'
  | 'start'
  | 'along'
  | 'loom'
  | 'steps'
  | 'booklet'
  | 'pictures'
  | 'chart from words'
  | 'piece from words'
  | 'write again'
  | 'own piece'
  | 'problem'
  | 'about'

/** What the head asks for of the files of the pieces. */
export interface Files {
  /** Let a file be chosen, and open it. */
  readonly open: () => void
  /** Save the piece as a file. */
  readonly save: () => void
}

/** Something said in passing. */
interface Said {
  readonly text: string
  /** How many things were said up to this one. */
  readonly count: number
  /** The version that undo goes back to, at the time it was said; null: none. */
  readonly back: Version | null
  /** Is a button for that undo to stand beside it? */
  readonly undo: boolean
}

const earlierVersion = 'This is an earlier version, to look at. Go back to it, or back to now.'
export const followsTheFirst = 'This is the second of the pair; it follows the first.'

/**
 * The state of the bench: the history of the piece, the one current place, and what is in the
 * hand. Everything shown is derived from it; each reading keeps what an edit did not touch.
 */
export class Bench {
  history = $state.raw<History>(begin(newPattern(3, 1)))
  /** The current place: chart row and peg. */
  spot = $state.raw<Spot>({ row: 0, peg: 0 })
  /** The other corner when rows and columns are marked; null when only the place is. */
  corner = $state.raw<Spot | null>(null)
  hand = $state<Hand>('paint')
  stitch = $state.raw(standardVocabulary.withRole('purl'))
  /** Where the pointer rests over a chart, to show where the stitch in hand would land. */
  hover = $state.raw<Spot | null>(null)
  /** The last thing said, for the status line and for screen readers. */
  said = $state.raw<Said>({ text: '', count: 0, back: null, undo: false })
  /** Is it still true? What is done or taken back after it makes it stale. */
  readonly saidHolds: boolean = $derived((this.history.past.at(-1) ?? null) === this.said.back)
  /** Does a button beside it take back what was said last? */
  readonly canTakeBack: boolean = $derived(this.said.undo && this.saidHolds)
  /** Changes when another chart comes on the bench. */
  opened = $state.raw({})
  /** Changes when another piece does. */
  arrived = $state.raw({})

  /** The dialogs that are open, from below up. */
  dialogs = $state.raw<readonly DialogName[]>([])
  /** The chart whose wish is changed in the form of the steps; null: the form makes a new one. */
  remaking = $state<string | null>(null)
  /** Given by whoever keeps the pieces. */
  files: Files = { open: () => undefined, save: () => undefined }
  #showing = $state<PlaceInPair>('first')

  /** The piece that is edited and kept: of a pair always the first. */
  readonly first: Pattern = $derived(this.history.present.pattern)
  /** Is the second of a mirrored pair looked at? It is derived, and not to be edited. */
  readonly isSecond: boolean = $derived(
    this.#showing === 'second' && this.first.pair === 'mirrored',
  )
  /** An earlier version that is looked at in place of the piece; null: the piece as it is now. */
  looked = $state.raw<{ readonly pattern: Pattern; readonly name: string } | null>(null)
  /** Why what is shown is not to be changed; null: it can be. */
  readonly readOnly: string | null = $derived.by(() =>
    this.looked ? earlierVersion : this.isSecond ? followsTheFirst : null,
  )
  readonly #shown: Pattern = $derived(
    this.looked?.pattern ?? (this.isSecond ? secondOf(this.first) : this.first),
  )
  /** Name of the chart that is looked at. */
  readonly on: string = $derived.by(
    () => namedOn(onChart(this.looked?.pattern ?? this.first, this.history.on)).name,
  )
  /** The piece that is looked at, with the chart in it that is. */
  readonly pattern: Sheet = $derived(onChart(this.#shown, this.on))
  readonly chart: Chart = $derived(chartOn(this.pattern))
  /** That chart, worked in the step where the place is. */
  readonly work: Work = $derived.by(
    () => (this.#work = workPattern(this.pattern, this.#work, this.piece.here)),
  )
  readonly report: Report = $derived.by(
    () => (this.#report = checkPattern(this.work, this.#report)),
  )
  readonly words: Words = $derived.by(
    () => (this.#words = writeWords(this.work, this.pattern.style.terms, this.#words)),
  )
  /** The words as they are read: the designer's own, or those above. */
  readonly wording = new WordsState(this)
  /** What is marked on the charts. Where words and chart differ the chart may be right: that is no error of it. */
  readonly marks: readonly FindingMark[] = $derived.by(() => [
    ...marksOf(this.report.findings),
    ...marksOf(this.wording.findings, 'hint'),
  ])
  /** The whole piece, from cast-on to bind-off. */
  readonly piece = new PieceState(this)
  /** How the room of the screen is shared out. */
  readonly panes = new Panes(() => this.pattern.loom.shape === 'ring')
  /** Blocks of stitches in the hand. */
  readonly block = new BlockState(this)
  /** Rows and chart columns that are marked, with all of each cross; the current place alone counts as marked. */
  readonly marked: { rows: Run; columns: Run } = $derived.by(() => {
    const { columnOf } = this.work.layout
    const column = ({ peg }: Spot) => columnOf[peg] ?? 0
    const other = this.corner ?? this.spot
    const area = {
      rows: span(this.spot.row, other.row),
      columns: span(column(this.spot), column(other)),
    }
    return this.corner ? grown(this.chart, area) : area
  })

  /** Told of every version as it is made: for what must go on even where the screen fails. */
  onVersion: (() => void) | null = null
  #work: Work | undefined
  #report: Report | undefined
  #words: Words | undefined
  #gestures = 0
  #refused = false
  /** Said with whatever else is said of the edit that was just done. */
  #also = ''
  /** The last place in each chart that is not on the bench. */
  readonly #spots = new SvelteMap<string, Spot>()

  constructor(pattern: Pattern) {
    this.history = begin(pattern)
  }

  /**
   * Do an edit. Edits that share a gesture are taken back as one. The second of a pair takes none,
   * and says so.
   */
  apply(label: string, edit: Edit, gesture: string | null = null): boolean {
    if (this.readOnly !== null) {
      this.#refuse(this.readOnly)
      return false
    }
    const sheet = onChart(this.first, this.on)
    const edited = edit(sheet)
    if (edited === sheet) return false
    const pattern = withoutOn(edited)
    const on = namedOn(onChart(edited, edited.on ?? this.on)).name
    if (isSame(pattern, this.first)) return this.lookAt(on)
    const from = this.on
    const letGo = wishesLetGo(this.first, pattern)
    this.#put(add(this.history, { pattern, from, on, label, spot: this.spot, gesture }))
    if (letGo.length > 0) this.#sayWithAll(rowsOfYourOwn(letGo))
    return true
  }

  /** Look at another chart, at the place where it was left. It is no step to take back. */
  lookAt(on: string): boolean {
    if (on === this.on || !findChart(this.looked?.pattern ?? this.first, on)) return false
    this.#spots.set(this.on, this.spot)
    this.history = look(this.history, on)
    this.goTo(this.#spots.get(on) ?? { row: 0, peg: 0 })
    return true
  }

  /** Look at this piece of the pair; the current place goes to the same stitch. */
  look(at: PlaceInPair): void {
    const was = this.isSecond
    this.#showing = at
    if (this.isSecond === was) return
    this.#spots.clear()
    this.goTo({ ...this.spot, peg: pegInSecond(this.first, this.spot.peg) })
    this.hover = null
  }

  /** Look at an earlier version of the piece, or, with null, at the piece as it is now. */
  lookBack(version: { pattern: Pattern; name: string } | null): void {
    this.look('first')
    this.looked = version
    this.hover = null
    this.opened = {}
    this.#stayInside()
  }

  /** Open a dialog, over those that are open. */
  ask(name: DialogName): void {
    if (!this.dialogs.includes(name)) this.dialogs = [...this.dialogs, name]
  }

  close(name: DialogName): void {
    if (name === 'steps') this.remaking = null
    this.dialogs = this.dialogs.filter((one) => one !== name)
  }

  newGesture(): string {
    return `gesture ${++this.#gestures}`
  }

  undo(): void {
    if (this.looked) return this.#refuse(earlierVersion)
    const { label, spot } = this.history.present
    if (this.history.past.length === 0) return
    const shown = this.#lookAtFirst() + this.#goBy(undo(this.history), spot)
    this.say(`Undone: ${lowerFirst(label)}.${shown}`)
  }

  redo(): void {
    if (this.looked) return this.#refuse(earlierVersion)
    const [next] = this.history.future
    if (!next) return
    const shown = this.#lookAtFirst() + this.#goBy(redo(this.history), next.spot)
    this.say(`Redone: ${lowerFirst(next.label)}.${shown}`)
  }

  /** Go through the history; where that leads to another chart, to the place of what was done there. */
  #goBy(history: History, spot: Spot): string {
    const was = this.on
    this.#also = ''
    const isSamePiece = this.history.present.pattern.charts.some(({ name }) => name === history.on)
    this.#put(history)
    if (this.on === was) return ''
    this.opened = {}
    if (!isSamePiece) return ''
    this.goTo(spot)
    return ` The chart “${this.on}” is on the bench.`
  }

  /** Put another piece on the bench. It is a version like any other, so undo brings back the last. */
  open(pattern: Pattern, label: string): void {
    this.look('first')
    const on = pattern.charts[0].name
    const from = this.on
    this.#put(add(this.history, { pattern, from, on, label, spot: this.spot, gesture: null }))
    this.#spots.clear()
    this.goTo({ row: 0, peg: 0 })
    this.opened = this.arrived = {}
  }

  /** Begin with this history in place of the one that is there: only for work taken up after a reload. */
  restart(history: History): void {
    this.look('first')
    this.#spots.clear()
    this.history = history
    this.opened = this.arrived = {}
    this.#stayInside()
  }

  goTo(spot: Spot, corner: Spot | null = null): void {
    this.spot = this.#inside(spot)
    this.corner = corner && this.#inside(corner)
  }

  /** Say it in passing. With `undo`, a button beside it takes the last step back. */
  say(text: string, { undo = false } = {}): void {
    if (this.#refused) return
    this.said = {
      text: [text, this.#also].filter(Boolean).join(' '),
      count: this.said.count + 1,
      back: this.history.past.at(-1) ?? null,
      undo: (undo || this.#also !== '') && this.history.past.length > 0,
    }
  }

  /** Say it, and again after whatever else whoever did the edit says of it. */
  #sayWithAll(text: string): void {
    this.say(text, { undo: true })
    this.#also = text
    queueMicrotask(() => (this.#also = ''))
  }

  /** Say why nothing is done, and let whoever asked for it say nothing else of it. */
  #refuse(reason: string): void {
    this.say(reason)
    this.#refused = true
    queueMicrotask(() => (this.#refused = false))
  }

  /** What is taken back is taken back in the first, so it is shown. */
  #lookAtFirst(): string {
    if (!this.isSecond) return ''
    this.look('first')
    return ' The first of the pair is shown.'
  }

  #put(history: History): void {
    this.looked = null
    this.history = history
    this.onVersion?.()
    this.#stayInside()
  }

  #inside({ row, peg }: Spot): Spot {
    const clamp = (value: number, count: number) => Math.min(count - 1, Math.max(0, value))
    return {
      row: clamp(row, this.chart.rows.length),
      peg: clamp(peg, Math.max(1, this.work.layout.columnOf.length)),
    }
  }

  #stayInside(): void {
    const spot = this.#inside(this.spot)
    if (spot.row !== this.spot.row || spot.peg !== this.spot.peg) this.spot = spot
    if (this.corner) this.corner = this.#inside(this.corner)
  }
}

/** Said of charts whose wish was let go. */
const rowsOfYourOwn = (names: readonly string[]): string => {
  const [are, make] =
    names.length === 1
      ? ['is', 'its numbers no longer make it']
      : ['are', 'their numbers no longer make them']
  return `${listed(names.map((name) => `“${name}”`))} ${are} now rows of your own: ${make}.`
}

/** Have they all parts in common? */
const isSame = (a: Pattern, b: Pattern): boolean => {
  const keys = Object.keys(b) as (keyof Pattern)[]
  return keys.every((key) => a[key] === b[key])
}

const span = (a: number, b: number): Run => ({ from: Math.min(a, b), to: Math.max(a, b) })
