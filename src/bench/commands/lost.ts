import { lostStitches, type Lost } from '../../pattern/lost'
import type { Bench, Edit } from '../state/bench.svelte'
import { rowName, rowNoun } from '../state/row-name'

/** More places than this are counted, not named. */
const mostNamed = 3

/** "2/2 LC in round 3 and 2/2 RC in round 7 gave way." */
function sentence(lost: readonly Lost[], { pattern, work }: Bench): string {
  const { terms } = pattern.style
  const names = lost.map(
    ({ row, stitch }) => `${stitch[terms].abbr} in ${rowName(work, row).toLowerCase()}`,
  )
  const isCut = lost.every(({ how }) => how === 'cut')
  if (names.length > mostNamed) {
    const thing = lost.every(({ stitch }) => stitch.cross) ? 'crosses' : 'wide stitches'
    const rows = new Set(lost.map(({ row }) => row)).size
    const where = rows === 1 ? rowNoun(pattern) : `${rowNoun(pattern)}s`
    return `${names.length} ${thing} in ${rows} ${where} ${isCut ? 'are cut' : 'gave way'}.`
  }
  const all = [names.slice(0, -1).join(', '), names.at(-1)].filter(Boolean).join(' and ')
  return `${all} ${isCut ? (names.length > 1 ? 'are cut' : 'is cut') : 'gave way'}.`
}

/** What was taken away since the version that undo brings back, as people are told; empty: nothing. */
export function saidOfLost(bench: Bench): string {
  const before = bench.history.past.at(-1)?.pattern
  const lost = before ? lostStitches(before.chart, bench.pattern.chart) : []
  return lost.length === 0
    ? ''
    : `${sentence(lost, bench)} Undo brings ${lost.length === 1 ? 'it' : 'them'} back.`
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
): boolean {
  const before = bench.pattern
  if (!bench.apply(label, edit, gesture)) return false
  if (lostStitches(before.chart, bench.pattern.chart).length > 0) sayLost(bench)
  return true
}

/** Say what the last step took away, after what there is to say else. */
export function sayLost(bench: Bench, done = ''): void {
  const lost = saidOfLost(bench)
  const text = [done, lost].filter(Boolean).join(' ')
  if (text) bench.say(text, { undo: lost !== '' })
}
