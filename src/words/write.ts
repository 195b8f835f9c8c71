import { loopsInRun } from '../loom/gather'
import { pegsInWork } from '../loom/state'
import type { Band, Run } from '../pattern/pattern'
import { withChange } from '../pattern/changes'
import type { Work } from '../pattern/work'
import type { Terms } from '../languages/terms'
import { changedStretch, isInside } from './changed'
import type { Language } from '../languages/language'
import { languages } from '../languages/languages'
import { sayAll, sayNothingNew, sayTheSame, type Saying, type Sayings } from './sayings'
import type { Unit } from '../languages/unit'

/** One line of the instructions. The same object as long as it says the same of the same rows. */
export interface Line {
  readonly text: string
  /** "Rnds 1-4:", the head of the line within `text`; empty for a line that repeats rows. */
  readonly label: string
  /** Chart rows it stands for, 0-based, both ends included. */
  readonly rows: Run
  readonly kind: 'row' | 'repeat'
}

export interface Words {
  readonly terms: Terms
  readonly lines: readonly Line[]
  /** The first pass of each line. */
  readonly starts: readonly number[]
  /** What each pass says: kept, so that the next version is written from it. */
  readonly sayings: Sayings
}

/**
 * The instructions of a worked pattern: a line for each row or run of equal rows, and one for each
 * band. Rows that say the same as an earlier one name it, where that is shorter; a row that works
 * the strands of turns as one is written out. With the words of
 * an earlier version only the lines that the change touches are written; the result is the same.
 * `waiting`: in a piece, the loops on pegs that are not in work, which are not counted with a row.
 */
export function writeWords(
  work: Work,
  terms: Terms,
  previous?: Words,
  waiting: number | null = null,
): Words {
  const before = previous?.terms === terms ? previous : undefined
  const sayings = sayAll(work, terms, before?.sayings, waiting)
  if (!before) {
    const writer = new Writer(sayings).write(0, sayings.all.length)
    return { terms, lines: writer.lines, starts: writer.starts, sayings }
  }
  const stretch = changedStretch(sayings, before)
  if (!stretch) return { ...before, sayings }
  const { from, to, firstLine, nextLine } = stretch
  const writer = new Writer(sayings, before, firstLine).write(from, to)
  const lines = { from: firstLine, to: firstLine + writer.lines.length, oldTo: nextLine }
  return {
    terms,
    lines: withChange(before.lines, lines, writer.lines),
    starts: withChange(before.starts, lines, writer.starts),
    sayings,
  }
}

class Writer {
  readonly lines: Line[] = []
  readonly starts: number[] = []
  readonly #sayings: Sayings
  readonly #before: Words | null
  /** The line of `before` that the next one is compared with. */
  #oldLine: number
  readonly #language: Language
  /** The first pass of the line that is open; -1 for none. */
  #open = -1
  /** Stitches that stand behind the first of the open rows; null: as before, not said. */
  #count: number | null = null

  constructor(sayings: Sayings, before: Words | null = null, oldLine = 0) {
    this.#sayings = sayings
    this.#before = before
    this.#oldLine = oldLine
    this.#language = languages[sayings.terms]
  }

  /** Write passes from..to; both ends stand between rows, outside bands. */
  write(from: number, to: number): this {
    const { passes, chart } = this.#sayings.work
    const bands = chart.bands.filter(isInside(chart.rows.length))
    for (let pass = from; pass < to;) {
      const row = passes[pass]?.row
      const band = bands.find((one) => one.from === row)
      if (band) pass = this.#addBand(band, pass)
      else this.#add(pass++)
    }
    this.#close(to)
    return this
  }

  /** Add the working of one row; rows that say the same as the one before join its line. */
  #add(pass: number): void {
    const { stitches, lifts } = this.#saying(pass)
    const changed = pass === 0 || stitches !== this.#saying(pass - 1).stitches
    const joins = this.#open >= 0 && !changed && !lifts
    if (joins && sayTheSame(this.#saying(pass), this.#saying(this.#open))) return
    this.#close(pass)
    this.#open = pass
    this.#count = changed && !this.#leavesLoops(pass) ? stitches : null
  }

  /**
   * In a piece: does a row leave some of the loops in work where they are, and none more or fewer? A count
   * of all would not be that of the pegs that it names.
   */
  #leavesLoops(pass: number): boolean {
    const { work, waiting } = this.#sayings
    const run = work.run.rows[pass]
    if (waiting === null || !run) return false
    const { row, before, after } = run
    const all = pegsInWork(before)
    return loopsInRun(before, row) < all - waiting && all === pegsInWork(after)
  }

  /**
   * Add a band: its rows once, then "Rep Rnds 1-4 twice more." Where a later working goes the other
   * way and so reads differently, all workings are written out. Returns the pass after the band.
   */
  #addBand(band: Band, start: number): number {
    const height = band.to - band.from + 1
    const end = this.#endOf(band, start)
    const alike = this.#repeatsAlike(start, height, end)
    const writtenOut = alike ? start + height : end
    this.#close(start)
    for (let pass = start; pass < writtenOut; pass++) this.#add(pass)
    this.#close(writtenOut)
    if (alike) this.#addRepeat(band, start, height, end)
    return end
  }

  /** The pass after the band that begins here; of a very long chart not all times are worked. */
  #endOf({ from, to, times }: Band, start: number): number {
    const { passes } = this.#sayings.work
    const most = start + (to - from + 1) * times
    let end = start
    for (; end < most; end++) {
      const row = passes[end]?.row ?? -1
      if (row < from || row > to) break
    }
    return end
  }

  /** End the open line before pass `end`. */
  #close(end: number): void {
    if (this.#open >= 0) this.#put(this.#open, this.#line(this.#open, end - 1))
    this.#open = -1
  }

  /** The line that stood here before stays, if it says the same of the same rows. */
  #put(start: number, line: Line): void {
    const starts = this.#before?.starts ?? []
    while ((starts[this.#oldLine] ?? start) < start) this.#oldLine++
    const old = starts[this.#oldLine] === start ? this.#before?.lines[this.#oldLine] : undefined
    const same =
      old?.text === line.text && old.rows.from === line.rows.from && old.rows.to === line.rows.to
    this.lines.push(same ? old : line)
    this.starts.push(start)
  }

  #saying(pass: number): Saying {
    return this.#sayings.all[pass] as Saying
  }

  #number(pass: number): number {
    return this.#sayings.work.passes[pass]?.number ?? 0
  }

  #row(pass: number): number {
    return this.#sayings.work.passes[pass]?.row ?? 0
  }

  #line(first: number, last: number): Line {
    const { label, as, stitches } = this.#language
    const { said, kind, lifts } = this.#saying(first)
    const { sentence } = said
    const head = `${label(kind, this.#number(first), this.#number(last))}:`
    const earlier = this.#sayings.said.indexOf(said)
    const number = this.#number(earlier)
    const reference =
      earlier < first && !lifts ? as(label(this.#saying(earlier).kind, number, number)) : null
    const words = reference && reference.length < sentence.length ? reference : sentence
    const text = `${head} ${words}${this.#count === null ? '' : ` ${stitches(this.#count)}`}`
    return { text, label: head, rows: { from: this.#row(first), to: this.#row(last) }, kind: 'row' }
  }

  #repeatsAlike(start: number, height: number, end: number): boolean {
    for (let pass = start + height; pass < end; pass++)
      if (!sayNothingNew(this.#saying(pass), this.#saying(pass - height))) return false
    return true
  }

  #addRepeat(band: Band, start: number, height: number, end: number): void {
    let kind = this.#saying(start).kind
    for (let pass = start; pass < start + height; pass++)
      if (this.#saying(pass).kind === 'row') kind = 'row'
    const after = this.#saying(end - 1).stitches
    const count = after === this.#saying(start + height - 1).stitches ? null : after
    this.#put(start + height, {
      text: this.#repeat(kind, start, height, band.times, count),
      label: '',
      rows: { from: band.from, to: band.to },
      kind: 'repeat',
    })
  }

  /**
   * "Rep Rnds 1-4 twice more." Many times are easier to follow by the number on the row counter:
   * "Rep Rnd 1 until 20 rnds are worked."
   */
  #repeat(kind: Unit, start: number, height: number, times: number, count: number | null): string {
    const { label, repeatRows, repeatUntil, repeatTo, inAll, stitches } = this.#language
    const all = times * height
    const more = times - 1
    const number = this.#number(start)
    const rows = label(kind, number, number + height - 1)
    if (more < (height === 1 ? manyOfOne : manyOfSeveral))
      return `${repeatRows(rows, more)} ${inAll(kind, all, count)}`
    const last = number + all - 1
    const until =
      number === 1 ? repeatUntil(rows, kind, all) : repeatTo(rows, label(kind, last, last))
    return count === null ? until : `${until} ${stitches(count)}`
  }
}

/** So many times more are told by the row counter: of one row, and of several rows. */
const manyOfOne = 3
const manyOfSeveral = 11
