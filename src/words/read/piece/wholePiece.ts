import { InWork } from './inWork'
import type { Memory } from '../memory'
import type { RelativeRemark } from '../nodes'
import type { Order, WorkOrder } from '../lines/orders'
import { pegsOf, type LoomThen } from '../loops/place'
import type { ReadBand, ReadEdge } from '../reading'
import { ask } from '../remarks/rows'
import * as say from '../remarks/sections'
import type { Words } from '../rows/rows'
import { SectionRows, type Entry } from './sectionRows'

/** What works the rows that lines of the whole piece call for. */
export interface Hands {
  readonly rows: () => number
  readonly full: () => boolean
  readonly place: () => LoomThen
  readonly put: (place: LoomThen) => void
  readonly again: (entry: Entry, words: Words, time: number) => void
  readonly band: (band: ReadBand) => void
  readonly edge: (edge: ReadEdge) => void
  readonly remark: (remark: RelativeRemark, from: number) => void
}

/**
 * The lines of a whole piece that are no rows: sections called for by name, pegs in work, and edges.
 * A section whose rows stand below its line is worked out as soon as these rows end.
 */
export class WholePiece {
  readonly inWork: InWork
  readonly #sections = new SectionRows()
  #begun = false

  constructor(
    memory: Memory,
    private readonly hands: Hands,
  ) {
    this.inWork = new InWork(memory.places, memory.settings.shape)
  }

  startSection(title: string): void {
    this.finish()
    this.#sections.enter(title)
  }

  /** A row is told. */
  told(words: Words, label: string): void {
    this.#begun = true
    this.#sections.told(words, label)
  }

  /** Does this statement belong to no section that is being told? */
  before(numbers: readonly number[]): void {
    const { open, full } = this.#sections
    if (open && full && !this.#sections.expects(numbers)) this.finish()
  }

  /** Work what the line says; false: it says nothing of this kind. `next`: the next row's number. */
  order(order: Order, words: Words, next: number | null): boolean {
    const whole = { from: 0, to: words.text.length }
    const { hands } = this
    if (order.do === 'times') {
      const [first = 1] = order.times
      if (!this.#sections.open) return false
      this.#workUpTo(first - 1)
      this.#sections.version(order.times)
      return true
    }
    if (order.do !== 'work') this.finish()
    switch (order.do) {
      case 'measured':
        hands.remark(say.measuredRows(words.text, whole), words.from)
        return true
      case 'pegs': {
        const place = hands.place()
        const last = Math.max(...(order.run ?? [0]))
        const pegs = pegsOf(place)
        if (last > pegs) hands.remark(say.pegsBeyond(last, pegs, whole), words.from)
        hands.put(this.inWork.put(order, place))
        return true
      }
      case 'cast on':
      case 'bind off':
        hands.edge({ does: order.do, how: order.how, row: hands.rows() })
        hands.put(this.inWork.edge(order, hands.place(), !this.#begun))
        this.#begun = true
        return true
      case 'work':
        return this.#call(order, words, next)
    }
  }

  #call(order: WorkOrder, words: Words, next: number | null): boolean {
    const { hands } = this
    const whole = { from: 0, to: words.text.length }
    this.finish()
    const times = order.often.kind === 'none' ? 1 : 'times' in order.often ? order.often.times : 1
    const known = this.#sections.find(order, 1)
    const follow =
      order.where === 'follow' || (!known?.length && order.rows !== null && next === order.rows[0])
    if (follow && (order.strict || next !== null)) {
      this.#sections.begin(order, words, times, hands.rows())
      return true
    }
    if (!known?.length) {
      if (order.sure) hands.remark(say.noSection(order, whole), words.from)
      return order.sure
    }
    const from = hands.rows()
    const more = this.#more(order, words, times)
    for (let time = 1; time <= more && !hands.full(); time++) {
      const rows = this.#sections.find(order, time) ?? []
      if (rows.length === 0) break
      for (const entry of rows) hands.again(entry, words, time)
    }
    this.#sections.workedAgain()
    this.#band(from, more)
    return true
  }

  /** How often rows are worked more: those told right before it may be the first time. */
  #more(order: WorkOrder, words: Words, times: number): number {
    const { often, verb, where, strict, rows } = order
    if (strict || where || !this.#sections.isLast(order)) return times
    if (often.kind === 'all') return times - 1
    if (often.kind === 'none' && verb === 'work' && !rows && this.#sections.isChart(order)) return 0
    const said = often.kind === 'bare' && times > 1 && /\S+ times|twice/i.exec(words.text)
    if (said) {
      const range = { from: said.index, to: said.index + said[0].length }
      this.hands.remark(ask('ask-times', said[0], range, times), words.from)
    }
    return times
  }

  /** The rest of the times of the section that is being told. */
  finish(): void {
    const { open } = this.#sections
    if (!open) return
    const { order, words, times, from } = open
    const whole = { from: 0, to: words.text.length }
    const told = this.#sections.open?.section.versions.at(-1)?.rows.length ?? 0
    if (told === 0) this.hands.remark(say.noSection(order, whole), words.from)
    else if (order.rows && told !== order.rows[1] - order.rows[0] + 1)
      this.hands.remark(say.otherRows(order, told, whole), words.from)
    const alone = open.section.versions.length === 1
    this.#workUpTo(times)
    this.#sections.open = null
    if (alone && told > 0) this.#band(from, times)
  }

  /** Times that are told already count as worked. */
  #workUpTo(times: number): void {
    const { open } = this.#sections
    if (!open) return
    const told = open.section.versions.at(-1)
    if (told && told.rows.length > 0) open.done++
    const { words, order } = open
    for (let time = open.done + 1; time <= times && !this.hands.full(); time++) {
      if (!this.#sections.says(time)) {
        const whole = { from: 0, to: words.text.length }
        this.hands.remark(say.noVersion(order, time, whole), words.from)
      }
      const rows = this.#sections.find({ ...order, rows: null }, time) ?? []
      if (rows.length === 0) break
      for (const entry of rows) this.hands.again(entry, words, time - 1)
      open.done = time
    }
  }

  /** The rows from here on are the same ones so many times. */
  #band(from: number, times: number): void {
    const rows = this.hands.rows() - from
    if (times < 2 || rows === 0 || rows % times !== 0 || this.hands.full()) return
    this.hands.band({ from, to: from + rows / times - 1, times })
  }
}
