import { checkPattern, type Report } from '../../src/checks/check'
import { flatChart } from '../../src/drawing/flat'
import { workPattern, type Work } from '../../src/pattern/work'
import { writeWords, type Words } from '../../src/words/write'
import { against, measure, show, table } from './measure'
import { editedVersions, texturedPiece } from './pieces'

const sizes = [
  [24, 24],
  [96, 200],
  [200, 500],
] as const
const calls = 400

/** What one edit costs: simulate, check, words, drawing, and the four together. */
export function benchEdit(): void {
  console.log('\nOne edit (a cell in a row, no later row affected), medians in ms')
  const results = sizes.map(([pegs, rows]) => {
    const versions = editedVersions(texturedPiece(pegs, rows), calls + 200)
    const works: Work[] = []
    const simulated = measure('simulate', calls, (i) => {
      const version = versions[i]
      if (version) works[i] = workPattern(version, works[i - 1])
    })
    let report: Report | undefined
    const checked = measure('check', calls, (i) => {
      report = checkPattern(works[i] as Work, report)
    })
    let words: Words | undefined
    const worded = measure('words', calls, (i) => {
      words = writeWords(works[i] as Work, 'us', words)
    })
    const drawn = measure('drawing', calls, (i) => flatChart(works[i] as Work, {}))
    const parts = [simulated, checked, worded, drawn]
    const all = parts.reduce((sum, { median }) => sum + median, 0)
    const worked = works.slice(200).reduce((sum, { run }) => sum + run.worked, 0) / calls
    return { name: `${pegs} x ${rows}`, parts, all, worked }
  })
  const least = results[0]?.all ?? NaN
  table(
    ['pegs x rows', 'simulate', 'check', 'words', 'drawing', 'all', 'rows worked', 'to 24 x 24'],
    results.map(({ name, parts, all, worked }) => [
      name,
      ...parts.map(({ median }) => show(median)),
      show(all),
      show(worked, 1),
      `${show(all / least, 2)} x`,
    ]),
  )
  const largest = results.at(-1)
  if (largest)
    console.log(
      `200 x 500 to 24 x 24: ${show(largest.all / least, 2)} (${against(largest.all / least, 2)}); ` +
        `${show(largest.all)} ms (${against(largest.all, 4)} ms)`,
    )
}
