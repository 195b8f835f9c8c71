/**
 * Works through the cases it is given and reports those that fail or are slow. It notes the number
 * of each case in a file before it begins, so that its parent knows which one ended it.
 */
import { openSync, writeSync } from 'node:fs'
import { caseOf, type Kind } from './cases'

/** To the parent. Times are of the processor, ms: what else the machine does is not in them. */
export type Report =
  | { readonly what: 'failed'; readonly index: number; readonly reason: string }
  | { readonly what: 'slow'; readonly index: number; readonly time: number; readonly step: string }
  | {
      readonly what: 'done'
      readonly used: number
      readonly slowest: number
      readonly time: number
    }

const [kind, seedSaid, fromSaid, countSaid, place = '', limitSaid] = process.argv.slice(2)
const [seed, from, count, limit] = [seedSaid, fromSaid, countSaid, limitSaid].map(Number) as [
  number,
  number,
  number,
  number,
]

const say = (report: Report): void => void process.send?.(report)

/** The longest thing in a case that a person waits for. */
function timed(index: number): { time: number; step: string; used: boolean } {
  let [time, longest] = [0, '']
  const used = caseOf(kind as Kind, seed, index).run((name, does) => {
    const start = process.cpuUsage()
    const done = does()
    const { user, system } = process.cpuUsage(start)
    const took = (user + system) / 1000
    if (took > time) [time, longest] = [took, name]
    return done
  })
  return { time, step: longest, used }
}

const file = openSync(place, 'w')
let [used, slowest, worst] = [0, from, 0]
for (let index = from; index < from + count; index++) {
  writeSync(file, String(index).padEnd(12), 0)
  try {
    const first = timed(index)
    if (first.used) used++
    let { time, step } = first
    // The first cases, and those that meet a clearing of memory, are slow for no reason of theirs.
    for (let more = 0; more < 2 && time > limit; more++) {
      const again = timed(index)
      if (again.time < time) ({ time, step } = again)
    }
    if (time > limit) say({ what: 'slow', index, time, step })
    if (time > worst) [slowest, worst] = [index, time]
  } catch (error) {
    const reason = error instanceof Error ? (error.stack ?? error.message) : String(error)
    say({ what: 'failed', index, reason })
  }
}
say({ what: 'done', used, slowest, time: worst })
process.disconnect?.()
