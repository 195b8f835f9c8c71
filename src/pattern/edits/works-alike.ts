import type { Pattern } from '../pattern'
import type { PatternRow } from '../row'
import { chartsInOrder } from '../charts'
import type { PatternRun } from '../work'
import { workOnce, workPieceOnce } from '../workOnce'
import { loopsLeft } from '../workPiece'

/** Where a piece cannot be worked: a step of it, or a chart worked by itself. 0-based. */
export type Fault = { readonly step: number } | { readonly chart: string; readonly row: number }

/** A row or an edge, worked. */
type Done = Pick<PatternRun, 'before' | 'faults'> & Partial<PatternRun>

/** A piece and its charts as they are worked. */
interface Worked {
  readonly steps: readonly (readonly Done[])[]
  readonly charts: readonly { readonly name: string; readonly rows: readonly Done[] }[]
  /** Those that do not go to and fro, where the way follows from the yarn. */
  readonly rounds: readonly PatternRun[]
  readonly left: number
}

const known = new WeakMap<Pattern, Worked>()

function work(pattern: Pattern): Worked {
  let worked = known.get(pattern)
  if (!worked) known.set(pattern, (worked = workAll(pattern)))
  return worked
}

function workAll(pattern: Pattern): Worked {
  const piece = workPieceOnce(pattern)
  const charts = chartsInOrder(pattern).map(({ name }) => ({
    name,
    rows: workOnce(pattern, name).run.rows,
  }))
  return {
    steps: piece.steps.map(({ rows, edge }) => rows?.rows ?? (edge ? [edge] : [])),
    charts,
    rounds: [
      ...piece.steps.flatMap(({ rows, toAndFro }) => (toAndFro ? [] : (rows?.rows ?? []))),
      ...charts.flatMap(({ rows }) => rows),
    ],
    left: loopsLeft(piece),
  }
}

/** What goes wrong in a row or an edge when the yarn or the loops are elsewhere. */
const wrongs = ({ faults, miscount }: Done): number =>
  (miscount ? 1 : 0) +
  faults.filter(
    ({ kind }) =>
      kind === 'start' ||
      kind === 'turned twice' ||
      kind === 'no peg to wrap' ||
      kind === 'empty peg',
  ).length

const rowsOf = ({ steps, charts }: Worked): readonly Done[] => [
  ...steps.flat(),
  ...charts.flatMap(({ rows }) => rows),
]

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0)

/** How often a row goes against the way the work leads. */
const changesOfWay = ({ rounds }: Worked): number =>
  rounds.filter(({ heading, before }) => heading !== before.heading).length

/**
 * Can a piece whose pegs are counted from the other end be worked as well as before, and are as
 * many stitches worked on each peg? With `sameWays` the work also changes its way as often.
 */
export function worksAlike(own: Pattern, turned: Pattern, sameWays = false): boolean {
  const [a, b] = [work(own), work(turned)]
  return (
    a.left === b.left &&
    equal(wrongsIn(a), wrongsIn(b)) &&
    (!sameWays || changesOfWay(a) === changesOfWay(b)) &&
    equal(onEachPeg(a, own.loom.pegs), onEachPeg(b, own.loom.pegs).reverse())
  )
}

/** In each step and each chart. */
const wrongsIn = ({ steps, charts }: Worked): readonly number[] =>
  [...steps, ...charts.map(({ rows }) => rows)].map((rows) => sum(rows.map(wrongs)))

const equal = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((one, at) => one === b[at])

/** Stitches worked on each peg, in the piece and in its charts. */
function onEachPeg(worked: Worked, pegs: number): number[] {
  const counts = new Array<number>(pegs).fill(0)
  for (const { row } of rowsOf(worked))
    for (let peg = row?.from ?? pegs; row && peg <= row.to; peg++)
      counts[peg] = (counts[peg] ?? 0) + 1
  return counts
}

/** Are all rows the same, and worked the same way? */
export function worksTheSame(one: Pattern, other: Pattern): boolean {
  const [a, b] = [work(one), work(other)]
  const [rows, others] = [rowsOf(a), rowsOf(b)]
  return (
    rows.length === others.length &&
    rows.every(({ row, heading }, at) => {
      const second = others[at]
      if (!row || !second?.row) return row === second?.row
      return heading === second.heading && sameRow(row, second.row)
    })
  )
}

const sameRow = (a: PatternRow, b: PatternRow): boolean =>
  a === b ||
  (a.from === b.from &&
    a.to === b.to &&
    a.end === b.end &&
    a.sites.length === b.sites.length &&
    a.sites.every(
      ({ stitch, peg }, at) => stitch === b.sites[at]?.stitch && peg === b.sites[at].peg,
    ))

/** The first place at which something goes wrong; null where nothing does. */
export function firstFault(pattern: Pattern): Fault | null {
  const { steps, charts } = work(pattern)
  const step = steps.findIndex((rows) => rows.some(goesWrong))
  if (step >= 0) return { step }
  for (const { name, rows } of charts) {
    const row = rows.findIndex(goesWrong)
    if (row >= 0) return { chart: name, row }
  }
  return null
}

const goesWrong = (row: Done): boolean => wrongs(row) > 0
