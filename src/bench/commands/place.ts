import { rowNoun } from '../../words/rowName'
import type { Bench } from '../state/bench.svelte'
import { columnCommands, rowCommands } from './chart'
import type { Command } from './command'
import { placeCommands } from './moving'
import {
  copyCommand,
  cutCommand,
  moveCommand,
  pasteCommand,
  stampCommand,
} from './blocks/clipboard'
import { markPegCommand, markRowCommand } from './blocks/marking'
import { flipCommand, shiftLeftCommand, shiftRightCommand, turnCommand } from './blocks/shapes'

/** A command as it stands in the place line, under a name that is short beside the others of its group. */
export interface PlaceEntry {
  readonly command: Command
  readonly label: (bench: Bench) => string
}
/** Commands that stand together, with a line between them and the next. */
export type PlaceGroup = readonly PlaceEntry[]

const all = [...rowCommands, ...columnCommands, ...placeCommands]
const entry = (id: string, label: string | PlaceEntry['label']): PlaceEntry => {
  const command = all.find((one) => one.id === id)
  if (!command) throw new Error(`There is no command “${id}”`)
  return { command, label: typeof label === 'string' ? () => label : label }
}

/** What can be done with the place, the most used first: what has no room stands behind “…”. */
const here: readonly PlaceGroup[] = [
  [
    entry('row-above', ({ pattern }) => `Add a ${rowNoun(pattern)} above`),
    entry('row-below', 'below'),
  ],
  [entry('column-before', 'Add a peg before'), entry('column-after', 'after')],
  [
    { command: markRowCommand, label: ({ pattern }) => `Mark ${rowNoun(pattern)}` },
    { command: markPegCommand, label: () => 'Mark peg' },
  ],
]

/** What can be done with what is marked, or with what was copied. */
const block: readonly PlaceGroup[] = [
  [
    { command: copyCommand, label: () => 'Copy' },
    { command: cutCommand, label: () => 'Cut' },
    { command: pasteCommand, label: () => 'Paste' },
    { command: stampCommand, label: () => 'Stamp' },
    { command: moveCommand, label: () => 'Move' },
  ],
  [
    { command: flipCommand, label: () => 'Flip' },
    { command: turnCommand, label: () => 'Turn' },
    { command: shiftLeftCommand, label: () => '‹ Peg' },
    { command: shiftRightCommand, label: () => 'Peg ›' },
  ],
  [entry('paint', 'Fill'), entry('repeat-set', 'Repeat')],
]

/** Those that have no room stand behind “…” with all others; so do those of the other list. */
export const placeGroups = (bench: Bench): readonly PlaceGroup[] =>
  bench.corner || bench.block.preview ? block : [...here, ...block]

/** Px that a press with this name takes at most, and that parts two groups. */
const widthOf = (label: string): number => 8.2 * label.length + 19
const between = 17

/** So many groups, from the first, as have room in so many px. */
export function groupsIn(
  groups: readonly PlaceGroup[],
  bench: Bench,
  room: number,
): readonly PlaceGroup[] {
  let left = room
  const end = groups.findIndex((group) => {
    left -= between + group.reduce((sum, { label }) => sum + widthOf(label(bench)), 0)
    return left < 0
  })
  return end < 0 ? groups : groups.slice(0, end)
}
