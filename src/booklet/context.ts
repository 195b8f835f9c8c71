import { secondByItself } from '../pattern/pair'
import { isOneChart, usedCharts } from '../pattern/charts'
import { chartWork, type Work } from '../pattern/work'
import { workOnce, workPieceOnce } from '../pattern/workOnce'
import type { PieceWork } from '../pattern/workPiece'
import { textColumn } from './page/blocks'
import { liveArea, papers } from './page/paper'
import { typeScale } from './page/typeScale'
import type { Context } from './part'
import type { BookletSettings } from './settings'

/** What the booklet of a piece is laid out from. `work`: the chart that is looked at, as it is worked. */
export function contextOf(work: Work, settings: BookletSettings): Context {
  const { pattern } = work
  const area = liveArea(papers[settings.paper])
  const piece = workPieceOnce(pattern)
  const isAlone = isOneChart(pattern)
  const isPair = settings.second && pattern.pair === 'mirrored'
  return {
    settings,
    column: textColumn(area.width, typeScale(settings.largePrint)),
    area,
    piece,
    charts: isAlone ? [work] : chartsOf(piece),
    isOneChart: isAlone,
    second: isPair ? workPieceOnce(secondByItself(pattern)) : null,
    before: [],
  }
}

/** The charts that the steps work, in the order of use, each as it is worked first. */
export const chartsOf = (piece: PieceWork): readonly Work[] =>
  usedCharts(piece.pattern).map(({ name }) => {
    const step = piece.steps.findIndex(({ chart }) => chart?.name === name)
    return chartWork(piece, step) ?? workOnce(piece.pattern, name)
  })

/** Is the second of a pair worked the other way round? */
export const isTurned = (second: PieceWork, first: PieceWork): boolean =>
  second.pattern.loom.direction !== first.pattern.loom.direction
