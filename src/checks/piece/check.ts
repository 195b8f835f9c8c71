import type { PieceWork } from '../../pattern/workPiece'
import { severities } from '../finding'
import { drawnWay, loopsAgree, needsGauge, tooLong } from './boundaries'
import { crossLine } from './cross-line'
import { boundOff, castOnFirst, evenHalves, onHeldPegs, unusedSection } from './ends'
import { ladderInPiece } from './ladder'
import { notePegs } from './note-pegs'
import { pegsInWorkOnly } from './pegs-in-work'
import type { PieceFinding, PieceRule } from './rule'
import { sectionCharts } from './section-charts'
import { yarnReady } from './yarn'

/** Every rule about the piece as a whole. */
export const pieceRules: readonly PieceRule[] = [
  castOnFirst,
  onHeldPegs,
  pegsInWorkOnly,
  loopsAgree,
  yarnReady,
  drawnWay,
  needsGauge,
  sectionCharts,
  boundOff,
  crossLine,
  ladderInPiece,
  evenHalves,
  notePegs,
  tooLong,
  unusedSection,
]

/** Ask every rule about the whole piece; the worst comes first, then step by step. */
export function checkPiece(work: PieceWork): readonly PieceFinding[] {
  const { off } = work.pattern.checks
  const found = pieceRules
    .filter(({ id }) => !off.includes(id))
    .flatMap(({ id, severity, check }) =>
      check(work).map((note): PieceFinding => ({
        ...note,
        id: `${id}/${note.step ?? ''}`,
        rule: id,
        severity,
      })),
    )
  const rank = ({ severity }: PieceFinding) => severities.indexOf(severity)
  return found.toSorted((a, b) => rank(a) - rank(b) || (a.step ?? 1e9) - (b.step ?? 1e9))
}
