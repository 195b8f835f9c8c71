import { chartOn, onChart } from '../../../pattern/charts'
import type { Terms } from '../../../languages/terms'
import type { Sheet } from '../../../pattern/pattern'
import type { Draft } from './draft'
import { putOnPegs, putRow, wordsOnPegs, type Put } from '../mend/edits'
import type { Found } from '../joinedByKeys'
import type { Mismatched, Pairing } from './found'
import { changesInPlace } from '../mend/inPlace'
import { Names } from '../mend/names'
import type { Changes } from '../mend/rewrite'
import type { Mismatch } from '../within/row'
import type { Both } from './setting'
import { countsDiffer, pathsDiffer, repeatsDiffer, stitchesDiffer } from './wording'

/** A row, or several rows of one line, that words and chart work differently. */
export function draftMismatch(both: Both, found: Found<Mismatched>): Draft {
  const [{ mismatch, at: first }] = found
  const at = found.map((one) => one.at)
  const firstOfRows = new Map<number, Pairing>()
  for (const { chartRow, at: pairing } of found)
    if (!firstOfRows.has(chartRow)) firstOfRows.set(chartRow, pairing)
  const rows = [...firstOfRows.keys()]
  const named = () => both.names([...firstOfRows.values()].map(({ pass }) => pass))
  let known: TakenWords | undefined
  const taken = () => (known ??= takeWords(both, mismatch, firstOfRows))
  return {
    rule: mismatch.kind === 'path' ? 'turn-differs' : 'words-differ',
    row: rows[0] ?? null,
    rows,
    read: first.read,
    places: mismatch.kind === 'path' ? [] : mismatch.places.map(({ pegs }) => pegs),
    range: mismatch.range,
    get message() {
      return `${named()}${inTheWords(both, first)}: ${differing(mismatch, both.reading.settings.terms)}`
    },
    get advice() {
      return taken().refusal ?? 'Decide which is right, the words or the chart.'
    },
    rewrites: () => {
      const label = `Rewrite ${named()} from the chart`
      const whole = () => both.rewrite({ sentences: sentencesFor(both, at) })
      return [
        ...(mismatch.kind === 'stitches' ? [{ label, changes: () => inPlace(both, at) }] : []),
        { label, changes: whole },
      ]
    },
    get edits() {
      const { edit } = taken()
      return edit ? [{ label: `Change the chart to match the words (${named()})`, edit }] : []
    },
    get isRefused() {
      return taken().refusal !== null
    },
    doing: { words: 'Rewriting the words', chart: 'Changing the chart' },
  }
}

/** The number that the words have for the row, where it is another. */
function inTheWords(both: Both, { read, pass }: Pairing): string {
  const { label } = both.read(read)
  if (Number(label) === both.number(pass)) return ''
  return ` (${both.head(label, both.kind(pass))} in the words)`
}

function differing(mismatch: Mismatch, terms: Terms): string {
  if (mismatch.kind === 'path') return pathsDiffer(mismatch.words, mismatch.chart)
  const { repeat, miscount, places } = mismatch
  if (repeat) return repeatsDiffer(repeat, terms)
  return miscount ? countsDiffer(miscount, places, terms) : stitchesDiffer(places, terms)
}

/** The lines as they are but for the stitches that differ; null: they cannot be written so. */
function inPlace(both: Both, at: readonly Pairing[]): Changes | null {
  const names = new Names(both.reading, both.knits)
  const all: Changes[number][] = []
  const lines = new Set<number>()
  for (const { read, pass } of at) {
    const row = both.read(read)
    if (lines.has(row.range.from)) continue
    lines.add(row.range.from)
    const changes = changesInPlace(both.reading, row, both.run(pass), both.knits, names)
    if (!changes) return null
    all.push(...changes)
  }
  return all.sort((a, b) => a.range.from - b.range.from)
}

/** The lines as the writer has them, with the words' own names of stitches. */
function sentencesFor(both: Both, at: readonly Pairing[]) {
  const names = new Names(both.reading, both.knits)
  return new Map(
    at.map(({ read, pass }) => {
      const stitches = new Set(both.run(pass).row.sites.map(({ stitch }) => stitch))
      const sentence = names.inSentence(both.sentence(pass), stitches)
      return [read, { sentence, count: both.count(pass) }]
    }),
  )
}

interface TakenWords {
  readonly edit: Draft['edits'][number]['edit'] | null
  /** Why the words cannot simply be charted. */
  readonly refusal: string | null
}

function takeWords(both: Both, mismatch: Mismatch, rows: ReadonlyMap<number, Pairing>): TakenWords {
  const putAll = (pattern: Sheet): Put => {
    let put: Put = { can: true, pattern }
    for (const [row, pairing] of rows) {
      if (!put.can) break
      put = putInto(both, put.pattern, mismatch, row, pairing)
    }
    return put
  }
  const trial = putAll(onChart(both.work.pattern, both.work.name))
  if (!trial.can && mismatch.kind === 'stitches' && mismatch.repeat)
    return { edit: null, refusal: "Use the chart's version, or correct the repeat in the words." }
  if (!trial.can) return { edit: null, refusal: reasons[trial.reason](both, [...rows.values()]) }
  return {
    edit: (pattern) => {
      const put = putAll(pattern)
      return put.can ? put.pattern : pattern
    },
    refusal: null,
  }
}

const reasons: Readonly<
  Record<Extract<Put, { can: false }>['reason'], (both: Both, at: readonly Pairing[]) => string>
> = {
  copies: ({ work }) =>
    `Use the chart's version, or chart it by hand: the words work the ${work.layout.copies} copies of the repeat differently, and the chart holds the repeat once.`,
  pegs: (both, at) =>
    `Use the chart's version, or correct the words until they fill ${pegsToFill(both, at)}.`,
}

/** "all 40 pegs", "all 12 pegs of the row". */
function pegsToFill(both: Both, [first]: readonly Pairing[]): string {
  const { pegs } = both.work.pattern.loom
  const { from, to } = first ? both.run(first.pass).row : { from: 0, to: pegs - 1 }
  return to - from + 1 === pegs ? `all ${pegs} pegs` : `all ${to - from + 1} pegs of the row`
}

function putInto(
  both: Both,
  pattern: Sheet,
  mismatch: Mismatch,
  row: number,
  { read, pass }: Pairing,
): Put {
  const words = both.read(read)
  const { heading, row: worked } = both.run(pass)
  const own = chartOn(pattern).rows[row]?.heading ?? null
  if (mismatch.kind === 'path') {
    const turns = mismatch.words.heading !== heading
    return putRow(pattern, row, words, mismatch.words, turns ? mismatch.words.heading : own)
  }
  const items = mismatch.miscount ? null : wordsOnPegs(mismatch.places, heading)
  if (items) return putOnPegs(pattern, row, items)
  const path = { heading, run: { from: worked.from, to: worked.to }, end: worked.end }
  return putRow(pattern, row, words, path, own)
}
