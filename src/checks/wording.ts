import type { Layout } from '../pattern/layout'
import type { Run } from '../pattern/pattern'
import type { PatternRun } from '../pattern/work'
import type { Setting } from './setting'

const words = 'no one two three four five six seven eight nine ten'.split(' ')

export const numberWord = (count: number): string => words[count] ?? String(count)

export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** "step 4 (Crown)", for the middle of a sentence. */
export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)

export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`

/** "Two stitches", for the start of a sentence. */
export const countedInWords = (count: number, one: string, many = `${one}s`): string =>
  `${upperFirst(numberWord(count))} ${count === 1 ? one : many}`

/** Pegs from 0 in, from 1 out: "peg 5", "pegs 5-8". */
export const pegsNamed = ({ from, to }: Run): string =>
  from === to ? `peg ${from + 1}` : `pegs ${from + 1}-${to + 1}`

export const PegsNamed = (run: Run): string => upperFirst(pegsNamed(run))

/** "3, 5 and 9". */
export const listed = (items: readonly (string | number)[], last = 'and'): string =>
  items.length < 2
    ? items.join('')
    : `${items.slice(0, -1).join(', ')} ${last} ${items[items.length - 1] ?? ''}`

/** A loom peg after wrapping round the join: 0-based in, 1-based out. */
export const pegNumber = (peg: number, pegs: number): number => ((peg + pegs) % pegs) + 1

/** Where the yarn hangs in a gap, on this loom. */
export function gapNamed(gap: number, { shape, pegs }: Setting): string {
  if (shape === 'bar' && gap <= 0) return 'before peg 1'
  if (shape === 'bar' && gap >= pegs) return `after peg ${pegs}`
  return `between pegs ${pegNumber(gap - 1, pegs)} and ${pegNumber(gap, pegs)}`
}

/** Whole rounds of a ring are rounds; all else is rows (common practice). */
export const rowNamed = (run: PatternRun, setting: Setting, number: number): string =>
  `${isRound(run, setting) ? 'Round' : 'Row'} ${number}`

const isRound = ({ row }: PatternRun, { shape, pegs }: Pick<Setting, 'shape' | 'pegs'>): boolean =>
  shape === 'ring' && row.end === 'on' && row.from === 0 && row.to >= pegs - 1

/** What a row is called in a sentence: "after 2 rounds". */
export const unitOf = (run: PatternRun, setting: Pick<Setting, 'shape' | 'pegs'>): Unit =>
  isRound(run, setting) ? 'round' : 'row'
export type Unit = 'round' | 'row'

/** Said of something in the first copy of a repeat, which then is in all of them. */
export const inEachRepeat = ({ copies, copyRuns }: Layout, peg: number): string => {
  const first = copyRuns[0]
  return copies > 1 && first && peg >= first.from && peg <= first.to
    ? ` (in each of the ${copies} repeats)`
    : ''
}

/** One decimal where it is needed: "19", "47.5". */
export const millimetres = (length: number): string => String(Math.round(length * 10) / 10)
