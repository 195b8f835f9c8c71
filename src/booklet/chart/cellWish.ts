import { cellRatio } from '../../drawing/geometry'
import type { Pattern } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import type { PrintWarning } from '../page/page'
import { cellSizes } from '../page/typeScale'

/** Cells whose sides differ by more than this are printed square: no gauge is like that. */
const mostRatio = 3
/** mm, as drawn; wider cells would not leave room for a chart. */
const widest = 7

const rounded = (value: number): number => Math.round(10 * value) / 10

/** The work as it is printed: with square cells where the gauge would make slivers of them. */
export function withSoundCells(work: Work): { work: Work; warnings: PrintWarning[] } {
  const ratio = cellRatio(work.pattern)
  if (ratio <= mostRatio && ratio >= 1 / mostRatio) return { work, warnings: [] }
  const style = { ...work.pattern.style, cell: 'square' } as const
  const { stitches = 0, rows = 0 } = work.pattern.gauge ?? {}
  return {
    work: { ...work, pattern: { ...work.pattern, style } },
    warnings: [
      {
        message: `A gauge of ${rounded(stitches)} stitches and ${rounded(rows)} rows to 10 cm makes cells ${rounded(ratio)} times as high as wide; the chart is printed with square cells.`,
        advice: 'Measure the gauge again on a swatch.',
      },
    ],
  }
}

/** The cell width that was asked for, in mm as drawn, kept within what can be read and printed. */
export function wishedWidth(
  pattern: Pattern,
  wished: number | null,
  scale: number,
): { width: number | null; warnings: PrintWarning[] } {
  if (wished === null) return { width: null, warnings: [] }
  const shorter = Math.min(1, cellRatio(pattern))
  const [least, most] = [cellSizes.least / shorter, widest / shorter]
  const asked = wished / scale
  const mm = (value: number) => `${rounded(scale * value)} mm`
  if (asked < least - 1e-9)
    return {
      width: least,
      warnings: [
        {
          message: `Cells ${mm(asked)} wide have a side of ${mm(asked * shorter)} and cannot be read; the chart is printed with ${mm(least)}, the least that can.`,
          advice: `Set cells at least ${mm(least)} wide, or let the size be chosen.`,
        },
      ],
    }
  if (asked > most + 1e-9)
    return {
      width: most,
      warnings: [
        {
          message: `Cells ${mm(asked)} wide are more than a page has room for; the chart is printed with ${mm(most)}.`,
          advice: `Set cells at most ${mm(most)} wide, or let the size be chosen.`,
        },
      ],
    }
  return { width: asked, warnings: [] }
}
