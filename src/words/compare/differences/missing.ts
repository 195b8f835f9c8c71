import type { Band, Pattern, Run } from '../../../pattern/pattern'
import { setBand } from '../../../pattern/edits/rows'
import { insertRead } from '../mend/edits'
import type { ReadRow } from '../../read/reading'
import type { Found } from '../joinedByKeys'
import { indexesOf, type Alone } from './found'
import { meaningOfRow, meaningOfWords, meanTheSame } from '../match/meaning'
import type { Both } from './setting'
import { stitchesNamed } from './wording'
import type { Draft, Rewrite } from './draft'
import type { Plan } from '../mend/rewrite'
import { repeatOf, withTimes } from '../mend/times'
import { removals } from '../mend/removing'
import { renumberingAfter } from '../mend/renumber'

const size = ({ from, to }: Run): number => to - from + 1

/** Do these passes work a band a whole number of times, beside times that the words have? */
function wholeTimes(both: Both, passes: Run): Band | null {
  const { chart, passes: all } = both.work
  const first = all[passes.from]
  const band = chart.bands.find(({ from, to }) => first && from <= first.row && first.row <= to)
  if (!band || size(passes) % size(band) !== 0) return null
  for (let pass = passes.from; pass <= passes.to; pass++) {
    const row = both.chartRow(pass)
    if (row < band.from || row > band.to) return null
  }
  const start = all.findIndex(({ row }) => row === band.from)
  const end = start + size(band) * band.times
  let kept = 0
  for (let pass = start; pass < end; pass++) if (!both.missing.has(pass)) kept++
  return kept > 0 && kept % size(band) === 0 ? band : null
}

/** Rows of the chart that the words leave out: some times of a band, or the rows themselves. */
export function draftNotInWords(both: Both, found: Found<Alone>): Draft {
  const [{ run: passes, after }] = found
  const band = found.length === 1 ? wholeTimes(both, passes) : null
  const place = after === null ? 0 : both.read(after).saidAt.to
  const rows = [...new Set(indexesOf(passes).map((pass) => both.chartRow(pass)))]
  return {
    rule: 'row-missing-in-words',
    row: rows[0] ?? 0,
    rows,
    read: null,
    places: [],
    range: { from: place, to: place },
    isRefused: false,
    ...(band ? timesLeftOut(both, band, passes, after) : rowsLeftOut(both, rows, found)),
  }
}

type Told = Pick<Draft, 'message' | 'advice' | 'doing' | 'rewrites' | 'edits'>

/** A band that the words work less often. */
function timesLeftOut(both: Both, band: Band, passes: Run, after: number | null): Told {
  const { language, reading } = both
  const times = size(passes) / size(band)
  const told = band.times - times
  const first = both.number(both.work.passes.findIndex(({ row }) => row === band.from))
  const label = language.label(both.kind(passes.from), first, first + size(band) - 1)
  const last = reading.rows[after ?? -1]
  const repeat = last ? repeatOf(last) : null
  const repeated = { height: size(band), told, wanted: band.times }
  return {
    message: `The chart works ${label} ${language.times(band.times)}, the words ${language.times(told)}.`,
    advice: 'Decide how often it is worked.',
    doing: {
      words: 'Repeating them as often in the words',
      chart: 'Repeating them less in the chart',
    },
    rewrites: () => {
      const added = new Map([[after ?? -1, [language.repeatRows(label, times)]]])
      // The number of the repeat that is there, rather than a repeat beside it.
      const byNumber = repeat && {
        label: `Work ${label} ${language.times(band.times)} in the words`,
        changes: () => withTimes(reading, repeat, repeated),
      }
      const add = { label: `Repeat ${label} in the words`, added }
      return numbered(both, passes, after, add, byNumber)
    },
    edits: [
      {
        label: `Work ${label} ${language.times(told)} in the chart`,
        edit: (pattern: Pattern) => setBand(pattern, band.from, band.to, told),
      },
    ],
  }
}

/** Rows that the words do not have at all. */
function rowsLeftOut(both: Both, rows: readonly number[], found: Found<Alone>): Told {
  const [{ run: passes, after }] = found
  const [first = 0] = rows
  const names = both.names(indexesOf(passes))
  const them = rows.length === 1 ? 'it' : 'them'
  const isTold = (pass: number): boolean =>
    found.some(({ run }) => run.from <= pass && pass <= run.to)
  const named = both.work.passes.some(
    ({ row }, pass) => rows.includes(row) && both.missing.has(pass) && !isTold(pass),
  )
  return {
    message: `Your words leave out ${names}.`,
    advice: `Add ${them}, or remove ${them} from the chart.`,
    doing: { words: `Adding ${them} to the words`, chart: `Removing ${them} from the chart` },
    rewrites: () => {
      const label = `Add ${names} to the words`
      const lines = found.map(
        ({ run, after: row }) => [row ?? -1, both.lines(run.from, run.to)] as const,
      )
      const [one] = lines
      return [one && [one], lines.length > 1 && lines].flatMap((some) =>
        some ? numbered(both, passes, after, { label, added: new Map(some) }, null) : [],
      )
    },
    edits: removals(
      `Remove ${names} from the chart`,
      { from: first, to: rows.at(-1) ?? first },
      both,
      named,
    ),
  }
}

/** Lines to be put in after rows of the words. */
type Adding = Pick<Plan, 'added'> & { readonly label: string }

/** Ways to add lines, and to change a number instead where there is one, with the numbers of the rows after them. */
function numbered(
  both: Both,
  passes: Run,
  after: number | null,
  { label, added }: Adding,
  byNumber: Rewrite | null,
): Rewrite[] {
  const renumbering = renumberingAfter(both, passes, after)
  const add = { label, changes: () => both.rewrite({ added }) }
  if (renumbering === 'agree') return byNumber ? [byNumber, add] : [add]
  const asTheyAre = { ...add, label: `${label}, with the same numbers after it` }
  if (renumbering === 'own') return [asTheyAre]
  const { numbers, renumber, agrees: holds } = renumbering
  const kind = both.kind(passes.from)
  const head = (row: ReadRow) => `${both.head(String(numbers.get(row) ?? row.label), kind)}:`
  const anew = (one: string) => `${one}, with new numbers after it`
  const change = byNumber && {
    label: anew(byNumber.label),
    changes: () => {
      const changes = byNumber.changes()
      return changes && renumber(changes)
    },
    holds,
  }
  return [
    ...(change ? [change] : []),
    { label: anew(label), changes: () => both.rewrite({ added, head, also: renumber }), holds },
    asTheyAre,
  ]
}

/** Rows of the words that the chart does not have. */
export function draftNotInChart(both: Both, found: Found<Alone>): Draft {
  const [{ run: reads, after: pass }] = found
  const list = indexesOf(reads)
  const names = both.readNames(list)
  const those = list.length === 1 ? 'it' : 'them'
  const first = both.read(reads.from)
  const short = list.length === 1 && isUnfinished(first)
  const said = stitchesNamed(
    first.stitches.map(({ stitch }) => stitch),
    both.reading.settings.terms,
  )
  const gone = new Set(found.flatMap(({ run }) => indexesOf(run)))
  const row = pass === null ? 0 : both.chartRow(pass) + 1
  const band = moreTimes(both, reads, pass)
  const fewer = fewerTimes(both, reads, pass)
  const heading = pass === null ? 'forward' : both.run(pass).after.heading
  let way = heading
  const rows = list.map((index) => {
    const read = both.read(index)
    const now = read.heading ?? way
    way = both.work.pattern.loom.shape === 'bar' ? (now === 'forward' ? 'back' : 'forward') : now
    return { read, heading: now }
  })
  const edits: Draft['edits'] = [
    ...(band
      ? [
          {
            label: `Work it ${both.language.times(band.times)} in the chart`,
            edit: (pattern: Both['work']['pattern']) =>
              setBand(pattern, band.from, band.to, band.times),
          },
        ]
      : []),
    {
      label: `Add ${names} to the chart`,
      edit: (pattern) => {
        const put = insertRead(pattern, row, rows)
        return put.can ? put.pattern : pattern
      },
    },
  ]
  return {
    rule: 'row-missing-in-chart',
    row: null,
    rows: [],
    read: reads.from,
    places: [],
    range: first.saidAt,
    message:
      list.length === 1
        ? `The chart leaves out ${names} of your words (${said}).`
        : `The chart leaves out ${names} of your words (the first: ${said}).`,
    advice: short
      ? `It works only ${first.takes} of ${first.before} stitches. Finish it, or remove it.`
      : `Add ${those}, or remove ${those} from the words.`,
    isRefused: false,
    ...(short
      ? {}
      : {
          doing: {
            words: `Removing ${those} from the words`,
            chart: `Adding ${those} to the chart`,
          },
        }),
    rewrites: () => [
      ...(fewer ? [{ label: `Work it ${fewer.label} in the words`, changes: fewer.changes }] : []),
      { label: `Remove ${names} from the words`, changes: () => both.rewrite({ gone }) },
    ],
    edits,
  }
}

/** Is a row left unfinished: it names no pegs, does not turn, and takes fewer loops than there are? */
const isUnfinished = ({ takes, before, run, end }: ReadRow): boolean =>
  run === null && end === 'on' && takes < before

/** Rows at the end of a repeat, which can say a lower number; null: they are told otherwise. */
function fewerTimes(both: Both, reads: Run, pass: number | null) {
  const repeat = repeatOf(both.read(reads.to))
  const next = both.reading.rows[reads.to + 1]
  if (!repeat || pass === null || (next && repeatOf(next)?.from === repeat.from)) return null
  const row = both.chartRow(pass)
  const band = both.work.chart.bands.find(({ to }) => to === row)
  const told = both.reading.bands.find((one) => one.from + size(one) * one.times - 1 === reads.to)
  const height = size(band ?? told ?? { from: 0, to: -1 })
  if (height === 0 || size(reads) % height !== 0) return null
  const wanted = band?.times ?? 1
  const times = { height, told: wanted + size(reads) / height, wanted }
  return {
    label: both.language.times(wanted),
    changes: () => withTimes(both.reading, repeat, times),
  }
}

/** The band before these rows, if they work it on, with the times it then has. */
function moreTimes(both: Both, reads: Run, pass: number | null): Band | null {
  if (pass === null) return null
  const row = both.chartRow(pass)
  const { bands } = both.work.chart
  const known = bands.find(({ to }) => to === row)
  const height = known ? size(known) : size(reads)
  const band = known ?? { from: row - height + 1, to: row, times: 1 }
  if (band.from < 0 || size(reads) % height !== 0) return null
  for (let n = 0; n < size(reads); n++) {
    const { row: worked, heading } = both.run(pass - height + 1 + (n % height))
    const words = meaningOfWords(both.read(reads.from + n).stitches, both.knits.words)
    if (!meanTheSame(words, meaningOfRow(worked, heading, both.knits.chart))) return null
  }
  return { ...band, times: band.times + size(reads) / height }
}
