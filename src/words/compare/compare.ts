import type { Work } from '../../pattern/work'
import type { Reading } from '../read/reading'
import { align, type Listed } from './match/align'
import type { Agreement, Comparison, Difference, RowPair } from './comparison'
import type { Draft } from './differences/draft'
import {
  aloneRuns,
  indexesOf,
  keysOfMismatch,
  type Alone,
  type Mismatched,
} from './differences/found'
import { joinedByKeys } from './joinedByKeys'
import { meaningOfRow, meaningOfWords } from './match/meaning'
import { draftMismatch } from './differences/mismatches'
import { draftNotInChart, draftNotInWords } from './differences/missing'
import { slide } from './match/slide'
import { compareRow, type Knits } from './within/row'
import { Both } from './differences/setting'
import { draftsStated } from './differences/stated'
import { lackingOf } from './differences/lacking'
import { reallyMissing, unreadOf } from './match/unread'
import { fixesThatWork } from './mend/vet'

export { agreements, type Agreement, type Comparison, type Difference } from './comparison'
export { applyChanges } from './mend/rewrite'

/**
 * Hold the words against the chart: every row as the words have it against every working of a
 * chart row. Rows are matched by their numbers, or by what they say where that leaves fewer out.
 * With the comparison of an earlier version nothing is done where both sides are the same.
 */
export function compare(reading: Reading, work: Work, previous?: Comparison): Comparison {
  if (previous?.reading === reading && previous.work === work) return previous
  const knits: Knits = {
    words: reading.stated.knit ?? reading.settings.knit,
    chart: work.pattern.making.knit,
  }
  const pairs = pair(reading, work, knits)
  const both = new Both(reading, work, pairs, knits)
  const { mismatches, notInWords, notInChart, agreement } = findAll(both)
  const byRows = ({ rows }: Alone): readonly string[] => [rows]
  const drafts = [
    ...draftsStated(both),
    ...joinedByKeys(mismatches, keysOfMismatch).map((found) => draftMismatch(both, found)),
    ...joinedByKeys(notInWords, byRows).map((found) => draftNotInWords(both, found)),
    ...joinedByKeys(notInChart, byRows).map((found) => draftNotInChart(both, found)),
  ]
  const differences: Difference[] = []
  const comparison: Comparison = { reading, work, differences, agreement, pairs }
  for (const draft of drafts) differences.push(differenceOf(comparison, draft))
  return comparison
}

function pair(reading: Reading, work: Work, knits: Knits): RowPair[] {
  const read = listRead(reading, knits)
  const worked = listWorked(work, knits)
  const pairs = slide(align(read, worked), 'pass', {
    says: (pass) => worked[pass]?.meaning ?? '',
    source: (pass) => work.passes[pass]?.row ?? -1,
  })
  return slide(pairs, 'read', {
    says: (index) => read[index]?.meaning ?? '',
    source: (index) => reading.rows[index]?.range.from ?? -1,
  })
}

function listRead(reading: Reading, knits: Knits): Listed[] {
  const unread = unreadOf(reading).rows
  return reading.rows.map(({ stitches, label }, index) => ({
    meaning: meaningOfWords(stitches, knits.words),
    number: Number(label),
    unread: unread.has(index),
  }))
}

const listWorked = ({ run, passes }: Work, knits: Knits): Listed[] =>
  run.rows.map(({ row, heading }, pass) => ({
    meaning: meaningOfRow(row, heading, knits.chart),
    number: passes[pass]?.number ?? NaN,
  }))

interface All {
  readonly mismatches: readonly Mismatched[]
  readonly notInWords: readonly Alone[]
  readonly notInChart: readonly Alone[]
  readonly agreement: readonly Agreement[]
}

function findAll(both: Both): All {
  const { reading, work, pairs, knits } = both
  const unread = unreadOf(reading)
  const { length } = work.chart.rows
  const told = new Array<boolean>(length).fill(false)
  const lacks = new Array<boolean>(length).fill(false)
  const differs = new Array<boolean>(length).fill(false)
  const unsure = new Array<boolean>(length).fill(false)
  const mismatches: Mismatched[] = []
  const notInWords: Alone[] = []
  for (const { read, pass } of pairs) {
    if (pass === null) continue
    const row = both.chartRow(pass)
    if (read === null) {
      unsure[row] = true
      continue
    }
    told[row] = true
    if (unread.rows.has(read)) {
      differs[row] = true
      continue
    }
    for (const mismatch of compareRow(both.read(read), both.run(pass), work.layout, knits)) {
      differs[row] = true
      mismatches.push({ mismatch, at: { read, pass }, chartRow: row })
    }
  }
  for (const { run, after } of aloneRuns(pairs, 'pass'))
    for (const part of reallyMissing(reading, unread, run, after, work.passes)) {
      const rows = indexesOf(part).map((pass) => both.chartRow(pass))
      for (const row of rows) lacks[row] = true
      notInWords.push({ run: part, after, rows: rows.join(' ') })
    }
  const notInChart = aloneRuns(pairs, 'read').map(({ run, after }): Alone => ({
    run,
    after,
    rows: indexesOf(run)
      .map((read) => both.read(read).range.from)
      .join(' '),
  }))
  const agreement = differs.map((differing, row): Agreement => {
    if (differing || lacks[row]) return told[row] ? 'differs' : 'missing'
    return unsure[row] ? 'unread' : 'same'
  })
  return { mismatches, notInWords, notInChart, agreement }
}

function differenceOf(comparison: Comparison, draft: Draft): Difference {
  const { rule, row, rows, read, places, range } = draft
  let fixes: Difference['fixes'] | undefined
  const found = () => (fixes ??= fixesThatWork(comparison, draft, compare))
  return {
    rule,
    severity: 'error',
    row,
    rows,
    read,
    pegs: places[0] ?? null,
    places,
    range,
    get message() {
      return draft.message
    },
    get advice() {
      return draft.advice
    },
    get isRefused() {
      return draft.isRefused
    },
    get fixes() {
      return found()
    },
    get lacking() {
      return lackingOf(draft, found(), comparison.work.pattern.loom.shape)
    },
  }
}
