import { worstFirst, nowhere, type Finding } from '../../pattern/finding'
import type { NamedChart } from '../../pattern/pattern'
import { workPiece, type PieceWork } from '../../pattern/workPiece'
import type { PieceNote, PieceRule } from '../rule'
import { pieceRules } from '../rules'
import { allOf, repairsThatWork } from '../vet'
import { errorsOf } from './chartErrors'

/**
 * Ask every rule about the whole piece; the worst comes first, then step by step. `besides` is the chart
 * that is looked at, whose errors its own reading tells.
 */
export function checkPiece(work: PieceWork, besides: string | null = null): readonly Finding[] {
  const { off } = work.pattern.checks
  const errorsIn = (chart: NamedChart) => (chart.name === besides ? [] : errorsOf(work, chart))
  const found = pieceRules
    .filter(({ id, always }) => always === true || !off.includes(id))
    .flatMap((rule) =>
      rule.check(work, errorsIn).map((note) => findingOf(work, besides, rule, note)),
    )
  return worstFirst(found.toSorted((a, b) => (a.place.step ?? 1e9) - (b.place.step ?? 1e9)))
}

function findingOf(
  work: PieceWork,
  besides: string | null,
  { id, severity }: PieceRule,
  { step, message, advice, fixes = [], tries = [] }: PieceNote,
): Finding {
  const found = (piece: PieceWork) => checkPiece(piece, besides)
  const tried = repairsThatWork(
    work.pattern,
    id,
    () => tries,
    () => found(work),
    (pattern) => found(workPiece(pattern, work)),
  )
  return {
    id: `${id}/${step ?? ''}`,
    rule: id,
    severity,
    place: { ...nowhere, step },
    message,
    advice,
    repairs: {
      tryNext: tried.tryNext,
      get soFar() {
        return [...fixes, ...tried.soFar]
      },
    },
    get fixes() {
      return [...fixes, ...allOf(tried)]
    },
  }
}
