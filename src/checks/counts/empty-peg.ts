import { chartOn } from '../../pattern/charts'
import { firstPerColumn, runsOf } from '../copies'
import { fix, type Fix } from '../../pattern/finding'
import { paintColumns } from '../mending'
import { withRow } from '../../pattern/edits/chart'
import type { Layout } from '../../pattern/layout'
import type { Run, Sheet } from '../../pattern/pattern'
import { keepsItsLoop } from '../../stitches/stitch'
import { nothing } from '../nothing'
import type { Noted, RowRule } from '../rule'
import { inEachRepeat } from '../wording'
import { pegsNamed } from '../../languages/english/pegs'

export const emptyPeg: RowRule = {
  id: 'empty-peg',
  title: 'Empty peg worked',
  severity: 'error',
  scope: 'row',
  startsWith: 'loops',
  check: ({ run, layout }) => {
    if (run.faults.length === 0) return nothing
    const faults = run.faults.filter(({ kind }) => kind === 'empty peg')
    const runs = runsOf(firstPerColumn(faults, layout).map(({ peg }) => peg))
    return runs.length > mostApart
      ? [together(runs, layout)]
      : runs.map((pegs) => together([pegs], layout))
  },
}

/** More runs of empty pegs than this in one row have one reason, and are told as one. */
const mostApart = 3

function together(runs: readonly Run[], layout: Layout): Noted {
  const pegs = { from: runs[0]?.from ?? 0, to: runs.at(-1)?.to ?? 0 }
  const columns = runs.flatMap(({ from, to }) => layout.columnOf.slice(from, to + 1))
  const one = columns.length === 1
  const name = runs.length === 1 ? pegsNamed(pegs) : `${columns.length} pegs`
  const which = runs.length === 1 ? '' : ` (${pegNumbers(runs)})`
  return {
    pegs,
    say: (row) =>
      `${row} works ${name}${which}, but ${one ? 'that peg is' : 'these pegs are'} empty${inEachRepeat(layout, pegs.from)}.`,
    advice: `Fill ${one ? 'it' : 'them'} again with ${one ? 'a yarn over' : 'yarn overs'}, or mark ${one ? 'it' : 'them'} as no stitch from here on.`,
    mend: (row) => [
      fix(
        one ? `Make a yarn over on ${name}` : `Make yarn overs on ${name}`,
        paintColumns('yarn over', row, columns),
      ),
      noStitchFromHere(name, row, columns),
    ],
  }
}

const mostNumbers = 4

/** "4, 8, 12 ... 48". */
function pegNumbers(runs: readonly Run[]): string {
  const numbers = runs.map(({ from, to }) =>
    from === to ? `${from + 1}` : `${from + 1}-${to + 1}`,
  )
  return numbers.length <= mostNumbers
    ? numbers.join(', ')
    : `${numbers.slice(0, mostNumbers - 1).join(', ')} ... ${numbers.at(-1)}`
}

/** Mark the columns as no stitch up to the row that makes a loop there again. */
export const noStitchFromHere = (name: string, row: number, columns: readonly number[]): Fix =>
  fix(`No stitch on ${name} from here on`, (pattern) =>
    columns.reduce((marked, column) => markColumn(marked, row, column), pattern),
  )

function markColumn(sheet: Sheet, from: number, column: number): Sheet {
  const { rows } = chartOn(sheet)
  let marked = sheet
  for (let row = from; row < rows.length; row++) {
    const cells = rows[row]?.cells
    const stitch = cells?.[column]
    if (!cells || !stitch || !keepsItsLoop(stitch)) return marked
    marked = withRow(marked, row, {
      cells: cells.with(column, sheet.vocabulary.withRole('no stitch')),
    })
  }
  return marked
}
