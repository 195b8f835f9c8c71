import { workPiece, type PieceWork } from '../../pattern/workPiece'
import { severities, type Fix } from '../finding'
import { babyDrawstring } from './baby-drawstring'
import { drawnWay, loopsAgree, needsGauge, tooLong } from './boundaries'
import { crossLine } from './cross-line'
import { boundOff, castOnFirst, evenHalves, onHeldPegs, unusedChart } from './ends'
import { ladderInPiece } from './ladder'
import { notePegs } from './note-pegs'
import { pegsInWorkOnly } from './pegs-in-work'
import type { PieceFinding, PieceRule } from './rule'
import { otherCharts } from './other-charts'
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
  otherCharts,
  boundOff,
  crossLine,
  ladderInPiece,
  evenHalves,
  babyDrawstring,
  notePegs,
  tooLong,
  unusedChart,
]

const mostTries = 3

/** Of the repairs tried, those after which there is one finding less of that rule and not one more of any other. */
function thatWorkOut(
  work: PieceWork,
  besides: string | null,
  rule: string,
  tries: readonly Fix[],
): readonly Fix[] {
  if (tries.length === 0) return tries
  const before = counted(checkPiece(work, besides))
  const good = tries.filter(({ label, edit }, at) => {
    if (tries.findIndex((other) => other.label === label) !== at) return false
    const pattern = edit(work.pattern)
    if (pattern === work.pattern) return false
    const after = counted(checkPiece(workPiece(pattern, work), besides))
    const removes = (after.get(rule) ?? 0) < (before.get(rule) ?? 0)
    return removes && [...after].every(([other, count]) => count <= (before.get(other) ?? 0))
  })
  return good.slice(0, mostTries)
}

function counted(findings: readonly PieceFinding[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const { rule } of findings) counts.set(rule, (counts.get(rule) ?? 0) + 1)
  return counts
}

/**
 * Ask every rule about the whole piece; the worst comes first, then step by step. `besides` is the chart
 * that is looked at, whose errors its own reading tells.
 */
export function checkPiece(
  work: PieceWork,
  besides: string | null = null,
): readonly PieceFinding[] {
  const { off } = work.pattern.checks
  const found = pieceRules
    .filter(({ id, always }) => always === true || !off.includes(id))
    .flatMap(({ id, severity, check }) =>
      check(work, besides).map(({ tries = [], fixes, ...note }): PieceFinding => {
        let all: readonly Fix[] | undefined
        return {
          ...note,
          id: `${id}/${note.step ?? ''}`,
          rule: id,
          severity,
          /** Tried out only when someone looks: each one costs a run of the piece. */
          get fixes() {
            return (all ??= [...fixes, ...thatWorkOut(work, besides, id, tries)])
          },
        }
      }),
    )
  const rank = ({ severity }: PieceFinding) => severities.indexOf(severity)
  return found.toSorted((a, b) => rank(a) - rank(b) || (a.step ?? 1e9) - (b.step ?? 1e9))
}
