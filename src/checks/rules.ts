import { bandMatch } from './counts/band-match'
import { emptyPeg } from './counts/empty-peg'
import { float } from './counts/float'
import { masking } from './counts/masking'
import { repeatFit } from './counts/repeat-fit'
import { runFit } from './counts/run-fit'
import { rowCount } from './counts/row-count'
import { stretch } from './counts/stretch'
import { tooManyLoops } from './counts/too-many-loops'
import { crossBarEdge } from './crosses/cross-bar-edge'
import { crossJoin } from './crosses/cross-join'
import { crossOften } from './crosses/cross-often'
import { crossOverlap } from './crosses/cross-overlap'
import { crossRepeatEdge } from './crosses/cross-repeat-edge'
import { crossTight } from './crosses/cross-tight'
import { ladder } from './ladders/ladder'
import { babyDrawstring } from './piece/baby-drawstring'
import { drawnWay, loopsAgree, needsGauge, tooLong } from './piece/boundaries'
import { crossLine } from './piece/cross-line'
import { boundOff, castOnFirst, evenHalves, onHeldPegs, unusedChart } from './piece/ends'
import { ladderInPiece } from './piece/ladder'
import { notePegs } from './piece/note-pegs'
import { otherCharts } from './piece/other-charts'
import { pegsInWorkOnly } from './piece/pegs-in-work'
import { yarnReady } from './piece/yarn'
import type { ChartRule, NearRule, PieceRule, RowRule, Rule } from './rule'
import { cordsForBaby } from './stated/cords'
import { forBaby } from './stated/for-baby'
import { gauge } from './stated/gauge'
import { turnCorners } from './turns/turn-corners'
import { turnEdge } from './turns/turn-edge'
import { turnInside } from './turns/turn-inside'
import { turnLeft } from './turns/turn-left'
import { turnNearest } from './turns/turn-nearest'
import { turnStart } from './turns/turn-start'
import { turnSteps } from './turns/turn-steps'
import { turnThird } from './turns/turn-third'
import { turnTwice } from './turns/turn-twice'
import { turnWay } from './turns/turn-way'

/** Every rule there is. To add one, copy a rule's file and name it here. */
export const rules: readonly Rule[] = [
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
  rowCount,
  repeatFit,
  runFit,
  emptyPeg,
  bandMatch,
  crossRepeatEdge,
  crossJoin,
  crossBarEdge,
  crossOverlap,
  turnStart,
  turnEdge,
  turnTwice,
  turnInside,
  turnNearest,
  turnLeft,
  turnWay,
  masking,
  crossTight,
  crossOften,
  tooManyLoops,
  stretch,
  float,
  ladder,
  turnSteps,
  turnThird,
  turnCorners,
  gauge,
  forBaby,
  cordsForBaby,
]

export const rowRules: readonly RowRule[] = rules.filter((rule) => rule.scope === 'row')
export const nearRules: readonly NearRule[] = rules.filter((rule) => rule.scope === 'near')
export const chartRules: readonly ChartRule[] = rules.filter((rule) => rule.scope === 'chart')
export const pieceRules: readonly PieceRule[] = rules.filter((rule) => rule.scope === 'piece')
