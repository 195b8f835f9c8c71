import { lex } from './lex'
import { numberIn } from '../limits'
import type { Head } from '../nodes'
import { Cursor } from '../parse/cursor'
import { readNumbers } from '../parse/references'
import { numberWordsPattern, ordinalWordsPattern, readNumber } from './numberWords'

const rowWord = String.raw`(?:rounds?|rnds?|rows?)\b\.?`
const ordinal = String.raw`(?:\d{1,20}(?:st|nd|rd|th)|(?:${ordinalWordsPattern})\b)`
const figure = String.raw`(?:${ordinal}|\d{1,20}|(?:${numberWordsPattern})\b)`
const figures = String.raw`${figure}(?:\s*(?:-|–|—|,|&|\+|to|through|thru|and)(?:\s*and)?\s*${figure})*`
const every = String.raw`(?<every>\s*,?\s*(?:and|&)\s+(?:all\s+|every\s+)?(?:foll(?:owing)?\.?\s+)?(?:(?:alt(?:ernate)?|even|odd|other|ws|rs|wrong[- ]side|right[- ]side)\b\.?\s*)+(?:even|odd|numbered)?)`
const note = String.raw`(?:\s*\((?:[a-z][a-z. -]{0,30}|(?:for\s+)?sizes?\b[^()]{0,60})\))`
const side = String.raw`(?:\s*\(\s*(?<side>rs|ws|right side|wrong side)\b[^)]{0,30}\)|${note})`
const sideLater = String.raw`(?:\s*\(\s*(?<later>rs|ws|right side|wrong side)\b[^)]{0,30}\)\s*[.:]?)`

const forms: readonly (readonly [form: string, colonless: boolean])[] = [
  // Row 1, Rnds 2-4, Rows 1& 2, R1, Row 2 and all even rows
  [
    String.raw`(?<kind>rounds?|rnds?|rows?|r(?=\s?\d))\.?\s*#?\s*(?<numbers>${figures})${every}?(?:\s*${rowWord})?`,
    true,
  ],
  // 1st row, 3rd to 8th rows, 1st and alt rnds
  [
    String.raw`(?<numbers>${ordinal}(?:\s*(?:-|–|,|&|to|and)\s*${figure})*)${every}?\s*(?<kind>rounds?|rnds?|rows?)`,
    true,
  ],
  // Heel row 1
  [
    String.raw`(?<name>(?!rep|as\b|work|repeat|last|knit|purl|from|for|until|next|like|on\b|after)[a-z][a-z-]*(?:\s[a-z-]+){0,2})\s+(?<kind>rounds?|rnds?|rows?)\.?\s*(?<numbers>${figures})`,
    false,
  ],
  // Next row, Next 6 rounds
  [String.raw`next\s+(?:(?<next>\d{1,20}|[a-z]+)\s+)?(?<kind>rounds?|rnds?|rows?)`, true],
  // Inc row, Set-up rnd, Every round
  [
    String.raw`(?<name>set[- ]?up|foundation|inc\.?|increase|dec\.?|decrease|eyelet|cable|plain|every|all|each|last|turning|ridge|pattern|knit|purl|lace|cross|edging)\s+(?<kind>rounds?|rnds?|rows?)`,
    false,
  ],
]

const compiled = forms.map(([form, colonless]) => ({
  pattern: new RegExp(
    String.raw`^\s*(?:[-•–]\s+)?${form}${side}?(?<end>\s*[:.]|\s+[-–—]{1,2}(?=\s)|)${sideLater}?`,
    'i',
  ),
  colonless,
}))

/** What stitches begin with: a head without a colon must have one behind it. */
const stitchFollows =
  /^\s*(?:[*([]|k\d|p\d|sl\d|k\b|p\b|knit|purl|sl\b|slip|ew\d?|yo\b|as\b|rep|with\b)/i

const longestHead = 300

/** The head that a text starts with. `strict`: only one that ends in a colon counts. */
export function readHead(text: string, strict = false): Head | null {
  const start = text.slice(0, longestHead)
  for (const { pattern, colonless } of compiled) {
    const match = pattern.exec(start)
    if (!match?.groups) continue
    const { groups } = match
    const end = (groups.end ?? '').trim()
    const after = start.slice(match[0].length)
    const sided = groups.later !== undefined || groups.side !== undefined
    const closed = end === ':' || end.startsWith('-') || (end !== '' && !strict) || sided
    if (!closed && (strict || !colonless || !stitchFollows.test(after))) continue
    if (end === '.' && !sided && !stitchFollows.test(after)) continue
    return headOf(groups, match[0].length)
  }
  return null
}

function headOf(groups: Record<string, string | undefined>, length: number): Head {
  const { numbers = '', every: rest, next, kind = '' } = groups
  const side = (groups.side ?? groups.later ?? '').toLowerCase()
  const list = readNumbers(new Cursor(lex(numbers.replaceAll('+', ','), 0)))
  const alternate = rest !== undefined
  return {
    numbers: list,
    every: alternate ? 2 : 0,
    next:
      next === undefined
        ? 1
        : Math.max(1, /^\d/.test(next) ? numberIn(next) : readNumber(next.toLowerCase())),
    side: /^r/.test(side) ? 'right' : /^w/.test(side) ? 'wrong' : null,
    kind: /^(ro|rn)(u|d)/i.test(kind) ? 'round' : 'row',
    name: list.length === 0 ? (groups.name?.toLowerCase() ?? null) : null,
    range: { from: 0, to: length },
  }
}

/** Where in a line a further head with a colon stands behind a full stop or a bracket. */
const later = new RegExp(
  String.raw`[.:)\]]\s+(?=(?:r(?:ou)?nds?|rows?|r\d|${ordinal}|next)\b)`,
  'gi',
)

/** "Purl 1 rnd." is a statement by itself; another may stand behind it. */
const wholeRounds =
  /\b(?:knit|purl|k|p)\s+(?:\d{1,20}|[a-z]+)\s+(?:rounds?|rnds?|rows?)[.,;]\s+(?=\S)/gi

/** "Rep Rnds 1-2 once more" is one as well. */
const repeatedRows =
  /[.)]\s+(?=rep(?:eat)?\s+(?:the\s+)?(?:last|these|this|rows?|rnds?|rounds?|\d{1,20}(?:st|nd|rd|th))\b)/gi

/** Offsets at which the statements of a line begin. */
export function headStarts(line: string): number[] {
  const starts: number[] = []
  for (const match of line.matchAll(later)) {
    const at = match.index + match[0].length
    if (readHead(line.slice(at, at + longestHead), true)) starts.push(at)
  }
  for (const pattern of [wholeRounds, repeatedRows])
    for (const match of line.matchAll(pattern)) starts.push(match.index + match[0].length)
  return [...new Set(starts)].sort((a, b) => a - b)
}
