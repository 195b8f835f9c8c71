import { removeBand } from '../../pattern/edits/rows'
import { emptyStack } from '../../loom/strand'
import { pegsInWork } from '../../loom/state'
import type { Band } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import { fix } from '../mending'
import { nothing } from '../nothing'
import type { ChartView, Noted, PlacedNote, Rule } from '../rule'
import { gapNamed } from '../wording'
import type { Setting } from '../setting'

function check({ work, setting }: ChartView): readonly PlacedNote[] {
  const { bands, rows } = work.pattern.chart
  if (bands.length === 0) return nothing
  const notes: PlacedNote[] = []
  bands.forEach((band, index) => {
    if (band.to >= rows.length) return
    const noted = compare(work, setting, band, index)
    if (noted) notes.push({ row: band.from, noted })
  })
  return notes
}

/** The second working of a band has to find the loom as its first row needs it. */
function compare(work: Work, setting: Setting, band: Band, index: number): Noted | null {
  const first = work.firstRuns[band.from]
  const last = work.firstRuns[band.to]
  const again =
    work.run.rows[work.passes.findIndex(({ row, time }) => row === band.from && time === 1)]
  if (!first || !last || !again) return null
  const rows = `Rows ${work.numbers[band.from] ?? 0}-${work.numbers[band.to] ?? 0} are worked ${band.times} times`
  const start = pegsInWork(first.before)
  const end = pegsInWork(last.after)
  const mend = () => [fix('Work these rows once', (pattern) => removeBand(pattern, index))]
  if (start !== end)
    return {
      pegs: null,
      say: () => `${rows}: they start with ${start} loops and end with ${end}.`,
      advice: 'Let the band end with as many loops as it starts with, or work its rows once.',
      mend,
    }
  const runsDiffer = again.loops !== first.loops
  if (runsDiffer || lostLoops(first.before.stacks, last.after.stacks, again.miscount !== null))
    return {
      pegs: null,
      say: () =>
        `${rows}: the first row finds ${first.loops} loops the first time and ${again.loops} the second time.`,
      advice: 'Let the band end with loops on the pegs that its first row works.',
      mend,
    }
  const jump = again.faults.find(({ kind }) => kind === 'start')
  const jumpedBefore = first.faults.some(({ kind }) => kind === 'start')
  if (jump?.kind === 'start' && !jumpedBefore && work.layout.over === 0)
    return {
      pegs: { from: jump.peg, to: jump.peg },
      say: () =>
        `${rows}: they start again at peg ${jump.peg + 1}, but the yarn then hangs ${gapNamed(jump.yarnGap, setting)}.`,
      advice: 'Let the band end with the yarn where its first row starts, or work its rows once.',
      mend,
    }
  return null
}

/** Same count, but on other pegs, and the first row cannot make up for it by moving loops. */
const lostLoops = (
  start: readonly (readonly unknown[])[],
  end: readonly (readonly unknown[])[],
  miscounts: boolean,
): boolean =>
  miscounts && start.some((stack, peg) => (stack === emptyStack) !== (end[peg] === emptyStack))

/** A band that is worked again has to meet its own start (design rule of this house). */
export const bandMatch: Rule = {
  id: 'band-match',
  title: 'Band does not meet its own start',
  severity: 'error',
  explain:
    'Rows that are worked several times have to end with the loops, and with the yarn, where they start.',
  scope: 'chart',
  check,
}
