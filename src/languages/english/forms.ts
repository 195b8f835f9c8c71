import type { Unit } from '../unit'

/** The forms of English words: numbers, plurals, lists, capitals. British lists have no comma before "and". */

const plurals = new Intl.PluralRules('en')
const ordinals = new Intl.PluralRules('en', { type: 'ordinal' })
const listsWith = {
  and: new Intl.ListFormat('en-GB', { type: 'conjunction' }),
  or: new Intl.ListFormat('en-GB', { type: 'disjunction' }),
}
const ordinalEnds: Readonly<Record<string, string>> = { one: 'st', two: 'nd', few: 'rd' }
const words = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

export const isOne = (count: number): boolean => plurals.select(count) === 'one'

/** "seven"; from 11 on in figures. */
export const numberWord = (count: number): string => words[count] ?? String(count)

/** "1 peg", "12 pegs". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${isOne(count) ? one : many}`

/** "Two stitches", for the start of a sentence. */
export const countedInWords = (count: number, one: string, many = `${one}s`): string =>
  `${upperFirst(numberWord(count))} ${isOne(count) ? one : many}`

/** "peg 5", "pegs 5-8": a run of things by their printed numbers. */
export const numbered = (one: string, first: number, last: number): string =>
  first === last ? `${one} ${first}` : `${one}s ${first}-${last}`

/** What rows are called in instructions; "rnds", "rows" for several. */
export const rowWords: Readonly<Record<Unit, string>> = { round: 'rnd', row: 'row' }

/** "needs 26 stitches, the loom holds 24": of a row, wherever it is told. */
export const needsStitches = (takes: number, loops: number, where = 'the loom holds'): string =>
  `needs ${counted(takes, 'stitch', 'stitches')}, ${where} ${loops}`

/** "2nd", "13th". */
export const ordinal = (number: number): string =>
  `${number}${ordinalEnds[ordinals.select(number)] ?? 'th'}`

/** "once", "twice", "3 times". */
export const times = (count: number): string =>
  count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`

/** The same where a number before it would run into figures: "Rep Row 1 three times more." */
export const timesInWords = (count: number): string =>
  count < 3 ? times(count) : `${numberWord(count)} times`

/** "3, 5 and 9". */
export const listed = (items: readonly (string | number)[], last: 'and' | 'or' = 'and'): string =>
  listsWith[last].format(items.map(String))

/** With so many decimals at most: "19", "47.5". */
export const decimal = (value: number, most = 1): string =>
  new Intl.NumberFormat('en', { maximumFractionDigits: most, useGrouping: false }).format(value)

/** Whole numbers from 10 up, tenths below. */
export const rounded = (value: number): string => decimal(value, value >= 10 ? 0 : 1)

export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)
