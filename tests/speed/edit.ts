import { checkPattern, type Report } from '../../src/checks/check'
import { flatChart, type FlatScene } from '../../src/drawing/flat'
import type { Pattern } from '../../src/pattern/pattern'
import { workPattern, type Work } from '../../src/pattern/work'
import { writeWords, type Words } from '../../src/words/write'
import { against, measureSteps, show, table, warmUp } from './measure'
import { editedVersions, texturedPiece } from './pieces'

const sizes = [
  [24, 24],
  [96, 200],
  [200, 500],
] as const
const calls = 400

/** Edits of one piece, each simulated, checked, worded and drawn before the next, as on the bench. */
function measureEdits(pegs: number, rows: number) {
  const piece = texturedPiece(pegs, rows)
  const versions = editedVersions(piece)
  let pattern: Pattern = piece
  let work: Work = workPattern(piece)
  let report: Report | undefined
  let words: Words | undefined
  let scene: FlatScene | undefined
  const parts = measureSteps(
    {
      simulate: () => (work = workPattern(pattern, work)),
      check: () => (report = checkPattern(work, report)),
      words: () => (words = writeWords(work, 'us', words)),
      drawing: () => (scene = flatChart(work, {}, scene)),
    },
    calls,
    warmUp,
    () => (pattern = versions.next().value),
  )
  const all = parts.reduce((sum, { median }) => sum + median, 0)
  return { name: `${pegs} x ${rows}`, parts, all, worked: work.run.worked }
}

/** What one edit costs: simulate, check, words, drawing, and the four together. */
export function benchEdit(): void {
  console.log('\nOne edit (a cell in a row, no later row affected), medians in ms')
  // All sizes once before it counts, so that none is measured while the code is still warming up.
  for (const [pegs, rows] of sizes) measureEdits(pegs, rows)
  const results = sizes.map(([pegs, rows]) => measureEdits(pegs, rows))
  const least = results[0]?.all ?? NaN
  table(
    ['pegs x rows', 'simulate', 'check', 'words', 'drawing', 'all', 'rows worked', 'to 24 x 24'],
    results.map(({ name, parts, all, worked }) => [
      name,
      ...parts.map(({ median }) => show(median)),
      show(all),
      String(worked),
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
