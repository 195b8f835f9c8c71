import type { Work } from '../pattern/work'
import { checkPattern } from './check'
import { openFindings } from './open'

const errorsAmong = (findings: readonly { severity: string; message: string }[]): string[] =>
  findings.flatMap(({ severity, message }) => (severity === 'error' ? [message] : []))

/** What makes the chart on the bench a draft: messages of its errors that are not set aside. */
export const chartErrors = (work: Work): readonly string[] =>
  errorsAmong(checkPattern(work).findings)

/** The same of the whole piece: of its steps too, and one for each other chart that has any. */
export function pieceErrors(work: Work): readonly string[] {
  const { chart, piece } = openFindings(work)
  return [...errorsAmong(chart), ...errorsAmong(piece)]
}
