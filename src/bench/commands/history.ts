import type { Command } from './command'

export const undo: Command = {
  id: 'undo',
  label: 'Undo',
  keys: ['Mod+z'],
  reason: ({ history }) => (history.past.length === 0 ? 'There is nothing to undo.' : null),
  run: (bench) => bench.undo(),
}

export const redo: Command = {
  id: 'redo',
  label: 'Redo',
  keys: ['Mod+Shift+z', 'Mod+y'],
  reason: ({ history }) => (history.future.length === 0 ? 'There is nothing to redo.' : null),
  run: (bench) => bench.redo(),
}

export const historyCommands: readonly Command[] = [undo, redo]
