import type { Finding } from '../../pattern/finding'
import type { TextRange } from '../../words/read/reading'

/** Does it stand at this place of the text, an end of it included? */
const touches = ({ place: { text } }: Finding, { from, to }: TextRange): boolean =>
  text !== null && text.from <= to && text.to >= from

/** What stands at the caret; where nothing does, what stands on its line. */
export function findingsAt(
  findings: readonly Finding[],
  text: string,
  caret: TextRange,
): Finding[] {
  const here = findings.filter((finding) => touches(finding, caret))
  if (here.length > 0) return here
  const end = text.indexOf('\n', caret.to)
  const line = {
    from: text.lastIndexOf('\n', caret.from - 1) + 1,
    to: end < 0 ? text.length : end,
  }
  return findings.filter((finding) => touches(finding, line))
}

/**
 * The place of the next finding after the caret, or of the last one before it; round the ends. From
 * a caret that was not sent to a finding it goes to an error first, if there are any.
 */
export function nextPlace(
  findings: readonly Finding[],
  caret: TextRange,
  step: 1 | -1,
): TextRange | null {
  const rangesOf = (list: readonly Finding[]) => list.flatMap(({ place }) => place.text ?? [])
  const isAtOne = rangesOf(findings).some(({ from, to }) => from === caret.from && to === caret.to)
  const errors = isAtOne ? [] : findings.filter(({ severity }) => severity === 'error')
  const errorRanges = rangesOf(errors)
  const ranges = errorRanges.length > 0 ? errorRanges : rangesOf(findings)
  const ordered = step === 1 ? ranges : ranges.toReversed()
  const beyond = ordered.find((range) =>
    step === 1
      ? range.from > caret.from || (range.from === caret.from && range.to > caret.to)
      : range.from < caret.from || (range.from === caret.from && range.to < caret.to),
  )
  return beyond ?? ordered[0] ?? null
}
