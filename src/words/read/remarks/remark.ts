import type { RelativeRemark } from '../nodes'
import type { TextFix, TextRange } from '../reading'

/** Remarks as the words of a line make them: ranges count from the start of these words. */
const remark =
  (severity: RelativeRemark['severity']) =>
  (
    rule: string,
    range: TextRange,
    message: string,
    advice: string,
    fixes: readonly TextFix[] = [],
  ): RelativeRemark => ({ rule, severity, range, message, advice, fixes })

export const error = remark('error')
export const warning = remark('warning')
export const hint = remark('hint')

/** Other words in place of those at a range. */
export const write = (range: TextRange, text: string, label = `Write "${text}"`): TextFix => ({
  label,
  changes: [{ range, text }],
})
