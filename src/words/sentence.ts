import { unitOfRow } from '../pattern/unit'
import { pegInLoom, turnPegOf } from '../loom/rowEnd'
import type { Habits } from '../loom/work'
import type { Heading } from '../loom/direction'
import type { PatternRow } from '../pattern/row'
import type { PatternRun } from '../pattern/work'
import type { Terms } from '../languages/terms'
import type { Stitch } from '../stitches/stitch'
import type { Language, Turn } from '../languages/language'
import { languages, termOf } from '../languages/languages'
import { shorten, type Shortened } from './shorten'
import { tokensOf, type Tokens } from './tokens'

type Shape = Habits['shape']

const coversAll = ({ row, before }: PatternRun): boolean =>
  row.from === 0 && row.to === before.stacks.length - 1

/**
 * Is it a round or row that needs no peg numbers: all pegs, the usual way, no turn before its end?
 * A row of a bar goes on from the yarn, so it needs them where the yarn hangs between its pegs.
 */
function isWhole(run: PatternRun, shape: Shape): boolean {
  const { row, heading, before } = run
  if (row.end !== 'on' || !coversAll(run) || heading !== before.heading) return false
  if (shape === 'ring') return unitOfRow(run, shape) === 'round'
  return before.yarn.gap === (heading === 'forward' ? 0 : before.stacks.length)
}

const sentences = new WeakMap<PatternRow, Map<string, string>>()

/**
 * What is done in one row, as one sentence without its label and count: "*k2, p2; rep from * to
 * end." Stitches stand in the order they are worked. A row that takes another number of loops than
 * there are is written with counted groups, since "to end" would promise what does not come out.
 * "Knit" alone stands only for all pegs of a row that comes out: elsewhere it is "k8".
 */
export function writeRow(run: PatternRun, shape: Shape, terms: Terms): string {
  const whole = isWhole(run, shape)
  const key = `${terms}/${run.heading}/${whole ? '' : shape}/${run.miscount ? 'out' : ''}`
  let known = sentences.get(run.row)
  if (!known) sentences.set(run.row, (known = new Map<string, string>()))
  let text = known.get(key)
  if (text === undefined) known.set(key, (text = write(run, shape, terms, whole)))
  return text
}

function write(run: PatternRun, shape: Shape, terms: Terms, whole: boolean): string {
  const language = languages[terms]
  const { row, heading } = run
  const stitches = writeStitches(row, heading, !run.miscount, terms, coversAll(run))
  if (whole) return language.wholeRow(stitches)
  const first = heading === 'forward' ? row.from : row.to
  const last = heading === 'forward' ? row.to : row.from
  const pegs = language.pegs(first + 1, last + 1, heading === 'back')
  const turn = turnOf(run, shape)
  return `${pegs}: ${stitches}${turn ? `; ${language.turn(turn)}` : ''}.`
}

function turnOf({ row, heading, before }: PatternRun, shape: Shape): Turn | null {
  const turn = turnPegOf(row, heading)
  if (turn === null || row.end === 'on') return null
  const pegs = before.stacks.length
  const peg = pegInLoom(turn, { shape, pegs })
  return { end: row.end, peg: peg < 0 || peg >= pegs ? null : peg + 1 }
}

/** Knit and purl have a word of their own when the whole row is that. */
const wholeRowWord = ({ role }: Stitch, { allKnit, allPurl }: Language): string | undefined =>
  role === 'knit' ? allKnit : role === 'purl' ? allPurl : undefined

/**
 * The stitches of a row in their shortest words, in working order. `comesOut`: they end where the
 * row does. `all`: it covers all pegs.
 */
export function writeStitches(
  row: PatternRow,
  heading: Heading,
  comesOut: boolean,
  terms: Terms,
  all = true,
): string {
  const language = languages[terms]
  const tokens = tokensOf(row, heading, terms)
  const [only, second] = tokens.vocabulary
  const word = comesOut && all && only && !second ? wholeRowWord(only, language) : undefined
  if (word) return word
  const { before, block, after, lastLoops } = shorten(tokens, comesOut)
  const say = (parts: readonly Shortened[]) => writeParts(parts, tokens, language, terms)
  if (!block) return say(before)
  const head = before.length > 0 ? `${say(before)}, ` : ''
  return after.length > 0
    ? `${head}*${say(block)}; ${language.repeatToLast(lastLoops)}, ${say(after)}`
    : `${head}*${say(block)}; ${language.repeatToEnd}`
}

function writeParts(
  parts: readonly Shortened[],
  tokens: Tokens,
  language: Language,
  terms: Terms,
): string {
  return parts
    .map((part) => {
      if ('parts' in part) {
        const nested = part.parts.some(hasBrackets(tokens))
        const [open, close] = nested ? '[]' : '()'
        const inside = writeParts(part.parts, tokens, language, terms)
        return `${open}${inside}${close} ${language.times(part.times)}`
      }
      const { abbr } = termOf(tokens.vocabulary[part.stitch] as Stitch, terms)
      if (tokens.counted[part.stitch]) return `${abbr}${part.count}`
      return part.count === 1 ? abbr : `(${abbr}) ${language.times(part.count)}`
    })
    .join(', ')
}

const hasBrackets =
  ({ counted }: Tokens) =>
  (part: Shortened): boolean =>
    'parts' in part || (part.count > 1 && !counted[part.stitch])
