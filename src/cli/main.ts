/** Pegwright without a screen: `npm run -s pegwright -- COMMAND`. Nothing here needs a browser. */
import { answer } from './answer'
import { reasonOf } from './files'

// A reader that stops early, such as head, is no failure of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') return
  process.stderr.write(`The output cannot be written: ${reasonOf(error)}.\n`)
  process.exitCode = 2
})
// There is no one left to tell.
process.stderr.on('error', () => undefined)

const { output, complaints, exit } = await answer(process.argv.slice(2))
// Not process.exit: what is still to be written to a pipe would be lost.
process.exitCode = exit
for (const complaint of complaints) process.stderr.write(`${complaint}\n`)
process.stdout.write(output)
