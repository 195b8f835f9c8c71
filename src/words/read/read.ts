import { readDefinitions, statedDirection, statedKnit, statedPegs } from './terms/definitions'
import { closeTurns, turnsGerman } from './rows/doubled'
import { inQuotes } from '../../pattern/excerpt'
import { figuresOf, isTooLarge, readLimits } from './limits'
import { Memory, shapesFrom, usable } from './memory'
import type { Body, RelativeRemark } from './nodes'
import { outline, type LineShape, type Statement } from './lines/outline'
import type { Reading, ReadSettings, Remark, TextRange, Token } from './reading'
import { isFor, sizeNames } from './lines/onlySizes'
import { isProse } from './lines/prose'
import {
  askSize,
  noRows,
  notEnglish,
  sizeLists,
  statedPegsRemark,
  tooLarge,
  tooLong,
  tooManyRows,
} from './remarks/rows'
import { Resolver } from './rows/resolve'
import { statedGauge, statedTitle } from './lines/stated'
import { strangeRows, strangeText } from './lines/strange'

/**
 * Read instructions into rows. Never fails: what is not understood becomes remarks. With the
 * reading of an earlier version, lines that have not changed are taken over from it.
 */
export function read(text: string, settings: ReadSettings, previous?: Reading): Reading {
  const cut = text.length > readLimits.text ? text.slice(0, readLimits.text) : text
  const shapes = new Map<string, LineShape>()
  const last = previous ? (Memory.of.get(previous) ?? null) : null
  const { statements: all, sections, titles } = outline(cut, shapesFrom(last, shapes))
  const { statements, unclear } = forSize(all, cut, settings.size)
  const definitions = readDefinitions(statements)
  const before = usable(previous, settings, definitions.key)
  const memory = new Memory(settings, definitions, before, previous ?? null)
  for (const [line, shape] of shapes) memory.shapes.set(line, shape)

  const told = closeTurns(tell(statements, definitions.ranges, sections.length > 0, memory))
  const german = definitions.doubled || told.some(({ body }) => turnsGerman(body.items))
  const resolver = new Resolver(memory, german, statements === all)
  let sectionAt = -1
  const ordered = new Set<Statement>()
  told.forEach(({ statement, body, use }, index) => {
    const now = sections.findLastIndex(({ range }) => range.from <= statement.range.from)
    if (now !== sectionAt) resolver.startSection(sections[now]?.title ?? '')
    sectionAt = now
    if (statement.order && resolver.order(statement, nextNumber(told, index + 1)))
      return void ordered.add(statement)
    if (use === 'unread' || (use === 'order' && isLost(statement))) resolver.leaveOut(statement)
    else if (use === 'counts') resolver.addCounts(body.said, statement.from)
    else if (use === 'rows') resolver.add(statement, body, nextNumber(told, index + 1))
  })
  resolver.end()

  const pegs = statedPegs(cut, settings.size)
  const strange =
    resolver.rows.length > 0
      ? strangeRows(told.filter(({ use }) => use === 'rows'))
      : strangeText(cut)
  const remarks: Remark[] = strange
    ? []
    : [
        ...resolver.remarks,
        ...sizeRemarks(told),
        ...beyondLimits(told, cut, resolver.rows),
        ...unclear,
      ]
  const whole = (remark: RelativeRemark): void => {
    remarks.push(ofNoRow(remark))
  }
  if (pegs && pegs.pegs !== settings.pegs)
    whole(statedPegsRemark(pegs.pegs, settings.pegs, pegs.range))
  if (cut !== text)
    whole(
      tooLong('The text', `${figuresOf(readLimits.text)} characters`, {
        from: cut.length,
        to: text.length,
      }),
    )
  const start = Math.max(0, cut.search(/\S/))
  const firstLine = { from: start, to: start + (/.*/.exec(cut.slice(start))?.[0].length ?? 0) }
  if (strange) whole(notEnglish(strange, firstLine))
  else if (resolver.rows.length === 0 && cut.trim() !== '' && !remarks.some(isError))
    whole(noRows(firstLine))
  const knit = statedKnit(cut)
  const gauge = statedGauge(cut)
  const title = statedTitle(cut, titles)
  const direction = statedDirection(cut)
  let tokens: readonly Token[] | null = null
  const reading: Reading = {
    text,
    settings,
    get tokens() {
      return (tokens ??= tokensOf(told, ordered, titles, definitions.ranges))
    },
    // Of words in another language nothing is known: what figures there are mean something else.
    rows: strange ? [] : resolver.rows,
    bands: strange ? [] : resolver.bands,
    edges: strange ? [] : resolver.edges,
    sections,
    remarks,
    stated: {
      ...(knit && { knit }),
      ...(direction && { direction }),
      ...(pegs && { pegs: pegs.pegs }),
      ...(gauge && { gauge: gauge.gauge }),
      ...(title !== null && { title }),
    },
  }
  Memory.of.set(reading, memory)
  return reading
}

/** A remark that belongs to no row. */
const ofNoRow = (remark: RelativeRemark): Remark => ({ ...remark, row: null, pegs: null })

const isError = ({ severity }: Remark): boolean => severity === 'error'

/** Statements that are for the size that is read, and remarks on those of which it is not plain. */
function forSize(
  all: readonly Statement[],
  text: string,
  size: number,
): { statements: readonly Statement[]; unclear: readonly Remark[] } {
  if (all.every(({ only }) => only === null)) return { statements: all, unclear: [] }
  const names = sizeNames(text)
  const unclear: Remark[] = []
  const statements = all.filter(({ only, range }) => {
    const fits = only === null || isFor(only, size, names)
    if (fits === null && only !== null && unclear.length < readLimits.remarks)
      unclear.push(ofNoRow(askSize(only, range)))
    return fits ?? true
  })
  return { statements, unclear }
}

/** An order that nothing could be made of, and that surely tells rows. */
const isLost = ({ order }: Statement): boolean =>
  order !== null && (order.do !== 'work' || order.often.kind !== 'none')

interface UsedLine {
  readonly statement: Statement
  readonly body: Body
  readonly use: 'rows' | 'counts' | 'unread' | 'order'
}

/** "Cont in same manner", "Keeping cont of pat" */
const goesOn = /^\s*(?:cont|continue|keep|keeping|proceed)\b(?!.*follows)/i

/** The statements that tell rows; all others are prose, and say nothing that is worked. */
function tell(
  statements: readonly Statement[],
  defined: readonly TextRange[],
  hasSections: boolean,
  memory: Memory,
): UsedLine[] {
  const definitions = new Set(defined)
  const told: UsedLine[] = []
  for (const statement of statements) {
    const { head, text: words, section, range, order } = statement
    if (order && (order.do !== 'work' || order.strict)) {
      told.push({ statement, body: memory.body(''), use: 'order' })
      continue
    }
    if (section === 'key' || definitions.has(range)) continue
    if (!head && (section === 'prose' || (section === 'open' && hasSections))) continue
    if (!head && isProse(words)) continue
    const body = memory.body(words)
    const works = body.items.some((item) => item.do !== 'gap') || body.workEven
    if (head || body.reference || (works && body.known > 2 * body.unknown))
      told.push({ statement, body, use: 'rows' })
    else if (body.said.length > 0 && body.unknown === 0)
      told.push({ statement, body, use: 'counts' })
    else if (body.measured || body.rows > 1 || goesOn.test(words))
      told.push({ statement, body, use: 'unread' })
    else if (order) told.push({ statement, body: memory.body(''), use: 'order' })
  }
  return told
}

/** The number of the head that comes next; null if no numbered row does. */
function nextNumber(told: readonly UsedLine[], index: number): number | null {
  let at = index
  while (at < told.length && told[at]?.use !== 'rows') at++
  return told[at]?.statement.head?.numbers[0] ?? null
}

/** More figures than the largest number that is read has. */
const manyFigures = new RegExp(String.raw`\d{${String(readLimits.number).length + 1},}`, 'g')

/** Rows and numbers beyond those that are read, each at the first row of its line. */
function beyondLimits(
  told: readonly UsedLine[],
  text: string,
  rows: Reading['rows'],
): readonly Remark[] {
  const remarks: Remark[] = []
  const firstRows = new Map<number, number>()
  rows.forEach(({ saidAt }, row) => {
    if (!firstRows.has(saidAt.from)) firstRows.set(saidAt.from, row)
  })
  for (const { statement, body } of told) {
    const { range, from: afterHead } = statement
    const row = firstRows.get(range.from) ?? null
    if (namesTooMany(statement, body)) {
      const head = text.slice(range.from, afterHead).replace(/[\s:]+$/, '')
      remarks.push({ ...tooManyRows(head ? inQuotes(head) : 'This line', range), row, pegs: null })
    }
    for (const { 0: said, index } of text.slice(range.from, range.to).matchAll(manyFigures)) {
      if (!isTooLarge(Number(said.slice(0, 9)))) continue
      const from = range.from + index
      remarks.push({ ...tooLarge(said, { from, to: from + said.length }), row, pegs: null })
    }
    if (remarks.length >= readLimits.remarks) return remarks.slice(0, readLimits.remarks)
  }
  return remarks
}

function namesTooMany({ head }: Statement, { reference }: Body): boolean {
  const named = reference?.named.kind === 'numbers' ? reference.named.numbers : []
  return Math.max(head?.numbers.length ?? 0, named.length) >= readLimits.rowsInLine
}

/** Lists of sizes that are longer or shorter than most. */
function sizeRemarks(told: readonly UsedLine[]): Remark[] {
  const lists = told.flatMap(({ statement, body }) =>
    body.sizes.map(({ length, range }) => ({
      length,
      range: { from: range.from + statement.from, to: range.to + statement.from },
    })),
  )
  const counts = new Map<number, number>()
  for (const { length } of lists) counts.set(length, (counts.get(length) ?? 0) + 1)
  const [usual] = [...counts].sort((a, b) => b[1] - a[1])[0] ?? [0]
  return lists
    .filter(({ length }) => length !== usual)
    .slice(0, readLimits.remarks)
    .map(({ length, range }) => ofNoRow(sizeLists(length, usual, range)))
}

function tokensOf(
  told: readonly UsedLine[],
  ordered: ReadonlySet<Statement>,
  titles: readonly TextRange[],
  defined: readonly TextRange[],
): readonly Token[] {
  const tokens: Token[] = [
    ...titles.map((range): Token => ({ kind: 'heading', range })),
    ...defined.map((range): Token => ({ kind: 'definition', range })),
  ]
  for (const { statement, body } of told) {
    const { head, range, from } = statement
    if (ordered.has(statement)) {
      tokens.push({ kind: 'reference', range })
      continue
    }
    if (head)
      tokens.push({ kind: 'head', range: { from: range.from, to: range.from + head.range.to } })
    const { kinds, bounds } = body.tokens
    kinds.forEach((kind, i) => {
      const [start, end] = [bounds[2 * i] ?? 0, bounds[2 * i + 1] ?? 0]
      tokens.push({ kind, range: { from: start + from, to: end + from } })
    })
  }
  return tokens.sort((a, b) => a.range.from - b.range.from)
}
