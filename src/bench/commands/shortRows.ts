import { changeStep } from '../../pattern/edits/piece'
import { upperFirst } from '../../languages/english/forms'
import { makeAnew } from '../../pattern/generate/anew'
import { textureBefore } from '../../pattern/generate/before'
import { putShortRows } from '../../pattern/generate/putIn'
import { makeShortRows, shortRowChart } from '../../pattern/generate/shortRows'
import { limits, type Pattern, type ShortRowWish } from '../../pattern/pattern'
import { wishText } from '../piece/stepWords'
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
export function putShortRowsHere(bench: Bench, wish: ShortRowWish): void {
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
  if (!put.ok || !bench.apply(`Add a ${wish.shape}`, () => put.pattern)) return
  bench.goTo({ row: at, peg: 0 })
  bench.say(`The ${wish.shape} is added after row ${at}.`)
}

/** Add a heel, toe or wedge as a chart of its own, worked in a new step. */
export function addShortRows(bench: Bench, wish: ShortRowWish): void {
  const at = placeForStep(bench)
  const { steps, loom } = bench.pattern
  const from = { ...wish, beside: textureBefore(bench.pattern, at)?.beside ?? null }
  const made = shortRowChart(loom, from)
  if (!made.ok) {
    bench.say(made.message)
    return
  }
  const name = putChart(bench, upperFirst(wish.shape), made.chart, true, from, (pattern) =>
    wish.shape === 'toe' ? graftedAt(pattern, at + 1) : pattern,
  )
  const now = bench.pattern.steps[at + 1]
  if (name && wish.shape === 'toe' && now?.kind === 'bind off' && now !== steps[at])
    bench.say(
      `The chart “${name}” is added, worked in step ${at + 1}. The bind-off after it is a graft now.`,
    )
}

/** Open the form with the numbers that a chart is made from. */
export function changeNumbers(bench: Bench, name: string): void {
  bench.remaking = name
  bench.ask('steps')
}

/** Make a chart anew from other numbers. */
export function remakeShortRows(bench: Bench, name: string, wish: ShortRowWish): void {
  const made = makeAnew(bench.first, name, wish)
  if (!made.ok) bench.say(made.message)
  else if (bench.apply(`Change the numbers of “${name}”`, () => made.pattern))
    bench.say(`“${name}” is made anew, as ${wishText(wish)}.`)
}

/** A toe is grafted: the plainest bind-off straight after it becomes a graft. */
function graftedAt(pattern: Pattern, at: number): Pattern {
  const step = pattern.steps[at]
  return step?.kind === 'bind off' && step.how === 'basic' && step.pegs === null
    ? changeStep(pattern, at, { ...step, how: 'graft' })
    : pattern
}
