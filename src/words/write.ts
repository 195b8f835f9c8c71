import { pegsInWork } from '../loom/state'
import type { Band, Run } from '../pattern/pattern'
import type { PatternRow } from '../pattern/row'
import type { PatternRun, Work } from '../pattern/work'
import type { Terms } from '../stitches/stitch'
import type { Language, LabelKind } from './language'
import { languages } from './languages'
import { labelKind, writeRow } from './sentence'

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
}

/** What a run says, whatever stands around it. */
interface Saying {
  readonly sentence: string
  readonly kind: LabelKind
  /** Pegs in work after it. */
  readonly stitches: number
}

/** One working of a row that gets words. */
interface Entry {
  readonly run: PatternRun
  readonly saying: Saying
  readonly row: number
  /** As a knitter counts, from 1. */
  readonly number: number
}

/** What a line of rows was made of. */
interface Kept {
  readonly line: Line
  readonly saying: Saying
  readonly number: number
  readonly lastNumber: number
  readonly row: number
  readonly lastRow: number
  readonly count: number | null
  /** Label of the earlier row that says the same; empty for none. */
  readonly earlierNumber: number
  readonly earlierKind: LabelKind | null
}

interface KeptRepeat {
  readonly line: Line
  readonly key: string
}

interface Memory {
  readonly sayings: WeakMap<PatternRun, Saying>
  readonly lines: WeakMap<PatternRun, Kept>
  /** The last line that began with a row at a number, for when only its run is a new one. */
  readonly lastLines: WeakMap<PatternRow, Map<number, Line>>
  readonly repeats: WeakMap<Band, KeptRepeat>
}

const remember = (): Memory => ({
  sayings: new WeakMap(),
  lines: new WeakMap(),
  lastLines: new WeakMap(),
  repeats: new WeakMap(),
})

const memories: Readonly<Record<Terms, Memory>> = { us: remember(), uk: remember() }

/**
 * The instructions of a worked pattern: a line for each row or run of equal rows, and one for each
 * band. Rows that say the same as an earlier one name it, where that is shorter.
 */
export function writeWords(work: Work, terms: Terms): Words {
  const writer = new Writer(work, terms)
  const { rows } = work.pattern.chart
  const bands = new Map(work.pattern.chart.bands.map((band) => [band.from, band]))
  let pass = 0
  for (let row = 0; row < rows.length;) {
    const band = bands.get(row)
    if (!band || band.to >= rows.length) {
      writer.add(pass++)
      row++
      continue
    }
    pass = writer.addBand(band, pass)
    row = band.to + 1
  }
  return { terms, lines: writer.finish() }
}

class Writer {
  readonly #work: Work
  readonly #language: Language
  readonly #terms: Terms
  readonly #memory: Memory
  readonly #lines: Line[] = []
  /** The first row that says this. */
  readonly #said = new Map<string, Entry>()
  #first: Entry | null = null
  #last: Entry | null = null
  /** Stitches that stand behind the first of the open rows; null: as before, not said. */
  #count: number | null = null
  #stitches = -1

  constructor(work: Work, terms: Terms) {
    this.#work = work
    this.#terms = terms
    this.#language = languages[terms]
    this.#memory = memories[terms]
  }

  /** Add the working of one row; rows that say the same as the one before join its line. */
  add(pass: number): void {
    const entry = this.#entry(pass)
    const { saying } = entry
    const changed = saying.stitches !== this.#stitches
    const first = this.#first
    if (!first || changed || !sameSaying(saying, first.saying)) {
      this.flush()
      this.#first = entry
      this.#count = changed ? saying.stitches : null
    }
    this.#last = entry
    this.#stitches = saying.stitches
  }

  /**
   * Add a band: its rows once, then "Rep Rnds 1-4 twice more." Where a later working goes the other
   * way and so reads differently, all workings are written out. Returns the pass after the band.
   */
  addBand(band: Band, start: number): number {
    const height = band.to - band.from + 1
    const end = start + height * band.times
    this.flush()
    if (!this.#repeatsAlike(start, height, end)) {
      for (let pass = start; pass < end; pass++) this.add(pass)
      this.flush()
      return end
    }
    for (let pass = start; pass < start + height; pass++) this.add(pass)
    this.flush()
    this.#addRepeat(band, start, height, end)
    return end
  }

  flush(): void {
    const first = this.#first
    const last = this.#last
    if (first && last) this.#lines.push(this.#line(first, last))
    this.#first = this.#last = null
  }

  finish(): readonly Line[] {
    this.flush()
    return this.#lines
  }

  #entry(pass: number): Entry {
    const run = this.#work.run.rows[pass] as PatternRun
    const { row, number } = this.#work.passes[pass] as { row: number; number: number }
    return { run, saying: this.#say(run), row, number }
  }

  #say(run: PatternRun): Saying {
    let saying = this.#memory.sayings.get(run)
    if (!saying) {
      const { shape } = this.#work.run.habits
      saying = {
        sentence: writeRow(run, shape, this.#terms),
        kind: labelKind(run, shape),
        stitches: pegsInWork(run.after),
      }
      this.#memory.sayings.set(run, saying)
    }
    return saying
  }

  #line(first: Entry, last: Entry): Line {
    const { saying, number, row, run } = first
    const earlier = this.#said.get(saying.sentence) ?? null
    if (!earlier) this.#said.set(saying.sentence, first)
    const earlierNumber = earlier?.number ?? 0
    const earlierKind = earlier?.saying.kind ?? null
    const count = this.#count
    const kept = this.#memory.lines.get(run)
    if (
      kept?.saying === saying &&
      kept.number === number &&
      kept.lastNumber === last.number &&
      kept.row === row &&
      kept.lastRow === last.row &&
      kept.count === count &&
      kept.earlierNumber === earlierNumber &&
      kept.earlierKind === earlierKind
    )
      return kept.line
    const line = this.#sameAsLast(first, this.#write(first, last, earlier))
    this.#memory.lines.set(run, {
      line,
      saying,
      number,
      lastNumber: last.number,
      row,
      lastRow: last.row,
      count,
      earlierNumber,
      earlierKind,
    })
    return line
  }

  /** The line that stood here before, if it says the same of the same rows. */
  #sameAsLast({ run, number }: Entry, line: Line): Line {
    let lines = this.#memory.lastLines.get(run.row)
    if (!lines) this.#memory.lastLines.set(run.row, (lines = new Map<number, Line>()))
    const last = lines.get(number)
    if (
      last?.text === line.text &&
      last.rows.from === line.rows.from &&
      last.rows.to === line.rows.to
    )
      return last
    lines.set(number, line)
    return line
  }

  #write({ saying, number, row }: Entry, last: Entry, earlier: Entry | null): Line {
    const { label, as, stitches } = this.#language
    const { sentence, kind } = saying
    const head = `${label(kind, number, last.number)}:`
    const reference = earlier
      ? as(label(earlier.saying.kind, earlier.number, earlier.number))
      : sentence
    const said = reference.length < sentence.length ? reference : sentence
    const text = `${head} ${said}${this.#count === null ? '' : ` ${stitches(this.#count)}`}`
    return { text, label: head, rows: { from: row, to: last.row }, kind: 'row' }
  }

  #repeatsAlike(start: number, height: number, end: number): boolean {
    for (let pass = start + height; pass < end; pass++)
      if (!sameSaying(this.#entry(pass).saying, this.#entry(pass - height).saying)) return false
    return true
  }

  #addRepeat(band: Band, start: number, height: number, end: number): void {
    const rounds = [...Array(height).keys()].every(
      (offset) => this.#entry(start + offset).saying.kind === 'round',
    )
    const kind = rounds ? 'round' : 'row'
    const { number } = this.#entry(start)
    const after = this.#entry(end - 1).saying.stitches
    const count = after === this.#stitches ? null : after
    this.#stitches = after
    const key = `${kind}/${number}/${count ?? ''}`
    let kept = this.#memory.repeats.get(band)
    if (kept?.key !== key) {
      const { label, repeatRows, inAll } = this.#language
      const rows = label(kind, number, number + height - 1)
      const text = `${repeatRows(rows, band.times - 1)} ${inAll(kind, height * band.times, count)}`
      const line: Line = { text, label: '', rows: { from: band.from, to: band.to }, kind: 'repeat' }
      kept = { line, key }
      this.#memory.repeats.set(band, kept)
    }
    this.#lines.push(kept.line)
  }
}

const sameSaying = (a: Saying, b: Saying): boolean =>
  a === b || (a.kind === b.kind && a.sentence === b.sentence)
