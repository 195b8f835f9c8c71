import { numberIn } from '../limits'
import { readNumber } from './numberWords'

/** Words at the start of a line that say for which sizes it is: "Size M only:", "All sizes:". */
export interface SizeLabel {
  /** What it says of the sizes; null: the words are for all again. */
  readonly said: string | null
  /** Length of the label in the line. */
  readonly length: number
}

const nth = String.raw`(?:smallest|largest|first|second|third|fourth|fifth|sixth|last|\d(?:st|nd|rd|th))`
const said = String.raw`(?:sizes?\s{1,9}(?<names>[^:;()\s][^:;()\n]{0,59}?)|(?<nth>${nth}(?:\s*(?:,|and|&)\s*${nth})*)\s{1,9}sizes?)\s{1,9}only`
const label = new RegExp(
  String.raw`^\s*(?:[-•–]\s+)?(?:for\s+)?(?:the\s+)?(?:\(\s*)?(?:${said}\s*\)?\s*[:.–—-]|(?<all>all\s+sizes)\s*[:.])\s*`,
  'i',
)
const inBrackets = new RegExp(String.raw`\(\s*(?:for\s+)?(?:the\s+)?${said}\s*\)`, 'i')

const saidIn = ({ groups }: RegExpExecArray): string | null => groups?.names ?? groups?.nth ?? null

export function sizeLabel(line: string): SizeLabel | null {
  const match = label.exec(line)
  return match && { said: saidIn(match), length: match[0].length }
}

/** "Rnd 5 (size M only):" */
export function sizesInHead(head: string): string | null {
  const match = inBrackets.exec(head)
  return match && saidIn(match)
}

const name = String.raw`[a-z0-9][a-z0-9./-]*(?:\s(?:mos?\b|months?|yrs?\b|years?|small|large))?`
const after = String.raw`\bsizes?\b(?:\s(?:are|to\sfit|in))?\s{0,3}:?\s{0,5}`
const lists: readonly RegExp[] = [
  // Sizes XS (S, M, L)
  new RegExp(String.raw`${after}(${name}\s{0,3}[([][^)\]\n]{1,120})[)\]]`, 'gi'),
  // Sizes: S, M and L
  new RegExp(
    String.raw`${after}(${name}(?:\s?,\s?${name}){0,12}\s?(?:,|,?\s?(?:and|&))\s?${name})(?![^\n]{0,60}\bonly\b)`,
    'gi',
  ),
]

const short: readonly (readonly [RegExp, string])[] = [
  [/\b(?:extra[ -]?|x-?)(small|large)\b/g, 'x$1'],
  [/\b(x?)small\b/g, '$1s'],
  [/\bmedium\b/g, 'm'],
  [/\b(x?)large\b/g, '$1l'],
  [/^(\d+)\s*(?:mos?|months?|yrs?|years?)$/, '$1'],
]

const plain = (text: string): string =>
  short.reduce(
    (word, [pattern, to]) => word.replace(pattern, to),
    text.toLowerCase().replace(/\.$/, '').trim(),
  )

const partsOf = (text: string): string[] =>
  text
    .split(/\s*(?:[,([]|\band\b|&)\s*/i)
    .map(plain)
    .filter(Boolean)

/** Lists of the names of the sizes that a text gives, smallest first. */
export const sizeNames = (text: string): readonly (readonly string[])[] =>
  lists
    .flatMap((pattern) => [...text.matchAll(pattern)].map((match) => partsOf(match[1] ?? '')))
    .filter((list) => list.length > 1)

/**
 * Is the size that is read (from 0) among those that a label names? Null if the words do not say
 * which one that is.
 */
export function isFor(
  said: string,
  size: number,
  names: readonly (readonly string[])[],
): boolean | null {
  const wanted = partsOf(said)
  const list = names.find((one) => wanted.every((word) => one.includes(word)))
  if (list) return wanted.includes(list[Math.min(size, list.length - 1)] ?? '')
  const [first] = names
  const places = wanted.map((word) => placeOf(word, first?.length ?? 0))
  const known = places.filter((place) => place !== null)
  if (known.length < places.length || known.length === 0) return null
  return known.includes(first ? Math.min(size, first.length - 1) : size)
}

/** "first", "2nd", "smallest"; null for what is no place in the list. */
function placeOf(word: string, count: number): number | null {
  if (word === 'smallest') return 0
  if (word === 'largest' || word === 'last') return count > 0 ? count - 1 : null
  const value = /^\d/.test(word)
    ? numberIn(/^(\d+)(?:st|nd|rd|th)$/.exec(word)?.[1] ?? '0')
    : readNumber(word)
  return value > 0 ? value - 1 : null
}
