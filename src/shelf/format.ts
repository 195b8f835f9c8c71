/**
 * The file format: JSON, UTF-8, made to be read by people and compared line by line.
 *
 * - `"pegwright"` is the version of the format, a whole number from 1 on.
 * - Rows, columns, pegs and bands are numbered from 1, as they are printed, first and last
 *   included. Rows are rows of the chart, from the cast-on up, each counted once whatever its band.
 * - Column 1 holds peg 1. A row's stitches are one text, see formatCells.ts.
 * - A row's `pegs`, `heading` and `end` are left out where it covers all pegs, goes on as the row
 *   before leaves it, and does not turn.
 * - Own words are a list of their lines; null: the words are written from the chart. Sizes are
 *   numbered from 1.
 * - A chart is rows or a wish: instead of `columns`, `repeat`, `bands` and `rows` it can have a `wish`, from which they
 *   are made for this loom. `beside` are two rows of stitches, one for each peg, that the other pegs go on with.
 * - `steps` is what is done from the cast-on to the bind-off; a step names the chart that it works. Each
 *   chart has its own words and findings set aside (`aside`).
 * - Lengths are millimetres; a gauge is in stitches and rows to 100 mm.
 *
 * Keys that are not known are refused, since saving would lose them.
 */
import type { Pattern } from '../pattern/pattern'
import { inQuotes } from '../pattern/excerpt'
import { standardVocabulary } from '../stitches/vocabulary'
import { Misfit, toChart, toChartEntry } from './formatChart'
import { parseJson } from './formatJson'
import { toPictures, toPicturesEntry, toStep, toStepEntry } from './formatSteps'
import { checkShape, type PatternFile } from './formatSchema'
import { otherFile, upgrade, version } from './formatVersions'

export type ReadResult =
  | { readonly ok: true; readonly pattern: Pattern }
  /** What is wrong and where, in one or two sentences for the user. */
  | { readonly ok: false; readonly message: string }

/** Read a file's text. Never throws; a file is taken whole or refused whole. */
export function readFile(text: string): ReadResult {
  const json = parseJson(text.startsWith('\uFEFF') ? text.slice(1) : text)
  if (!json.ok) {
    const { line, column, reason } = json
    return refuse(
      /^\s*\{/.test(text)
        ? `This Pegwright file is damaged at line ${line}, column ${column}: ${reason}. Open an earlier copy, or mend that line in a text editor.`
        : otherFile,
    )
  }
  const upgraded = upgrade(json.value)
  if (!upgraded.ok) return upgraded
  const shape = checkShape(upgraded.value)
  if (!shape.ok) return refuse(shape.message)
  try {
    return { ok: true, pattern: toPattern(shape.file) }
  } catch (error) {
    if (error instanceof Misfit) return refuse(error.message)
    throw error
  }
}

/** Write a pattern as text: keys in a fixed order, two spaces, one line a row. */
export const writeFile = (pattern: Pattern): string => `${print(toFile(pattern), 0)}\n`

const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/

/** A name for the pattern's file that every system takes. */
export const fileName = (pattern: Pick<Pattern, 'title'>): string =>
  `${fileStem(pattern)}.pegwright.json`

/** The same without its ending, for what is saved beside it. */
export function fileStem({ title }: Pick<Pattern, 'title'>): string {
  const words =
    title
      .normalize('NFC')
      .toLowerCase()
      .match(/[\p{L}\p{N}\p{M}]+/gu) ?? []
  const name = Array.from(words.join('-')).slice(0, 60).join('').replace(/-+$/, '')
  return reserved.test(name) ? `chart-${name}` : name || 'untitled'
}

const refuse = (message: string): ReadResult => ({ ok: false, message })

function toPattern({ pegwright: _, ...file }: PatternFile): Pattern {
  const { style } = file
  const background = standardVocabulary.find(style.background)
  if (background?.width !== 1)
    throw new Misfit(
      `"style.background" is ${inQuotes(style.background)}; it must be a stitch of one column, such as "k".`,
    )
  const names = file.charts.map(({ name }) => name)
  const twice = names.find((name, index) => names.indexOf(name) !== index)
  if (twice !== undefined)
    throw new Misfit(`Two charts are called ${inQuotes(twice)}; names must differ.`)
  const [first, ...others] = file.charts.map((chart) =>
    toChart(chart, file.loom, names.length === 1),
  )
  if (!first) throw new Misfit('The file has no chart.')
  return {
    ...file,
    vocabulary: standardVocabulary,
    style: { ...style, background },
    charts: [first, ...others],
    steps: file.steps.map((step, index) => toStep(step, index + 1, names)),
    pictures: file.pictures.map((picture, index) => toPictures(picture, index + 1, names)),
    readAs: { ...file.readAs, size: file.readAs.size - 1 },
  }
}

function toFile(pattern: Pattern): PatternFile {
  const { title, designer, notes, loom, gauge, making, swatch, readAs, checks, style } = pattern
  return {
    pegwright: version,
    title,
    designer,
    notes,
    loom: inOrder(loom, ['shape', 'pegs', 'pitch', 'direction']),
    gauge: gauge && inOrder(gauge, ['stitches', 'rows']),
    making: inOrder(making, ['knit', 'crossing', 'transfer', 'forBaby']),
    charts: pattern.charts.map(toChartEntry),
    steps: pattern.steps.map(toStepEntry),
    pair: pattern.pair,
    pace: pattern.pace,
    swatch: swatch && inOrder(swatch, ['stitches', 'rows', 'grams']),
    pictures: pattern.pictures.map(toPicturesEntry),
    readAs: { size: readAs.size + 1, needles: readAs.needles },
    checks: {
      ...inOrder(checks, ['longestFloat', 'longestCross', 'rowsBetweenCrosses']),
      off: [...checks.off],
    },
    style: {
      ...inOrder(style, ['symbols', 'terms']),
      background: style.background.id,
      ...inOrder(style, ['cell', 'ringCastOn', 'heavyEvery']),
    },
  }
}

/** The named keys in this order, whatever order the object was made in. */
const inOrder = <T extends object, K extends keyof T>(whole: T, keys: readonly K[]) =>
  Object.fromEntries(keys.map((key) => [key, whole[key]])) as Pick<T, K>

/**
 * Lists down to the third level go one item a line; what lies deeper goes on one line. The rows of a
 * chart lie two levels deeper and are written as a list too, and so are the parts of a wish.
 */
function print(value: unknown, depth: number, deepest = 2): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  const isList = Array.isArray(value)
  const [open, close] = isList ? '[]' : '{}'
  const items = isList
    ? value.map((item: unknown) => print(item, depth + 1, deepest))
    : Object.entries(value).map(
        ([key, item]) =>
          `"${key}": ${print(item, depth + 1, key === 'charts' || key === 'wish' ? deepest + 1 : deepest)}`,
      )
  if (items.length === 0) return `${open}${close}`
  if (depth > deepest || (depth === deepest && !isList))
    return `${open} ${items.join(', ')} ${close}`
  const indent = '  '.repeat(depth)
  return `${open}\n${items.map((item) => `${indent}  ${item}`).join(',\n')}\n${indent}${close}`
}
