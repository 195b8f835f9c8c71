import { pegsInWork } from '../../../loom/state'
import type { PatternRun, Work } from '../../../pattern/work'
import type { Language } from '../../../languages/language'
import { languages } from '../../../languages/languages'
import type { RowPair } from '../comparison'
import { rewrite, type Changes, type Plan } from '../mend/rewrite'
import type { Knits } from '../within/row'
import { someListed } from '../../read/rows/wordsOfRows'
import type { ReadRow, Reading } from '../../read/reading'
import { writeRow } from '../../sentence'
import { listed } from '../../../languages/english/forms'
import type { Unit } from '../../../languages/unit'
import { unitOfRow } from '../../../pattern/unit'

/** Words and chart side by side, row by row, with the names that both go by. */
export class Both {
  readonly language: Language
  /** Indexes into `Work.passes` by those into `Reading.rows`. */
  readonly passOf: ReadonlyMap<number, number>
  /** Passes that the words leave out. */
  readonly missing: ReadonlySet<number>

  constructor(
    readonly reading: Reading,
    readonly work: Work,
    readonly pairs: readonly RowPair[],
    readonly knits: Knits,
  ) {
    this.language = languages[reading.settings.terms]
    const passOf = new Map<number, number>()
    const missing = new Set<number>()
    for (const { read, pass } of pairs)
      if (pass === null) continue
      else if (read === null) missing.add(pass)
      else passOf.set(read, pass)
    this.passOf = passOf
    this.missing = missing
  }

  /** The changes of the words that a plan needs; null: it cannot be done. */
  rewrite(plan: Partial<Plan>): Changes | null {
    const usual = this.work.run.habits.shape === 'ring' ? 'round' : 'row'
    const head = (row: ReadRow, index: number): string => {
      const pass = this.passOf.get(index)
      return `${this.head(row.label, pass === undefined ? usual : this.kind(pass))}:`
    }
    return rewrite(this.reading, {
      sentences: new Map(),
      gone: new Set(),
      added: new Map(),
      head,
      ...plan,
    })
  }

  read(index: number): ReadRow {
    return this.reading.rows[index] as ReadRow
  }

  run(pass: number): PatternRun {
    return this.work.run.rows[pass] as PatternRun
  }

  chartRow(pass: number): number {
    return this.work.passes[pass]?.row ?? 0
  }

  number(pass: number): number {
    return this.work.passes[pass]?.number ?? 0
  }

  kind(pass: number): Unit {
    return unitOfRow(this.run(pass), this.work.run.habits.shape)
  }

  /** What the chart has the words say. */
  sentence(pass: number): string {
    return writeRow(this.run(pass), this.work.run.habits.shape, this.reading.settings.terms)
  }

  count(pass: number): string {
    return this.language.stitches(pegsInWork(this.run(pass).after))
  }

  /** "Rnd 4", "Rnds 4-6", "Rnds 1, 5 and 9". */
  names(passes: readonly number[]): string {
    const numbers = passes.map((pass) => this.number(pass))
    const [first = 0] = numbers
    const last = numbers.at(-1) ?? first
    const kind = this.kind(passes[0] ?? 0)
    if (numbers.every((number, index) => number === first + index))
      return this.language.label(kind, first, last)
    return this.language.label(kind, 1, 2).replace('1-2', someListed(numbers.map(String)))
  }

  readNames(reads: readonly number[]): string {
    const labels = reads.map((index) => this.read(index).label)
    const kind = this.work.run.habits.shape === 'ring' ? 'round' : 'row'
    if (labels.length > 2)
      return this.language.label(kind, 1, 2).replace('1-2', `${labels[0]}-${labels.at(-1)}`)
    if (labels.length === 2) return this.language.label(kind, 1, 2).replace('1-2', listed(labels))
    return this.head(labels[0] ?? '', kind)
  }

  head(label: string, kind: Unit): string {
    return this.language.label(kind, 1, 1).replace('1', () => label)
  }

  /** Lines of their own for rows of the chart that the words leave out. */
  lines(from: number, to: number): string[] {
    const lines: string[] = []
    for (let pass = from; pass <= to;) {
      let last = pass
      const sentence = this.sentence(pass)
      while (
        last < to &&
        this.sentence(last + 1) === sentence &&
        this.kind(last + 1) === this.kind(pass)
      )
        last++
      lines.push(
        `${this.language.label(this.kind(pass), this.number(pass), this.number(last))}: ${sentence}`,
      )
      pass = last + 1
    }
    return lines
  }
}
