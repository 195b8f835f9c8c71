import { upperFirst } from './forms'

/** What a mend is asked to do, and what it has done then. */
const past: ReadonlyMap<string, string> = new Map([
  ['Add', 'Added'],
  ['Begin', 'Now begins'],
  ['Bind', 'Bound'],
  ['Cast', 'Cast'],
  ['Change', 'Changed'],
  ['Cross', 'Crossed'],
  ['End', 'Ended'],
  ['Fill', 'Filled'],
  ['Fit', 'Fitted'],
  ['Gather', 'Gathered'],
  ['Give', 'Gave'],
  ['Knit', 'Knitted'],
  ['Leave', 'Left'],
  ['Make', 'Made'],
  ['Mark', 'Marked'],
  ['Move', 'Moved'],
  ['Open', 'Opened'],
  ['Remove', 'Removed'],
  ['Repeat', 'Repeated'],
  ['Start', 'Started'],
  ['Stop', 'Now stops'],
  ['Take', 'Took'],
  ['Tuck', 'Tucked'],
  ['Turn', 'Turned'],
  ['Work', 'Worked'],
  ['Write', 'Wrote'],
])

/** Some are told by what has changed, since the mend calls it "it". */
const told: readonly (readonly [RegExp, string])[] = [
  [/^Move it (.+)$/, 'Moved $1'],
  [/^Rewrite (.+) from the chart$/, '$1 rewritten from the chart'],
  [/^No stitch on (\d+ pegs|pegs .+) from here on$/, '$1 are empty from here on'],
  [/^No stitch on (peg .+) from here on$/, '$1 is empty from here on'],
  [/^No stitch on (peg \d+), which is empty$/, '$1 is marked as no stitch'],
  [/^Let knit mean (.+)$/, 'Knit now means $1'],
  [/^Use a loom with (.+)$/, 'Now on a loom with $1'],
  [/^Before (.+?), ((?:knit|cast on) .+)$/, 'Added before $1: $2'],
  [/^Give it (.+)$/, 'It now has $1'],
  [/^End it at (.+)$/, 'Now ends at $1'],
  [/^Mark it (.+)$/, 'Marked $1'],
  [/^Work it (.+)$/, 'Now worked $1'],
  [/^Work only (.+)$/, 'Now only $1'],
]

/** "Made a yarn over on peg 5.": what a mend of this name has done, in a sentence. */
export function doneSaid(label: string): string {
  for (const [name, sentence] of told)
    if (name.test(label)) return `${upperFirst(label.replace(name, sentence))}.`
  const [verb = '', ...rest] = label.split(' ')
  const done = past.get(verb)
  return `${done ? [done, ...rest].join(' ') : `Done: ${label}`}.`
}
