import { hasOwnUndo, innermost } from '../widgets/fields'
import { trayItems } from '../state/tray'
import type { Bench } from '../state/bench.svelte'
import { columnCommands, pieceCommands, rowCommands } from './chart'
import { keyOf, reasonAgainst, type Command } from './command'
import { historyCommands } from './history'
import { placeCommands } from './moving'
import { walkFromChart } from './walk'
import { termOf } from '../../languages/languages'

/** Commands that run while a chart has the focus. */
export const chartCommands: readonly Command[] = [
  ...placeCommands,
  ...rowCommands,
  ...columnCommands,
  ...pieceCommands,
  ...walkFromChart,
]

const byKey = (commands: readonly Command[]) =>
  new Map(commands.flatMap((command) => command.keys.map((key) => [key, command] as const)))
const chartKeys = byKey(chartCommands)
const benchKeys = byKey(historyCommands)

function run(bench: Bench, command: Command, event: Event): void {
  event.preventDefault()
  const reason = reasonAgainst(command, bench)
  if (reason) bench.say(reason)
  else command.run(bench)
}

/** A key pressed on a chart: a command, or a stitch to take into the hand. */
export function chartKey(bench: Bench, event: KeyboardEvent): void {
  const key = keyOf(event)
  const command = chartKeys.get(key)
  if (command) {
    run(bench, command, event)
    return
  }
  const item = trayItems(bench.pattern, bench.stitch).find((entry) => entry.key === key)
  if (!item) return
  event.preventDefault()
  bench.stitch = item.stitch
  bench.hand = 'paint'
  bench.say(`In hand: ${termOf(item.stitch, bench.pattern.style.terms).name}.`)
}

/** A key pressed anywhere, unless a field there has its own undo. */
export function benchKey(bench: Bench, event: KeyboardEvent): void {
  const target = innermost(event)
  if (hasOwnUndo(target) || (target instanceof Element && target.closest('dialog'))) return
  const command = benchKeys.get(keyOf(event))
  if (command) run(bench, command, event)
}
