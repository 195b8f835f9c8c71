import { fix } from '../../pattern/finding'
import type { Unit } from '../../languages/unit'
import { removeBand } from '../../pattern/edits/rows'
import { emptyStack } from '../../loom/strand'
import { pegsInWork } from '../../loom/state'
import type { Band } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import { nothing } from '../nothing'
import type { ChartView, Noted, PlacedNote, Rule } from '../rule'
import { gapNamed } from '../wording'
import type { Setting } from '../setting'
import { counted, upperFirst } from '../../languages/english/forms'
import { unitOfRow } from '../../pattern/unit'

function check({ work, setting }: ChartView): readonly PlacedNote[] {
  const { bands, rows } = work.chart
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
  const unit = unitOfRow(first, setting.shape)
  const rows = `${rowsNamed(unit, work.numbers[band.from] ?? 0, work.numbers[band.to] ?? 0)} worked ${band.times === 2 ? 'twice' : `${band.times} times`}`
  const [begin, ends] = band.from === band.to ? ['begins', 'ends'] : ['begin', 'end']
  const once = band.from === band.to ? `Work this ${unit} once` : `Work these ${unit}s once`
  const start = pegsInWork(first.before)
  const end = pegsInWork(last.after)
  const mend = () => [fix(once, (pattern) => removeBand(pattern, index))]
  if (start !== end)
    return {
      pegs: null,
      say: () =>
        `${rows}, but ${begin} with ${counted(start, 'stitch', 'stitches')} and ${ends} with ${end}.`,
      advice: `End the band with as many stitches as it begins with, or work it once.`,
      mend,
    }
  const runsDiffer = again.loops !== first.loops
  if (runsDiffer || lostLoops(first.before.stacks, last.after.stacks, again.miscount !== null))
    return {
      pegs: null,
      say: () =>
        `${rows}: the first ${unit} finds ${counted(first.loops, 'stitch', 'stitches')} the first time and ${again.loops} the second time.`,
      advice: `End the band with loops on the pegs that its first ${unit} works.`,
      mend,
    }
  const jump = again.faults.find(({ kind }) => kind === 'start')
  const jumpedBefore = first.faults.some(({ kind }) => kind === 'start')
  if (jump?.kind === 'start' && !jumpedBefore && work.layout.over === 0)
    return {
      pegs: { from: jump.peg, to: jump.peg },
      say: () =>
        `${rows}, but the second time ${begin} at peg ${jump.peg + 1} while the yarn is ${gapNamed(jump.yarnGap, setting)}.`,
      advice: `End the band with the yarn where its first ${unit} begins, or work it once.`,
      mend,
    }
  return null
}

/** "Rounds 2-3 are", "Row 4 is". */
const rowsNamed = (unit: Unit, from: number, to: number): string => {
  const name = upperFirst(unit)
  return from === to ? `${name} ${from} is` : `${name}s ${from}-${to} are`
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
  title: 'Band does not lead back to its start',
  severity: 'error',
  scope: 'chart',
  check,
}
