/** What a mend is asked to do, and what it has done then. */
const past: ReadonlyMap<string, string> = new Map([
  ['Add', 'Added'],
  ['Begin', 'Now begins'],
  ['Bind', 'Bound'],
  ['Cast', 'Cast'],
  ['Chart', 'Charted'],
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
  ['Turn', 'Turned'],
  ['Work', 'Worked'],
  ['Write', 'Wrote'],
])

/** Some are told by what has changed, since the mend calls it "it". */
const told: readonly (readonly [RegExp, string])[] = [
  [/^Move it (.+)$/, 'Moved $1'],
  [/^Write (.+?)(?: anew,)? as in the chart$/, '$1 rewritten from the chart'],
]

/** "Made a yarn over on peg 5.": what a mend of this name has done, in a sentence. */
export function doneSaid(label: string): string {
  for (const [name, sentence] of told)
    if (name.test(label)) return `${label.replace(name, sentence)}.`
  const [verb = '', ...rest] = label.split(' ')
  const done = past.get(verb)
  return `${done ? [done, ...rest].join(' ') : `Done: ${label}`}.`
}
