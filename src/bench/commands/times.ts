import { otherBands, setBand } from '../../pattern/edits/rows'
import type { Band, Run } from '../../pattern/pattern'
import type { Bench } from '../state/bench.svelte'
import { rowNoun } from '../../words/rowName'
import { lowerFirst, upperFirst } from '../../languages/english/forms'

/** "Rounds 6 to 11", "Row 4": rows of the chart as they are numbered. */
export function rowsNamed({ pattern, work }: Bench, { from, to }: Run): string {
  const noun = upperFirst(rowNoun(pattern))
  const { numbers } = work
  return from === to ? `${noun} ${numbers[from]}` : `${noun}s ${numbers[from]} to ${numbers[to]}`
}

/** "Rounds 1 to 6 are worked 6 times and round 7 is worked twice". */
function counts(bench: Bench, bands: readonly Band[], were = false): string {
  const said = bands.map((band, index) => {
    const name = rowsNamed(bench, band)
    const one = band.from === band.to
    const is = were ? (one ? 'was' : 'were') : one ? 'is' : 'are'
    const times = band.times === 2 ? 'twice' : `${band.times} times`
    return `${index === 0 ? name : name.toLowerCase()} ${is} worked ${times}`
  })
  return [said.slice(0, -1).join(', '), said.at(-1)].filter(Boolean).join(' and ')
}

/**
 * Say how often rows are worked. A count has no room for another: where one would be lost that is
 * not asked for, nothing is done, and it is said which stand there.
 */
export function workTimes(bench: Bench, run: Run, times: number): void {
  const { from, to } = run
  const others = otherBands(bench.chart, from, to)
  const isOnce = times === 1
  const areInside = others.every((band) => band.from >= from && band.to <= to)
  if (others.length > 0 && !(isOnce && areInside) && !bench.isSecond) {
    const one = others.length === 1
    const instead = isOnce
      ? `Mark all ${rowNoun(bench.pattern)}s of ${one ? 'that count' : 'those counts'}`
      : `Set ${one ? 'that' : 'those'} to once first, or press “Copy above”`
    bench.say(`${counts(bench, others)}. A count can’t hold another count. ${instead}.`)
    return
  }
  const had = counts(bench, others, true)
  const label = `${rowsNamed(bench, run)}, worked ${isOnce ? 'once' : `${times} times`}`
  if (bench.apply(label, (p) => setBand(p, from, to, times)) && others.length > 0)
    bench.say(`Now worked once. Before, ${lowerFirst(had)}.`, { undo: true })
}
