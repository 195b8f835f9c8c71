import { emptyStack } from '../../loom/strand'
import { addStep } from '../../pattern/edits/piece'
import type { Pattern, Run } from '../../pattern/pattern'
import type { Step } from '../../pattern/piece'
import type { PieceWork, StepWork } from '../../pattern/workPiece'
import { runsOf } from '../copies'
import type { Fix } from '../../pattern/finding'
import { unitOf } from './steps'
import { pegsUpTo } from './opening'
import { listed } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'

/** One thing done on a run of pegs: knitted in rows, or cast on. */
type Done = { readonly knit: Run; readonly rows: number } | { readonly castOn: Run }

const isRun = ({ from, to }: Run): boolean => from <= to
const knit = (run: Run, rows = 1): Done[] => (isRun(run) ? [{ knit: run, rows }] : [])

const stepsOf = ({ vocabulary }: Pattern, parts: readonly Done[]): Step[] =>
  parts.flatMap((part): Step[] =>
    'castOn' in part
      ? [{ kind: 'cast on', how: 'e-wrap', pegs: part.castOn }]
      : [
          { kind: 'pegs', run: part.knit, toAndFro: true },
          { kind: 'plain', stitch: vocabulary.withRole('knit'), amount: { rows: part.rows } },
        ],
  )

/** "knit peg 1, cast on pegs 2-6 again and knit pegs 7-32". */
const told = (parts: readonly Done[]): string =>
  listed(
    parts.map((part) =>
      'castOn' in part
        ? `cast on ${pegsNamed(part.castOn)} again`
        : `knit ${pegsNamed(part.knit)}${part.rows > 1 ? ` back and forth for ${part.rows} rows` : ''}`,
    ),
  )

const put = (pattern: Pattern, at: number, steps: readonly Step[]): Pattern =>
  steps.reduce((made, step, offset) => addStep(made, at + offset, step), pattern)

/** All the pegs are in work again, as they were. */
const asBefore = ({ toAndFro }: StepWork): Step => ({ kind: 'pegs', run: null, toAndFro })

const onWhole = ({ before, pegs }: StepWork): boolean =>
  pegs.from === 0 && pegs.to === before.stacks.length - 1

/** The pegs up to an edge that is made on pegs `from`..`to`, and those after it, as the yarn comes to them. */
export function besidesEdge(step: StepWork, { from, to }: Run): readonly [Run, Run] {
  const { length } = step.before.stacks
  const low = { from: 0, to: from - 1 }
  const high = { from: to + 1, to: length - 1 }
  return step.toAndFro && step.before.yarn.gap === length ? [high, low] : [low, high]
}

/** Work up to an edge that begins away from the yarn, and to the end of the row after it. */
export function reachEdge(step: StepWork, index: number, run: Run): Fix[] {
  const { length } = step.before.stacks
  const { gap } = step.before.yarn
  const atEnd = gap === 0 || gap === length
  const onWay = step.toAndFro ? null : pegsUpTo(step, run)
  if (!onWhole(step) || (!atEnd && !onWay)) return []
  const [whole, then] = besidesEdge(step, run)
  const first = onWay ?? whole
  if (!isRun(first)) return []
  const after = knit(then)
  return [
    {
      label: `Knit ${pegsNamed(first)} before it${isRun(then) ? ` and ${pegsNamed(then)} after it` : ''}`,
      edit: (pattern) =>
        put(
          put(pattern, index + 1, [...stepsOf(pattern, after), asBefore(step)]),
          index,
          stepsOf(pattern, knit(first)),
        ),
    },
  ]
}

/** The one run of pegs that earlier steps have bound off, and nothing cast on again. */
function boundOffPegs({ steps }: PieceWork, index: number): Run | null {
  const step = steps[index]
  if (!step || !onWhole(step)) return null
  const empty = step.before.stacks.flatMap((stack, peg) => (stack === emptyStack ? [peg] : []))
  const [run, more] = runsOf(empty)
  if (!run || more) return null
  const off = steps
    .slice(0, index)
    .flatMap((done) => (done.step.kind === 'bind off' ? (done.edge?.way.pegs ?? []) : []))
  return empty.every((peg) => off.includes(peg)) ? run : null
}

/** Cast on again what was bound off, as the yarn comes to it; or go on with the other pegs only. */
export function castOnAgain(work: PieceWork, index: number): Fix[] {
  const step = work.steps[index]
  const run = boundOffPegs(work, index)
  if (!step || !run) return []
  const { length } = step.before.stacks
  const { gap } = step.before.yarn
  const low = { from: 0, to: run.from - 1 }
  const high = { from: run.to + 1, to: length - 1 }
  const again: Done = { castOn: run }
  const ways: Done[][] = []
  if (!isRun(low) && gap === high.from) ways.push([...knit(high, 2), again])
  if (!isRun(high) && gap === low.to + 1) ways.push([...knit(low, 2), again])
  const inRound = [...knit(low), again, ...knit(high)]
  if (!step.toAndFro && gap % length === 0) ways.push(inRound)
  if (!step.toAndFro && gap === high.from) ways.push([...knit(high), ...inRound])
  if (step.toAndFro && gap === 0) ways.push(inRound)
  if (step.toAndFro && gap === length) ways.push([...knit(high), again, ...knit(low)])
  if (step.toAndFro && gap === high.from) ways.push([...knit(high, 2), again, ...knit(low)])
  const rest = isRun(low) ? low : high
  const only: Fix[] =
    isRun(low) && isRun(high)
      ? []
      : [
          {
            label: `Work only ${pegsNamed(rest)} from here on, back and forth`,
            edit: (pattern) => put(pattern, index, [{ kind: 'pegs', run: rest, toAndFro: true }]),
          },
        ]
  return [
    ...ways.map((parts) => ({
      label: `Before ${step.chart?.name ?? `the plain ${unitOf(work, index)}s`}, ${told(parts)}`,
      edit: (pattern: Pattern) => put(pattern, index, [...stepsOf(pattern, parts), asBefore(step)]),
    })),
    ...only,
  ]
}
