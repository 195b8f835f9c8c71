import type { ChartView, PlacedNote, Rule } from '../rule'
import { isHeel, sectionsOf, type ShortRows } from './section'

/** A third, give or take a twelfth. */
const least = 1 / 4
const most = 5 / 12

const span = (turns: ShortRows['turns']): { readonly low: number; readonly high: number } => ({
  low: turns.findLast(({ heading }) => heading === 'back')?.turnPeg ?? 0,
  high: turns.findLast(({ heading }) => heading === 'forward')?.turnPeg ?? 0,
})

function check({ turnings }: ChartView): PlacedNote[] {
  const notes: PlacedNote[] = []
  for (const section of sectionsOf(turnings)) {
    const narrowing = section.turns.filter(({ phase }) => phase === 'narrowing')
    const innermost = narrowing.at(-1)
    if (!isHeel(section) || !innermost || narrowing.length < 4) continue
    const pegs = narrowing.map(({ turnPeg }) => turnPeg)
    const heel = Math.max(...pegs) - Math.min(...pegs) + 1
    const { low, high } = span(narrowing)
    const middle = high - low - 1
    if (middle >= heel * least && middle <= heel * most) continue
    // On few pegs a third is not a whole number: then nothing nearer can be turned.
    if (narrowing.length === 2 * Math.round(heel / 3)) continue
    notes.push({
      row: innermost.index,
      noted: {
        pegs: middle > 0 ? { from: low + 1, to: high - 1 } : null,
        say: (row) =>
          `Of ${heel} heel pegs ${middle} are still unturned after ${row}; a third would be ${Math.round(heel / 3)}.`,
        advice: `Turn about ${Math.round(heel / 3)} pegs on each side and leave the middle third unturned.`,
      },
    })
  }
  return notes
}

/** Heel pegs / 3 turned on each side: 56 pegs, 28 of them heel, 9 + 10 + 9 (common practice). */
export const turnThird: Rule = {
  id: 'turn-third',
  title: 'Middle of the heel is not a third',
  severity: 'hint',
  scope: 'chart',
  check,
}
