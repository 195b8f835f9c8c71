import type { Finding } from '../pattern/finding'
import type { Work } from '../pattern/work'
import { workPieceOnce } from '../pattern/workOnce'
import { checkPattern } from './check'
import { checkPiece } from './piece/check'

/**
 * What is found and not set aside, as Findings lists it: of the chart that is looked at, then of the piece as a
 * whole, with one for each other chart that has errors. A fault that both could tell stands once.
 */
export const openFindings = (work: Work): readonly Finding[] => [
  ...checkPattern(work).findings,
  ...checkPiece(workPieceOnce(work.pattern), work.name),
]

const errorsAmong = (findings: readonly Finding[]): string[] =>
  findings.flatMap(({ severity, message }) => (severity === 'error' ? [message] : []))

/** What makes the chart that is looked at a draft: messages of its errors that are not set aside. */
export const chartErrors = (work: Work): readonly string[] =>
  errorsAmong(checkPattern(work).findings)

/** The same of the whole piece: of its steps too, and one for each other chart that has any. */
export const pieceErrors = (work: Work): readonly string[] => errorsAmong(openFindings(work))
