import { inOrder } from '../loom/gather'
import { loomRow } from '../loom/row'
import { pegsInWork } from '../loom/state'
import type { Finding as CheckFinding } from '../checks/finding'
import type { Run } from '../pattern/pattern'
import type { PatternRow } from '../pattern/row'
import type { Work } from '../pattern/work'
import type { Terms } from '../languages/terms'
import type { Stitch } from '../stitches/stitch'
import type { ToldDifference } from '../words/compare/told/told'
import { languages, termOf } from '../languages/languages'
import type { ReadRow, Reading, Remark } from '../words/read/reading'
import { writeStitches } from '../words/sentence'
import { oneLine } from './files'
import { pegsNamed } from '../languages/english/pegs'
import type { Unit } from '../languages/unit'
import { unitOfRow } from '../pattern/unit'

/** One real row: bands and references are worked out. */
export interface RowEntry {
  readonly label: string
  /** Loops on the loom before it, taken, made and after it. */
  readonly before: number
  readonly takes: number
  readonly makes: number
  readonly after: number
  /** One abbreviation each, in working order. */
  readonly stitches: readonly string[]
  /** Only where the piece has several sections. */
  readonly section?: string
}

export interface FindingEntry {
  readonly rule: string
  readonly severity: 'error' | 'warning' | 'hint'
  /** The row's label; null: the whole piece. */
  readonly row: string | null
  /** From 1, both included; null: no special pegs. */
  readonly pegs: readonly [first: number, last: number] | null
  readonly message: string
  readonly advice: string
  /** Only where the piece has several sections; null: the whole piece. */
  readonly section?: string | null
}

/** Is the row of this label, in this section, a round? Rows of words are in none. */
export type KindOf = (label: string, section?: string | null) => Unit

/** What is known of one file. */
export interface FileReport {
  readonly file: string
  /** Rounds of a ring or rows: for the plain output. */
  readonly kindOf: KindOf
  readonly rows: readonly RowEntry[]
  readonly findings: readonly FindingEntry[]
}

const pegsFromOne = (pegs: Run | null): FindingEntry['pegs'] => pegs && [pegs.from + 1, pegs.to + 1]

export const rowsRead = ({ rows }: Reading, terms: Terms): RowEntry[] =>
  rows.map(({ label, before, takes, makes, after, stitches }) => ({
    label,
    before,
    takes,
    makes,
    after,
    stitches: stitches.map(({ stitch }) => termOf(stitch, terms).abbr),
  }))

const stitchesOf = (row: PatternRow, heading: 'forward' | 'back'): Stitch[] =>
  inOrder(row, heading).map(({ stitch }) => stitch as Stitch)

export const rowsWorked = ({ run, passes }: Work, terms: Terms): RowEntry[] =>
  run.rows.map(({ row, heading, before }, pass) => {
    const loops = pegsInWork(before)
    return {
      label: String(passes[pass]?.number ?? pass + 1),
      before: loops,
      takes: row.takes,
      makes: row.makes,
      after: loops - row.takes + row.makes,
      stitches: stitchesOf(row, heading).map((stitch) => termOf(stitch, terms).abbr),
    }
  })

export const remarkEntry =
  ({ rows }: Reading) =>
  ({ rule, severity, row, pegs, message, advice }: Remark): FindingEntry => ({
    rule,
    severity,
    row: row === null ? null : (rows[row]?.label ?? null),
    pegs: pegsFromOne(pegs),
    message,
    advice,
  })

/** `labelOf`: the label of a chart row. */
export const checkEntry =
  (labelOf: (row: number) => string | null) =>
  ({ rule, severity, place, message, advice }: CheckFinding): FindingEntry => ({
    rule,
    severity,
    row: place.row === null ? null : labelOf(place.row),
    pegs: pegsFromOne(place.pegs),
    message,
    advice,
  })

export const differenceEntry =
  ({ rows }: Reading, { numbers }: Work) =>
  ({
    difference: { rule, severity, row, read, message, advice },
    places: [pegs],
  }: ToldDifference): FindingEntry => ({
    rule,
    severity,
    row:
      row !== null
        ? String(numbers[row] ?? row + 1)
        : read !== null
          ? (rows[read]?.label ?? null)
          : null,
    pegs: pegsFromOne(pegs ?? null),
    message,
    advice,
  })

export const labelInWork =
  ({ numbers }: Work) =>
  (row: number): string | null =>
    numbers[row] === undefined ? null : String(numbers[row])

export const kindInWork = ({ run, passes }: Work): KindOf => {
  const { shape } = run.habits
  const kinds = new Map(
    run.rows.map((worked, pass) => [String(passes[pass]?.number ?? 0), unitOfRow(worked, shape)]),
  )
  return (label) => kinds.get(label) ?? (shape === 'ring' ? 'round' : 'row')
}

export const kindInWords =
  ({ settings, rows }: Reading): KindOf =>
  (label) => {
    const row = rows.find((one) => one.label === label)
    const part = row && (row.run !== null || row.end !== 'on')
    return settings.shape === 'ring' && !part ? 'round' : 'row'
  }

/** "Rnd 7". */
export const rowName = (label: string, kind: Unit): string =>
  languages.us.label(kind, 1, 1).replace('1', () => label)

/** "error row-count Rnd 7, pegs 3-4: message advice" */
export function findingLine(
  { rule, severity, row, pegs, message, advice, section = null }: FindingEntry,
  kindOf: KindOf,
): string {
  const name = row === null ? '' : rowName(row, kindOf(row, section))
  const where = [
    ...(section === null ? [] : [section]),
    ...(row === null ? [] : [name]),
    ...(pegs ? [pegsNamed({ from: pegs[0] - 1, to: pegs[1] - 1 })] : []),
  ].join(', ')
  // A reader's message begins with the row's name, which stands here already.
  const named = name && `${name}: `
  const said = named && message.startsWith(named) ? message.slice(named.length) : message
  return oneLine(`${severity} ${rule}${where ? ` ${where}` : ''}: ${said} ${advice}`)
}

/** "Rnd 7: k2, p2, k2tog (24 to 23)", with the shortest repeats there are. */
export function rowLine(
  { label, before, takes, after, stitches, run, end, heading }: ReadRow,
  kindOf: KindOf,
  terms: Terms,
): string {
  const sites = stitches.map(({ stitch }, peg) => ({ stitch, peg }))
  const row = loomRow(sites, 0, sites.length - 1, null, 'on')
  const said = sites.length > 0 ? writeStitches(row, 'forward', takes === before, terms) : 'nothing'
  const [first, last] = heading === 'back' ? [run?.to, run?.from] : [run?.from, run?.to]
  const pegs = first === undefined || last === undefined ? '' : `pegs ${first + 1} to ${last + 1}: `
  const turn = { on: '', 'German turn': '; German turn', wrap: '; wrap and turn' }[end]
  return `${rowName(label, kindOf(label))}: ${pegs}${said}${turn} (${before} to ${after})`
}

/** The JSON of one or several files: entries name their file where there are several. */
export function jsonOf(reports: readonly FileReport[]): string {
  const many = reports.length > 1
  const named = <T>(file: string, entries: readonly T[]) =>
    many ? entries.map((entry) => ({ ...entry, file })) : entries
  return JSON.stringify({
    rows: reports.flatMap(({ file, rows }) => named<RowEntry>(file, rows)),
    findings: reports.flatMap(({ file, findings }) => named<FindingEntry>(file, findings)),
  })
}

export const hasErrors = (reports: readonly FileReport[]): boolean =>
  reports.some(({ findings }) => findings.some(({ severity }) => severity === 'error'))
