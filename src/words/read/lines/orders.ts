import { bindOffs, type BindOff } from '../../../loom/move'
import { bindOffNames } from '../../../languages/english/edges'
import { pieceLines } from '../../../languages/english/pieceLines'
import { languages } from '../../../languages/languages'
import { numberIn } from '../limits'
import type { Often } from '../nodes'
import { numberWordsPattern, readNumber, timesWords } from './numberWords'
import { sectionKind } from './sections'

/** Where a chart or section is called for by its name. */
export interface WorkOrder {
  readonly do: 'work'
  readonly verb: 'work' | 'rep'
  readonly name: string
  /** The rows it names, first and last; null: all of them. */
  readonly rows: readonly [first: number, last: number] | null
  readonly often: Often
  /** Its rows follow; or they stand before it, and it says so. */
  readonly where: 'follow' | 'before' | null
  /** It cannot mean anything else than a name. */
  readonly sure: boolean
  /** As the program itself writes it. */
  readonly strict: boolean
}

/** A line of a whole piece that is no row itself, and says what becomes of rows. Pegs from 1. */
export type Order =
  | WorkOrder
  /** "The 1st and 3rd time:" */
  | { readonly do: 'times'; readonly times: readonly number[] }
  /** From here on these pegs are in work; null: all. */
  | {
      readonly do: 'pegs'
      readonly run: readonly [first: number, last: number] | null
      readonly round: boolean
    }
  /** Loops are put on or taken off; null: on all pegs. From the first peg to the last one worked. */
  | {
      readonly do: 'cast on' | 'bind off'
      readonly pegs: readonly [first: number, last: number] | null
      /** Which bind-off, where the line names it. */
      readonly how: BindOff | null
    }
  /** Plain rows that are measured on the piece. */
  | { readonly do: 'measured' }

const pegs = String.raw`pegs? (\d{1,4})(?:\s*(?:to|-|–|through)\s*(?:peg )?(\d{1,4}))?`
const toAndFro = String.raw`(?:to and fro|back and forth|flat)`
const rows = (first: string, last: string): string =>
  String.raw`(?:rnds?|rounds?|rows?)\.? (?<${first}>\d{1,4})(?:\s*(?:-|–|to|through)\s*(?<${last}>\d{1,4}))?`
const often = String.raw`(?<often>(?:once|twice)(?: more| again)?|(?:\d{1,9}|${numberWordsPattern}) (?:more )?times(?: more| in all| in total)?)`

/** "Work Cuff, Rnds 1-4, twice:", "Rep rows 1-4 of the cuff", "Work cuff as before." */
const called = new RegExp(
  String.raw`^\s*(?<verb>work|rep|repeat) (?:(?:the )?${rows('from', 'to')} of )?(?:the )?(?<name>[a-z][\w&'’/ -]{0,58}?)(?<before> again| as (?:before|above))?(?:,? ${rows('first', 'last')})?(?:,? ${often})?(?<end>[.:]?)\s*$`,
  'i',
)

const somePegs = [
  new RegExp(
    String.raw`^\s*(?:from here,? )?work(?: ${toAndFro})? (?:only )?on(?: only)? ${pegs}\b`,
  ),
  new RegExp(String.raw`^\s*(?:from here,? )?work (?:only )?${pegs} only\b`),
].map(({ source }) => new RegExp(source, 'i'))
const allPegs = new RegExp(
  String.raw`^\s*from here,? work (?:(in the round)|${toAndFro}) on all(?: \d{1,4})? pegs\b`,
  'i',
)
const pegsAtEnd = /pegs? (\d{1,4})(?: to (\d{1,4}))?$/
const measured = /^\s*(?:Knit|Purl|Work) [\d.]{1,6} cm\b.{0,100}, measured on your piece\b/

const { workChart, noChart, whichTimes, castOn, bindOff } = pieceLines

/** What no section is called: the words go on in another way. */
const noName =
  /^(?:(?:rnds?|rounds?|rows?|last|next|these|this|those|that|from|in|on|with|even|as|to|until|each|every|all|any|across|around|an?|it|them|both|same|straight|back|sts?|stitch(?:es)?|pegs?|plain|flat|short|decs?|decreases?|incs?|increases?|knit|purl|set|border|edges?|other|another|remaining|rem|again|between|inc|dec)\b|[kp]\d|(?:k|p)\b)/i
/** What many charts could be called, so that nothing is said of it where no section is. */
const anyName =
  /^(?:chart|(?:the )?(?:chart|lace|cable|st|stitch)? ?(?:patt?(?:ern)?s?|rib(?:bing)?|stitch|repeat|rpt|sequence|section|instructions))$/i

/** What a line of the whole piece says, if it is one; most are not. */
export function readOrder(text: string): Order | null {
  if (!/^\s*(?:work|rep|the|from|cast|bind|knit|purl)\b/i.test(text) && !/^\s*repeat\b/i.test(text))
    return null
  return readPieceLine(text) ?? readCall(text)
}

const surely = { sure: true, strict: true } as const

function readPieceLine(text: string): Order | null {
  const written = workChart.read(text)
  if (written) {
    const { name: said, again, rows: rowsSaid, often: times, end } = written
    const isAgain = end === '.' && again !== ''
    const [first, last] = rowsSaid.match(/\d+/g) ?? []
    return {
      do: 'work',
      verb: 'work',
      name: isAgain ? said : said + again,
      rows: rangeOf(first, last),
      often: oftenOf(times.slice(2) || undefined),
      where: end === ':' ? 'follow' : isAgain ? 'before' : null,
      ...surely,
    }
  }
  const missing = noChart.read(text)
  if (missing) return { ...call('work', missing.name, null, undefined), where: 'before', ...surely }
  const times = whichTimes.read(text)
  if (times) return { do: 'times', times: (times.which.match(/\d+/g) ?? []).map(numberIn) }
  const all = allPegs.exec(text)
  if (all) return { do: 'pegs', run: null, round: all[1] !== undefined }
  for (const pattern of somePegs) {
    const [, first, last] = pattern.exec(text) ?? []
    if (first) return { do: 'pegs', run: rangeOf(first, last), round: false }
  }
  const begun = castOn.read(text)
  if (begun)
    return {
      do: 'cast on',
      pegs: pegsIn(begun.where.startsWith(':') ? begun.where : ''),
      how: null,
    }
  const ended = bindOff.read(text)
  if (ended) return { do: 'bind off', pegs: pegsIn(ended.which), how: bindOffNamed(text) }
  return measured.test(text) ? { do: 'measured' } : null
}

/** As the words name it, in either set of terms. */
const bindOffNamed = (text: string): BindOff | null =>
  bindOffs.find((how) =>
    [languages.us, languages.uk].some(({ words }) => text.includes(bindOffNames(words)[how])),
  ) ?? null

function readCall(text: string): WorkOrder | null {
  const said = called.exec(text)?.groups
  if (!said?.name || noName.test(said.name)) return null
  const { verb, name, from, to, first, last, before = '', end } = said
  const times = said.often ?? (/^ as/i.test(before) ? 'once' : undefined)
  const order = call(verb, name, rangeOf(from ?? first, to ?? last), times)
  if (end === ':' && from === undefined)
    return said.often && order.verb === 'work' ? { ...order, where: 'follow' } : null
  return before ? { ...order, where: 'before' } : order
}

/**
 * A name with a capital, the word "chart" or a part that pieces usually have is surely one, if it is not what any
 * could be called.
 */
function call(
  does: string | undefined,
  said: string,
  rowsSaid: WorkOrder['rows'],
  times: string | undefined,
): WorkOrder {
  const plain = said.trim()
  const isOne =
    /\bchart\b/i.test(plain) ||
    sectionKind(plain) === 'work' ||
    (/^[A-Z]/.test(plain) && (rowsSaid || times))
  return {
    do: 'work',
    verb: does?.toLowerCase().startsWith('rep') ? 'rep' : 'work',
    name: plain,
    rows: rowsSaid,
    often: oftenOf(times),
    where: null,
    sure: Boolean(isOne) && !anyName.test(plain),
    strict: false,
  }
}

const pegsIn = (said: string): readonly [number, number] | null => {
  const [, first, last] = pegsAtEnd.exec(said) ?? []
  return rangeOf(first, last)
}

const rangeOf = (
  first: string | undefined,
  last: string | undefined,
): readonly [number, number] | null =>
  first === undefined ? null : [numberIn(first), numberIn(last ?? first)]

function oftenOf(said: string | undefined): Often {
  if (said === undefined) return { kind: 'none' }
  const [word = ''] = said.toLowerCase().split(' ')
  const times = timesWords.get(word) ?? (/\d/.test(word) ? numberIn(word) : readNumber(word))
  if (/\b(?:more|again)\b/i.test(said)) return { kind: 'more', times }
  if (/\bin (?:all|total)$/i.test(said)) return { kind: 'all', times }
  return { kind: 'bare', times, said: { from: 0, to: 0 } }
}

/** Names of sections that lines call for, so that a line that is just that name is their heading. */
export const namesCalled = (text: string): ReadonlySet<string> =>
  new Set(
    [
      ...text.matchAll(
        /^Work (.{1,80}?)(?: again)?(?:, (?:Rnds?|Rows?) \d[^\n]*|: there is no chart[^\n]*)$/gm,
      ),
    ].map(([, called = '']) => called.trim()),
  )
