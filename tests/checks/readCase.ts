import { setWords } from '../../src/pattern/edits/words'
import { setAside } from '../../src/pattern/edits/settings'
import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import { directions } from '../../src/loom/direction'
import { knits } from '../../src/loom/move'
import type { RowEnd } from '../../src/loom/row'
import { severities, type Severity } from '../../src/pattern/finding'
import {
  newPattern,
  shapes,
  type Band,
  type Pattern,
  type Row,
  type Run,
} from '../../src/pattern/pattern'
import { findStitch } from '../../src/stitches/vocabulary'
import { cellsFrom } from '../cells'

/**
 * Reads the annotated charts in cases/*.txt; how they are written stands in cases/README.txt.
 * Mistakes in a case are thrown with its line, so that whoever writes one sees them.
 */
export interface Case {
  readonly name: string
  readonly pattern: Pattern
  readonly expected: readonly Expected[]
}

export interface Expected {
  readonly severity: Severity
  readonly rule: string
  readonly row: number | null
  readonly pegs: Run | null
  readonly message: Words
  /** What to do. */
  readonly advice: Words
  /** Labels of mends that must be offered; where one is whole, these are all that may be, in this order. */
  readonly fixes: readonly ExpectedFix[]
}

/** Some of what is said, or, between quotation marks, all of it. */
export interface Words {
  readonly text: string
  readonly whole: boolean
}

export interface ExpectedFix extends Words {
  /** What it leaves otherwise in the pattern, as `changed` tells it; '' for any. */
  readonly leaves: string
}

export function readCases(text: string): Case[] {
  return text
    .split(/^=== /m)
    .slice(1)
    .map((part) => {
      const [name = '', ...lines] = part.split('\n')
      try {
        return readCase(name.trim(), lines)
      } catch (problem) {
        throw new Error(`Case "${name.trim()}": ${(problem as Error).message}`, { cause: problem })
      }
    })
}

function readCase(name: string, lines: readonly string[]): Case {
  let pattern = newPattern(24, 1)
  pattern = withChart({ ...pattern, gauge: { stitches: 22, rows: 30 } }, { columns: 0, rows: [] })
  const expected: Expected[] = []
  for (const line of lines) {
    const text = line.replace(/#.*/, '').trim()
    if (text === '') continue
    const mark = text[0]
    if (mark === '!') expected.push(readExpected(text, chartOn(pattern).rows.length))
    else if (mark === '+' || mark === '>') {
      const last = expected.pop()
      if (!last) throw new Error(`"${text}" follows no finding.`)
      const [words = '', leaves = ''] = text.slice(1).split('=>')
      expected.push(
        mark === '>'
          ? { ...last, advice: readWords(words) }
          : { ...last, fixes: [...last.fixes, { ...readWords(words), leaves: leaves.trim() }] },
      )
    } else if (/^\d/.test(text)) pattern = addRows(pattern, text)
    else pattern = readHeader(pattern, text)
  }
  return { name, pattern, expected }
}

const run = (from: string, to = from): Run => ({ from: Number(from) - 1, to: Number(to) - 1 })

function readWords(words: string): Words {
  const [, whole] = /^"(.*)"$/.exec(words.trim()) ?? []
  return { text: whole ?? words.trim(), whole: whole !== undefined }
}

function readExpected(text: string, rows: number): Expected {
  const found = /^! (\w+) ([\w-]+)(?: (chart))?(?: pegs? (\d+)(?:-(\d+))?)?: (.*)$/.exec(text)
  if (!found) throw new Error(`"${text}" is no finding: "! error rule pegs 1-2: words".`)
  const [, severity, rule = '', chart, from, to, message = ''] = found
  const known = severities.find((one) => one === severity)
  if (!known) throw new Error(`"${severity}" is none of ${severities.join(', ')}.`)
  return {
    severity: known,
    rule,
    row: chart || rows === 0 ? null : rows - 1,
    pegs: from ? run(from, to) : null,
    message: readWords(message),
    advice: readWords(''),
    fixes: [],
  }
}

const one = <T extends string>(list: readonly T[], words: readonly string[]): T | undefined =>
  list.find((item) => words.includes(item))

function readHeader(pattern: Pattern, text: string): Pattern {
  const [key = '', rest = ''] = text.split(/:(.*)/).map((part) => part.trim())
  const words = rest.split(/\s+/)
  const { loom, making, checks } = pattern
  switch (key) {
    case 'loom': {
      const pegs = Number(words.find((word) => /^\d+$/.test(word)))
      return {
        ...pattern,
        loom: {
          shape: one(shapes, words) ?? loom.shape,
          pegs: pegs || loom.pegs,
          pitch: Number(/([\d.]+) ?mm/.exec(rest)?.[1] ?? loom.pitch),
          direction: one(directions, words) ?? loom.direction,
        },
        making: { ...making, knit: one(knits, words) ?? making.knit },
      }
    }
    case 'repeat': {
      const [from = '', to] = rest.split('-')
      return withChart(pattern, { repeat: run(from, to) })
    }
    case 'bands': {
      const bands = [...rest.matchAll(/(\d+)-(\d+) x ?(\d+)/g)].map(([, from = '', to, times]) => ({
        ...run(from, to),
        times: Number(times),
      }))
      return withChart(pattern, { bands })
    }
    case 'title':
      return { ...pattern, title: rest }
    case 'notes':
      return { ...pattern, notes: rest }
    case 'words':
      return setWords(pattern, rest)
    case 'for babies':
      return { ...pattern, making: { ...making, forBaby: rest !== 'no' } }
    case 'gauge':
      return { ...pattern, gauge: null }
    case 'longest float':
      return { ...pattern, checks: { ...checks, longestFloat: Number(rest) } }
    case 'longest cross':
      return { ...pattern, checks: { ...checks, longestCross: Number.parseFloat(rest) } }
    case 'rows between crosses':
      return { ...pattern, checks: { ...checks, rowsBetweenCrosses: Number(rest) } }
    case 'off':
      return { ...pattern, checks: { ...checks, off: words } }
    case 'aside':
      return setAside(pattern, rest, true)
    default:
      throw new Error(`"${key}" is no heading of a case.`)
  }
}

const ends: readonly (readonly [RegExp, RowEnd])[] = [
  [/German turn/, 'German turn'],
  [/wrap/, 'wrap'],
]

function addRows(pattern: Pattern, text: string): Pattern {
  const found = /^(\d+)(?:-(\d+))?(?: |:)(?:([^:]*):)?(.*)$/.exec(text)
  if (!found) throw new Error(`"${text}" is no row.`)
  const [, first = '', last = first, head = '', stitches = ''] = found
  const chart = chartOn(pattern)
  if (Number(first) !== chart.rows.length + 1)
    throw new Error(`Row ${first} follows row ${chart.rows.length}.`)
  const pegs = /pegs? (\d+)(?:-(\d+))?/.exec(head)
  const covers = pegs ? run(pegs[1] ?? '', pegs[2]) : null
  const cells = readStitches(stitches)
  const columns = chart.columns || (covers ? pattern.loom.pegs : cells.length)
  const length = covers ? covers.to - covers.from + 1 : columns
  const full =
    covers && cells.length === length && length !== columns
      ? Array.from({ length: columns }, (_, column) => cells[column - covers.from] ?? 'k')
      : cells
  if (full.length !== columns)
    throw new Error(`Row ${first} has ${full.length} columns; the chart has ${columns}.`)
  const row = (): Row => ({
    cells: cellsFrom(full),
    run: covers,
    heading: /back/.test(head) ? 'back' : /forward/.test(head) ? 'forward' : null,
    end: ends.find(([word]) => word.test(head))?.[1] ?? 'on',
  })
  const added = Array.from({ length: Number(last) - Number(first) + 1 }, row)
  return withChart(pattern, { columns, rows: [...chart.rows, ...added] })
}

/** "k2 p2 (yo, k1)x3 2/2 LC sl 1/1 RC[1]": a number in square brackets cuts the stitch short. */
export function readStitches(text: string): string[] {
  const tokens = text.match(/\d\/\d [LR]P*C|\)\s?x\s?\d+|[()]|\[\d+\]|[\w]+/g) ?? []
  const open: string[][] = [[]]
  for (const token of tokens) {
    const here = open.at(-1)
    if (!here) throw new Error(`Too many brackets are closed in "${text}".`)
    if (token === '(') open.push([])
    else if (token.startsWith(')')) {
      const group = open.pop() ?? []
      const times = Number(/\d+/.exec(token)?.[0] ?? 1)
      for (let time = 0; time < times; time++) open.at(-1)?.push(...group)
    } else if (token.startsWith('[')) {
      const start = here.findLastIndex((cell) => cell !== '')
      here.length = start + Number(token.slice(1, -1))
    } else here.push(...readToken(token))
  }
  return open.flat()
}

function readToken(token: string): string[] {
  const whole = findStitch(token)
  const counted = /^(\D\w*?)(\d+)$/.exec(token)
  const stitch = whole ?? (counted?.[1] ? findStitch(counted[1]) : undefined)
  if (!stitch) throw new Error(`There is no stitch "${token}".`)
  const times = whole ? 1 : Number(counted?.[2] ?? 1)
  const cells = Array.from({ length: stitch.width }, (_, i) => (i === 0 ? stitch.id : ''))
  return Array.from({ length: times }, () => cells).flat()
}

/** What is otherwise in the second pattern, in the words of a case: "2: k12; repeat 1-9". */
export function changed(before: Pattern, after: Pattern): string {
  const [old, made] = [chartOn(before), chartOn(after)]
  const parts: string[] = []
  if (after.loom !== before.loom) parts.push(`${after.loom.pegs} pegs`)
  if (made.columns !== old.columns) parts.push(`${made.columns} columns`)
  if (made.repeat !== old.repeat) parts.push(`repeat ${made.repeat ? named(made.repeat) : 'none'}`)
  if (tellBands(made.bands) !== tellBands(old.bands)) parts.push(`bands ${tellBands(made.bands)}`)
  if (after.making.forBaby !== before.making.forBaby) parts.push('for babies')
  if (made.rows.length !== old.rows.length) parts.push(`${made.rows.length} rows`)
  for (const [index, row] of made.rows.entries())
    if (!old.rows.includes(row)) parts.push(`${index + 1}${tellRow(row)}`)
  return parts.join('; ')
}

const named = ({ from, to }: Run): string => `${from + 1}-${to + 1}`

const tellBands = (bands: readonly Band[]): string =>
  bands.map((band) => `${named(band)} x${band.times}`).join(' ') || 'none'

function tellRow({ cells, run: covers, heading, end }: Row): string {
  const way = [covers ? `pegs ${named(covers)}` : '', heading ?? ''].filter((word) => word !== '')
  const head = [way.join(' '), end === 'on' ? '' : end].filter((word) => word !== '').join(', ')
  const words: { readonly id: string; width: number }[] = []
  for (const cell of cells) {
    const last = words.at(-1)
    if (cell) words.push({ id: cell.id, width: 1 })
    else if (last) last.width++
  }
  const stitches: { readonly word: string; count: number }[] = []
  for (const { id, width } of words) {
    const word = width === (findStitch(id)?.width ?? 1) ? id : `${id}[${width}]`
    const last = stitches.at(-1)
    if (last?.word === word) last.count++
    else stitches.push({ word, count: 1 })
  }
  const told = stitches.map(({ word, count }) =>
    count === 1 ? word : /^[a-z]+$/.test(word) ? `${word}${count}` : `(${word})x${count}`,
  )
  return `${head === '' ? '' : ` ${head}`}: ${told.join(' ')}`
}
