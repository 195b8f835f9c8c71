import { findChart, onChart, withoutOn } from '../charts'
import { eachChart, withNamed } from '../edits/chart'
import { movePictures } from '../edits/piece'
import type { Chart, NamedChart, Pattern, ShortRowWish } from '../pattern'
import { textureBefore } from './before'
import type { Refusal } from './refuse'
import { shortRowChart } from './shortRows'

export type MadeAnew =
  { readonly ok: true; readonly pattern: Pattern } | ({ readonly ok: false } & Refusal)

/**
 * The chart of this name made from this wish, on the loom as it is and beside what is worked before it now. Step
 * pictures of rows that it has no more go.
 */
export function makeAnew(pattern: Pattern, name: string, wish: ShortRowWish): MadeAnew {
  const { steps } = pattern
  const at = steps.findIndex((step) => step.kind === 'chart' && step.chart === name)
  const before = at < 0 ? null : textureBefore(pattern, at)
  const from = { ...wish, beside: before?.beside ?? null }
  const made = shortRowChart(pattern.loom, from)
  if (!made.ok) return made
  const { chart } = made
  const kept = movePictures(onChart(pattern, name), (row) => (row < chart.rows.length ? row : null))
  return { ok: true, pattern: withoutOn(withNamed(kept, { chart, wish: from })) }
}

/** All charts that have a wish, made anew on another loom; where that cannot be, the rows stay and the wish goes. */
export function remadeFor(pattern: Pattern): Pattern {
  let remade = pattern
  for (const { name, wish } of pattern.charts) {
    if (!wish) continue
    const made = makeAnew(remade, name, wish)
    remade = made.ok ? made.pattern : withoutOn(withNamed(onChart(remade, name), { wish: null }))
  }
  return remade
}

/** The charts of a piece that was turned, each with its wish turned too where that makes these very rows. */
export const withWishes = (
  turned: Pattern,
  own: Pattern,
  turn: (wish: ShortRowWish) => ShortRowWish,
): Pattern => ({
  ...turned,
  charts: eachChart(turned.charts, (named) => {
    const was = findChart(own, named.name)?.wish
    const wish = was ? turn(was) : null
    return wish && makes(wish, named, turned) ? { ...named, wish } : named
  }),
})

/** Are these the rows that the wish makes on this loom? */
function makes(wish: ShortRowWish, { chart }: NamedChart, { loom }: Pattern): boolean {
  const made = shortRowChart(loom, wish)
  return made.ok && isSame(made.chart, chart)
}

const isSame = (one: Chart, other: Chart): boolean =>
  one.columns === other.columns &&
  other.repeat === null &&
  other.bands.length === 0 &&
  one.rows.length === other.rows.length &&
  one.rows.every(({ cells, run, heading, end }, at) => {
    const row = other.rows[at]
    return (
      row?.end === end &&
      row.heading === heading &&
      row.run?.from === run?.from &&
      row.run?.to === run?.to &&
      cells.every((cell, column) => cell === row.cells[column])
    )
  })

/** Charts that had a wish and are now rows of the designer's. */
export const wishesLetGo = (before: Pattern, now: Pattern): readonly string[] =>
  before.charts.flatMap(({ name, wish }) =>
    wish && findChart(now, name)?.wish === null ? [name] : [],
  )
