import { chartOn } from '../../src/pattern/charts'
import { rowsRead } from '../../src/cli/report'
import { withChart } from '../../src/pattern/edits/chart'
import type { Pattern } from '../../src/pattern/pattern'
import { workPattern, type Work } from '../../src/pattern/work'
import { compare } from '../../src/words/compare/compare'
import { read } from '../../src/words/read/read'
import { readSettingsOf, type Reading } from '../../src/words/read/reading'
import { writeWords } from '../../src/words/write'
import { against, measureSteps, show, table } from './measure'
import { texturedPiece } from './pieces'
import { termOf } from '../../src/languages/languages'
import { stitchOf } from '../../src/stitches/vocabulary'

const [pegs, rounds] = [200, 500]
const calls = 40
const warm = 10

/** The most each may take, in milliseconds. */
const most = { read: 100, 'read again': 10, compare: 50 } as const

/** The words as they are written from the chart, and with every stitch said where it is worked. */
const wordings = {
  'as the chart has them written': (work: Work): string =>
    writeWords(work, 'us')
      .lines.map(({ text }) => text)
      .join('\n'),
  'written out without repeats': ({ run, numbers }: Work): string =>
    run.rows
      .map(({ row }, index) => {
        const stitches = row.sites.map(({ stitch }) => termOf(stitch, 'us').abbr).join(', ')
        return `Rnd ${numbers[index] ?? 0}: ${stitches}.`
      })
      .join('\n'),
} as const

/** A textured piece of which no two rows are alike, so that no line is read for another. */
function variedPiece(): Pattern {
  const piece = texturedPiece(pegs, rounds)
  const bits = Math.ceil(Math.log2(rounds))
  const rows = chartOn(piece).rows.map((row, index) => {
    const cells = [...row.cells]
    for (let bit = 0; bit < bits; bit++)
      cells[pegs - 1 - 2 * bit] = (index >> bit) % 2 === 1 ? stitchOf('p') : stitchOf('k')
    return { ...row, cells }
  })
  return withChart(piece, { rows })
}

/**
 * Reading the words of a large piece, reading them again after one typed character, and comparing
 * them with their chart, beside JSON.parse of the same rows with every stitch written out.
 */
export function benchWords(): void {
  for (const [name, write] of Object.entries(wordings)) benchWording(name, write)
}

function benchWording(wording: string, write: (work: Work) => string): void {
  const piece = variedPiece()
  const settings = readSettingsOf(piece)
  const text = write(workPattern(piece))
  const json = JSON.stringify(rowsRead(read(text, settings), settings.terms))
  let reading: Reading = read(text, settings)
  let work: Work = workPattern(piece)
  let differences = 0
  const figures = measureSteps(
    {
      'JSON.parse': () => JSON.parse(json) as unknown,
      read: () => (reading = read(text, settings)),
      compare: () => (differences += compare(reading, work).differences.length),
      'read again': (turn) => read(typed(text, turn), settings, reading),
    },
    calls,
    warm,
    // Fresh objects on both sides: nothing of an earlier comparison can be used.
    () => (work = workPattern(variedPiece())),
  )
  const floor = figures.find(({ name }) => name === 'JSON.parse')?.median ?? NaN
  console.log(
    `\nWords of ${rounds} rounds over ${pegs} pegs, ${wording} (${text.length} characters)`,
  )
  table(
    ['', 'median ms', 'least ms', 'median to JSON.parse', 'median at most'],
    figures.map(({ name, median, least }) => [
      name,
      show(median, 2),
      show(least, 2),
      `${show(median / floor, 2)} x`,
      name in most ? `${against(median, most[name as keyof typeof most])} ms` : '',
    ]),
  )
  if (differences > 0) console.log(`The words differ from their own chart: ${differences} times.`)
}

/** The text with one more character, at another place each time. */
function typed(text: string, call: number): string {
  const at = Math.floor(text.length * ((call * 0.37) % 1))
  return `${text.slice(0, at)}1${text.slice(at)}`
}
