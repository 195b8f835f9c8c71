import { setWords } from '../../pattern/edits/words'
import type { Spot } from '../../pattern/history'
import type { Pattern } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import type { Agreement, Comparison } from '../../words/compare/compare'
import { isDifference } from '../../words/compare/comparison'
import { readSettingsOf, type ReadSettings, type Reading } from '../../words/read/reading'
import type { TextRange } from '../../words/read/reading'
import type { Words } from '../../words/write'
import { attempt, type Attempt } from '../../words/attempt'
import { faultFinding, nothingCompared, nothingRead } from './fault'
import { reader, readerMissing, type Reader } from './reader.svelte'
import { needlesHint } from '../../words/wrongSide'
import type { Finding } from '../../pattern/finding'
import { findingsAt } from './findings'
import { inOrder, litAt, Rows, spotAt, type Lit } from '../../words/places'

/** What the words need of the bench. */
export interface Ground {
  readonly pattern: Pattern
  readonly work: Work
  readonly words: Words
  readonly spot: Spot
  readonly apply: (
    label: string,
    edit: (pattern: Pattern) => Pattern,
    gesture: string | null,
  ) => boolean
  readonly newGesture: () => string
  readonly goTo: (spot: Spot) => void
}

/** How the words stand to the chart. */
export type Standing =
  | { readonly kind: 'written' | 'agree' }
  /** What reads them is on its way. */
  | { readonly kind: 'not read yet' }
  /** The program failed at them: nothing is known. */
  | { readonly kind: 'unknown' }
  /** `rounds`: how many differ; 0: only what is said of the whole piece. */
  | { readonly kind: 'differ'; readonly rounds: number; readonly here: boolean }

const none: readonly Finding[] = []

/**
 * The words on the bench: the designer's own, or those written from the chart. Reading them and
 * comparing them is done once for each change, from what was read before, and only when looked at.
 */
export class WordsState {
  /** Where the caret is in the text. */
  caret = $state.raw<TextRange>({ from: 0, to: 0 })
  /** Take the keys back to the text: given by its editor. */
  toText: () => void = () => undefined
  /** A stretch of the text that is to be shown; a new object each time. */
  shown = $state.raw<TextRange | null>(null)

  readonly isOwn: boolean = $derived.by(() => this.#ground.work.words !== null)
  readonly text: string = $derived.by(
    () => this.#ground.work.words ?? this.#ground.words.lines.map(({ text }) => text).join('\n'),
  )
  /** Long words are read when the keys rest: until then what was read last stands for them. */
  #resting = $state.raw<{ readonly typed: string; readonly read: string } | null>(null)
  readonly #toRead: string = $derived.by(() => {
    const resting = this.#resting
    return resting?.typed === this.text ? resting.read : this.text
  })
  readonly #read: Attempt<Reading> = $derived.by(() => {
    const [text, settings, last] = [this.#toRead, this.#settings, this.#reading]
    const parts = reader()
    if (!parts) return { result: nothingRead(text, settings), fault: readerMissing() }
    const { read } = parts
    const made = attempt([() => read(text, settings, last), () => read(text, settings)], () =>
      nothingRead(text, settings),
    )
    this.#reading = made.fault === null ? made.result : undefined
    return made
  })
  readonly reading: Reading = $derived(this.#read.result)
  /** Own words held against the chart; null when they are written from it. */
  readonly #compared: Attempt<Comparison | null> = $derived.by(() => {
    if (!this.isOwn) return { result: null, fault: null }
    const [reading, last] = [this.reading, this.#comparison ?? undefined]
    const { work } = this.#ground
    const parts = reader()
    if (!parts) return { result: null, fault: null }
    const { compare } = parts
    if (this.#read.fault !== null) return { result: nothingCompared(reading, work), fault: null }
    const made = attempt([() => compare(reading, work, last), () => compare(reading, work)], () =>
      nothingCompared(reading, work),
    )
    this.#comparison = made.fault === null ? made.result : undefined
    return made
  })
  readonly comparison: Comparison | null = $derived(this.#compared.result)
  readonly #listed: Attempt<readonly Finding[]> = $derived.by(() => {
    const { comparison } = this
    const parts = reader()
    return attempt([() => (comparison && parts ? allFound(comparison, parts) : none)], () => none)
  })
  /** A mistake of the program at these words; null: none. */
  readonly fault: string | null = $derived(
    this.#read.fault ?? this.#compared.fault ?? this.#listed.fault,
  )
  readonly #found: readonly Finding[] = $derived.by(() => {
    const { fault } = this
    const found = this.#listed.result
    if (fault !== null) return [faultFinding(fault), ...found]
    return found.length > 0 ? found : none
  })
  readonly findings: readonly Finding[] = $derived.by(() => {
    const { aside } = this
    return aside.length > 0 ? this.#found.filter((one) => !aside.includes(one)) : this.#found
  })
  /** Findings that were set aside, in the same order. */
  readonly aside: readonly Finding[] = $derived.by(() => {
    const { aside: ids } = this.#ground.work
    const aside = ids.length > 0 ? this.#found.filter(({ id }) => ids.includes(id)) : none
    return aside.length > 0 ? aside : none
  })
  /** How many things words and chart say differently, set aside or not. */
  readonly differences: number = $derived.by(() =>
    this.comparison ? (reader()?.toldOf(this.comparison).differences ?? 0) : 0,
  )
  /** What is wrong in the words themselves, and not set aside, whether or not they tell the chart. */
  readonly errors: readonly Finding[] = $derived.by(() =>
    this.findings.filter(({ rule, severity }) => severity === 'error' && !isDifference(rule)),
  )
  /** Do the words state sizes, or is another than the first one read? */
  readonly hasSizes: boolean = $derived.by(
    () => this.#settings.size > 0 || Boolean(reader()?.statesSizes(this.#toRead)),
  )
  readonly atCaret: readonly Finding[] = $derived.by(() =>
    this.findings.length > 0 ? findingsAt(this.findings, this.text, this.caret) : none,
  )
  /** Of so many findings the repairs can be tried out at every key: each is read and compared. */
  readonly repairsAtOnce: number = $derived.by(() => {
    const { rows, settings } = this.reading
    return Math.floor(stitchesAtOnce / Math.max(1, rows.length * settings.pegs))
  })
  readonly standing: Standing = $derived.by(() => {
    const { comparison, fault } = this
    if (fault !== null) return { kind: 'unknown' }
    if (!comparison) return { kind: this.isOwn ? 'not read yet' : 'written' }
    const { agreement, differences, pairs } = comparison
    // Rounds of a line that could not be read are counted only where nothing else is known.
    const known = differences.length > 0 ? ['same', 'unread'] : ['same']
    const isOut = (one: Agreement): boolean => !known.includes(one)
    const rounds = agreement.filter(isOut).length + roundsBeside(this.reading, pairs)
    if (rounds === 0 && differences.length === 0) return { kind: 'agree' }
    return { kind: 'differ', rounds, here: isOut(agreement[this.#ground.spot.row] ?? 'same') }
  })
  /** What of the text is lit for the current place. */
  readonly lit: Lit | null = $derived.by(() => (this.isOwn ? this.litClose : this.#litLine))
  /** The same with the words of the stitch, for which the text has to be read. */
  readonly litClose: Lit | null = $derived.by(() => {
    const lit = litAt(this.reading, this.#rows, this.#ground.work, this.#ground.spot)
    return lit ?? (this.isOwn ? null : this.#litLine)
  })

  /** The same object as long as the words are to be read the same way. */
  readonly #settings: ReadSettings = $derived.by(() => {
    const settings = readSettingsOf(this.#ground.pattern)
    const last = this.#lastSettings
    const keys = Object.keys(settings) as (keyof ReadSettings)[]
    return last && keys.every((key) => last[key] === settings[key])
      ? last
      : (this.#lastSettings = settings)
  })
  readonly #rows: Rows = $derived.by(() => {
    const { work } = this.#ground
    return new Rows(work, this.comparison?.pairs ?? inOrder(this.reading, work))
  })
  /** Words written from the chart know their rows without being read. */
  readonly #litLine: Lit | null = $derived.by(() => {
    const { row } = this.#ground.spot
    let from = 0
    for (const { text, rows, kind } of this.#ground.words.lines) {
      const to = from + text.length
      if (kind === 'row' && rows.from <= row && row <= rows.to)
        return { line: { from, to }, stitch: null }
      from = to + 1
    }
    return null
  })

  readonly #ground: Ground
  #reading: Reading | undefined
  #comparison: Comparison | null | undefined
  #lastSettings: ReadSettings | undefined
  #clock: ReturnType<typeof setTimeout> | undefined
  #burst: { gesture: string; until: number } | null = null

  constructor(ground: Ground) {
    this.#ground = ground
  }

  /** The words as they are now become the designer's own. */
  keep(): void {
    const { text } = this
    this.#ground.apply('Make the words mine', (pattern) => setWords(pattern, text), null)
  }

  writeAgain(): void {
    this.#ground.apply('Write the words from the chart', (p) => setWords(p, null), null)
  }

  /**
   * Typing makes the words the designer's own. What is typed in one go, without moving the caret
   * and without a pause, is taken back as one.
   * @param now milliseconds on any clock
   */
  type(text: string, now: number): void {
    if (text === this.text) return
    const burst = this.#burst
    const gesture = burst && now < burst.until ? burst.gesture : this.#ground.newGesture()
    this.#burst = { gesture, until: now + longestPause }
    if (text.length > mostReadAtOnce) this.#readLater(text)
    this.#ground.apply('Typing in the words', (pattern) => setWords(pattern, text), gesture)
  }

  #readLater(typed: string): void {
    this.#resting = { typed, read: this.#toRead }
    clearTimeout(this.#clock)
    this.#clock = setTimeout(() => this.settle(), keysRest)
  }

  /** Read what was typed last, if that waits for the keys to rest. */
  settle(): void {
    clearTimeout(this.#clock)
    this.#resting = null
  }

  /** What is typed next is taken back by itself. */
  endTyping(): void {
    this.#burst = null
  }

  /** The caret was moved: the place of the bench goes where the words tell of. */
  moveCaret(caret: TextRange, follow: boolean): void {
    this.caret = caret
    if (!follow || this.#toRead !== this.text) return
    const { work, spot } = this.#ground
    const to = spotAt(this.reading, this.#rows, work, caret.from, spot)
    if (to && (to.row !== spot.row || to.peg !== spot.peg)) this.#ground.goTo(to)
  }

  /** Have a stretch of the text shown, the caret before it. */
  showAt({ from, to }: TextRange): void {
    this.shown = { from, to }
  }

  mend(finding: Finding, label: string): void {
    const waits = this.#toRead !== this.text
    this.settle()
    // A repair is made for the words as they were read.
    const now = waits ? this.findings.find(({ id }) => id === finding.id) : finding
    const fix = now?.fixes.find((one) => one.label === label)
    if (!fix) return
    this.endTyping()
    this.#ground.apply(fix.label, fix.edit, null)
  }
}

/** Rounds of the words that the chart does not have: one that is repeated is one, as in a chart. */
function roundsBeside({ rows }: Reading, pairs: Comparison['pairs']): number {
  const alone = pairs.flatMap(({ read, pass }) => (pass === null && read !== null ? read : []))
  const once = alone.filter((read) => rows[read]?.time === 0)
  return once.length > 0 ? once.length : alone.length
}

const allFound = (comparison: Comparison, { byPlaceInText, toldOf }: Reader): Finding[] =>
  byPlaceInText([...toldOf(comparison).findings, ...needlesHint(comparison.reading)])

/** Characters that are read and compared at every key; of more, when the keys rest. */
const mostReadAtOnce = 60_000
/** Milliseconds without a key. */
const keysRest = 300

/** In all that is tried out at one key. */
const stitchesAtOnce = 500_000

/** A second without a key ends what is taken back as one. */
const longestPause = 1000
