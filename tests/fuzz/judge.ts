/** What a text or a file goes through, and what must not come of it. */
import { reportPattern } from '../../src/cli/patternReport'
import { fabricDrawing } from '../../src/drawing/fabric/fabric'
import { flatChart } from '../../src/drawing/flat'
import { sidePicture } from '../../src/drawing/piece/side'
import { ringChart } from '../../src/drawing/ring'
import { writeSvg } from '../../src/drawing/svg'
import type { Pattern } from '../../src/pattern/pattern'
import { totalsOf } from '../../src/pattern/totals'
import { workPattern } from '../../src/pattern/work'
import { workPiece } from '../../src/pattern/workPiece'
import { readFile, writeFile } from '../../src/shelf/format'
import { starterCharts } from '../../src/shelf/seeds'
import { compare } from '../../src/words/compare/compare'
import { chartFrom } from '../../src/words/read/chart/chartFrom'
import { read } from '../../src/words/read/read'
import { pieceText } from '../../src/words/piece/text'
import { plainText } from '../../src/words/text'
import type { TextCase } from './texts'

/** What no one must ever read. What stands in quotes is the user's own. */
const wrong = /\b(?:NaN|Infinity|undefined)\b|\[object |function /

/** Fails with the sentence, shortened, that holds what no one must read. */
function expectSayable(what: string, said: string): void {
  const found = wrong.exec(said)
  if (!found) return
  const from = Math.max(0, found.index - 60)
  throw new Error(`${what}: "${said.slice(from, found.index + 60)}"`)
}

const withoutQuotes = (said: string): string => said.replaceAll(/"[^"]*"/g, '""')

interface Said {
  readonly message: string
  readonly advice: string
}

function expectAllSayable(what: string, list: readonly Said[]): void {
  for (const { message, advice } of list) expectSayable(what, withoutQuotes(`${message} ${advice}`))
}

/** Does one thing that a person waits for, and takes its time. */
export type Step = <T>(name: string, does: () => T) => T

/** So many repairs of one text are tried out. */
const mostTried = 2

/** Read, chart, compare and write again. `long`: repairs as well, and against another chart. */
export function judgeText({ text, settings }: TextCase, long: boolean, step: Step): void {
  const reading = step('reading', () => read(text, settings))
  expectAllSayable('a remark', reading.remarks)
  for (const { label, before, after, takes } of reading.rows)
    expectSayable('a row', `${label} ${before} ${takes} ${after}`)
  const { pattern, remarks } = step('charting', () => chartFrom(reading))
  expectAllSayable('a remark on the chart', remarks)
  const work = step('working', () => workPattern(pattern))
  const [{ pattern: starter }] = starterCharts
  for (const other of long ? [work, workPattern(starter())] : [work]) {
    const { differences } = step('comparing', () => compare(reading, other))
    expectAllSayable('a difference', differences)
    for (const difference of differences.slice(0, long ? mostTried : 0))
      for (const { label } of step('a repair', () => difference.fixes))
        expectSayable('a repair', withoutQuotes(label))
  }
  const words = step('writing', () => plainText(workPattern({ ...pattern, title: '' })))
  expectSayable('the words written', words)
}

/**
 * Was the file taken? Then it is worked, checked, told, drawn, counted and written. `long`: drawn in
 * every way.
 */
export function judgeFile(text: string, long: boolean, step: Step): boolean {
  const result = step('opening', () => readFile(text))
  if (!result.ok) {
    expectSayable('a refusal', withoutQuotes(result.message))
    return false
  }
  const { pattern } = result
  const { findings } = step('checking', () => reportPattern('file', pattern, 'us', true))
  expectAllSayable('a finding', findings)
  const work = step('working', () => workPattern(pattern))
  const piece = step('working the piece', () => workPiece(pattern))
  // Titles, notes and names are the user's own.
  const say = (name: string, does: () => string): void =>
    expectSayable(name, withoutOwn(step(name, does), pattern))
  say('the words', () => plainText(work))
  say('the words of the piece', () => pieceText(piece))
  say('the rows drawn', () => writeSvg(flatChart(work)))
  const room = { width: 120, height: 160, text: 3.2, chosen: null }
  say('the side', () => writeSvg(sidePicture(piece, room).scene))
  say('the totals', () => JSON.stringify(totalsOf(piece), infinite))
  if (long) {
    if (pattern.loom.shape === 'ring') say('the ring drawn', () => writeSvg(ringChart(work)))
    const { run } = work
    // Two waits: its strands are followed when it is looked at, its paths written when it is saved.
    const { scene } = step('the fabric', () =>
      fabricDrawing(run.rows, run.habits, pattern.loom, pattern.gauge),
    )
    say('the fabric as a file', () => writeSvg(scene))
  }
  const again = step('saving', () => readFile(writeFile(pattern)))
  if (!again.ok) throw new Error(`written again it is refused: ${again.message}`)
  return true
}

/** JSON turns numbers that are none into null. */
const infinite = (_: string, value: unknown): unknown =>
  typeof value === 'number' && !Number.isFinite(value) ? String(value) : value

/** Without what the pattern's own texts say. */
function withoutOwn(said: string, { title, designer, notes }: Pattern): string {
  const own = [title, designer, notes].some((text) => wrong.test(text))
  return own ? '' : said
}
