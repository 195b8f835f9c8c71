import type { LoomSetup } from '../../../pattern/pattern'
import type { DifferenceFix } from '../comparison'
import type { Draft } from './draft'

/**
 * Why a difference is not mended both in the words and in the chart: the mend that is not offered
 * was tried, and other rows did not agree after it. null: both are offered, or it is said already.
 */
export function lackingOf(
  { doing, isRefused }: Pick<Draft, 'doing' | 'isRefused'>,
  fixes: readonly DifferenceFix[],
  shape: LoomSetup['shape'],
): string | null {
  if (!doing) return null
  const isInChart = isRefused || fixes.some((fix) => 'edit' in fix)
  const isInWords = fixes.some((fix) => 'changes' in fix)
  if (isInWords && isInChart) return null
  const others = shape === 'ring' ? 'rounds' : 'rows'
  if (!isInWords && !isInChart) return `No automatic fix: check the ${others} beside it first.`
  return `${isInWords ? doing.chart : doing.words} would put other ${others} wrong.`
}
