/** Pegwright without a screen: `npm run -s pegwright -- COMMAND`. Nothing here needs a browser. */
import { answer } from './answer'

// A reader that stops early, such as head, is no failure of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})

const { output, complaints, exit } = await answer(process.argv.slice(2))
process.stdout.write(output)
for (const complaint of complaints) process.stderr.write(`${complaint}\n`)
// Not process.exit: what is still to be written to a pipe would be lost.
process.exitCode = exit
