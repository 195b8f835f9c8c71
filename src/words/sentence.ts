import { unitOfRow } from '../pattern/unit'
import { pegInLoom, turnPegOf } from '../loom/rowEnd'
import type { Habits } from '../loom/work'
import type { Heading } from '../loom/direction'
import type { PatternRow } from '../pattern/row'
import type { PatternRun } from '../pattern/work'
import type { Terms } from '../languages/terms'
import type { Language, Turn } from '../languages/language'
import { languages } from '../languages/languages'
import { spanStitches, textOfSpans, within, type Spans } from './spans'

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
  if (text === undefined) known.set(key, (text = textOfSpans(spanRow(run, shape, terms))))
  return text
}

/** The same sentence in spans: the words of its stitches, and what stands between them. */
export function spanRow(run: PatternRun, shape: Shape, terms: Terms): Spans {
  const language = languages[terms]
  const { row, heading } = run
  const spans = spanStitches(row, heading, !run.miscount, terms, coversAll(run))
  if (isWhole(run, shape)) return asSentence(spans, language)
  const first = heading === 'forward' ? row.from : row.to
  const last = heading === 'forward' ? row.to : row.from
  const pegs = language.pegs(first + 1, last + 1, heading === 'back')
  const turn = turnOf(run, shape)
  return within(spans, `${pegs}: `, `${turn ? `; ${language.turn(turn)}` : ''}.`)
}

/** A word that stands for all the stitches of a row begins its sentence; other stitches only end in one. */
function asSentence(spans: Spans, { wholeRow }: Language): Spans {
  const said = textOfSpans(spans)
  const sentence = wholeRow(said)
  const [first, ...others] = spans.spans
  if (sentence.startsWith(said) || !first || others.length > 0)
    return within(spans, '', sentence.slice(said.length))
  const word = { ...first, text: sentence.slice(0, said.length) }
  return within({ ...spans, spans: [word] }, '', sentence.slice(said.length))
}

function turnOf({ row, heading, before }: PatternRun, shape: Shape): Turn | null {
  const turn = turnPegOf(row, heading)
  if (turn === null || row.end === 'on') return null
  const pegs = before.stacks.length
  const peg = pegInLoom(turn, { shape, pegs })
  return { end: row.end, peg: peg < 0 || peg >= pegs ? null : peg + 1 }
}

/** The stitches of a row in their shortest words, as `spanStitches` has them. */
export const writeStitches = (
  row: PatternRow,
  heading: Heading,
  comesOut: boolean,
  terms: Terms,
  all = true,
): string => textOfSpans(spanStitches(row, heading, comesOut, terms, all))
