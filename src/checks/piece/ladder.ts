import type { PieceWork, StepWork } from '../../pattern/workPiece'
import {
  followLadders,
  isFromBefore,
  sharedPegs,
  widthOf,
  type Ladder,
  type Passing,
} from '../ladders/follow'
import { emptyNamed, lengthOf, whatShows, whatToDo } from '../ladders/ladder'
import { atJoin, passedEmpty } from '../../pattern/pegs/passedEmpty'
import { nothing } from '../nothing'
import { settingOf, type Setting } from '../setting'
import type { PieceNote, PieceRule } from '../rule'
import { firstWork, rowInStep, rowOfStep } from './steps'
import { counted } from '../../languages/english/forms'

/** A row or an edge of a step, in the order of the piece. */
interface Done extends Passing {
  readonly step: number
  /** Row of the step, from 0. */
  readonly row: number
}

/** What the step before left empty is passed too; what a chart does by itself is said at that chart. */
export const ladderInPiece: PieceRule = {
  id: 'piece-ladder',
  title: 'Ladder over empty pegs between steps',
  severity: 'warning',
  scope: 'piece',
  check: (work) => {
    const setting = settingOf(work.pattern)
    const done = work.steps.flatMap((step, index) => doneIn(step, index, setting))
    if (done.every(({ passed }) => passed === nothing)) return []
    const own = ownLadders(work)
    const ladders = followLadders(done).filter(
      (ladder) => !isOpening(ladder, done, work) && !isSaid(ladder, done, work, own),
    )
    const steps = [...new Set(ladders.map(({ first }) => done[first]?.step ?? 0))]
    return steps.map((step) =>
      note(
        ladders.filter(({ first }) => done[first]?.step === step),
        done,
        work,
        setting,
      ),
    )
  },
}

function doneIn({ rows, toAndFro, after, edge }: StepWork, step: number, setting: Setting): Done[] {
  if (edge) return [{ step, row: 0, after, passed: nothing }]
  const flat = toAndFro && setting.shape === 'ring'
  return (rows?.rows ?? []).map((run, row) => {
    const passed = passedEmpty(run, setting)
    const own = flat ? passed.filter((pegs) => !atJoin(pegs, setting.pegs)) : passed
    return { step, row, after: run.after, passed: own.length === 0 ? nothing : own }
  })
}

/** Pegs that were bound off, and are cast on again in the round after: an opening, as for a thumb. */
function isOpening({ first, rows, pegs }: Ladder, done: readonly Done[], work: PieceWork): boolean {
  if (rows > 1) return false
  const at = done[first]?.step ?? 0
  const { steps } = work
  const edgeOver = (step: StepWork | undefined, kind: 'cast on' | 'bind off'): boolean => {
    const worked = step?.step.kind === kind ? (step.edge?.way.pegs ?? []) : []
    const own = { from: Math.min(...worked), to: Math.max(...worked) }
    return sharedPegs(pegs, own, work.pattern.loom.pegs).length === widthOf(pegs)
  }
  return (
    steps.slice(0, at).some((step) => edgeOver(step, 'bind off')) &&
    steps.slice(at + 1).some((step) => edgeOver(step, 'cast on'))
  )
}

type Own = (chart: string) => readonly Ladder[]

/** The ladders that each chart makes where it is first worked. */
function ownLadders(piece: PieceWork): Own {
  const known = new Map<string, readonly Ladder[]>()
  const setting = settingOf(piece.pattern)
  return (chart) => {
    let found = known.get(chart)
    if (!found) {
      const run = firstWork(piece, chart)?.run
      found = run
        ? followLadders(
            run.rows.map((row) => ({ after: row.after, passed: passedEmpty(row, setting) })),
          ).filter((ladder) => !isFromBefore(ladder, run.start))
        : []
      known.set(chart, found)
    }
    return found
  }
}

function isSaid(
  { first, pegs }: Ladder,
  done: readonly Done[],
  { steps, pattern }: PieceWork,
  own: Own,
): boolean {
  const at = done[first]
  const step = at && steps[at.step]
  if (!at || !step?.chart) return false
  const { number } = rowOfStep(step, at.row)
  return own(step.chart.name).some(
    (ladder) =>
      ladder.first === number - 1 && sharedPegs(ladder.pegs, pegs, pattern.loom.pegs).length > 0,
  )
}

function note(
  ladders: readonly Ladder[],
  done: readonly Done[],
  work: PieceWork,
  setting: Setting,
): PieceNote {
  const worst = ladders.reduce((a, b) => (widthOf(b.widest) > widthOf(a.widest) ? b : a))
  const at = done[worst.widestAt]
  const step = at?.step ?? 0
  const first = done[worst.first]?.step ?? 0
  const others = ladders.length - 1
  const where = `In ${rowInStep(work, step, at?.row ?? 0)}`
  const more = others > 0 ? `, and in ${counted(others, 'other place')}` : ''
  return {
    step: first,
    message: `${where} the yarn passes ${emptyNamed(worst.widest, setting)}, ${lengthOf(worst.widest, setting)}${more}; ${whatShows(setting)}.`,
    advice: whatToDo(work.pattern),
  }
}
