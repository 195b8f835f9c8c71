import { render, screen } from '@testing-library/svelte'
import userEvent from '@testing-library/user-event'
import type { Component } from 'svelte'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { setGauge } from '../../src/pattern/edits/settings'
import { Bench } from '../../src/bench/state/bench.svelte'

/** Press a mend of the finding that is shown, also where it has no room beside the others. */
export async function pressMend(
  user: ReturnType<typeof userEvent.setup>,
  name: string,
): Promise<void> {
  const all = screen.queryByRole('button', { name: 'All mends' })
  if (all && !screen.queryByRole('button', { name })) await user.click(all)
  await user.click(screen.getAllByRole('button', { name })[0] as HTMLElement)
}

/** A bench with an empty ring of 12 pegs and 6 rounds, gauge stated. */
export const smallBench = (pattern: Pattern = newPattern(12, 6)): Bench =>
  new Bench(setGauge(pattern, { stitches: 18, rows: 26 }))

export const cellsOf = (bench: Bench, row: number): string =>
  (bench.chart.rows[row]?.cells ?? []).map((cell) => cell?.id ?? '.').join(' ')

/** Render a part of the bench with a bench. What it is given says its type: plain tsc knows no part's. */
export function show<Props extends { bench: Bench }>(
  part: Component<NoInfer<Props>>,
  props: Props,
): { user: ReturnType<typeof userEvent.setup>; bench: Bench } {
  render(part as Component<{ bench: Bench }>, { props })
  return { user: userEvent.setup(), bench: props.bench }
}
