import type { Work } from '../pattern/work'
import { workPieceOnce } from '../pattern/workOnce'
import { checkPattern } from './check'
import type { Finding, Severity } from './finding'
import { checkPiece } from './piece/check'
import type { PieceFinding } from './piece/rule'
import { countBySeverity } from './report'

/** What is found and not set aside, as Findings lists it: a fault that both could tell stands once. */
export interface OpenFindings {
  /** Of the chart on the bench. */
  readonly chart: readonly Finding[]
  /** Of the piece as a whole, with one for each other chart that has errors. */
  readonly piece: readonly PieceFinding[]
}

export const openFindings = (work: Work): OpenFindings => ({
  chart: checkPattern(work).findings,
  piece: checkPiece(workPieceOnce(work.pattern), work.name),
})

/** How many of each kind are open. */
export const countOpen = ({ chart, piece }: OpenFindings): Record<Severity, number> =>
  countBySeverity({ findings: [...chart, ...piece] })
