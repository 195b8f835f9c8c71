import type { Finding } from '../pattern/finding'
import { checkPattern } from '../checks/check'
import { workPattern } from '../pattern/work'
import type { Terms } from '../languages/terms'
import { saidOnce } from '../words/compare/told/saidOnce'
import { chartFrom } from '../words/read/chart/chartFrom'
import { needlesHint } from '../words/wrongSide'
import type { Reading } from '../words/read/reading'
import { entryOf, namedInWords, rowsRead, type FileReport, type FindingEntry } from './report'

/**
 * The rows that the words tell, with what the reader remarks, once for each line that says it, and what the
 * checks find in the chart that the words make.
 */
export function reportWords(file: string, reading: Reading, terms: Terms): FileReport {
  const named = namedInWords(reading)
  return {
    file,
    rows: rowsRead(reading, terms),
    findings: [
      ...saidOnce(reading).map((remark) => entryOf(remark, named(remark.row), remark.pegs)),
      ...needlesHint(reading).map((hint) => entryOf({ ...hint, advice: sayNeedles }, null)),
      ...findingsOfChart(reading),
    ],
  }
}

const sayNeedles =
  'If they are written for needles, say --needles: wrong-side rows are turned round.'

/** Rows that no chart has room for: their counts are the reader's, nothing else is known of them. */
const unchecked = (reading: Reading, charted: number): FindingEntry[] =>
  charted < reading.rows.length
    ? [
        entryOf(
          {
            rule: 'no-room',
            severity: 'warning',
            message: `a chart has room for ${charted} of these ${reading.rows.length} rows. From here on only the counts were checked, not crosses and turns.`,
            advice: 'Check the rest by itself, or write what repeats as a repeat of rows.',
          },
          namedInWords(reading)(charted),
        ),
      ]
    : []

/** Checks of counts: the reader counts the words themselves, so what they say is said already. */
const countRules = new Set(['row-count', 'masking', 'run-fit', 'empty-peg', 'no-room'])

/** Checks that rest on measures, which words do not give. */
const measureRules = new Set(['gauge', 'cross-tight'])

/** Words may leave more loops than there were pegs named; no chart can be made of these then. */
function outgrown(reading: Reading): FindingEntry | null {
  const { pegs } = reading.settings
  const index = reading.rows.findIndex(({ after }) => after > pegs)
  const row = reading.rows[index]
  if (!row) return null
  return entryOf(
    {
      rule: 'no-room',
      severity: 'warning',
      message: `${row.after} loops stand on the loom after it; it has ${pegs} pegs.`,
      advice:
        'The counts hold, but this needs a loom with more pegs; crosses and turns were not checked.',
    },
    namedInWords(reading)(index),
  )
}

function findingsOfChart(reading: Reading): FileReport['findings'] {
  if (reading.rows.length === 0) return []
  const tooMany = outgrown(reading)
  if (tooMany) return [tooMany]
  const { pattern, remarks } = chartFrom(reading)
  const work = workPattern(pattern)
  const { passes } = work
  const named = namedInWords(reading)
  // Each pass is a row of the words: a chart row goes by the label of its first one.
  const readOf = (row: number): number => passes.findIndex((pass) => pass.row === row)
  const matters = ({ rule }: { readonly rule: string }) =>
    !measureRules.has(rule) && !countRules.has(rule)
  // That a row goes back after a plain turn is said where it turns.
  const plainTurns = new Set(
    reading.remarks.flatMap(({ rule, row }) =>
      rule === 'plain-turn' && row !== null ? [row + 1] : [],
    ),
  )
  const saidAtTurn = ({ rule, place }: Finding) =>
    rule === 'turn-way' && place.rows.some((row) => plainTurns.has(readOf(row)))
  // An edge moves the yarn and the loops between two rows; the one chart made here has no edges.
  const afterEdge = new Set(reading.edges.map(({ row }) => row))
  const beginsAtEdge = ({ rule, place }: Finding) =>
    rule === 'turn-start' && place.rows.some((row) => afterEdge.has(readOf(row)))
  return [
    ...unchecked(reading, passes.length),
    ...remarks.filter(matters).map((one) => entryOf(one, named(one.row), one.pegs)),
    ...checkPattern(work)
      .findings.filter(
        (finding) => matters(finding) && !saidAtTurn(finding) && !beginsAtEdge(finding),
      )
      .map((one) => {
        const { rows, pegs } = one.place
        return entryOf(one, rows[0] === undefined ? null : named(readOf(rows[0])), pegs[0])
      }),
  ]
}
