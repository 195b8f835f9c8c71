import { inQuotes } from '../pattern/excerpt'
import { parseCall, Unusable } from './call'
import { commands, type Answer } from './commands'
import { jsonOf } from './report'
import { usage } from './usage'

/** Answer a call: a command and what follows it. Never throws. */
export async function answer(args: readonly string[]): Promise<Answer> {
  try {
    return await run(args)
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error)
    const complaint = error instanceof Unusable ? reason : `This went wrong: ${reason}`
    return { output: '', complaints: [complaint], exit: 2 }
  }
}

const help: Answer = { output: usage, complaints: [], exit: 0 }

async function run([name = '', ...rest]: readonly string[]): Promise<Answer> {
  if (name === '--help' || name === '-h' || name === 'help') return help
  const command = commands.get(name)
  if (!command) {
    const known = [...commands.keys()].join(', ')
    throw new Unusable(
      name
        ? `There is no command ${inQuotes(name)}; there are ${known}.`
        : `Say a command: ${known}.`,
    )
  }
  const call = parseCall(name, rest, command.options)
  if (call.values.help) return help
  try {
    return await command.run(call)
  } catch (error) {
    if (!(error instanceof Unusable) || !call.values.json) throw error
    const reasons = [error.message]
    return { output: `${jsonOf([], reasons)}\n`, complaints: reasons, exit: 2 }
  }
}
