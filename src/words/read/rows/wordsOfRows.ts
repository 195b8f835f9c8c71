import { listed, numbered, rowWords, upperFirst } from '../../../languages/english/forms'
import type { Unit } from '../../../languages/unit'
import type { Body, Named } from '../nodes'
import type { ReadRow, ReadSettings } from '../reading'
import type { Words } from './rows'

/** The words as they stand for one of their rows. */
export const inCycle = (words: Words, index: number): Words => {
  const row = index % words.body.cycle
  return row === words.row ? words : { ...words, row }
}

export const lastRow: Named = { kind: 'last', rows: 1 }

export const isPlain = (row: ReadRow | undefined): boolean =>
  row?.stitches.every(({ stitch }) => stitch.family === 'knit and purl') ?? false

/** Words with a turn or with pegs in them tell a row, not a round. */
export const turnsOrNames = ({ items }: Body): boolean =>
  items.some((item) => item.do === 'turn' || item.do === 'pegs')

/** The highest number of rows that are named by number. */
export const lastOf = (named: Named): number | null =>
  named.kind === 'numbers' ? named.numbers.reduce((most, n) => Math.max(most, n), 0) : null

/** What a row of words is called: on a ring one that names no pegs and does not turn is a round. */
export const unitOfRead = (
  { run, end }: Pick<ReadRow, 'run' | 'end'>,
  shape: ReadSettings['shape'],
): Unit => (shape === 'ring' && run === null && end === 'on' ? 'round' : 'row')

/** Even rows of needles show their wrong side unless the words say otherwise. */
export function isWrong({ side, kind }: Words, number: number): boolean {
  if (side) return side === 'wrong'
  return kind === 'row' && number % 2 === 0
}

export const nameOf = (kind: Unit, label: string): string =>
  `${upperFirst(rowWords[kind])} ${label}`

/** "Rnd 2", "Rnds 2-4" */
export const rowsFromTo = (kind: Unit, first: number, last: number): string =>
  numbered(upperFirst(rowWords[kind]), first, last)

/** What several of them are called in a sentence. */
export const unitOf = (kind: Unit): string => `${rowWords[kind]}s`

/** The second row of one line is 5b. */
export const letterOf = (index: number): string =>
  index < 26 ? String.fromCharCode(97 + index) : `.${index + 1}`

const mostNamed = 6

/** "3, 5 and 9"; of very many only the first, and `more` what there is besides. */
export const someListed = (
  items: readonly string[],
  more: (count: number) => string = (count) => `${count} more`,
): string =>
  listed(
    items.length <= mostNamed
      ? items
      : [...items.slice(0, mostNamed - 1), more(items.length - mostNamed + 1)],
  )

/** "Rnd 4", "Rnds 2-4", "Rnds 1, 5 and 9"; of very many only the first. */
export function listOfRows(kind: Unit, numbers: readonly number[]): string {
  const runs: [from: number, to: number][] = []
  for (const number of numbers) {
    const last = runs.at(-1)
    if (last && number === last[1] + 1) last[1] = number
    else runs.push([number, number])
  }
  const said = runs.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`))
  const list = someListed(said, () => 'more')
  return numbers.length === 1 ? nameOf(kind, list) : `${upperFirst(unitOf(kind))} ${list}`
}
