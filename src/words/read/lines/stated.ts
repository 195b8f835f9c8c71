import { limits, type Gauge } from '../../../pattern/pattern'
import type { TextRange } from '../reading'
import { sectionKind } from './sections'

const figure = String.raw`(\d{1,3}(?:[.,]\d{1,2})?)`
const across = String.raw`(?:sts?|stitches|pegs|loops)\b`
const along = String.raw`(?:rows|rnds|rounds)\b`
const joined = String.raw`[^\n\d]{1,12}`
const unit = String.raw`(cm|mm|in(?:ch(?:es)?)?\b|["”″])`
const square = String.raw`[^\n\d]{1,20}${figure}\s*${unit}`
const wide = new RegExp(
  String.raw`${figure}\s*${across}${joined}${figure}\s*${along}${square}`,
  'i',
)
const tall = new RegExp(
  String.raw`${figure}\s*${along}${joined}${figure}\s*${across}${square}`,
  'i',
)

/** So much of the text is looked at behind the word. */
const reach = 160
/** Four inches stand for ten centimetres (common practice). */
const centimetres = { c: 1, m: 0.1, i: 2.5 } as const

/** "Gauge: 20 sts and 28 rnds = 10 cm": stitches and rows to 10 cm, where the words give both. */
export function statedGauge(text: string): { gauge: Gauge; range: TextRange } | null {
  for (const { index } of text.matchAll(/\b(?:gauge|tension)\b/gi)) {
    const said = text.slice(index, index + reach)
    const first = wide.exec(said)
    const match = first ?? tall.exec(said)
    if (!match) continue
    const [a = 0, b = 0, length = 0] = [1, 2, 3].map((at) =>
      Number((match[at] ?? '').replace(',', '.')),
    )
    const letter = (match[4] ?? '').toLowerCase()[0]
    const per =
      10 / (length * (letter === 'c' || letter === 'm' ? centimetres[letter] : centimetres.i))
    const to = (count: number): number => Math.round(count * per * 10) / 10
    const [stitches, rows] = first ? [to(a), to(b)] : [to(b), to(a)]
    if (
      ![stitches, rows].every((count) => count >= limits.gauge.least && count <= limits.gauge.most)
    )
      continue
    return {
      gauge: { stitches, rows },
      range: { from: index, to: index + match.index + match[0].length },
    }
  }
  return null
}

/** The first line of the text, where it looks like a title and is not the name of a section. */
export function statedTitle(text: string, titles: readonly TextRange[]): string | null {
  const start = text.search(/\S/)
  const first = titles[0]
  if (!first || start < first.from || start >= first.to) return null
  const title = text.slice(first.from, first.to).trim()
  return title.endsWith(':') || sectionKind(title) !== null ? null : title
}
