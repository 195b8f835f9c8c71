import { innermost, isForWriting, isLive } from '../widgets/fields'
import type { Typing } from '../widgets/typing'
import { trayItems } from '../state/tray'
import type { Bench } from '../state/bench.svelte'
import { blockCommands } from './blocks/commands'
import { blockKey } from './blocks/laying'
import { columnCommands, pieceCommands, rowCommands } from './chart'
import { byKey, keyOf, runCommand, type Command } from './command'
import { benchCommands } from './bench'
import { historyCommands } from './history'
import { placeCommands } from './moving'
import { screenCommands } from './screen'
import { walkFromChart } from './walk'
import { termOf } from '../../languages/languages'

/** Commands that run while a chart has the focus. */
export const chartCommands: readonly Command[] = [
  ...placeCommands,
  ...rowCommands,
  ...columnCommands,
  ...pieceCommands,
  ...walkFromChart,
  ...blockCommands,
]

const chartKeys = byKey(chartCommands)
const screenKeys = byKey(screenCommands)
const historyKeys = byKey(historyCommands)
const benchKeys = byKey(benchCommands)

/** A key pressed on a chart: an answer, a command, or a stitch to take into the hand. */
export function chartKey(bench: Bench, event: KeyboardEvent): void {
  if (blockKey(bench, event)) return
  const key = keyOf(event)
  const command = chartKeys.get(key)
  if (command) {
    runCommand(command, bench, event)
    return
  }
  const item = trayItems(bench.pattern, bench.stitch).find((entry) => entry.key === key)
  if (!item) return
  event.preventDefault()
  bench.stitch = item.stitch
  bench.hand = 'paint'
  bench.say(`In hand: ${termOf(item.stitch, bench.pattern.style.terms).name}.`)
}

/**
 * A key pressed anywhere. Those of the whole piece work in fields too, which give up what is typed in them
 * first; undo does not in dialogs that change no stitches, nor where a field takes back what is typed in it.
 */
export function benchKey(bench: Bench, typing: Typing, event: KeyboardEvent): void {
  const above = bench.dialogs.at(-1)
  const key = keyOf(event)
  const whole = benchKeys.get(key)
  if (whole) {
    typing.take()
    if (above === undefined || above === 'steps') runCommand(whole, bench, event)
    else event.preventDefault()
    return
  }
  const at = innermost(event)
  if (typing.isIn(at) || isLive(at) || (above !== undefined && above !== 'steps')) return
  if (key === 'Escape' && bench.panes.whole !== null && !bench.corner && !event.defaultPrevented) {
    bench.panes.whole = null
    return
  }
  const command = historyKeys.get(key) ?? (isForWriting(at) ? undefined : screenKeys.get(key))
  if (command) runCommand(command, bench, event)
}
