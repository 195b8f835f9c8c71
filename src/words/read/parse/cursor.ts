import { memo } from '../../../pattern/memo'
import type { Lexeme } from '../lines/lex'
import type { BodyTokens } from '../nodes'
import type { TextRange, TokenKind } from '../reading'

type Step = { readonly words: ReadonlySet<string>; readonly optional: boolean }
const phrases = new Map<string, readonly Step[]>()

/** "rep|repeat from the? *": words, each perhaps one of several, perhaps left out. */
function stepsOf(phrase: string): readonly Step[] {
  let steps = phrases.get(phrase)
  if (!steps) {
    steps = phrase.split(' ').map((part) => {
      const optional = part.length > 1 && part.endsWith('?')
      return { words: new Set((optional ? part.slice(0, -1) : part).split('|')), optional }
    })
    phrases.set(phrase, steps)
  }
  return steps
}

/** What stands in a phrase for a number. */
const number = '#'

const none: readonly never[] = []

/** A phrase, or several of which the first that stands in the text counts. */
export type Phrases = string | readonly string[]

/** Phrases of a list by what each of them can begin with. */
const indexOf = memo((list: readonly string[]): ReadonlyMap<string, readonly string[]> => {
  const found = new Map<string, string[]>()
  for (const phrase of list)
    for (const word of firstWords(phrase)) found.set(word, [...(found.get(word) ?? []), phrase])
  return found
})

function firstWords(phrase: string): string[] {
  const steps = stepsOf(phrase)
  const end = steps.findIndex(({ optional }) => !optional) + 1
  return steps.slice(0, end || steps.length).flatMap(({ words }) => [...words])
}

/** No single word is put together of more pieces. */
const longestCluster = 40

interface Bookmark {
  readonly at: number
  readonly known: number
}

/** All words that phrases of a list can begin with. */
export const startsIn = (list: readonly string[]): ReadonlySet<string> =>
  new Set(list.flatMap(firstWords))

/** Goes along the pieces of a text, and notes what each of them was read as. */
export class Cursor {
  at = 0
  /** What each piece was read as. */
  readonly #kinds: TokenKind[] = []
  known = 0
  /** The numbers of the last phrase. */
  numbers: readonly Lexeme[] = []

  constructor(readonly pieces: readonly Lexeme[]) {}

  get done(): boolean {
    return this.at >= this.pieces.length
  }

  piece(ahead = 0): Lexeme | undefined {
    return this.pieces[this.at + ahead]
  }

  text(ahead = 0): string {
    return this.pieces[this.at + ahead]?.text ?? ''
  }

  isNumber(ahead = 0): boolean {
    const piece = this.pieces[this.at + ahead]
    return piece !== undefined && piece.value >= 0
  }

  /** The first number of the last phrase. */
  get number(): number {
    return this.numbers[0]?.value ?? 0
  }

  /** How many pieces a phrase takes from here; 0 if it does not stand here. `#`: a number. */
  measure(phrases: Phrases): number {
    if (typeof phrases === 'string') return this.#measure(phrases)
    for (const phrase of this.#perhaps(phrases)) {
      const count = this.#measure(phrase)
      if (count > 0) return count
    }
    return 0
  }

  #measure(phrase: string): number {
    let ahead = 0
    let numbers: Lexeme[] | null = null
    for (const { words, optional } of stepsOf(phrase)) {
      const piece = this.piece(ahead)
      const counts = piece !== undefined && piece.value >= 0 && words.has(number)
      if (piece !== undefined && (counts || words.has(piece.text))) {
        if (counts) (numbers ??= []).push(piece)
        ahead++
      } else if (!optional) return 0
    }
    this.numbers = numbers ?? none
    return ahead
  }

  /** Those of a list that may stand here, in their order. */
  #perhaps(list: readonly string[]): readonly string[] {
    const piece = this.piece()
    if (!piece) return none
    const index = indexOf(list)
    const byWord = index.get(piece.text) ?? none
    if (piece.value < 0) return byWord
    // A number word can begin a phrase as a word and as a number: the order of the list decides.
    return byWord.length > 0 ? list : (index.get(number) ?? none)
  }

  looksAt(phrases: Phrases): boolean {
    return this.measure(phrases) > 0
  }

  /** Take a phrase if it stands here; its numbers may be of another kind than its words. */
  eat(phrases: Phrases, kind: TokenKind, numberKind = kind): boolean {
    const start = this.at
    const count = this.measure(phrases)
    if (count > 0) this.take(count, kind)
    if (numberKind !== kind)
      for (let at = start; at < this.at; at++)
        if (this.numbers.includes(this.pieces[at] as Lexeme)) this.#kinds[at] = numberKind
    return count > 0
  }

  /** Take so many pieces, all read as one kind; numbers in words keep it too. */
  take(count: number, kind: TokenKind): void {
    for (let i = 0; i < count; i++) {
      if (this.done) return
      this.#kinds[this.at++] = kind
    }
    if (kind !== 'punctuation' && kind !== 'unknown') this.known += count
  }

  /** From a piece up to the one before the cursor. */
  rangeFrom(start: number): TextRange {
    const first = this.pieces[start]
    const last = this.pieces[Math.max(start, this.at - 1)]
    return { from: first?.from ?? 0, to: last?.to ?? first?.to ?? 0 }
  }

  /** Where words and numbers stand together without a space: "k2tgo". Its end. */
  clusterEnd(start = this.at): number {
    let end = start + 1
    while (end < this.pieces.length && end < start + longestCluster) {
      const piece = this.pieces[end] as Lexeme
      if (!piece.glued || piece.kind === 'sign') break
      end++
    }
    return end
  }

  /** A place to come back to when a try fails. */
  mark(): Bookmark {
    return { at: this.at, known: this.known }
  }

  back({ at, known }: Bookmark): void {
    this.at = at
    this.known = known
  }

  /** All pieces up to the cursor, as they were read. */
  tokens(): BodyTokens {
    const bounds = new Int32Array(2 * this.at)
    for (let i = 0; i < this.at; i++) {
      const piece = this.pieces[i] as Lexeme
      bounds[2 * i] = piece.from
      bounds[2 * i + 1] = piece.to
    }
    return { kinds: this.#kinds.slice(0, this.at), bounds }
  }
}
