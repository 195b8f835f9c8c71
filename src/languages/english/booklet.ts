import type { BookletPhrases, Ends, QuietWords } from '../booklet'
import type { Dialect, Language } from '../language'
import { decimal, listed, numbered, times, upperFirst } from './forms'

/** "12", "12 to 14", or with another joint. */
const ends = ([least, most]: Ends, joint: string): string =>
  least === most ? `${least}` : `${least}${joint}${most}`

/** What a booklet says in a dialect; `gauge` says the gauge. */
export function bookletPhrases(
  { words, tellsUkSizes }: Dialect,
  gaugeSaid: Language['gauge'],
): BookletPhrases {
  return {
    description: ({ loom, making, gauge }) => {
      const kind = loom.shape === 'ring' ? 'Round loom' : 'Rake'
      const parts = [
        kind,
        `${loom.pegs} pegs`,
        `${decimal(loom.pitch, 2)} mm apart`,
        ...(loom.shape === 'ring' ? [words.clockwise[loom.direction]] : []),
        gauge ? gaugeSaid(gauge, making.knit) : `${making.knit} knit`,
      ]
      return `${parts.join(', ')}.`
    },
    size: ({ width, height }, shape) =>
      `Finished size: about ${width} ${shape === 'ring' ? 'round' : 'wide'} and ${height} high, unstretched.`,
    chart: 'Chart',
    timesWorked: (all) => {
      const [first = 1, ...later] = all
      if (later.length > 3)
        return `Work this chart ${times(all.reduce((sum, one) => sum + one, 0))} in all, as the words say.`
      return `Work this chart ${[times(first), ...later.map((one) => `later ${times(one)}`)].join(', ')}.`
    },
    ringChart: 'Ring chart',
    ringOf: (section) => `${section}, as a ring`,
    sheetOf: (section, letter) => `${section}, sheet ${letter}`,
    pieceSize: ({ width, height }, shape) =>
      `Finished size: about ${width} ${shape === 'ring' ? 'round' : 'wide'} and ${height} from cast-on to ${words.bindOff.replace(' ', '-')}, unstretched.`,
    foot: ({ length, feet, round, eu, ukChild }) => {
      const shoes = [
        ...(eu ? [`EU ${ends(eu, '-')}`] : []),
        ...(tellsUkSizes && ukChild ? [`UK child\u2019s ${ends(ukChild, '-')}`] : []),
      ]
      return [
        `Foot: about ${length} from heel to toe.`,
        `Fits feet of about ${ends(feet, ' to ')} cm${shoes.length === 0 ? '' : ` (${listed(shoes, 'or')})`}, about ${round} round.`,
        'Measure the foot if you can.',
      ].join(' ')
    },
    pair: {
      alike: 'Make two alike.',
      mirrored: 'Make two: the second is the mirror image of the first.',
    },
    secondPart: 'Second of the pair',
    pictures: (what) => `How it is worked: ${what}`,
    picturesOf: ({ kind, number, section }) =>
      `${upperFirst(kind)} ${number}${section === null ? '' : ` of ${section}`}.`,
    totals: 'Yarn and stitch counts',
    key: 'Key',
    turns: {
      on: 'the work goes on',
      'German turn': 'German turn: double stitch on the last peg',
      wrap: 'wrap this peg and turn',
    },
    unworked: 'not worked in this row',
    sheet: (letter) => `Sheet ${letter}`,
    rowsAndColumns: ({ unit, firstRow, lastRow, firstPeg, lastPeg }) =>
      [numbered(upperFirst(unit), firstRow, lastRow), numbered('peg', firstPeg, lastPeg)].join(
        ', ',
      ),
    quiet: ({ unit, pegs, rests, worked }) => {
      const rows = (runs: QuietWords['rests']) => {
        const numbers = runs.map(({ from, to }) => (from === to ? String(from) : `${from}-${to}`))
        const isOne = runs.length === 1 && runs[0]?.from === runs[0]?.to
        return `${unit}${isOne ? '' : 's'} ${listed(numbers)}`
      }
      const are = pegs.from === pegs.to ? 'is' : 'are'
      const told = [...new Set(worked.map(({ abbr }) => abbr))].map(
        (abbr) => `, ${abbr} in ${rows(worked.filter((run) => run.abbr === abbr))}`,
      )
      return `${numbered('Peg', pegs.from, pegs.to)} ${are} not shown: not worked in ${rows(rests)}${told.join('')}.`
    },
    sheetsJoin: (sheets) =>
      `This chart is spread over ${sheets} sheets at the same scale. Join them like this:`,
    overlap: (first, last) =>
      `${numbered('Peg', first, last)} stand on both sheets, so that each cross is whole on one.`,
    page: (number, of) => `${number} of ${of}`,
    symbolSource: (stitches) =>
      `${stitches.join(', ')} \u2013 Source: Craft Yarn Council's www.YarnStandards.com`,
  }
}
