import { checkPattern, type Report } from '../checks/check'
import type { Pattern } from '../pattern/pattern'
import { chartsInOrder, onChart } from '../pattern/charts'
import { workPattern, type Work } from '../pattern/work'
import { writeWords, type Line } from '../words/write'
import { compare } from '../words/compare/compare'
import { toldOf } from '../words/compare/told/told'
import { read } from '../words/read/read'
import { readSettingsOf } from '../words/read/reading'

/** A chart of a piece, worked and read. */
export interface ChartSide {
  readonly name: string
  readonly pattern: Pattern
  readonly work: Work
  readonly report: Report
  readonly lines: readonly Line[]
  /** Things that own words and chart say differently; null without own words. */
  readonly differences: number | null
}

/** A chart of a piece as it is now, and as it would be then. */
export interface NowAndThen {
  readonly now: ChartSide
  readonly then: ChartSide
}

/** All charts of two versions of a piece that have the same ones, side by side. */
export const sidesOf = (now: Pattern, then: Pattern): readonly NowAndThen[] =>
  chartsInOrder(now).map(({ name }) => ({ now: sideOf(now, name), then: sideOf(then, name) }))

function sideOf(piece: Pattern, name: string): ChartSide {
  const pattern = onChart(piece, name)
  const work = workPattern(pattern)
  const { lines } = writeWords(work, pattern.style.terms)
  return {
    name,
    pattern,
    work,
    report: checkPattern(work),
    lines,
    differences: work.words === null ? null : differencesOf(work.words, work),
  }
}

const differencesOf = (words: string, work: Work): number =>
  toldOf(compare(read(words, readSettingsOf(work.pattern)), work)).differences
