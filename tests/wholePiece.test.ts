/** The whole piece, made from its last version after any edits, is the piece made from nothing. */
import { eachChart, withAllCharts } from '../src/pattern/edits/chart'
import fc, { type Arbitrary } from 'fast-check'
import { expect, test } from 'vitest'
import { checkPattern, type Report } from '../src/checks/check'
import { checkPiece } from '../src/checks/piece/check'
import { flatChart } from '../src/drawing/flat'
import { sidePicture } from '../src/drawing/piece/side'
import { writeSvg } from '../src/drawing/svg'
import { addStep, copyStep, moveStep, removeStep } from '../src/pattern/edits/piece'
import type { Chart, Pattern } from '../src/pattern/pattern'
import { chartsInOrder, onChart, namedOn } from '../src/pattern/charts'
import { totalsOf } from '../src/pattern/totals'
import { workPattern, type Work } from '../src/pattern/work'
import { workPiece, type PieceWork } from '../src/pattern/workPiece'
import { pieceText } from '../src/words/piece/text'
import { writeWords, type Words } from '../src/words/write'
import { arbitraryPattern, arbitraryStep } from './arbitraries'
import { arbitraryEdit, editedPiece, type Edit } from './edits'
import { copyOf } from './cells'

const fewTimes = (chart: Chart): Chart => ({
  ...chart,
  bands: chart.bands.map((band) => ({ ...band, times: 2 + (band.times % 3) })),
})

/** A piece of up to six steps on few pegs, in any order, whose charts are short. */
const arbitraryShortPiece: Arbitrary<Pattern> = arbitraryPattern({
  columns: 10,
  rows: 4,
  cut: true,
}).map((pattern) =>
  withAllCharts(
    {
      ...pattern,
      title: '',
      notes: '',
      loom: { ...pattern.loom, pegs: 3 + (pattern.loom.pegs % 14) },
      checks: { ...pattern.checks, off: [] },
      charts: eachChart(pattern.charts, (one) => ({ ...one, aside: [] })),
    },
    fewTimes,
  ),
)

const nameAt = (pattern: Pattern, at: number): string => {
  const sections = chartsInOrder(pattern)
  return sections[at % sections.length]?.name ?? ''
}

/** An edit of the chart on the bench, of the steps, or another chart on the bench. */
function arbitraryPieceEdit(first: Pattern): Arbitrary<Edit> {
  const at = fc.nat(9)
  const step = arbitraryStep(first.loom.pegs, [namedOn(first).name])
  return fc.oneof(
    { weight: 4, arbitrary: arbitraryEdit(first) },
    fc.tuple(at, step).map(
      ([to, one]) =>
        (p: Pattern) =>
          addStep(p, to % 7, one),
    ),
    at.map((from) => (p: Pattern) => removeStep(p, from % 7)),
    at.map((from) => (p: Pattern) => copyStep(p, from % 7)),
    fc.tuple(at, at).map(
      ([from, to]) =>
        (p: Pattern) =>
          moveStep(p, from % 7, to % 7),
    ),
    { weight: 2, arbitrary: at.map((name) => (p: Pattern) => onChart(p, nameAt(p, name))) },
  )
}

interface Readings {
  readonly work: Work
  readonly piece: PieceWork
  readonly report: Report
  readonly words: Words
}

const readingsOf = (pattern: Pattern, last?: Readings, step?: number | null): Readings => {
  const work = workPattern(pattern, last?.work, step)
  return {
    work,
    piece: workPiece(pattern, last?.piece),
    report: checkPattern(work, last?.report),
    words: writeWords(work, pattern.style.terms, last?.words),
  }
}

const room = { width: 120, height: 160, text: 3.2, chosen: null }
const said = ({ rule, severity, message, advice }: Report['findings'][number]) => [
  rule,
  severity,
  message,
  advice,
]

/** All that is seen of them, without what only says how they came about. */
const seen = ({ work, piece, report, words }: Readings) => ({
  chart: work.run.rows.map(({ after, miscount, heading }) => [after, miscount, heading]),
  piece: piece.steps.map(({ before, after, rows }) => [
    before,
    after,
    rows?.rows.map((row) => row.after),
  ]),
  findings: report.findings.map(said),
  ofPiece: checkPiece(piece).map(({ id, message, advice }) => [id, message, advice]),
  totals: totalsOf(piece),
  words: words.lines.map(({ text }) => text),
  text: pieceText(piece),
  drawn: writeSvg(flatChart(work)),
  side: writeSvg(sidePicture(piece, room).scene),
})

test('loom, checks, totals, words and drawings are the same after any edits', () => {
  let worked = 0
  fc.assert(
    fc.property(editedPiece(arbitraryShortPiece, arbitraryPieceEdit), ([first, edits]) => {
      let pattern = first
      let last = readingsOf(pattern)
      for (const edit of edits) {
        pattern = edit(pattern)
        last = readingsOf(pattern, last)
        // A copy shares no row with what is remembered, so that nothing can be taken from there.
        const fresh = readingsOf(copyOf(pattern), undefined, last.work.step)
        expect(seen(last)).toEqual(seen(fresh))
        worked++
      }
    }),
    { numRuns: 150 },
  )
  expect(worked).toBeGreaterThan(300)
})
