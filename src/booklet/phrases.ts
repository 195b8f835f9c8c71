import type { RowEnd } from '../loom/row'
import type { Pattern, Run } from '../pattern/pattern'
import { euSizeOf, feetOfSock, roundFoot, ukChildSizeOf } from '../pattern/feet'
import type { Pair } from '../pattern/piece'
import { centimetres, inCentimetres, type Size } from '../pattern/size'
import type { Terms } from '../languages/terms'
import type { Unit } from '../languages/unit'
import { languages } from '../languages/languages'
import { decimal, listed } from '../languages/english/forms'

/** What a booklet says itself; instructions and statements come from the words. */
export interface Phrases {
  /** BCP 47 language tag. */
  readonly tag: string
  readonly description: (pattern: Pattern) => string
  /** Finished size, mm. */
  readonly size: (size: Size, shape: 'ring' | 'bar') => string
  readonly chart: string
  /** How often a chart is worked: one number for each step that works it, not all of them 1. */
  readonly timesWorked: (times: readonly number[]) => string
  readonly ringChart: string
  /** Titles of the charts of a section. */
  readonly ringOf: (section: string) => string
  readonly sheetOf: (section: string, letter: string) => string
  /** Size of a whole piece, from cast-on to bind-off, mm. */
  readonly pieceSize: (size: Size, shape: 'ring' | 'bar') => string
  /** The foot of a sock as it is knitted, mm from heel to toe, with the feet and shoes that it fits. */
  readonly foot: (foot: number) => string
  readonly pair: Readonly<Record<Exclude<Pair, 'none'>, string>>
  readonly secondPart: string
  readonly pictures: (what: string) => string
  readonly picturesOf: (row: PictureRow) => string
  readonly totals: string
  readonly key: string
  readonly turns: Readonly<Record<RowEnd, string>>
  readonly unworked: string
  readonly sheet: (letter: string) => string
  readonly rowsAndColumns: (sheet: {
    readonly unit: Unit
    readonly firstRow: number
    readonly lastRow: number
    readonly firstPeg: number
    readonly lastPeg: number
  }) => string
  /** Pegs that are left out of a chart; all numbers as they are printed. */
  readonly quiet: (pegs: QuietWords) => string
  readonly sheetsJoin: (sheets: number) => string
  readonly overlap: (first: number, last: number) => string
  readonly page: (number: number, of: number) => string
  /** Asked for by the Craft Yarn Council wherever its chart symbols are used: those of these stitches. */
  readonly symbolSource: (stitches: readonly string[]) => string
}

export interface QuietWords {
  readonly unit: Unit
  readonly pegs: Run
  readonly rests: readonly Run[]
  readonly worked: readonly (Run & { readonly abbr: string })[]
}

/** The row whose moves are shown. */
export interface PictureRow {
  readonly kind: Unit
  readonly number: number
  readonly section: string | null
}

const range = (one: string, many: string, from: number, to: number): string =>
  from === to ? `${one} ${from}` : `${many} ${from}-${to}`

const english = (terms: Terms, tag: string): Phrases => {
  const { words } = languages[terms]
  return {
    tag,
    description: ({ loom, making, gauge }) => {
      const kind = loom.shape === 'ring' ? 'Round loom' : 'Rake'
      const parts = [
        kind,
        `${loom.pegs} pegs`,
        `${decimal(loom.pitch, 2)} mm apart`,
        ...(loom.shape === 'ring' ? [words.clockwise[loom.direction]] : []),
        gauge ? languages[terms].gauge(gauge, making.knit) : `${making.knit} knit`,
      ]
      return `${parts.join(', ')}.`
    },
    size: ({ width, height }, shape) =>
      `Finished size: about ${centimetres(width)} ${shape === 'ring' ? 'round' : 'wide'} and ${centimetres(height)} high, unstretched.`,
    chart: 'Chart',
    timesWorked: (times) => {
      const { times: said } = languages[terms]
      const [first = 1, ...later] = times
      if (later.length > 3)
        return `Work this chart ${said(times.reduce((sum, one) => sum + one, 0))} in all, as the words say.`
      return `Work this chart ${[said(first), ...later.map((one) => `later ${said(one)}`)].join(', ')}.`
    },
    ringChart: 'Ring chart',
    ringOf: (section) => `${section}, as a ring`,
    sheetOf: (section, letter) => `${section}, sheet ${letter}`,
    pieceSize: ({ width, height }, shape) =>
      `Finished size: about ${centimetres(width)} ${shape === 'ring' ? 'round' : 'wide'} and ${centimetres(height)} from cast-on to ${words.bindOff.replace(' ', '-')}, unstretched.`,
    foot: (foot) => {
      const { least, most } = feetOfSock(foot)
      const [from, to] = [inCentimetres(least), inCentimetres(most)]
      const sizes = (name: string, sizeOf: (foot: number) => number | null) => {
        const [smallest, largest] = [sizeOf(least), sizeOf(most)]
        if (smallest === null || largest === null) return []
        return [`${name} ${smallest === largest ? smallest : `${smallest}-${largest}`}`]
      }
      const shoes = [
        ...sizes('EU', euSizeOf),
        ...(terms === 'uk' ? sizes('UK child\u2019s', ukChildSizeOf) : []),
      ]
      return [
        `Foot: about ${centimetres(foot)} from heel to toe.`,
        `Fits feet of about ${from === to ? from : `${from} to ${to}`} cm${shoes.length === 0 ? '' : ` (${shoes.join(' or ')})`}, about ${centimetres(roundFoot((least + most) / 2))} round.`,
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
      `${kind === 'round' ? 'Round' : 'Row'} ${number}${section === null ? '' : ` of ${section}`}.`,
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
      [
        unit === 'round'
          ? range('Round', 'Rounds', firstRow, lastRow)
          : range('Row', 'Rows', firstRow, lastRow),
        range('peg', 'pegs', firstPeg, lastPeg),
      ].join(', '),
    quiet: ({ unit, pegs, rests, worked }) => {
      const rows = (runs: readonly Run[]) => {
        const numbers = runs.map(({ from, to }) => (from === to ? String(from) : `${from}-${to}`))
        const isOne = runs.length === 1 && runs[0]?.from === runs[0]?.to
        return `${unit}${isOne ? '' : 's'} ${listed(numbers)}`
      }
      const are = pegs.from === pegs.to ? 'is' : 'are'
      const told = [...new Set(worked.map(({ abbr }) => abbr))].map(
        (abbr) => `, ${abbr} in ${rows(worked.filter((run) => run.abbr === abbr))}`,
      )
      return `${range('Peg', 'Pegs', pegs.from, pegs.to)} ${are} not shown: not worked in ${rows(rests)}${told.join('')}.`
    },
    sheetsJoin: (sheets) =>
      `This chart is spread over ${sheets} sheets at the same scale. Join them like this:`,
    overlap: (first, last) =>
      `${range('Peg', 'Pegs', first, last)} stand on both sheets, so that each cross is whole on one.`,
    page: (number, of) => `${number} of ${of}`,
    symbolSource: (stitches) =>
      `${stitches.join(', ')} \u2013 Source: Craft Yarn Council's www.YarnStandards.com`,
  }
}

/** A set of terms, or a language, is one entry. */
export const phrasesOf: Readonly<Record<Terms, Phrases>> = {
  us: english('us', 'en-US'),
  uk: english('uk', 'en-GB'),
}
