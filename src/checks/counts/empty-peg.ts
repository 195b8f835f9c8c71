import { firstPerColumn, runsOf } from '../copies'
import type { Fix } from '../finding'
import { fix, paintColumns } from '../mending'
import { withRow } from '../../pattern/edits/chart'
import type { Pattern } from '../../pattern/pattern'
import { stitchOf } from '../../stitches/vocabulary'
import { nothing } from '../nothing'
import type { RowRule } from '../rule'
import { inEachRepeat, pegsNamed } from '../wording'

export const emptyPeg: RowRule = {
  id: 'empty-peg',
  title: 'Empty peg worked',
  severity: 'error',
  explain:
    'A stitch needs a loop to work; an empty peg can only be filled again, by a yarn over or an increase.',
  scope: 'row',
  check: ({ run, layout }) => {
    if (run.faults.length === 0) return nothing
    const faults = run.faults.filter(({ kind }) => kind === 'empty peg')
    return runsOf(firstPerColumn(faults, layout).map(({ peg }) => peg)).map((pegs) => {
      const one = pegs.from === pegs.to
      const columns = layout.columnOf.slice(pegs.from, pegs.to + 1)
      return {
        pegs,
        say: (row) =>
          `${row} works ${pegsNamed(pegs)}, but ${one ? 'that peg is' : 'these pegs are'} empty${inEachRepeat(layout, pegs.from)}.`,
        advice: `Fill ${one ? 'it' : 'them'} again with ${one ? 'a yarn over' : 'yarn overs'}, or mark ${one ? 'it' : 'them'} as no stitch from here on.`,
        mend: (row) => [
          fix(
            one
              ? `Make a yarn over on ${pegsNamed(pegs)}`
              : `Make yarn overs on ${pegsNamed(pegs)}`,
            paintColumns('yo', row, columns),
          ),
          noStitchFromHere(pegsNamed(pegs), row, columns),
        ],
      }
    })
  },
}

/** Mark the columns as no stitch up to the row that makes a loop there again. */
export const noStitchFromHere = (name: string, row: number, columns: readonly number[]): Fix =>
  fix(`No stitch on ${name} from here on`, (pattern) =>
    columns.reduce((marked, column) => markColumn(marked, row, column), pattern),
  )

function markColumn(pattern: Pattern, from: number, column: number): Pattern {
  let marked = pattern
  for (let row = from; row < pattern.chart.rows.length; row++) {
    const cells = pattern.chart.rows[row]?.cells
    const id = cells?.[column]
    if (!cells || !id) return marked
    const { takes, makes, width } = stitchOf(id)
    if (takes !== 1 || makes !== 1 || width !== 1) return marked
    marked = withRow(marked, row, { cells: cells.with(column, 'none') })
  }
  return marked
}
