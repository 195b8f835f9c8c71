import { knits, type Knit } from '../../../loom/move'
import { standardVocabulary } from '../../../stitches/vocabulary'
import { termSets } from '../../../languages/terms'
import type { Stitch } from '../../../stitches/stitch'
import { lex } from '../lines/lex'
import { readNumber } from '../lines/numberWords'
import type { Statement } from '../lines/outline'
import type { TextRange } from '../reading'
import { Spellings, tradeSpellings, type Meaning } from './spellings'
import { termOf } from '../../../languages/languages'

export interface Definition {
  readonly name: string
  readonly meaning: Meaning
}

export interface Definitions {
  /** The same for texts that define the same. */
  readonly key: string
  readonly spellings: Spellings
  /** "DS = double stitch": the doubled stitch of a German turn. */
  readonly doubled: boolean
  /** Where definitions stand. */
  readonly ranges: readonly TextRange[]
}

const form = /^\s*([a-z0-9][a-z0-9/&.' -]{0,15}?)\s*(?:=|:|\bmeans\b|\s[-–—]\s)\s*(\S.*)$/is
const equalsForm = /^\s*[a-z0-9][a-z0-9/&.' -]{0,15}?\s*(?:=|\bmeans\b)/i

/** What the words explain of their own stitches: "LC = ...", "C4B: slip 2 ... hold at back ...". */
export function readDefinitions(statements: readonly Statement[]): Definitions {
  const found: Definition[] = []
  const ranges: TextRange[] = []
  let doubled = false
  for (const { section, head, text: words, range } of statements) {
    if (head || (section !== 'key' && !equalsForm.test(words))) continue
    const [, name = '', text = ''] = form.exec(words.slice(0, 600)) ?? []
    if (name) ranges.push(range)
    doubled ||= /^(?:ds|dss|double stitch)$/i.test(name.trim()) && /\bdoubled?\b|german/i.test(text)
    const stitch = name && !givesItsName(name, text) && meaningOf(text, name)
    if (stitch) found.push({ name: name.trim(), meaning: { is: 'stitch', stitch } })
  }
  const news = found.filter(({ name, meaning }) => !alreadySo(name, meaning))
  const spellings = news.length > 0 ? new Spellings(tradeSpellings()) : tradeSpellings()
  for (const { name, meaning } of news) spellings.add(name, meaning)
  const key = news
    .map(({ name, meaning }) => `${name}=${meaning.is === 'stitch' ? meaning.stitch.id : ''}`)
    .join(';')
  return { key, spellings, doubled, ranges }
}

/** The stitch that the trade calls so. */
function knownAs(name: string): Stitch | null {
  const pieces = lex(name, 0)
  const known = tradeSpellings().find(pieces, 0)
  return known?.end === pieces.length && known.meaning.is === 'stitch' ? known.meaning.stitch : null
}

/** Can the plain knit of a pattern be this one? */
const isKnit = ({ role }: Stitch): boolean =>
  role !== undefined && [...knits, 'knit'].includes(role)

/** "k = u-wrap knit" says how the plain knit is made, and makes no other stitch of it. */
const alreadySo = (name: string, meaning: Meaning): boolean => {
  if (meaning.is !== 'stitch') return false
  const known = knownAs(name)
  return known === meaning.stitch || (known?.role === 'knit' && isKnit(meaning.stitch))
}

/** "sl wyif: slip, yarn in front" defines nothing new, and not a plain slip. */
function givesItsName(name: string, text: string): boolean {
  const stitch = knownAs(name)
  const said = text.toLowerCase()
  return stitch !== null && termSets.some((terms) => said.startsWith(termOf(stitch, terms).name))
}

const number = String.raw`(\d|one|two|three|four)`
const cable = new RegExp(
  String.raw`(?:slip|sl|place|put)\s+(?:the\s+)?(?:next\s+|first\s+)?${number}\b[^.;]*?\b(front|back|behind|inside|outside)\b.*?\b(k|knit|p|purl)\s*(?:the\s+)?(?:next\s+)?${number}\b.*?(?:\b(k|knit|p|purl)\s*(?:the\s+)?(?:next\s+)?${number}?\b)?`,
  'is',
)
const named = new RegExp(
  String.raw`\b(left|right)\b(?:[^.;]*?\b(purl)\b)?[^.;]*?\b${number}\s*(?:over|/|and)\s*${number}\b`,
  'i',
)

/** The numbers first, as in "1/1 left cross". */
const numbered = new RegExp(
  String.raw`\b${number}\s*(?:over|/)\s*${number}\s+(left|right)\b(?:[^.;]*?\b(purl)\b)?`,
  'i',
)

const valueOf = (word: string | undefined): number => {
  const value = Number(word)
  return Number.isInteger(value) ? value : readNumber((word ?? '').toLowerCase())
}

/** A cross told by its moves or by name, or another stitch by one of its spellings. */
function meaningOf(text: string, name: string): Stitch | null {
  return cableOf(text) ?? crossNamed(text) ?? stitchAt(text, name)
}

/**
 * The group on the needle waits in front and so travels in front, leaning left, or at the back and
 * lets the other one travel to the right (common practice).
 */
function cableOf(text: string): Stitch | null {
  const [, held, where = '', first = '', next, second = ''] = cable.exec(text) ?? []
  if (!held) return null
  const inFront = /front|outside/i.test(where)
  const waiting = valueOf(held)
  const other = valueOf(next)
  const purled = (word: string) => /^p/i.test(word)
  const [front, back] = inFront ? [waiting, other] : [other, waiting]
  const [frontPurl, backPurl] = inFront
    ? [purled(second), purled(first)]
    : [purled(first), purled(second)]
  return crossOf(front, back, inFront, frontPurl && backPurl, backPurl)
}

/** The parts of "1/1 left cross" in the order of those of "left cross, 1 over 1". */
const leanLast = (found: RegExpExecArray | null): (string | undefined)[] =>
  found ? [found[0], found[3], found[4], found[1], found[2]] : []

function crossNamed(text: string): Stitch | null {
  const [, lean, purl, front, back] = named.exec(text) ?? leanLast(numbered.exec(text))
  if (!lean || !/cross|cable|twist/i.test(text)) return null
  const allPurl = /purl over purl|all purl/i.test(text)
  const left = lean.toLowerCase() === 'left'
  return crossOf(valueOf(front), valueOf(back), left, allPurl, allPurl || Boolean(purl))
}

const crossOf = (front: number, back: number, left: boolean, over: boolean, behind: boolean) =>
  standardVocabulary.findCross({
    front,
    back,
    lean: left ? 'left' : 'right',
    frontTexture: over ? 'purl' : 'knit',
    backTexture: behind ? 'purl' : 'knit',
  }) ?? null

function stitchAt(text: string, name: string): Stitch | null {
  const pieces = lex(text.slice(0, 200), 0)
  const found = tradeSpellings().find(pieces, 0)
  if (found?.meaning.is !== 'stitch') return null
  // "k2tog: knit 2 together" explains; "k: knit 1" says nothing new.
  const end = pieces[found.end]
  const whole = !end || /[.,;(]/.test(end.text) || found.end > 1
  const own = lex(name, 0)
  return whole && own.length > 0 ? found.meaning.stitch : null
}

const knitWords: ReadonlyMap<string, Knit> = new Map([
  ['e', 'e-wrap'],
  ['u', 'u-wrap'],
  ['flat', 'flat'],
  ['true', 'true'],
  ['reversed', 'true'],
])
/** The name of a knit, which all of these have; most words have none, and are gone through once. */
const knitNamed = /(?:\b[eu]|flat|true|reversed)[-\s]*(?:wrap|knit|purl|stitch)/i
const knitSaid: readonly RegExp[] = [
  /\b(?:k|knit)\b(?:\s{0,9}(?:sts?|stitch(?:es)?))?\s{0,9}(?:=|means|:|is|are)\s{0,9}(?:(?:an?|the)\s+)?(e|u|flat|true|reversed)[- ]?(?:wrap|knit|purl|stitch)/i,
  /\b(e|u|flat|true)[- ]?(?:wrap|wrapped)?\s*knit in this pattern/i,
  /\b(?:use|using|work|knit)\s+(?:the\s+)?(e|u|flat|true)[- ]?(?:wrap|knit|stitch)[^.\n]{0,30}\bthroughout/i,
  /\b(?:gauge|tension)\b[^\n]{0,120}\bin (e|u|flat|true)[- ]?(?:wrap|knit|stitch)/i,
]

/** Which plain knit the words state for the whole pattern. */
export function statedKnit(text: string): Knit | null {
  if (!knitNamed.test(text)) return null
  for (const pattern of knitSaid) {
    const knit = knitWords.get(pattern.exec(text)?.[1]?.toLowerCase() ?? '')
    if (knit && knits.includes(knit)) return knit
  }
  return null
}

const direction = /\b(?:(counter|anti)[- ]?)?clockwise\b/i

export function statedDirection(text: string): 'clockwise' | 'counterclockwise' | null {
  const match = direction.exec(text)
  return match ? (match[1] ? 'counterclockwise' : 'clockwise') : null
}

const castOn =
  /\b(?:cast[- ]?on|co|ewco|cco)\s+(?:an?\s+)?(\d{1,4})\b(?!\s*pegs? (?:by|with) [^.:\n]{1,60}: pegs?\b)(?:\s*(?:\(([\d, -]{1,60})\)|((?:,\s*\d{1,4}){2,15})(?=\s*(?:sts?|stitches|pegs|loops)\b)))?/i

/** How many loops the words cast on, for the size that is read. */
export function statedPegs(text: string, size: number): { pegs: number; range: TextRange } | null {
  const match = castOn.exec(text)
  if (!match) return null
  const list = [match[1] ?? '', ...(match[2] ?? match[3] ?? '').split(/\D+/)].filter(Boolean)
  const pegs = Number(list[Math.min(size, list.length - 1)])
  return { pegs, range: { from: match.index, to: match.index + match[0].length } }
}
