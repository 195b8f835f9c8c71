import { changeOf, withChange, type Change } from '../pattern/changes'
import type { Run } from '../pattern/pattern'
import type { PatternRun, Work } from '../pattern/work'
import { worksBoundOff } from '../pattern/workPiece'
import { digestOf } from './digest'
import { nothing } from './nothing'
import type { NearRule, Noted, PlacedNote, RowDigest, Rule, RuleNote } from './rule'
import { chartRules, nearRules, rowRules } from './rules'
import type { Setting } from './setting'
import type { Turning } from './turns/turning'

/** Something a rule noticed, at its row (0-based; null: the whole chart). */
export interface RuleAt {
  readonly rule: Rule
  readonly row: number | null
  readonly noted: Noted
}

type Notes = readonly (readonly Noted[])[]

/**
 * What is known of a worked piece, in flat lists with one entry per chart row or working: so the
 * next version finds by identity what it need not ask again, and skips rows without notes.
 */
export interface Known {
  readonly work: Work
  readonly setting: Setting
  readonly rows: readonly RowDigest[]
  /** One entry per working of a row, bands unrolled. */
  readonly workings: readonly RowDigest[]
  readonly rowNotes: readonly (readonly RuleNote[])[]
  readonly nearNotes: readonly Notes[]
  readonly turnings: readonly (Turning | null)[]
  readonly passed: readonly (readonly Run[])[]
}

/** Ask the row rules and near rules; those that a change since `previous` may touch. */
export function learn(work: Work, setting: Setting, previous?: Known): Known {
  const old = previous?.setting === setting ? previous : undefined
  const { firstRuns, run } = work
  const change = changeOf(firstRuns, old?.work.firstRuns ?? [])
  const asked = digestAll(firstRuns, change, work, setting)
  const rows = withChange(old?.rows ?? [], change, asked)
  const unrolled = run.rows !== firstRuns
  const passChange = unrolled ? changeOf(run.rows, old?.work.run.rows ?? []) : change
  const workings = unrolled
    ? withChange(old?.workings ?? [], passChange, digestAll(run.rows, passChange, work, setting))
    : rows
  return {
    work,
    setting,
    rows,
    workings,
    rowNotes: withChange(
      old?.rowNotes ?? [],
      change,
      asked.map(({ notes }) => notes),
    ),
    nearNotes: nearRules.map((rule, index) =>
      rule.of === 'rows'
        ? askNear(rule, rows, change, setting, old?.nearNotes[index])
        : askNear(rule, workings, passChange, setting, old?.nearNotes[index]),
    ),
    turnings: withChange(
      old?.turnings ?? [],
      change,
      asked.map(({ turning }) => turning),
    ),
    passed: withChange(
      old?.passed ?? [],
      change,
      asked.map(({ passed }) => passed),
    ),
  }
}

function digestAll(
  runs: readonly PatternRun[],
  { from, to }: Change,
  { chart, layout, passes, firstRuns }: Work,
  setting: Setting,
): RowDigest[] {
  const digests: RowDigest[] = []
  for (let index = from; index < to; index++) {
    const run = runs[index]
    const row = chart.rows[runs === firstRuns ? index : (passes[index]?.row ?? 0)]
    if (run && row) digests.push(digestOf(run, row, layout, setting, rowRules))
  }
  return digests
}

/** Ask a near rule about the rows that changed, and those that look at them. */
function askNear(
  rule: NearRule,
  digests: readonly RowDigest[],
  change: Change,
  setting: Setting,
  old: Notes = [],
): Notes {
  const { before, after } = rule.reach(setting)
  const shift = change.oldTo - change.to
  const from = Math.max(0, change.from - after)
  const to = Math.min(digests.length, change.to + before)
  const asked: (readonly Noted[])[] = []
  for (let index = from; index < to; index++) {
    const around: (RowDigest | undefined)[] = []
    for (let at = index - before; at <= index + after; at++) around.push(digests[at])
    asked.push(rule.check(around))
  }
  return withChange(old, { from, to, oldTo: to + shift }, asked)
}

/** Does the piece tell what this rule notices in the first row of the chart? */
function isOfPiece({ startsWith }: Rule, { run, piece, step }: Work): boolean {
  if (startsWith === 'yarn') return run.start.yarn.gap !== 0
  return startsWith === 'loops' && piece !== null && step !== null && worksBoundOff(piece, step)
}

/** What every rule that is not switched off has noticed. */
export function gather(known: Known): RuleAt[] {
  const { work, setting, rowNotes, nearNotes, turnings, passed } = known
  const off = new Set(work.pattern.checks.off)
  const list: RuleAt[] = []
  for (let row = 0; row < rowNotes.length; row++) {
    const notes = rowNotes[row] ?? nothing
    if (notes === nothing) continue
    for (const { rule, noted } of notes)
      if (!off.has(rule.id) && !(row === 0 && isOfPiece(rule, work)))
        list.push({ rule, row, noted })
  }
  nearRules.forEach((rule, index) => {
    if (!off.has(rule.id)) addOnce(list, rule, nearPlaces(rule, nearNotes[index] ?? [], known))
  })
  const view = { work, setting, turnings, passed }
  for (const rule of chartRules) if (!off.has(rule.id)) addOnce(list, rule, rule.check(view))
  return list
}

function nearPlaces(rule: NearRule, all: Notes, { work, rows }: Known): PlacedNote[] {
  const places: PlacedNote[] = []
  for (let index = 0; index < all.length; index++) {
    const notes = all[index] ?? nothing
    if (notes === nothing) continue
    const pass = rule.of === 'rows' ? { row: index, time: 0 } : work.passes[index]
    // The second working of a band sees the end of the first; later ones see the same again.
    if (!pass || pass.time > 1) continue
    for (const noted of notes)
      if (!rule.stands || rule.stands(noted, pass.row, rows)) places.push({ row: pass.row, noted })
  }
  return places
}

/** Two workings of the same rows say the same thing once. */
function addOnce(list: RuleAt[], rule: Rule, places: readonly PlacedNote[]): void {
  if (places.length === 0) return
  const said = new Set<string>()
  for (const { row, noted } of places) {
    const place = `${row}/${noted.pegs?.from}/${noted.pegs?.to}`
    if (said.has(place)) continue
    said.add(place)
    list.push({ rule, row, noted })
  }
}
