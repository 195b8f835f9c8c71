import { checkPattern } from '../checks/check'
import { checkPiece } from '../checks/piece/check'
import { otherCharts } from '../checks/piece/other-charts'
import { stepNamed } from '../checks/piece/steps'
import type { Finding } from '../pattern/finding'
import type { Pattern } from '../pattern/pattern'
import { chartsInOrder } from '../pattern/charts'
import { workPattern, type Work } from '../pattern/work'
import { workPiece, type PieceWork } from '../pattern/workPiece'
import type { Terms } from '../languages/terms'
import { compare } from '../words/compare/compare'
import { toldOf } from '../words/compare/told/told'
import { read } from '../words/read/read'
import { readSettingsOf, type Reading } from '../words/read/reading'
import {
  entryOf,
  namedInWords,
  namedInWork,
  rowsRead,
  rowsWorked,
  type FileReport,
  type FindingEntry,
} from './report'

/**
 * What is known of a pattern: the rows of its charts in the order of use, what is wrong in their
 * charts (and, when asked, in the designer's own words), then what is wrong in the whole piece.
 */
export function reportPattern(
  file: string,
  pattern: Pattern,
  terms: Terms,
  withOwnWords = false,
): FileReport {
  const charts = chartsInOrder(pattern)
  const several = charts.length > 1
  const parts = charts.map(({ name }) => {
    const work = workPattern(pattern, undefined, null, name)
    const chart = several ? { chart: name } : {}
    const named = namedInWork(work)
    const findings = [
      ...checkPattern(work).findings.map((one) =>
        entryOf(one, named(one.place.rows[0] ?? null), one.place.pegs[0]),
      ),
      ...(withOwnWords ? ownWordsFound(work, terms) : []),
    ]
    return {
      rows: rowsWorked(work, terms).map((row) => ({ ...row, ...chart })),
      findings: findings.map((finding) => ({ ...finding, ...chart })),
    }
  })
  const piece = workPiece(pattern)
  // Each chart is checked by itself.
  const ofPiece = checkPiece(piece)
    .filter(({ rule }) => rule !== otherCharts.id)
    .map((finding) => pieceEntry(finding, piece, several))
  return {
    file,
    rows: parts.flatMap(({ rows }) => rows),
    findings: [...parts.flatMap(({ findings }) => findings), ...ofPiece],
  }
}

/** A finding of the piece stands in no row of a chart; it names its step. */
function pieceEntry(
  { rule, severity, place: { step }, message, advice }: Finding,
  work: PieceWork,
  several: boolean,
): FindingEntry {
  const name = step === null ? '' : stepNamed(work, step)
  const isNamed = step === null || message.toLowerCase().includes(`step ${step + 1}`)
  const done = step === null ? null : work.pattern.steps[step]
  return {
    ...entryOf(
      { rule, severity, message: isNamed ? message : `${name}: ${message}`, advice },
      null,
    ),
    ...(several ? { chart: done?.kind === 'chart' ? done.chart : null } : {}),
  }
}

/** Words held against a chart. `aside`: ids of what is set aside. */
export function reportCompared(
  name: string,
  reading: Reading,
  work: Work,
  terms: Terms,
  aside: readonly string[] = [],
): FileReport {
  const [inWork, inWords] = [namedInWork(work), namedInWords(reading)]
  const findings = toldOf(compare(reading, work)).findings.filter(({ id }) => !aside.includes(id))
  return {
    file: name,
    rows: rowsRead(reading, terms),
    findings: findings.map((finding) => {
      const { rows, pegs, read } = finding.place
      const row = read === null ? inWork(rows[0] ?? null) : inWords(read)
      return entryOf(finding, row, pegs[0])
    }),
  }
}

/** What is wrong in the designer's own words, held against the chart; nothing without any. */
function ownWordsFound(work: Work, terms: Terms): FileReport['findings'] {
  const { pattern, words, aside } = work
  if (words === null) return []
  const reading = read(words, readSettingsOf(pattern))
  return reportCompared('', reading, work, terms, aside).findings
}
