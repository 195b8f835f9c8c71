import { fix } from '../../pattern/finding'
import { holdsTurn } from '../../loom/strand'
import { blankRow, type Sheet } from '../../pattern/pattern'
import { withChart } from '../../pattern/edits/chart'
import { isJoinedAfter, chartOn } from '../../pattern/charts'
import { runsOf } from '../copies'
import { paintColumns } from '../mending'
import type { ChartView, PlacedNote, Rule } from '../rule'
import { PegsNamed } from '../wording'
import { sectionsOf } from './section'
import { pegsNamed } from '../../languages/english/pegs'
import { unitOfRow } from '../../pattern/unit'

function check({ turnings, work, setting }: ChartView): PlacedNote[] {
  const notes: PlacedNote[] = []
  for (const { closedBy, to, turns } of sectionsOf(turnings)) {
    const row = closedBy ?? to
    const run = work.firstRuns[row]
    if (!run) continue
    const { after } = run
    const joined = closedBy === null && isJoinedAfter(work.pattern, work.name)
    const turned = turns.map(({ turnPeg }) => turnPeg)
    const corners = [Math.min(...turned), Math.max(...turned)]
    const held = after.stacks.flatMap((stack, peg) =>
      holdsTurn(stack) && !(joined && corners.includes(peg)) ? [peg] : [],
    )
    for (const pegs of runsOf(held)) {
      const unit = unitOfRow(run, setting.shape)
      const count = pegs.to - pegs.from + 1
      const columns = work.layout.columnOf.slice(pegs.from, pegs.to + 1)
      notes.push({
        row,
        noted: {
          pegs,
          say: (name) =>
            `${PegsNamed(pegs)} still ${count === 1 ? 'holds the strand of a turn' : 'hold the strands of turns'} after ${name}, ${closedBy === null ? 'the end of the chart' : `the first ${unit} over all the pegs`}.`,
          advice: 'Knit each turned peg, its loop and strands together, before the short rows end.',
          mend: (index) =>
            closedBy === null
              ? [fix('Add rows over all the pegs', (pattern) => addRows(pattern, after.yarn.gap))]
              : [fix(`Knit ${pegsNamed(pegs)}`, paintColumns('knit', index, columns))],
        },
      })
    }
  }
  return notes
}

/** Go on from where the yarn is to the end, then once over all the pegs. */
function addRows(pattern: Sheet, gap: number): Sheet {
  const { columns, rows } = chartOn(pattern)
  const last = pattern.loom.pegs - 1
  const plain = blankRow(columns, pattern.vocabulary.withRole('knit'))
  const heading = 'forward' as const
  const rest = gap > 0 && gap <= last ? [{ ...plain, run: { from: gap, to: last }, heading }] : []
  const full = pattern.loom.shape === 'ring' ? { ...plain, heading } : plain
  return withChart(pattern, { rows: [...rows, ...rest, full] })
}

/**
 * A lost wrap is a mistake that people report (common practice). A toe is closed straight after its last short row:
 * the strand of its last turn, on the peg at its corner, is grafted with the loop there.
 */
export const turnLeft: Rule = {
  id: 'turn-left',
  title: 'Turned pegs left unworked',
  severity: 'error',
  scope: 'chart',
  check,
}
