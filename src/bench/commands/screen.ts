import type { Bench } from '../state/bench.svelte'
import { readings, type ReadingName } from '../state/panes.svelte'
import type { Command } from './command'

/** The reading in which the keys work; Rows where they work in none. */
function readingAtFocus(): ReadingName {
  const sheet = document.activeElement?.closest<HTMLElement>('[data-sheet]')?.dataset.sheet
  return readings.find((name) => name === sheet) ?? 'Rows'
}

export const wholeScreen: Command = {
  id: 'whole-screen',
  label: ({ panes }) => (panes.whole === null ? 'Whole screen' : 'Back to all readings'),
  keys: ['Shift+w'],
  reason: ({ panes }) => (panes.isPhone ? 'Here one reading has the whole screen anyhow.' : null),
  run: ({ panes }) => panes.toggleWhole(readingAtFocus()),
}

export const swapSides: Command = {
  id: 'swap-sides',
  label: 'Swap sides',
  keys: [],
  run: ({ panes }) => {
    panes.swapped = !panes.swapped
  },
}

const showing = readings.map((name): Command => ({
  id: `show-${name.toLowerCase()}`,
  label: `Show ${name}`,
  keys: [],
  reason: ({ panes }: Bench) =>
    name === 'Ring' && !panes.rights.includes('Ring') ? 'A rake has no ring.' : null,
  run: ({ panes }: Bench) => panes.show(name),
}))

/** How the room of the screen is shared out. */
export const screenCommands: readonly Command[] = [wholeScreen, swapSides, ...showing]
