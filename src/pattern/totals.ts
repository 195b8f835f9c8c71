import { bindOffPegs, castOnPegs } from '../loom/edges'
import { leanOf, yarnOf } from '../loom/length'
import type { Move } from '../loom/move'
import { workRow, type Habits } from '../loom/work'
import type { Pattern } from './pattern'
import { habitsOf } from './habits'
import { together } from './pegs/together'
import type { PatternRun } from './work'
import { edgePegs, type PieceWork, type StepWork } from './workPiece'
import { type Stitch, wholeOf } from '../stitches/stitch'

/** What a step, or the whole piece, comes to. */
export interface Totals {
  readonly rows: number
  /** How often each stitch is worked, most often first. */
  readonly stitches: ReadonlyMap<Stitch, number>
  /** Loops that they make, by the same stitches: a 2/2 cross makes four. */
  readonly loops: ReadonlyMap<Stitch, number>
  /** Moves of the hands. */
  readonly moves: number
  /** Yarn in mm, by our own reckoning of strand lengths (loom/length.ts); null without a gauge. */
  readonly yarn: number | null
  /** Yarn in grams, by the weighed swatch; null without one, or without a gauge. */
  readonly grams: number | null
  /** By the designer's own pace: a move counts as long as a plain stitch; null without a pace. */
  readonly minutes: number | null
}

export interface PieceTotals {
  /** One entry for each step. */
  readonly steps: readonly Totals[]
  readonly whole: Totals
}

interface Size {
  readonly width: number
  readonly height: number
}

/** A stitch in mm, by the gauge; null without one from which a size can be told. */
export function stitchSize({ gauge }: Pick<Pattern, 'gauge'>): Size | null {
  if (!gauge) return null
  const size = { width: 100 / gauge.stitches, height: 100 / gauge.rows }
  return Number.isFinite(size.width + size.height) ? size : null
}

/** Count the whole piece, step by step. */
export function totalsOf(work: PieceWork): PieceTotals {
  const { pattern } = work
  const habits = habitsOf(pattern)
  const size = stitchSize(pattern)
  const counts = work.steps.map((step) => countStep(step, habits, size))
  const finish = (count: Count): Totals => withEstimates(count, pattern, size)
  return {
    steps: counts.map(finish),
    whole: finish({ ...counts.reduce(sum, nothing), rows: together(work).rows }),
  }
}

interface Count {
  readonly rows: number
  readonly stitches: ReadonlyMap<Stitch, number>
  readonly loops: ReadonlyMap<Stitch, number>
  readonly moves: number
  /** mm; 0 without a size. */
  readonly yarn: number
}

const nothing: Count = { rows: 0, stitches: new Map(), loops: new Map(), moves: 0, yarn: 0 }

/** Add what was counted to the sums so far. */
function addTo(sums: Map<Stitch, number>, counts: Iterable<readonly [Stitch, number]>): void {
  for (const [stitch, count] of counts) sums.set(stitch, (sums.get(stitch) ?? 0) + count)
}

function sum(a: Count, b: Count): Count {
  const [stitches, loops] = [new Map(a.stitches), new Map(a.loops)]
  addTo(stitches, b.stitches)
  addTo(loops, b.loops)
  return {
    rows: a.rows + b.rows,
    stitches,
    loops,
    moves: a.moves + b.moves,
    yarn: a.yarn + b.yarn,
  }
}

function countStep(step: StepWork, habits: Habits, size: Size | null): Count {
  if (step.edge) return countEdge(step, size)
  const [stitches, loops] = [new Map<Stitch, number>(), new Map<Stitch, number>()]
  const total = { rows: 0, stitches, loops, moves: 0, yarn: 0 }
  for (const run of step.rows?.rows ?? []) {
    const row = countRow(run, habits, size)
    addTo(stitches, row.stitches)
    addTo(loops, row.loops)
    total.rows += row.rows
    total.moves += row.moves
    total.yarn += row.yarn
  }
  return total
}

/** Turning and carrying the yarn take no time of their own. */
const isFree = ({ do: what }: Move): boolean => what === 'turn' || what === 'carry'

class Counter {
  moves = 0
  yarn = 0
  /** Pegs whose loops wait on the spare needle, the one that goes back first at the front. */
  private readonly waiting: number[] = []

  constructor(private readonly size: Size | null) {}

  readonly take = (move: Move): void => {
    if (!isFree(move)) this.moves++
    if (!this.size) return
    this.yarn += yarnOf(move, this.size)
    if (move.do === 'take') this.waiting.push(move.peg)
    if (move.do === 'put')
      this.yarn += leanOf(this.waiting.shift() ?? move.peg, move.peg, this.size)
  }

  /** At an edge a loop is moved only to be lifted over the next one: it does not come to lean. */
  readonly takeAtEdge = (move: Move): void => {
    const { yarn } = this
    this.take(move)
    if (move.do === 'move') this.yarn = yarn
  }
}

const counted = new WeakMap<PatternRun, { readonly size: Size | null; readonly count: Count }>()

function countRow(run: PatternRun, habits: Habits, size: Size | null): Count {
  const known = counted.get(run)
  if (known?.size?.width === size?.width && known?.size?.height === size?.height && known)
    return known.count
  const counter = new Counter(size)
  workRow(run.before, run.row, habits, counter.take)
  const [stitches, loops] = [new Map<Stitch, number>(), new Map<Stitch, number>()]
  for (const { stitch } of run.row.sites) {
    addTo(stitches, [[wholeOf(stitch), 1]])
    addTo(loops, [[wholeOf(stitch), stitch.makes]])
  }
  const count = { rows: 1, stitches, loops, moves: counter.moves, yarn: counter.yarn }
  counted.set(run, { size, count })
  return count
}

function countEdge({ step, before, edge }: StepWork, size: Size | null): Count {
  if (!edge || (step.kind !== 'cast on' && step.kind !== 'bind off')) return nothing
  const { habits } = edge
  const counter = new Counter(size)
  const { from, to } = edgePegs(step, before)
  if (step.kind === 'cast on') castOnPegs(before, habits, step.how, from, to, counter.takeAtEdge)
  else bindOffPegs(before, habits, step.how, from, to, edge.fold, counter.takeAtEdge)
  return { ...nothing, moves: counter.moves, yarn: counter.yarn }
}

/** An estimate that is a number; null for one that no longer is. */
const finite = (estimate: number): number | null => (Number.isFinite(estimate) ? estimate : null)

function withEstimates(count: Count, pattern: Pattern, size: Size | null): Totals {
  const { pace, swatch } = pattern
  const knit: Move = { do: 'work', peg: 0, how: pattern.making.knit }
  const inSwatch = size && swatch && swatch.stitches * swatch.rows * yarnOf(knit, size)
  return {
    rows: count.rows,
    stitches: new Map([...count.stitches].sort(([, a], [, b]) => b - a)),
    loops: new Map([...count.loops].sort(([, a], [, b]) => b - a)),
    moves: count.moves,
    yarn: size && count.yarn,
    grams: inSwatch ? finite((count.yarn / inSwatch) * swatch.grams) : null,
    minutes: pace ? finite(count.moves / pace) : null,
  }
}
