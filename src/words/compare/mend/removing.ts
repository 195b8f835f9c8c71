import { namedOn } from '../../../pattern/charts'
import { deleteRows } from '../../../pattern/edits/rows'
import { setWords } from '../../../pattern/edits/words'
import type { Run, Sheet } from '../../../pattern/pattern'
import type { Draft } from '../differences/draft'
import { withNumbers, type Position } from './renumber'
import { applyChanges, type Changes } from './rewrite'
import type { Both } from '../differences/setting'
import { rowsSaid } from './times'
import { unreadOf } from '../match/unread'

/**
 * Rows go from the chart, and their numbers from the words, where those are the pattern's own; or
 * from the chart alone. `named`: a repeat of the words names these rows, so that they cannot go from the chart alone.
 */
export function removals(
  label: string,
  rows: Run,
  both: Both,
  named: boolean,
): Draft['edits'][number][] {
  const { text } = both.reading
  const renumbered = (pattern: Sheet): Sheet => {
    const words = namedOn(pattern).words === text ? wordsWithout(both, rows) : null
    const without = deleteRows(pattern, rows.from, rows.to)
    return words === null || words === text || without === pattern
      ? pattern
      : setWords(without, words)
  }
  return [
    { label: `${label}, with new numbers in the words`, edit: renumbered },
    ...(named ? [] : [{ label, edit: (p: Sheet) => deleteRows(p, rows.from, rows.to) }]),
  ]
}

/**
 * The words for a chart without rows that they leave out: numbers after those rows count down, and
 * a repeat that named one of them names those that are there. null: the words do not go by the
 * chart's numbers, or name one of those rows alone.
 */
function wordsWithout(both: Both, rows: Run): string | null {
  const { reading } = both
  const { text } = reading
  for (const [read, pass] of both.passOf) {
    const row = both.read(read)
    if (row.time === 0 && Number(row.label) !== both.number(pass)) return null
  }
  const gone = both.work.passes
    .filter(({ row }) => row >= rows.from && row <= rows.to)
    .map(({ number }) => number)
  const numberOf = (old: number, at: Position): number => {
    if (at === 'alone' && gone.includes(old)) return NaN
    return old - gone.filter((one) => (at === 'last' ? one <= old : one < old)).length
  }
  const all = { from: 0, to: text.length }
  const changed = withNumbers(reading, all, numberOf, countsWithout(both, gone))
  return changed && applyChanges(text, changed)
}

const firstToLast = /(\d{1,5})\s*(?:-|–|—|to|through|thru)\s*(\d{1,5})/i

/** "(18 rnds in all)" behind a repeat of six rows of which one goes is "(15 rnds in all)". */
function countsWithout({ reading, work }: Both, gone: readonly number[]): Changes {
  const { text } = reading
  return unreadOf(reading).repeats.flatMap((repeat) => {
    const [, from = '', to = ''] = firstToLast.exec(text.slice(repeat.from, repeat.to)) ?? []
    const [first, last] = [Number(from), Number(to)]
    const lost = gone.filter((number) => number >= first && number <= last).length
    const start = work.passes.find(({ number }) => number === first)?.row
    const times = work.chart.bands.find((band) => band.from === start)?.times ?? 1
    const height = last - first + 1
    const told = [height * times, first - 1 + height * times]
    const end = text.indexOf('\n', repeat.from)
    const line = { from: repeat.from, to: end < 0 ? text.length : end }
    return rowsSaid(text, line).flatMap(({ range, count }) =>
      lost > 0 && told.includes(count) ? [{ range, text: String(count - lost * times) }] : [],
    )
  })
}
