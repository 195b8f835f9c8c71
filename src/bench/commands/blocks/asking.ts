import type { At } from '../../../pattern/blocks/area'
import type { Bench } from '../../state/bench.svelte'
import { wouldCut } from './said'

/** Do it at once where nothing is cut; else say what would be, and ask. */
export function askFirst(bench: Bench, torn: readonly At[], label: string, run: () => void): void {
  if (torn.length === 0 || bench.isSecond) run()
  else bench.block.ask({ says: wouldCut(bench, torn), torn, label, run, instead: null })
}

/** Do what was asked for. */
export function answer(bench: Bench, run: () => void): void {
  bench.block.leave()
  run()
}
