import { changeStep } from '../../pattern/edits/piece'
import { textureBefore } from '../../pattern/generate/before'
import { putShortRows } from '../../pattern/generate/putIn'
import { makeShortRows, shortRowChart } from '../../pattern/generate/shortRows'
import type { ShortRowWish } from '../../pattern/generate/wish'
import { limits, type Chart, type Pattern } from '../../pattern/pattern'
import type { Bench } from '../state/bench.svelte'
import { placeForStep, putChart } from './piece'

/** Why so many rows cannot be put into the chart on the bench; null when they can. */
export function roomForRowsHere({ chart }: Bench, count: number): string | null {
  const there = chart.rows.length
  const { most } = limits.rows
  return there + count > most
    ? `The chart has ${there} rows and can have ${most}: there is no room for ${count} more.`
    : null
}

/** Put a heel, toe or wedge in after the current row, and go to its first row. */
export function putShortRowsHere(bench: Bench, thing: string, wish: ShortRowWish): void {
  const { chart } = bench
  const { loom, vocabulary } = bench.pattern
  const knit = vocabulary.withRole('knit')
  const made = makeShortRows(loom, wish, knit, chart.columns)
  const reason = made.ok ? roomForRowsHere(bench, made.rows.length) : made.message
  if (reason) {
    bench.say(reason)
    return
  }
  const at = bench.spot.row + 1
  const put = putShortRows(bench.pattern, at, wish, knit)
  if (!put.ok || !bench.apply(`Add a ${thing.toLowerCase()}`, () => put.pattern)) return
  bench.goTo({ row: at, peg: 0 })
  bench.say(`The ${thing.toLowerCase()} is added after row ${at}.`)
}

/** Add a heel, toe or wedge as a chart of its own, worked in a new step. */
export function addShortRows(bench: Bench, thing: string, wish: ShortRowWish): void {
  const at = placeForStep(bench)
  const before = textureBefore(bench.pattern, at)
  const { loom, vocabulary } = bench.pattern
  const made = shortRowChart(loom, wish, vocabulary.withRole('knit'), before?.rounds)
  if (!made.ok) bench.say(made.message)
  else if (wish.shape === 'toe') addToe(bench, thing, made.chart, at)
  else putChart(bench, thing, made.chart, true)
}

function addToe(bench: Bench, thing: string, chart: Chart, at: number): void {
  const { steps } = bench.pattern
  const name = putChart(bench, thing, chart, true, (pattern) => graftedAt(pattern, at + 1))
  const now = bench.pattern.steps[at + 1]
  if (name && now?.kind === 'bind off' && now !== steps[at])
    bench.say(
      `The chart “${name}” is added, worked in step ${at + 1}. The bind-off after it is a graft now.`,
    )
}

/** A toe is grafted: the plainest bind-off straight after it becomes a graft. */
function graftedAt(pattern: Pattern, at: number): Pattern {
  const step = pattern.steps[at]
  return step?.kind === 'bind off' && step.how === 'basic' && step.pegs === null
    ? changeStep(pattern, at, { ...step, how: 'graft' })
    : pattern
}
