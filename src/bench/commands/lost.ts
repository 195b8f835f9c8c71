import { findChart } from '../../pattern/charts'
import { keepsAll, lostStitches, type Lost } from '../../pattern/columns/lost'
import type { Bench, Edit } from '../state/bench.svelte'
import { rowName, rowNoun } from '../../words/rowName'
import { termOf } from '../../languages/languages'
import { listed, upperFirst } from '../../languages/english/forms'

/** More places than this are counted, not named. */
const mostNamed = 3

const numberWords = ['', 'the', 'two', 'three']

/** "The 2/2 LC in round 3 was painted over.", "Two 2/1 RC in round 3 were painted over." */
function sentence(lost: readonly Lost[], { pattern, work }: Bench, isPainted: boolean): string {
  const { terms } = pattern.style
  const isCut = lost.every(({ how }) => how === 'cut')
  const one = lost.length === 1
  const done = isCut
    ? one
      ? 'is cut'
      : 'are cut'
    : isPainted
      ? one
        ? 'was painted over'
        : 'were painted over'
      : one
        ? 'is gone'
        : 'are gone'
  if (lost.length > mostNamed) {
    const thing = lost.every(({ stitch }) => stitch.cross) ? 'crosses' : 'wide stitches'
    const rows = new Set(lost.map(({ row }) => row)).size
    const where = rows === 1 ? rowNoun(pattern) : `${rowNoun(pattern)}s`
    return `${lost.length} ${thing} in ${rows} ${where} ${done}.`
  }
  const counts = new Map<string, number>()
  for (const { row, stitch, wasCut } of lost) {
    const name = `${wasCut ? 'cut ' : ''}${termOf(stitch, terms).abbr} in ${rowName(work, row).toLowerCase()}`
    counts.set(name, (counts.get(name) ?? 0) + 1)
  }
  const names = [...counts].map(([name, count]) => `${numberWords[count]} ${name}`)
  return `${upperFirst(listed(names))} ${done}.`
}

/** What was taken away since the version that undo brings back, as people are told; empty: nothing. */
function saidOfLost(bench: Bench, isPainted = false): string {
  const before = bench.history.past.at(-1)
  const there = before && findChart(before.pattern, bench.on)
  const lost = there ? lostStitches(there.chart, bench.chart) : []
  return lost.length === 0
    ? ''
    : `${sentence(lost, bench, isPainted)} Undo brings ${lost.length === 1 ? 'it' : 'them'} back.`
}

/**
 * Do an edit of the stitches. Where it takes away stitches wider than what is put there, or cuts them,
 * that is said, with a way back.
 */
export function applyToStitches(
  bench: Bench,
  label: string,
  edit: Edit,
  gesture: string | null = null,
  isMove = false,
): boolean {
  const before = bench.chart
  if (!bench.apply(label, edit, gesture)) return false
  const after = bench.chart
  // What stands elsewhere now was not taken away.
  if (isMove && keepsAll(before, after)) return true
  // With as many pegs as before it was stitches that were put in their place.
  const isPainted = before.columns === after.columns
  if (lostStitches(before, after).length > 0) sayLost(bench, '', isPainted)
  return true
}

/** Say what the last step took away, after what there is to say else. */
export function sayLost(bench: Bench, done = '', isPainted = false): void {
  const lost = saidOfLost(bench, isPainted)
  const text = [done, lost].filter(Boolean).join(' ')
  if (text) bench.say(text, { undo: lost !== '' })
}
