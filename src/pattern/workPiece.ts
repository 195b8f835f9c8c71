import { bindOffPegs, castOnPegs, type EdgeRun } from '../loom/edges'
import { opposite, type Heading } from '../loom/direction'
import { simulate, type Run as WorkedRows } from '../loom/simulate'
import { emptyLoom, pegsInWork, type LoomState } from '../loom/state'
import { emptyStack } from '../loom/strand'
import type { Habits } from '../loom/work'
import { plainRows } from './amount'
import { changeOf, withChange } from './changes'
import { foldOf } from './pegs/fold'
import { entersRound, gapToAndFro, headingFrom, turnsBack } from './pegs/inWork'
import { layOut, type Layout } from './layout'
import type { Chart, NamedChart, Pattern, Row, Run } from './pattern'
import { pieceLimits, type Step } from './piece'
import { onPegs, type PatternRow } from './row'
import { schedule, timesWorked } from './schedule'
import { findChart } from './charts'
import { habitsOf } from './habits'
import type { Stitch } from '../stitches/stitch'

/** One step of the piece, worked. */
export interface StepWork {
  readonly step: Step
  readonly before: LoomState
  readonly after: LoomState
  /** Its rows one by one, as its chart has them; empty where it has none. */
  readonly list: readonly Row[]
  /** How these lie on the pegs; null where it has none. */
  readonly layout: Layout | null
  /** The rows of a chart or of plain rows; null where the step has none. */
  readonly rows: WorkedRows<PatternRow> | null
  /** A cast-on or bind-off; null otherwise. */
  readonly edge: EdgeRun | null
  /** The chart it works; null where it works none, or one that is not there. */
  readonly chart: NamedChart | null
  /** Rows worked before this step. */
  readonly firstRow: number
  /** The pegs in work, and whether work goes to and fro between them. */
  readonly pegs: Run
  readonly toAndFro: boolean
  /** Rows it should have that were left out, since the piece would become too long. */
  readonly leftOut: number
}

/** The piece, worked from an empty loom. One entry for each step, up to the last that was asked for. */
export interface PieceWork {
  readonly pattern: Pattern
  readonly steps: readonly StepWork[]
  readonly end: LoomState
  readonly rows: number
}

/**
 * Work the whole piece, or up to a step (from 0); with an earlier version, only the rows that an edit
 * touches.
 */
export function workPiece(pattern: Pattern, previous?: PieceWork, last = Infinity): PieceWork {
  const { loom } = pattern
  const habits = habitsOf(pattern)
  const whole: Run = { from: 0, to: loom.pegs - 1 }
  let pegs = whole
  let toAndFro = loom.shape === 'bar'
  let state = previous?.steps[0]?.before ?? emptyLoom(loom.pegs)
  if (state.stacks.length !== loom.pegs) state = emptyLoom(loom.pegs)
  let firstRow = 0
  const steps: StepWork[] = []
  pattern.steps.slice(0, last + 1).forEach((step, index) => {
    if (step.kind === 'pegs') {
      pegs = inside(step.run, whole)
      toAndFro = turnsBack(loom, step)
    }
    const room = Math.max(0, pieceLimits.rows.most - firstRow)
    const part = { pegs, toAndFro, whole: pegs.from === 0 && pegs.to === whole.to, done: steps }
    const was = previous?.steps[index]
    const made = workStep(pattern, step, state, part, room, habits, was)
    const work: StepWork = { step, before: state, firstRow, pegs, toAndFro, ...made }
    state = made.after
    firstRow += made.rows?.rows.length ?? 0
    steps.push(same(work, was) ? was : work)
  })
  return { pattern, steps, end: state, rows: firstRow }
}

interface InWork {
  readonly pegs: Run
  readonly toAndFro: boolean
  readonly whole: boolean
  /** The steps before it. */
  readonly done: readonly StepWork[]
}

type Made = Pick<StepWork, 'after' | 'list' | 'layout' | 'rows' | 'edge' | 'chart' | 'leftOut'>

const noRows: readonly Row[] = []

function workStep(
  pattern: Pattern,
  step: Step,
  before: LoomState,
  part: InWork,
  room: number,
  habits: Habits,
  was?: StepWork,
): Made {
  const nothing: Made = {
    after: before,
    list: noRows,
    layout: null,
    rows: null,
    edge: null,
    chart: null,
    leftOut: 0,
  }
  switch (step.kind) {
    case 'cast on':
    case 'bind off': {
      const way = edgeHabits(habits, part)
      const fold = foldFor(step, before, part)
      const edgeWas = was?.step === step && was.before === before ? was.edge : null
      if (was && edgeWas?.habits === way && edgeWas.fold === fold)
        return { ...nothing, after: was.after, edge: edgeWas }
      const { from, to } = edgePegs(step, before)
      const edge =
        step.kind === 'cast on'
          ? castOnPegs(before, way, step.how, from, to)
          : bindOffPegs(before, way, step.how, from, to, fold)
      return { ...nothing, after: edge.after, edge }
    }
    case 'chart': {
      const named = findChart(pattern, step.chart)
      if (!named) return nothing
      const { chart } = named
      const layout = layOut(chart, pattern.loom.pegs, pattern.loom.shape)
      const times = Math.min(Math.round(step.times) || 1, pieceLimits.times.most)
      const once = timesWorked(chart).reduce((sum, count) => sum + count, 0)
      const list = rowsOf(chart, times, room)
      const worked = workRows(list, layout, before, part, habits, was)
      return {
        ...nothing,
        chart: named,
        ...worked,
        leftOut: Math.max(0, times * once - list.length),
      }
    }
    case 'plain': {
      const count = plainRows(pattern, step.amount)
      const row = plainRow(
        step.stitch,
        pattern.vocabulary.withRole('no stitch'),
        before,
        boundOff(part.done),
      )
      const chart =
        row.cells.length === 1 ? plainChart : { columns: row.cells.length, repeat: null }
      const layout = layOut(chart, pattern.loom.pegs, pattern.loom.shape)
      const list: readonly Row[] = Array.from({ length: Math.min(count, room) }, () => row)
      const worked = workRows(list, layout, before, part, habits, was)
      return { ...nothing, ...worked, leftOut: count - list.length }
    }
    case 'pegs':
      return { ...nothing, after: intoTheRound(before, part, habits, was) }
    case 'note':
      return nothing
  }
}

/** The rows of a chart that is worked so often, one by one, but no more than there is room for. */
function rowsOf({ rows, bands }: Chart, times: number, room: number): readonly Row[] {
  if (times === 1 && bands.length === 0 && rows.length <= room) return rows
  const passes = schedule({ rows, bands })
  const list: Row[] = []
  for (let at = 0; at < Math.min(times * passes.length, room); at++)
    list.push(rows[passes[at % passes.length]?.row ?? 0] as Row)
  return list
}

/** Where a closed round is folded before its halves are joined. */
const foldFor = (step: Step, before: LoomState, { done, toAndFro }: InWork): number | null =>
  step.kind === 'bind off' &&
  (step.how === 'graft' || step.how === 'three-needle') &&
  step.pegs === null &&
  !toAndFro
    ? foldOf(done, pegsInWork(before))
    : null

const openRings = new WeakMap<Habits, Habits>()

/** The edges of a ring that is worked to and fro over its opening are those of a bar. */
function edgeHabits(habits: Habits, { whole, toAndFro }: InWork): Habits {
  if (habits.shape === 'bar' || !whole || !toAndFro) return habits
  let open = openRings.get(habits)
  if (!open) openRings.set(habits, (open = { ...habits, shape: 'bar' }))
  return open
}

/** Work that went to and fro goes on in the round, from its start, whichever way it came there. */
function intoTheRound(
  before: LoomState,
  part: InWork,
  { shape }: Habits,
  was?: StepWork,
): LoomState {
  const atJoin = entersRound(before.yarn.gap, before.stacks.length)
  const ready = before.heading === 'forward' && before.yarn.gap === 0
  if (shape === 'bar' || part.toAndFro || !atJoin || ready) return before
  if (was?.before === before && was.step.kind === 'pegs' && was.after !== before) return was.after
  return { ...before, heading: 'forward', yarn: { ...before.yarn, gap: 0 } }
}

function workRows(
  list: readonly Row[],
  layout: Layout,
  before: LoomState,
  part: InWork,
  habits: Habits,
  was?: StepWork,
): Pick<Made, 'list' | 'layout' | 'rows' | 'after'> {
  const laid = layRows(list, layout, before, part, habits, was)
  const old = was?.rows ?? undefined
  const anew = simulate(laid, before, habits, old)
  const isOld = old?.rows.length === anew.rows.length && anew.worked === 0 && old.start === before
  const rows = isOld ? old : anew
  return { list, layout, rows, after: afterRows(rows, part, habits, was) }
}

function afterRows(
  rows: WorkedRows<PatternRow>,
  { toAndFro }: InWork,
  { shape }: Habits,
  was?: StepWork,
): LoomState {
  const { end } = rows
  const pegs = end.stacks.length
  const last = rows.rows.at(-1)
  const gap = gapToAndFro(end.yarn.gap, last && { to: last.row.to, heading: last.heading }, pegs)
  if (shape === 'bar' || !toAndFro || gap === end.yarn.gap) return end
  if (was?.rows === rows && was.after.yarn.gap === gap) return was.after
  return { ...end, yarn: { ...end.yarn, gap } }
}

/**
 * Rows on the pegs in work. In the round, and on a whole bar, they go their own way; to and fro on
 * a part, or over a ring's opening, each row heads the other way, from where the yarn is.
 */
function layRows(
  list: readonly Row[],
  layout: Layout,
  before: LoomState,
  { pegs, toAndFro, whole }: InWork,
  { shape }: Habits,
  was?: StepWork,
): readonly PatternRow[] {
  if (whole && (!toAndFro || shape === 'bar'))
    return layWhole(list, layout, was && isWholeAlike(was, pegs, toAndFro) ? was : undefined)
  let heading = headingFrom(before.yarn.gap, before.stacks.length, pegs, shape)
  return list.map((row) => {
    const own = row.run !== null || row.heading !== null || row.end !== 'on'
    const now = row.heading ?? heading
    heading = opposite(now)
    return onPegs(own ? row : partRow(row, pegs, now), layout)
  })
}

/** Were rows laid like those on these pegs, all of the loom? */
const isWholeAlike = (was: StepWork, { from, to }: Run, toAndFro: boolean): boolean =>
  was.pegs.from === from && was.pegs.to === to && was.toAndFro === toAndFro

/** Rows that go their own way; of an earlier version only those that changed are laid again. */
function layWhole(list: readonly Row[], layout: Layout, was?: StepWork): readonly PatternRow[] {
  const last = was?.layout === layout ? was : undefined
  const old = last?.list ?? noRows
  const laid = last?.rows?.given ?? []
  const change = changeOf(list, old)
  const { from, to } = change
  const middle = list.slice(from, to).map((row, index) => onPegs(row, layout, old[from + index]))
  return withChange(laid, change, middle)
}

const partRows = new WeakMap<Row, Map<string, Row>>()

/** The row on a run of pegs, heading one way. The same object for the same parts. */
function partRow(row: Row, run: Run, heading: Heading): Row {
  let known = partRows.get(row)
  if (!known) partRows.set(row, (known = new Map<string, Row>()))
  const key = `${run.from}/${run.to}/${heading}`
  let made = known.get(key)
  if (!made) known.set(key, (made = { ...row, run, heading }))
  return made
}

/** One column that fills any loom. */
const plainChart = { columns: 1, repeat: { from: 0, to: 0 } }
const plainOf = new Map<Stitch, Map<string, Row>>()

/**
 * A row of one stitch: one column where each peg holds a loop, else one for each peg, with no stitch on those
 * that a decrease emptied or that were never cast on. Pegs that were bound off are worked; that cannot be, and
 * is found. The same object for the same.
 */
function plainRow(
  stitch: Stitch,
  none: Stitch,
  { stacks }: LoomState,
  isBoundOff: (peg: number) => boolean,
): Row {
  const rests = (peg: number): boolean => stacks[peg] === emptyStack && !isBoundOff(peg)
  const cells = stacks.map((_, peg) => (rests(peg) ? none : stitch))
  const isFull = !cells.includes(none) || !cells.includes(stitch)
  const own = isFull ? [stitch] : cells
  const key = own.map((cell) => (cell === stitch ? 'x' : '-')).join('')
  let rows = plainOf.get(stitch)
  if (!rows) plainOf.set(stitch, (rows = new Map<string, Row>()))
  let row = rows.get(key)
  if (!row) rows.set(key, (row = { cells: own, run: null, heading: null, end: 'on' }))
  return row
}

/** Does the first row of a step work pegs that were bound off, and not cast on again? */
export function worksBoundOff({ steps }: PieceWork, index: number): boolean {
  const work = steps[index]
  const first = work?.rows?.rows[0]
  const isOff = boundOff(steps.slice(0, index))
  return (
    first?.row.sites.some(({ peg, stitch }) => {
      if (stitch.takes + stitch.makes === 0) return false
      for (let at = peg; at < peg + stitch.width; at++)
        if (work?.before.stacks[at] === emptyStack && isOff(at)) return true
      return false
    }) ?? false
  )
}

/** Is a peg empty since one of these steps bound it off? */
function boundOff(done: readonly StepWork[]): (peg: number) => boolean {
  const off = new Set<number>()
  for (const { step, edge } of done)
    for (const peg of edge?.way.pegs ?? [])
      if (step.kind === 'bind off') off.add(peg)
      else off.delete(peg)
  return (peg) => off.has(peg)
}

/** The pegs that a cast-on or bind-off works on. */
export const edgePegs = ({ pegs }: { readonly pegs: Run | null }, before: LoomState): Run =>
  inside(pegs, { from: 0, to: before.stacks.length - 1 })

const inside = (run: Run | null, whole: Run): Run =>
  run ? { from: Math.min(run.from, whole.to), to: Math.min(run.to, whole.to) } : whole

function same(work: StepWork, was: StepWork | undefined): was is StepWork {
  if (!was) return false
  const keys = Object.keys(work) as (keyof StepWork)[]
  return keys.every((key) =>
    key === 'pegs'
      ? work.pegs.from === was.pegs.from && work.pegs.to === was.pegs.to
      : key === 'chart'
        ? work.chart?.chart === was.chart?.chart && work.chart?.name === was.chart?.name
        : work[key] === was[key],
  )
}

/** Loops still on the loom when all is done. */
export const loopsLeft = ({ end }: PieceWork): number =>
  end.stacks.filter((stack) => stack !== emptyStack).length
