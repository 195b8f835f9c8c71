import { chartOn } from '../pattern/charts'
import { headingsOf } from '../pattern/pegs/headings'
import type { Sheet, Run } from '../pattern/pattern'

/** Rows of a part of the pegs, one after the other. */
export interface PartRows {
  /** Chart rows. */
  readonly rows: Run
  /** From the first to the last peg that is turned on; without turns, that is worked. */
  readonly pegs: Run
  readonly turns: boolean
}

/** The stretches of a chart that turn or cover a part of the pegs, from the cast-on up. */
export function partRowsOf(pattern: Sheet): readonly PartRows[] {
  const headings = headingsOf(chartOn(pattern), pattern.loom)
  const { rows } = chartOn(pattern)
  const found: PartRows[] = []
  for (let from = 0; from < rows.length; from++) {
    const worked: number[] = []
    const turned: number[] = []
    let index = from
    for (; index < rows.length; index++) {
      const row = rows[index]
      if (!row || (row.run === null && row.end === 'on')) break
      const { from: low, to: high } = row.run ?? { from: 0, to: pattern.loom.pegs - 1 }
      worked.push(low, high)
      if (row.end === 'on') continue
      const beyond = row.end === 'wrap' ? 1 : 0
      turned.push(headings[index] === 'back' ? low - beyond : high + beyond)
    }
    if (index === from) continue
    const all = turned.length > 0 ? turned : worked
    found.push({
      rows: { from, to: index - 1 },
      pegs: { from: Math.min(...all), to: Math.max(...all) },
      turns: turned.length > 0,
    })
    from = index
  }
  return found
}
