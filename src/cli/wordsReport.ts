import { checkPattern } from '../checks/check'
import { workPattern } from '../pattern/work'
import type { Terms } from '../stitches/stitch'
import { chartFrom } from '../words/read/chartFrom'
import type { Reading } from '../words/read/reading'
import { checkEntry, kindInWords, remarkEntry, rowsRead, type FileReport } from './report'

/** The rows that the words tell, with what the reader remarks. */
export const reportReading = (file: string, reading: Reading, terms: Terms): FileReport => ({
  file,
  kindOf: kindInWords(reading),
  rows: rowsRead(reading, terms),
  findings: reading.remarks.map(remarkEntry(reading)),
})

/** The same, with what the checks find in the chart that the words make. */
export function reportWords(file: string, reading: Reading, terms: Terms): FileReport {
  const report = reportReading(file, reading, terms)
  return { ...report, findings: [...report.findings, ...findingsOfChart(reading)] }
}

/** Checks of counts: where the reader has an error in that row, it has said so already. */
const countRules = new Set(['row-count', 'masking', 'run-fit', 'empty-peg'])

/** Checks that rest on measures, which words do not give. */
const measureRules = new Set(['gauge', 'cross-tight'])

function findingsOfChart(reading: Reading): FileReport['findings'] {
  if (reading.rows.length === 0) return []
  const { pattern, remarks } = chartFrom(reading)
  const work = workPattern(pattern)
  const { passes } = work
  // Each pass is a row of the words: a chart row goes by the label of its first one.
  const readOf = (row: number): number => passes.findIndex((pass) => pass.row === row)
  const said = new Set(
    reading.remarks.flatMap(({ row, severity }) =>
      severity === 'error' && row !== null ? [row] : [],
    ),
  )
  return [
    ...remarks.filter(({ row }) => row === null || !said.has(row)).map(remarkEntry(reading)),
    ...checkPattern(work)
      .findings.filter(
        ({ rule, place: { row } }) =>
          !measureRules.has(rule) &&
          (row === null || !countRules.has(rule) || !said.has(readOf(row))),
      )
      .map(checkEntry((row) => reading.rows[readOf(row)]?.label ?? null)),
  ]
}
