import * as v from 'valibot'
import { directions, headings } from '../loom/direction'
import { bindOffs, castOns, knits } from '../loom/move'
import { crossings, rowEnds, transfers } from '../loom/row'
import { excerpt, inQuotes } from '../pattern/excerpt'
import {
  cellShapes,
  limits,
  ringStarts,
  shapes,
  shortRowShapes,
  shortRowSides,
  shortRowTurns,
} from '../pattern/pattern'
import { pairs, pieceLimits } from '../pattern/piece'
import { traditions } from '../stitches/sign'
import { termSets } from '../languages/terms'

/** Each schema's message says what must stand there; the reader puts the place before it. */
const text = v.string('a text in quotes')
const flag = v.boolean('true or false')

interface Range {
  readonly least: number
  readonly most: number
}

const whole = ({ least, most }: Range) => {
  const must = `a whole number from ${least} to ${most}`
  return v.pipe(v.number(must), v.integer(must), v.minValue(least, must), v.maxValue(most, must))
}

const size = ({ least, most }: Range) => {
  const must = `a number from ${least} to ${most}`
  return v.pipe(v.number(must), v.minValue(least, must), v.maxValue(most, must))
}

const oneOf = <const T extends readonly string[]>(words: T) =>
  v.picklist(words, words.map((word) => JSON.stringify(word)).join(' or '))

const parts = <T extends v.ObjectEntries>(entries: T) =>
  v.strictObject(entries, `an object with ${Object.keys(entries).join(', ')}`)

const list = <T extends v.GenericSchema>(item: T, of: string) =>
  v.array(item, `a list of ${of} in [ ]`)

/** A list that has as many items as the limits allow; else none of them is looked at. */
const listOf = <T extends v.GenericSchema>(item: T, of: string, { least, most }: Range) => {
  const must = `a list of ${least} to ${most} ${of}`
  return v.pipe(
    v.array(v.unknown(), `a list of ${of} in [ ]`),
    v.minLength(least, must),
    v.maxLength(most, must),
    v.array(item),
  )
}

const run = (most: number) =>
  parts({ from: whole({ least: 1, most }), to: whole({ least: 1, most }) })

const row = parts({
  stitches: text,
  pegs: v.exactOptional(run(limits.pegs.most)),
  heading: v.exactOptional(oneOf(headings)),
  end: v.exactOptional(oneOf(rowEnds)),
})
const band = parts({
  from: whole({ least: 1, most: limits.rows.most }),
  to: whole({ least: 1, most: limits.rows.most }),
  times: whole(limits.times),
})

const words = v.nullable(list(text, 'lines'))

const shortText = ({ least, most }: Range) => {
  const must = `a text of ${least} to ${most} characters`
  return v.pipe(v.string(must), v.minLength(least, must), v.maxLength(most, must))
}

const somePegs = v.exactOptional(run(limits.pegs.most))
const step = v.variant(
  'step',
  [
    parts({ step: v.literal('cast on'), how: oneOf(castOns), pegs: somePegs }),
    parts({
      step: v.literal('chart'),
      chart: shortText(pieceLimits.name),
      times: whole(pieceLimits.times),
    }),
    parts({
      step: v.literal('plain'),
      stitch: text,
      rows: v.exactOptional(whole(pieceLimits.plainRows)),
      mm: v.exactOptional(size(pieceLimits.length)),
    }),
    parts({ step: v.literal('pegs'), pegs: somePegs, toAndFro: flag }),
    parts({ step: v.literal('note'), text: shortText(pieceLimits.note) }),
    parts({ step: v.literal('bind off'), how: oneOf(bindOffs), pegs: somePegs }),
  ],
  'a step: "cast on", "chart", "plain", "pegs", "note" or "bind off"',
)

const ofAnyChart = {
  name: shortText(pieceLimits.name),
  words,
  aside: list(text, 'texts'),
}

const rowChart = parts({
  ...ofAnyChart,
  columns: whole(limits.columns),
  repeat: v.nullable(run(limits.columns.most)),
  bands: listOf(band, 'bands', { least: 0, most: limits.rows.most }),
  rows: listOf(row, 'rows', limits.rows),
})

const wish = parts({
  shape: oneOf(shortRowShapes),
  turn: oneOf(shortRowTurns),
  pegs: run(limits.pegs.most),
  turned: whole({ least: 1, most: limits.pegs.most }),
  step: whole({ least: 1, most: limits.pegs.most }),
  sides: oneOf(shortRowSides),
  closeCorners: flag,
  beside: v.exactOptional(v.strictTuple([text, text], 'a list of 2 rows in [ ]')),
})

const wishChart = parts({ ...ofAnyChart, wish })

/** A chart is rows or a wish: which of them decides what else it has. */
const chart = v.lazy((entry) =>
  typeof entry === 'object' && entry !== null && 'wish' in entry ? wishChart : rowChart,
)

const pictures = parts({
  chart: shortText(pieceLimits.name),
  row: whole(limits.rows),
  from: whole(pieceLimits.moves),
  to: whole(pieceLimits.moves),
})

/** A file of the version that is written now. */
export const fileSchema = parts({
  pegwright: v.literal(5),
  title: text,
  designer: text,
  notes: text,
  loom: parts({
    shape: oneOf(shapes),
    pegs: whole(limits.pegs),
    pitch: size(limits.pitch),
    direction: oneOf(directions),
  }),
  gauge: v.nullable(parts({ stitches: size(limits.gauge), rows: size(limits.gauge) })),
  making: parts({
    knit: oneOf(knits),
    crossing: oneOf(crossings),
    transfer: oneOf(transfers),
    forBaby: flag,
  }),
  charts: listOf(chart, 'charts', pieceLimits.charts),
  steps: listOf(step, 'steps', pieceLimits.steps),
  pair: oneOf(pairs),
  pace: v.nullable(size(pieceLimits.pace)),
  swatch: v.nullable(
    parts({
      stitches: size(pieceLimits.swatchStitches),
      rows: size(pieceLimits.swatchRows),
      grams: size(pieceLimits.grams),
    }),
  ),
  pictures: listOf(pictures, 'step pictures', pieceLimits.pictures),
  readAs: parts({ size: whole(limits.sizes), needles: flag }),
  checks: parts({
    off: list(text, 'texts'),
    longestFloat: whole(limits.longestFloat),
    longestCross: size(limits.longestCross),
    rowsBetweenCrosses: v.union(
      [v.literal('habit'), whole(limits.rowsBetweenCrosses)],
      `"habit" or a whole number from 0 to ${limits.rowsBetweenCrosses.most}`,
    ),
  }),
  style: parts({
    symbols: oneOf(traditions),
    terms: oneOf(termSets),
    background: text,
    cell: oneOf(cellShapes),
    ringCastOn: oneOf(ringStarts),
    heavyEvery: whole(limits.heavyEvery),
  }),
})

export type PatternFile = v.InferOutput<typeof fileSchema>
export type RowEntry = v.InferOutput<typeof row>
export type WishEntry = v.InferOutput<typeof wish>
export type StepEntry = v.InferOutput<typeof step>
export type RunEntry = v.InferOutput<ReturnType<typeof run>>

export type SchemaResult =
  | { readonly ok: true; readonly file: PatternFile }
  | { readonly ok: false; readonly message: string }

/** Check the shape of a file. The message names the first thing that is wrong, and its place. */
export function checkShape(value: unknown): SchemaResult {
  const result = v.safeParse(fileSchema, value, { abortEarly: true })
  return result.success
    ? { ok: true, file: result.output }
    : { ok: false, message: describe(result.issues[0], hasOneChart(value)) }
}

const hasOneChart = (file: unknown): boolean => {
  const { charts } = (file ?? {}) as { charts?: unknown }
  return Array.isArray(charts) && charts.length === 1
}

function describe(issue: v.BaseIssue<unknown>, isOneChart: boolean): string {
  const path = issue.path ?? []
  const { where, name } = placeOf(
    path.map(({ key }) => key),
    isOneChart,
  )
  // JSON has no such value: it is the kind of a step, which is looked for first.
  if (issue.input === undefined) return `${where}${name} is missing.`
  if (path.at(-1)?.origin !== 'key')
    return `${where}${name} is ${show(issue.input)}; it must be ${issue.message}.`
  if (issue.expected !== 'never') return `${where}${name} is missing.`
  return `${where}${name} is unknown to this Pegwright, and saving would lose it. Remove it from the file, or open the file with the Pegwright that saved it.`
}

/** What one item of these lists is called. */
const listedAs = new Map([
  ['charts', 'chart'],
  ['rows', 'row'],
  ['bands', 'band'],
  ['steps', 'step'],
  ['pictures', 'picture'],
])

/** What a step of the way to a value says: "row 12" of [rows, 11]; null where it is no such list. */
function listed(keys: readonly unknown[]): string | null {
  const noun = typeof keys[1] === 'number' ? listedAs.get(String(keys[0])) : undefined
  return noun === undefined ? null : `${noun} ${Number(keys[1]) + 1}`
}

/**
 * [charts, 1, rows, 11, pegs, from] is "In chart 2, row 12, " and "pegs.from"; a file's only chart is
 * not named.
 */
function placeOf(keys: readonly unknown[], isOneChart: boolean): { where: string; name: string } {
  const names: string[] = []
  let rest = keys
  for (let item = listed(rest); item !== null; item = listed(rest)) {
    const isOnly = isOneChart && rest[0] === 'charts' && rest.length > 2
    if (!isOnly) names.push(item)
    rest = rest.slice(2)
  }
  const last = rest.length > 0 ? nameOf(rest) : upperFirst(names.pop() ?? '')
  return { where: names.length > 0 ? `In ${names.join(', ')}, ` : '', name: last }
}

const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** Names are quoted, list places counted from 1: "checks.off", item 2. */
const nameOf = (keys: readonly unknown[]): string => {
  const names = keys
    .filter((key) => typeof key !== 'number')
    .map((key) => excerpt(String(key)))
    .join('.')
  const item = keys.find((key) => typeof key === 'number')
  return item === undefined ? `"${names}"` : `Item ${Number(item) + 1} of "${names}"`
}

function show(value: unknown): string {
  if (value === Infinity || value === -Infinity) return 'too large a number'
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'an object'
  return typeof value === 'string' ? inQuotes(value) : String(value)
}
