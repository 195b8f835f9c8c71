import { rowsRead } from '../../src/cli/report'
import { workPattern, type Work } from '../../src/pattern/work'
import { compare } from '../../src/words/compare/compare'
import { read } from '../../src/words/read/read'
import { readSettingsOf, type Reading } from '../../src/words/read/reading'
import { writeWords } from '../../src/words/write'
import { against, measureSteps, show, table } from './measure'
import { texturedPiece } from './pieces'

const [pegs, rounds] = [200, 500]
const calls = 40
const warm = 10

/** The most each may take, in milliseconds. */
const most = { read: 100, 'read again': 10, compare: 50 } as const

/**
 * Reading the words of a large piece, reading them again after one typed character, and comparing
 * them with their chart, beside JSON.parse of the same rows with every stitch written out.
 */
export function benchWords(): void {
  const piece = texturedPiece(pegs, rounds)
  const settings = readSettingsOf(piece)
  const text = writeWords(workPattern(piece), settings.terms)
    .lines.map((line) => line.text)
    .join('\n')
  const json = JSON.stringify(rowsRead(read(text, settings), settings.terms))
  let reading: Reading = read(text, settings)
  let work: Work = workPattern(piece)
  let differences = 0
  const figures = measureSteps(
    {
      'JSON.parse': () => JSON.parse(json) as unknown,
      read: () => (reading = read(text, settings)),
      // Fresh objects on both sides: nothing of an earlier comparison can be used.
      work: () => (work = workPattern(texturedPiece(pegs, rounds))),
      compare: () => (differences += compare(reading, work).differences.length),
      'read again': (i) => read(typed(text, i), settings, reading),
    },
    calls,
    warm,
  )
  const floor = figures.find(({ name }) => name === 'JSON.parse')?.median ?? NaN
  console.log(
    `\nWords of ${rounds} rounds over ${pegs} pegs (${text.length} characters), medians in ms`,
  )
  table(
    ['', 'ms', 'to JSON.parse', 'at most'],
    figures
      .filter(({ name }) => name !== 'work')
      .map(({ name, median }) => [
        name,
        show(median, 2),
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
