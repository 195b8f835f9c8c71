import type { Heading } from '../loom/direction'
import type { Language } from '../languages/language'
import { languages, termOf } from '../languages/languages'
import type { Terms } from '../languages/terms'
import type { PatternRow } from '../pattern/row'
import type { Stitch } from '../stitches/stitch'
import { shorten, type Shortened } from './shorten'
import { tokensOf, type Tokens } from './tokens'

/** A part of the text of a row: the words of stitches, or what stands between them. */
export interface Span {
  readonly text: string
  /** 'repeat': how often what stands before it is worked. */
  readonly kind: 'stitches' | 'repeat' | 'between'
}

/** In which order the spans of a row are worked. */
export type SpanOrder =
  /** `each`: so many stitches told one by one, as in "(k2tog) twice"; else told as one, as in "k2". */
  | { readonly span: number; readonly count: number; readonly each: boolean }
  | { readonly parts: readonly SpanOrder[]; readonly times: number }

/** The text of a row in spans, and how its stitches, in working order, go through them. */
export interface Spans {
  readonly spans: readonly Span[]
  readonly order: readonly SpanOrder[]
}

/**
 * The stitches of a row in their shortest words, in working order. `comesOut`: they end where the
 * row does. `all`: it covers all pegs.
 */
export function spanStitches(
  row: PatternRow,
  heading: Heading,
  comesOut: boolean,
  terms: Terms,
  all = true,
): Spans {
  const language = languages[terms]
  const tokens = tokensOf(row, heading, terms)
  const count = tokens.stitches.length
  const [only, second] = tokens.vocabulary
  const word = comesOut && all && only && !second ? wholeRowWord(only, language) : undefined
  if (word)
    return {
      spans: [{ text: word, kind: 'stitches' }],
      order: [{ span: 0, count, each: false }],
    }
  return new SpanWriter(tokens, language, terms).write(comesOut)
}

export const textOfSpans = ({ spans }: Spans): string => spans.map(({ text }) => text).join('')

/** The same spans in a sentence round them. */
export function within({ spans, order }: Spans, before: string, after: string): Spans {
  const between = (text: string): readonly Span[] => (text ? [{ text, kind: 'between' }] : [])
  const ahead = between(before)
  return {
    spans: [...ahead, ...spans, ...between(after)],
    order: ahead.length > 0 ? order.map(oneLater) : order,
  }
}

const oneLater = (order: SpanOrder): SpanOrder =>
  'span' in order
    ? { ...order, span: order.span + 1 }
    : { ...order, parts: order.parts.map(oneLater) }

/** Knit and purl have a word of their own when the whole row is that. */
const wholeRowWord = ({ role }: Stitch, { allKnit, allPurl }: Language): string | undefined =>
  role === 'knit' ? allKnit : role === 'purl' ? allPurl : undefined

const stitchesIn = (order: readonly SpanOrder[]): number =>
  order.reduce(
    (sum, one) => sum + ('span' in one ? one.count : stitchesIn(one.parts) * one.times),
    0,
  )

class SpanWriter {
  readonly #spans: Span[] = []

  constructor(
    private readonly tokens: Tokens,
    private readonly language: Language,
    private readonly terms: Terms,
  ) {}

  write(comesOut: boolean): Spans {
    const { tokens, language } = this
    const short = shorten(tokens, comesOut)
    const before = this.#parts(short.before)
    if (!short.block) return { spans: this.#spans, order: before }
    this.#put(before.length > 0 ? ', *' : '*', 'between')
    const block = this.#parts(short.block)
    this.#put('; ', 'between')
    const ends = short.after.length === 0
    this.#put(ends ? language.repeatToEnd : language.repeatToLast(short.lastLoops), 'repeat')
    if (!ends) this.#put(', ', 'between')
    const after = this.#parts(short.after)
    const rest = tokens.stitches.length - stitchesIn(before) - stitchesIn(after)
    const order = [...before, { parts: block, times: rest / stitchesIn(block) }, ...after]
    return { spans: this.#spans, order }
  }

  #put(text: string, kind: Span['kind']): number {
    return this.#spans.push({ text, kind }) - 1
  }

  #parts(parts: readonly Shortened[]): SpanOrder[] {
    return parts.map((part, index) => {
      if (index > 0) this.#put(', ', 'between')
      if ('stitch' in part) return this.#stitches(part.stitch, part.count)
      const nested = part.parts.some(hasBrackets(this.tokens))
      this.#put(nested ? '[' : '(', 'between')
      const inside = this.#parts(part.parts)
      this.#put(nested ? '] ' : ') ', 'between')
      this.#put(this.language.times(part.times), 'repeat')
      return { parts: inside, times: part.times }
    })
  }

  #stitches(stitch: number, count: number): SpanOrder {
    const { abbr } = termOf(this.tokens.vocabulary[stitch] as Stitch, this.terms)
    if (this.tokens.counted[stitch])
      return { span: this.#put(`${abbr}${count}`, 'stitches'), count, each: false }
    if (count === 1) return { span: this.#put(abbr, 'stitches'), count, each: true }
    this.#put('(', 'between')
    const span = this.#put(abbr, 'stitches')
    this.#put(') ', 'between')
    this.#put(this.language.times(count), 'repeat')
    return { span, count, each: true }
  }
}

const hasBrackets =
  ({ counted }: Tokens) =>
  (part: Shortened): boolean =>
    'parts' in part || (part.count > 1 && !counted[part.stitch])
