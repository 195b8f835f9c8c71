import { groupSizes } from '../../../stitches/crosses'
import type { Lean, Stitch, Texture } from '../../../stitches/stitch'
import { standardVocabulary, type Vocabulary } from '../../../stitches/vocabulary'
import { lex, type Lexeme } from '../lines/lex'
import type { Ambiguity } from '../nodes'
import { spellingsOf } from '../../../languages/languages'

/** What a spelling stands for. */
export type Meaning =
  | { readonly is: 'stitch'; readonly stitch: Stitch; readonly atBack?: true }
  | { readonly is: 'choice'; readonly rule: Ambiguity }
  /** A cross whose two groups the spelling does not tell. `size`: loops in all, 0 if not told. */
  | {
      readonly is: 'cross'
      readonly size: number
      readonly lean: 'left' | 'right' | null
      /** It has three groups; the letters of its textures. */
      readonly three?: string
    }
  /** A stitch of the trade that the vocabulary does not have. */
  | { readonly is: 'none'; readonly name: string }
  /**
   * Another one that it does not have, and one that takes and makes as many loops. `twin`: the same
   * with knit for purl, so that it is what shows of it when it is worked on the wrong side.
   */
  | {
      readonly is: 'lacking'
      readonly name: string
      readonly stitch: Stitch
      readonly twin: boolean
    }

interface Node {
  readonly next: Map<string, Node>
  meaning: Meaning | null
}

const ambiguous: readonly (readonly [Ambiguity, ...string[]])[] = [
  ['ask-yfwd', 'yfwd', 'yf', 'yft'],
  ['ask-inc', 'inc', 'inc in next st', 'inc 1 st'],
  ['ask-ds', 'ds', 'dsk', 'dsp', 'k ds', 'double stitch'],
  ['ask-k1b', 'k1b', 'kb'],
]

/** Known to the trade, but no stitch of the vocabulary. */
const without: readonly string[] = ['k4tog', 'k5tog']

/** The purl stitches of published lists whose knit twin is one of the vocabulary. */
const purlTwins: Readonly<Record<string, readonly string[]>> = {
  kfb: ['pfb', 'p1fb', 'p1f&b', 'p1f/b', 'pf&b', 'purl front and back'],
  k3tog: ['p3tog', 'p3 tog', 'purl 3 together', 'purl three together', 'purl 3 tog'],
  sk2p: ['p3tog tbl', 'sssp'],
  m1l: ['m1p', 'm1 p', 'm1 purlwise', 'make 1 purlwise', 'm1lp'],
  m1r: ['m1rp'],
}

/** Others, with a stitch that takes and makes as many loops and leans the same way. */
const alike: Readonly<Record<string, readonly string[]>> = {
  kfb: ['pfkb', 'kfpb'],
  sk2p: ['sssk'],
  ew: ['dew', 'double e wrap'],
}

const words = { l: 'left', r: 'right' } as const
const mostInGroup = Math.max(...groupSizes)

/** Crosses by their total: "4-st RC", "C6L", "T3F", "Cr3L" (common practice; UK habit). */
function* crossSpellings(vocabulary: Vocabulary): Generator<readonly [string, Meaning]> {
  const crossMeaning = (front: number, back: number, lean: Lean, texture: Texture): Meaning => {
    const cross = { front, back, lean, frontTexture: 'knit', backTexture: texture } as const
    const stitch = vocabulary.findCross(cross)
    return stitch ? { is: 'stitch', stitch } : { is: 'cross', size: front + back, lean }
  }
  for (let size = 2; size <= vocabulary.widest; size++)
    for (const side of ['l', 'r'] as const) {
      const lean = words[side]
      const half = size / 2
      const plain = crossMeaning(half, half, lean, 'knit')
      const purl = crossMeaning(half, half, lean, 'purl')
      const long = size - 1 <= mostInGroup ? crossMeaning(size - 1, 1, lean, 'purl') : null
      const place = side === 'l' ? 'f' : 'b'
      for (const spelling of [`c${size}${side}`, `c${size}${place}`, `${size} st ${side}c`])
        yield [spelling, plain]
      yield [`${size}${side}cc`, plain]
      yield [`${size} st ${lean} cross`, plain]
      yield [`${lean} cross ${size}`, plain]
      if (size === 3) {
        yield [`t3${place}`, long ?? purl]
        yield [`t3${side}`, long ?? purl]
      } else {
        yield [`t${size}${place}`, purl]
        yield [`t${size}${side}`, purl]
        yield [`tw${size}${side}`, plain]
      }
      yield [`cr${size}${side}`, long && size > 2 ? long : purl]
      yield [`${size} st ${side}pc`, purl]
    }
  for (const side of ['l', 'r'] as const) {
    const lean = words[side]
    const twist = crossMeaning(1, 1, lean, 'knit')
    yield [`${side}t`, twist]
    yield [`${lean} twist`, twist]
    yield [`tw${side}`, twist]
    yield [`${side}c`, { is: 'cross', size: 0, lean }]
    yield [`${lean} cross`, { is: 'cross', size: 0, lean }]
    yield [`cable ${lean}`, { is: 'cross', size: 0, lean }]
  }
  yield ['cable', { is: 'cross', size: 0, lean: null }]
}

/** Crosses of three groups, "2/1/2 LC": the vocabulary has those of two. */
function* threeGroups(): Generator<readonly [string, Meaning]> {
  for (const a of groupSizes)
    for (const b of groupSizes)
      for (const c of groupSizes)
        for (const side of ['l', 'r'] as const)
          for (const three of ['C', 'PC', 'PPC']) {
            const size = a + b + c
            yield [
              `${a}/${b}/${c} ${side}${three.toLowerCase()}`,
              { is: 'cross', size, lean: words[side], three },
            ]
          }
}

/** Signs that may stand between the parts of a spelling and are no part of it. */
const skipped = new Set(['-', ',', '.', '&', "'"])
const pauses = new Set([',', '.'])

/** "sl 1, k1, psso" is one stitch; otherwise a comma parts two. */
const mayPause = (last: string): boolean => last.endsWith('sso')

/** "sl1p" is one stitch, but "sl1, p1" and "sl1 p to end" are two. */
const standsApart = (piece: Lexeme, next: Lexeme | undefined): boolean =>
  (piece.text === 'p' || piece.text === 'k') && (!piece.glued || next?.kind === 'number')

/** All known spellings, looked up piece by piece; the longest one counts. */
export class Spellings {
  readonly #root: Node = { next: new Map(), meaning: null }
  readonly #below: Spellings | null

  constructor(below: Spellings | null = null) {
    this.#below = below
  }

  add(spelling: string, meaning: Meaning): void {
    let node = this.#root
    for (const { text } of lex(spelling, 0)) {
      if (skipped.has(text)) continue
      let next = node.next.get(text)
      if (!next) node.next.set(text, (next = { next: new Map(), meaning: null }))
      node = next
    }
    if (node !== this.#root) node.meaning ??= meaning
  }

  /** The longest spelling that starts at a piece: what it means and the piece after it. */
  find(pieces: readonly Lexeme[], start: number): { meaning: Meaning; end: number } | null {
    let node: Node | undefined = this.#root
    let found: { meaning: Meaning; end: number } | null = null
    let paused = false
    for (let at = start; at < pieces.length;) {
      let piece = pieces[at] as Lexeme
      while (at > start && skipped.has(piece.text) && !node.next.has(piece.text)) {
        const after: Lexeme | undefined = pieces[at + 1]
        if (!after || !node.next.has(after.text)) break
        if (pauses.has(piece.text)) paused = true
        else if (!piece.glued && !after.glued) break
        at++
        piece = after
      }
      node = node.next.get(piece.text)
      if (!node) break
      at++
      if (!node.meaning || (paused && !mayPause(piece.text))) continue
      if (at - start > 1 && standsApart(piece, pieces[at])) continue
      found = { meaning: node.meaning, end: at }
    }
    const below = this.#below?.find(pieces, start) ?? null
    return below && (!found || below.end > found.end) ? below : found
  }
}

function makeSpellings(vocabulary: Vocabulary): Spellings {
  const spellings = new Spellings()
  const add = (spelling: string, stitch: Stitch) =>
    spellings.add(spelling, { is: 'stitch', stitch })
  for (const stitch of vocabulary.stitches) {
    for (const spelling of [stitch.id, ...spellingsOf(stitch)]) add(spelling, stitch)
    if (stitch.cross) add(stitch.id.replace(' ', ''), stitch)
  }
  for (const [rule, ...list] of ambiguous)
    for (const spelling of list) spellings.add(spelling, { is: 'choice', rule })
  const back: Meaning = { is: 'stitch', stitch: vocabulary.withRole('slip'), atBack: true }
  for (const spelling of ['sl wyib', 'sl1 wyib', 'slip wyib', 'sl1p wyib', 'slwyib'])
    spellings.add(spelling, back)
  for (const [spelling, meaning] of crossSpellings(vocabulary)) spellings.add(spelling, meaning)
  for (const [spelling, meaning] of threeGroups()) spellings.add(spelling, meaning)
  for (const [list, twin] of [
    [purlTwins, true],
    [alike, false],
  ] as const)
    for (const [id, names] of Object.entries(list))
      for (const name of names)
        spellings.add(name, { is: 'lacking', name, stitch: vocabulary.stitch(id), twin })
  for (const name of without) spellings.add(name, { is: 'none', name })
  return spellings
}

/** The spellings of the trade, without what a pattern defines for itself. */
export const tradeSpellings = (vocabulary = standardVocabulary): Spellings =>
  vocabulary.made(makeSpellings)

/** Short spellings of all stitches, to find one that is near to a word that is not known. */
export const nearWords = (vocabulary = standardVocabulary): readonly string[] =>
  vocabulary.made(makeNearWords)

const makeNearWords = ({ stitches }: Vocabulary): readonly string[] => [
  ...new Set([
    ...stitches.flatMap(spellingsOf),
    'knit',
    'purl',
    'repeat',
    'rep',
    'twice',
    'times',
    'turn',
    'end',
    'around',
  ]),
]
