import type { Stitch } from '../../../stitches/stitch'
import { isCounted } from '../../tokens'
import { lex } from '../../read/lines/lex'
import { Memory } from '../../read/memory'
import type { Reading, TextRange } from '../../read/reading'
import { letterOf } from '../match/meaning'
import type { Knits } from '../within/row'
import { termOf } from '../../../languages/languages'

/** "C4L = ...", "k: knit", "tw2R means ...", at the start of a line. */
const explained = /^[ \t]*([^=:\s][^=:\n]{0,19}?)[ \t]{0,9}(?:=|:|\bmeans\b|\s[-–—]\s)/gm

/** What the words themselves call stitches: as they explain them, or as they spell them elsewhere. */
export class Names {
  readonly #reading: Reading
  readonly #knits: Knits
  /** By letter, so that a knit goes by one name whichever way it is meant. */
  readonly #single = new Map<string, string>()
  /** What stands before the number: "k" of "k4". */
  readonly #counted = new Map<string, string>()

  constructor(reading: Reading, knits: Knits) {
    this.#reading = reading
    this.#knits = knits
    this.#fromDefinitions()
    this.#fromRows()
  }

  #fromDefinitions(): void {
    const definitions = Memory.of.get(this.#reading)?.definitions
    const said = (definitions?.ranges ?? []).map(({ from, to }) =>
      this.#reading.text.slice(from, to),
    )
    for (const [, name = ''] of said.join('\n').matchAll(explained)) {
      const pieces = lex(name, 0)
      const found = definitions?.spellings.find(pieces, 0)
      if (found?.end !== pieces.length || found.meaning.is !== 'stitch') continue
      this.#add(found.meaning.stitch, name)
    }
  }

  #fromRows(): void {
    const seen = new Set<number>()
    for (const { stitches } of this.#reading.rows) {
      let last: TextRange | null = null
      for (const { stitch, range } of stitches) {
        if (range === last || seen.has(range.from)) continue
        last = range
        seen.add(range.from)
        this.#add(stitch, this.#reading.text.slice(range.from, range.to))
      }
    }
  }

  #add(stitch: Stitch, said: string): void {
    if (!/^[\p{L}\d/]+(?: [\p{L}\d/]+)?$/u.test(said)) return
    const letter = letterOf(stitch, this.#knits.words)
    const { terms } = this.#reading.settings
    if (!isCounted(stitch, terms)) {
      if (!this.#single.has(letter)) this.#single.set(letter, said)
      return
    }
    const counted = /^(\p{L}+ ?)\d+$/u.exec(said)?.[1] ?? (/^\p{L}{1,3}$/u.test(said) ? said : null)
    if (counted === null) return
    // "K2" may only begin a sentence: where it is written small as well, it is small.
    const known = this.#counted.get(letter)
    if (known === undefined || (/^\p{Lu}/u.test(known) && /^\p{Ll}/u.test(counted)))
      this.#counted.set(letter, counted)
  }

  /** "k4", "C4L", "(C4L) 3 times". */
  write(stitch: Stitch, count: number): string {
    const { terms } = this.#reading.settings
    const letter = letterOf(stitch, this.#knits.chart)
    if (isCounted(stitch, terms))
      return `${this.#counted.get(letter) ?? termOf(stitch, terms).abbr}${count}`
    const name = this.#single.get(letter) ?? termOf(stitch, terms).abbr
    return Array.from({ length: count }, () => name).join(', ')
  }

  /** A sentence of our own with their names in place of ours. */
  inSentence(sentence: string, stitches: Iterable<Stitch>): string {
    const { terms } = this.#reading.settings
    let said = sentence
    for (const stitch of stitches) {
      const letter = letterOf(stitch, this.#knits.chart)
      const { abbr } = termOf(stitch, terms)
      const counted = isCounted(stitch, terms)
      const name = counted ? this.#counted.get(letter) : this.#single.get(letter)
      if (name === undefined || name === abbr) continue
      const plain = abbr.replaceAll(/[^\w\s]/g, (sign) => `\\${sign}`)
      const pattern = new RegExp(
        `(?<![\\w/])${plain}${counted ? String.raw`(?=\d)` : String.raw`(?![\w/])`}`,
        'g',
      )
      said = said.replaceAll(pattern, () => name)
    }
    return said
  }
}
