import type { Bench } from '../state/bench.svelte'

/** A command is one object: button, menu and key all use it. */
export interface Command {
  readonly id: string
  readonly label: string | ((bench: Bench) => string)
  /** Keys in the form of KeyboardEvent.key with modifiers: "Mod+z", "Shift+Insert", "p". */
  readonly keys: readonly string[]
  /** Why it cannot run now, in a sentence; null when it can. */
  readonly reason?: (bench: Bench) => string | null
  /** It changes the piece, so it does not run on the second of a pair. */
  readonly edits?: true
  readonly run: (bench: Bench) => void
}

/** Why a command cannot run now; null when it can. */
export const reasonAgainst = (command: Command, bench: Bench): string | null =>
  (command.edits ? bench.readOnly : null) ?? command.reason?.(bench) ?? null

/** Run a command, or say why it cannot run. */
export function runCommand(command: Command, bench: Bench, event?: Event): void {
  event?.preventDefault()
  const reason = reasonAgainst(command, bench)
  if (reason) bench.say(reason)
  else command.run(bench)
}

/** Commands by the keys that run them. */
export const byKey = (commands: readonly Command[]): ReadonlyMap<string, Command> =>
  new Map(commands.flatMap((command) => command.keys.map((key) => [key, command] as const)))

/** What a command is called now. */
export const labelOf = ({ label }: Command, bench: Bench): string =>
  typeof label === 'string' ? label : label(bench)

/** The commands, said to change the piece. */
export const editing = (commands: readonly Command[]): readonly Command[] =>
  commands.map((command) => ({ ...command, edits: true }))

const isMac = typeof navigator !== 'undefined' && /Mac|iPhone|iPad/.test(navigator.platform)

/** The pressed key in the form of `Command.keys`. Shift counts only beside named keys. */
export function keyOf(event: KeyboardEvent): string {
  const parts: string[] = []
  if (isMac ? event.metaKey : event.ctrlKey) parts.push('Mod')
  if (event.altKey) parts.push('Alt')
  const name = event.key.length === 1 ? event.key.toLowerCase() : event.key
  if (event.shiftKey && (event.key.length > 1 || parts.length > 0 || /[a-z]/.test(name)))
    parts.push('Shift')
  return [...parts, name === ' ' ? 'Space' : name].join('+')
}

/** How a key is written for people. */
export const keyLabel = (key: string): string =>
  key
    .replace('Mod', isMac ? '⌘' : 'Ctrl')
    .replace('ArrowUp', '↑')
    .replace('ArrowDown', '↓')
    .replace(/\+([a-z])$/, (_, letter: string) => `+${letter.toUpperCase()}`)
