import { termOf } from '../../../languages/languages'
import { canSwap, countOf, swapStitches, type SwapScope } from '../../../pattern/blocks/swap'
import { stitchesIn } from '../../../pattern/blocks/area'
import type { Stitch } from '../../../stitches/stitch'
import type { Bench } from '../../state/bench.svelte'
import { applyToStitches } from '../lost'
import { blockArea } from './laying'

/** The stitches that can give their place to the one in the hand: those in what is marked first. */
export function swappable(bench: Bench): readonly Stitch[] {
  const { rows, columns } = blockArea(bench)
  const here = stitchesIn(bench.chart, rows).filter(
    ({ column }) => column >= columns.from && column <= columns.to,
  )
  const all = stitchesIn(bench.chart, { from: 0, to: bench.chart.rows.length - 1 })
  const found = new Set([...here, ...all].map(({ stitch }) => stitch))
  return [...found].filter((stitch) => canSwap(stitch, bench.stitch))
}

/** How many of a stitch stand there. */
export const countIn = (bench: Bench, stitch: Stitch, scope: SwapScope): number =>
  countOf(bench.pattern, stitch, scope, blockArea(bench))

/** Put the stitch in the hand in the place of each of another. */
export function swapFor(bench: Bench, from: Stitch, scope: SwapScope): void {
  const { terms } = bench.pattern.style
  const [was, is] = [from, bench.stitch].map((stitch) => termOf(stitch, terms).abbr)
  const count = countIn(bench, from, scope)
  const area = blockArea(bench)
  const done = applyToStitches(bench, `Swap ${was} for ${is}`, (p) =>
    swapStitches(p, from, bench.stitch, scope, area),
  )
  if (done) bench.say(`${count} ${was} swapped for ${is}.`, { undo: true })
}
