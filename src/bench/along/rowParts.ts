import type { Span } from '../../words/spans'

/** A part of the text of a row as it is laid on the screen. */
export interface RowPart {
  /** Index of its span. */
  readonly span: number
  readonly kind: Span['kind']
  readonly text: string
  /** Signs that stand right before and right behind it, and stay in its line: an asterisk, a comma. */
  readonly before: string
  readonly after: string
}

/** All the text of a row, in parts. */
export const rowParts = (spans: readonly Span[]): readonly RowPart[] =>
  spans.map(({ text, kind }, span) => {
    const [last, next] = [spans[span - 1], spans[span + 1]]
    if (kind === 'stitches')
      return {
        span,
        kind,
        text,
        before: tailOf(last, spans[span - 2]?.kind === 'stitches'),
        after: headOf(next),
      }
    if (kind === 'repeat') return { span, kind, text, before: '', after: '' }
    const from = last?.kind === 'stitches' ? headOf(spans[span]).length : 0
    const tail =
      next?.kind === 'stitches' ? tailOf(spans[span], last?.kind === 'stitches').length : 0
    return { span, kind, text: text.slice(from, text.length - tail), before: '', after: '' }
  })

/** The signs up to the first space of what stands between stitches. */
const headOf = (span: Span | undefined): string =>
  span?.kind === 'between' ? (/^\S+/.exec(span.text)?.[0] ?? '') : ''

/** Those behind its last space; where it has none, the stitches before it have them. */
const tailOf = (span: Span | undefined, afterStitches: boolean): string => {
  if (span?.kind !== 'between') return ''
  return (afterStitches ? /\s(\S+)$/ : /(\S+)$/).exec(span.text)?.[1] ?? ''
}
