import { inOrder } from '../loom/gather'
import { loomRow } from '../loom/row'
import { pegsInWork } from '../loom/state'
import type { Notice } from '../pattern/finding'
import type { Run } from '../pattern/pattern'
import type { PatternRow } from '../pattern/row'
import type { Work } from '../pattern/work'
import type { Terms } from '../languages/terms'
import type { Stitch } from '../stitches/stitch'
import { languages, termOf } from '../languages/languages'
import type { ReadRow, ReadSettings, Reading } from '../words/read/reading'
import { unitOfRead } from '../words/read/rows/wordsOfRows'
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
  /** Only where the piece has several charts. */
  readonly chart?: string
}

export interface FindingEntry extends Notice {
  /** The row's label; null: the whole piece. */
  readonly row: string | null
  /** "Rnd 7", for the plain output only. */
  readonly name: string | null
  /** From 1, both included; null: no special pegs. */
  readonly pegs: readonly [first: number, last: number] | null
  /** Only where the piece has several charts; null: the whole piece. */
  readonly chart?: string | null
}

/** What is known of one file. */
export interface FileReport {
  readonly file: string
  readonly rows: readonly RowEntry[]
  readonly findings: readonly FindingEntry[]
}

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

/** A row by its label, and by its whole name. */
export interface RowNamed {
  readonly label: string
  /** "Rnd 7" */
  readonly name: string
}

const rowNamed = (label: string, kind: Unit): RowNamed => ({
  label,
  name: languages.us.label(kind, 1, 1).replace('1', () => label),
})

export const namedInWords =
  ({ settings, rows }: Reading) =>
  (index: number | null): RowNamed | null => {
    const row = index === null ? undefined : rows[index]
    return row ? rowNamed(row.label, unitOfRead(row, settings.shape)) : null
  }

export function namedInWork({
  run,
  passes,
  numbers,
}: Work): (row: number | null) => RowNamed | null {
  const runOf = new Map(passes.map(({ number }, pass) => [number, run.rows[pass]]))
  return (row) => {
    const number = row === null ? undefined : numbers[row]
    const worked = number === undefined ? undefined : runOf.get(number)
    return worked ? rowNamed(String(number), unitOfRow(worked, run.habits.shape)) : null
  }
}

/** A finding about a row; null: about the whole. Pegs from 0. */
export const entryOf = (
  { rule, severity, message, advice }: Notice,
  row: RowNamed | null,
  pegs: Run | null = null,
): FindingEntry => ({
  rule,
  severity,
  row: row?.label ?? null,
  name: row?.name ?? null,
  pegs: pegs && [pegs.from + 1, pegs.to + 1],
  message,
  advice,
})

/** "error row-count Rnd 7, pegs 3-4: message advice" */
export function findingLine({
  rule,
  severity,
  name,
  pegs,
  message,
  advice,
  chart = null,
}: FindingEntry): string {
  const where = [
    ...(chart === null ? [] : [chart]),
    ...(name === null ? [] : [name]),
    ...(pegs ? [pegsNamed({ from: pegs[0] - 1, to: pegs[1] - 1 })] : []),
  ].join(', ')
  // A reader's message begins with the row's name, which stands here already.
  const named = name === null ? '' : `${name}: `
  const said = message.startsWith(named) ? message.slice(named.length) : message
  return oneLine(`${severity} ${rule}${where ? ` ${where}` : ''}: ${said} ${advice}`)
}

/** "Rnd 7: k2, p2, k2tog (24 to 23 loops)", with the shortest repeats there are. */
export function rowLine(read: ReadRow, shape: ReadSettings['shape'], terms: Terms): string {
  const { label, before, takes, after, stitches, run, end, heading } = read
  const sites = stitches.map(({ stitch }, peg) => ({ stitch, peg }))
  const row = { ...loomRow(sites, 0, sites.length - 1, null, 'on'), isPart: false }
  const said = sites.length > 0 ? writeStitches(row, 'forward', takes === before, terms) : 'nothing'
  const [first, last] = heading === 'back' ? [run?.to, run?.from] : [run?.from, run?.to]
  const pegs = first === undefined || last === undefined ? '' : `pegs ${first + 1} to ${last + 1}: `
  const turn = { on: '', 'German turn': '; German turn', wrap: '; wrap and turn' }[end]
  const { name } = rowNamed(label, unitOfRead(read, shape))
  const loops = before === after ? `${after} loops` : `${before} to ${after} loops`
  return `${name}: ${pegs}${said}${turn} (${loops})`
}

/** The JSON of one or several files: entries name their file where there are several. What could not be used has its reason. */
export function jsonOf(reports: readonly FileReport[], unusable: readonly string[] = []): string {
  const many = reports.length > 1
  const named = <T>(file: string, entries: readonly T[]) =>
    many ? entries.map((entry) => ({ ...entry, file })) : entries
  return JSON.stringify({
    rows: reports.flatMap(({ file, rows }) => named<RowEntry>(file, rows)),
    findings: reports.flatMap(({ file, findings }) =>
      named(
        file,
        findings.map(({ name: _, ...entry }) => entry),
      ),
    ),
    ...(unusable.length > 0 ? { unusable } : {}),
  })
}

export const hasErrors = (reports: readonly FileReport[]): boolean =>
  reports.some(({ findings }) => findings.some(({ severity }) => severity === 'error'))
