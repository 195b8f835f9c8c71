import type { Bench } from '../state/bench.svelte'
import type { Command } from './command'
import { historyCommands } from './history'

const asking = (
  id: string,
  label: string,
  dialog: Parameters<Bench['ask']>[0],
  keys: readonly string[] = [],
): Command => ({ id, label, keys, run: (bench) => bench.ask(dialog) })

export const showPieces = asking('pieces', 'My pieces', 'pieces')
export const startPiece = asking('start', 'Start', 'start')
export const openFile: Command = {
  id: 'open',
  label: 'Open',
  keys: ['Mod+o'],
  run: ({ files }) => files.open(),
}
export const saveFile: Command = {
  id: 'save',
  label: 'Save',
  keys: ['Mod+s'],
  run: ({ files }) => files.save(),
}
export const showSteps = asking('steps', 'Steps', 'steps')
export const showLoom = asking('loom', 'Loom and swatch', 'loom')
export const showBooklet = asking('booklet', 'Booklet', 'booklet', ['Mod+p'])
export const knitAlong = asking('along', 'Knit along', 'along')

/** Where pieces are: the first group of the head. */
export const shelfCommands: readonly Command[] = [showPieces, startPiece, openFile, saveFile]

/** What belongs to this piece: the third group of the head. */
export const aboutPiece: readonly Command[] = [showSteps, showLoom, showBooklet, knitAlong]

/** Commands whose keys work wherever the focus is, also in a field: they mean the whole piece. */
export const benchCommands: readonly Command[] = [...shelfCommands, ...aboutPiece]

/** All that stands in the head. */
export const headCommands: readonly Command[] = [...benchCommands, ...historyCommands]
