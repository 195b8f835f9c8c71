import type { Work } from '../pattern/work'
import { workPiece } from '../pattern/workPiece'
import { checkPattern } from './check'
import { checkPiece } from './piece/check'

const errorsAmong = (findings: readonly { severity: string; message: string }[]): string[] =>
  findings.flatMap(({ severity, message }) => (severity === 'error' ? [message] : []))

/** What makes the chart on the bench a draft: messages of its errors that are not set aside. */
export const chartErrors = (work: Work): readonly string[] =>
  errorsAmong(checkPattern(work).findings)

/** The same of the whole piece: of its steps too, and one for each other chart that has any. */
export const pieceErrors = (work: Work): readonly string[] => [
  ...chartErrors(work),
  ...errorsAmong(checkPiece(workPiece(work.pattern))),
]
