import type { Band, Pattern, Run } from '../../../pattern/pattern'
import { setBand } from '../../../pattern/edits/rows'
import { insertRead } from '../mend/edits'
import type { ReadRow } from '../../read/reading'
import type { RowPair } from '../comparison'
import type { Found } from './found'
import { meaningOfRow, meaningOfWords, meanTheSame } from '../match/meaning'
import type { Knits } from '../within/row'
import type { Both } from './setting'
import { stitchesNamed } from './wording'
import type { Draft, Rewrite } from './draft'
import type { Changes } from '../mend/rewrite'
import { repeatOf, withTimes } from '../mend/times'
import { removals } from '../mend/removing'
import { renumberingAfter } from '../mend/renumber'

type Alone = Exclude<Found, { what: 'mismatch' }>

const size = ({ from, to }: Run): number => to - from + 1

/** Do these passes work a band a whole number of times, beside times that the words have? */
export function wholeTimes(both: Both, passes: Run, missing: ReadonlySet<number>): Band | null {
  const { pattern, passes: all } = both.work
  const first = all[passes.from]
  const band = pattern.chart.bands.find(
    ({ from, to }) => first && from <= first.row && first.row <= to,
  )
  if (!band || size(passes) % size(band) !== 0) return null
  for (let pass = passes.from; pass <= passes.to; pass++) {
    const row = both.chartRow(pass)
    if (row < band.from || row > band.to) return null
  }
  const start = all.findIndex(({ row }) => row === band.from)
  const end = start + size(band) * band.times
  let kept = 0
  for (let pass = start; pass < end; pass++) if (!missing.has(pass)) kept++
  return kept > 0 && kept % size(band) === 0 ? band : null
}

/** Rows of the chart that the words leave out. */
export function draftNotInWords(
  both: Both,
  { runs, after }: Alone,
  missing: ReadonlySet<number>,
  pairs: readonly RowPair[],
): Draft {
  const [passes] = runs
  const list = Array.from({ length: size(passes) }, (_, n) => passes.from + n)
  const band = runs.length === 1 ? wholeTimes(both, passes, missing) : null
  const times = band ? size(passes) / size(band) : 0
  const rows = [...new Set(list.map((pass) => both.chartRow(pass)))]
  const isTold = (pass: number): boolean => runs.some(({ from, to }) => from <= pass && pass <= to)
  const named = both.work.passes.some(
    ({ row }, pass) => rows.includes(row) && missing.has(pass) && !isTold(pass),
  )
  const kind = both.kind(passes.from)
  const start = band ? both.work.passes.findIndex(({ row }) => row === band.from) : 0
  const number = both.number(start)
  const bandLabel = band ? both.language.label(kind, number, number + size(band) - 1) : ''
  const names = both.names(list)
  const lines = () =>
    band ? [both.language.repeatRows(bandLabel, times)] : both.lines(passes.from, passes.to)
  const last = both.reading.rows[after[0] ?? -1]
  const repeat = band && last ? repeatOf(last) : null
  /** The number of the repeat that is there, rather than a repeat beside it. */
  const count = (
    renumber: (changes: Changes) => Changes | null = (changes) => changes,
  ): Changes | null => {
    if (!band || !repeat) return null
    const changes = withTimes(both.reading, repeat, {
      height: size(band),
      told: band.times - times,
      wanted: band.times,
    })
    return changes && renumber(changes)
  }
  const insertAt = (index: number): [number, readonly string[]] => {
    const run = runs[index] as Run
    return [after[index] ?? -1, index === 0 ? lines() : both.lines(run.from, run.to)]
  }
  const write = (
    indexes: readonly number[],
    renumbering: ReturnType<typeof renumberingAfter>,
  ): Rewrite[] => {
    const label = band ? `Repeat ${bandLabel} in the words` : `Add ${names} to the words`
    const added = () => new Map(indexes.map(insertAt))
    const byNumber = `Work ${bandLabel} ${both.language.times(band?.times ?? 0)} in the words`
    if (renumbering === 'agree')
      return [
        ...(repeat ? [{ label: byNumber, changes: () => count() }] : []),
        { label, plan: () => ({ added: added() }) },
      ]
    const asTheyAre = {
      label: `${label}, with the same numbers after it`,
      plan: () => ({ added: added() }),
    }
    if (renumbering === 'own') return [asTheyAre]
    const { numbers, renumber, agrees } = renumbering
    const head = (row: ReadRow) => `${both.head(String(numbers.get(row) ?? row.label), kind)}:`
    return [
      ...(repeat
        ? [
            {
              label: `${byNumber}, with new numbers after it`,
              changes: () => count(renumber),
              holds: agrees,
            },
          ]
        : []),
      {
        label: `${label}, with new numbers after it`,
        plan: () => ({ added: added(), head, also: renumber }),
        holds: agrees,
      },
      asTheyAre,
    ]
  }
  const at = after[0] ?? null
  const place = at === null ? 0 : both.read(at).saidAt.to
  const [firstRow = 0] = rows
  const lastRow = rows.at(-1) ?? firstRow
  const them = rows.length === 1 ? 'it' : 'them'
  return {
    rule: 'row-missing-in-words',
    row: firstRow,
    rows,
    read: null,
    places: [],
    range: { from: place, to: place },
    message: band
      ? `The chart works ${bandLabel} ${both.language.times(band.times)}, the words ${both.language.times(band.times - times)}.`
      : `Your words leave out ${names}.`,
    advice: band
      ? 'Decide how often it is worked.'
      : `Add ${them}, or remove ${them} from the chart.`,
    isRefused: false,
    doing: band
      ? { words: 'Repeating them as often in the words', chart: 'Repeating them less in the chart' }
      : { words: `Adding ${them} to the words`, chart: `Removing ${them} from the chart` },
    get rewrites() {
      const renumbering = renumberingAfter(both, pairs, passes, after[0] ?? null)
      const all = runs.length > 1 ? write([...runs.keys()], renumbering) : []
      return [...write([0], renumbering), ...all]
    },
    edits: [
      ...(band
        ? [
            {
              label: `Work ${bandLabel} ${both.language.times(band.times - times)} in the chart`,
              edit: (pattern: Pattern) => setBand(pattern, band.from, band.to, band.times - times),
            },
          ]
        : removals(
            `Remove ${names} from the chart`,
            { from: firstRow, to: lastRow },
            {
              both,
              pairs,
              named,
            },
          )),
    ],
  }
}

/** Rows of the words that the chart does not have. */
export function draftNotInChart(both: Both, { runs, after }: Alone, knits: Knits): Draft {
  const [reads] = runs
  const list = Array.from({ length: size(reads) }, (_, n) => reads.from + n)
  const names = both.readNames(list)
  const those = list.length === 1 ? 'it' : 'them'
  const first = both.read(reads.from)
  const short = list.length === 1 && isUnfinished(first)
  const said = stitchesNamed(
    first.stitches.map(({ stitch }) => stitch),
    both.reading.settings.terms,
  )
  const gone = new Set(
    runs.flatMap(({ from, to }) => Array.from({ length: size({ from, to }) }, (_, n) => from + n)),
  )
  const pass = after[0] ?? null
  const row = pass === null ? 0 : both.chartRow(pass) + 1
  const band = moreTimes(both, reads, pass, knits)
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
    rewrites: [
      ...(fewer ? [{ label: `Work it ${fewer.label} in the words`, changes: fewer.changes }] : []),
      { label: `Remove ${names} from the words`, plan: () => ({ gone }) },
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
  const band = both.work.pattern.chart.bands.find(({ to }) => to === row)
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
function moreTimes(both: Both, reads: Run, pass: number | null, knits: Knits): Band | null {
  if (pass === null) return null
  const row = both.chartRow(pass)
  const { bands } = both.work.pattern.chart
  const known = bands.find(({ to }) => to === row)
  const height = known ? size(known) : size(reads)
  const band = known ?? { from: row - height + 1, to: row, times: 1 }
  if (band.from < 0 || size(reads) % height !== 0) return null
  for (let n = 0; n < size(reads); n++) {
    const { row: worked, heading } = both.run(pass - height + 1 + (n % height))
    const words = meaningOfWords(both.read(reads.from + n).stitches, knits.words)
    if (!meanTheSame(words, meaningOfRow(worked, heading, knits.chart))) return null
  }
  return { ...band, times: band.times + size(reads) / height }
}
