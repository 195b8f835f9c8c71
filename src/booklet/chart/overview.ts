import { languages } from '../../languages/languages'
import type { Terms } from '../../languages/terms'
import type { Item, Scene } from '../../drawing/scene'
import { widthOf } from '../page/text'
import type { Sheet, Tiling } from './tiling'
import { stroked, written } from '../../drawing/items'

/** Widest and highest the small picture gets, mm, before its letters ask for more; that of a few sheets is small. */
const mostOf = (sheets: number): number => (sheets > 4 ? 70 : 45)
const lineWidth = 0.25
const letterShare = 0.9

interface OverviewOptions {
  readonly peg1AtRight: boolean
  readonly letter: number
  readonly terms: Terms
}

/** How a chart's sheets join, as a small picture with the sheets' letters. */
export function overviewScene(
  tiling: Tiling,
  { peg1AtRight, letter, terms }: OverviewOptions,
): Scene {
  const { cell, sheets } = tiling
  const across = sheets.filter(({ up }) => up === 0)
  const upwards = sheets.filter((sheet) => sheet.across === 0)
  const columns = (across.at(-1)?.columns.to ?? 0) + 1
  const rows = (upwards.at(-1)?.rows.to ?? 0) + 1
  const [wide, high] = [columns * cell.width, rows * cell.height]
  const scale = mostOf(sheets.length) / Math.max(wide, high)
  const size = letterShare * letter
  const widths = across.map(({ across: column, columns }) =>
    Math.max(
      1.6 * letter,
      scale * cell.width * (columns.to - columns.from + 1),
      ...sheets.flatMap((sheet) =>
        sheet.across === column ? [widthOf(sheet.letter, size, 'bold') + 0.6 * letter] : [],
      ),
    ),
  )
  const heights = upwards.map(({ rows: run }) =>
    Math.max(1.4 * letter, scale * cell.height * (run.to - run.from + 1)),
  )
  const width = sum(widths) + 2 * lineWidth
  const height = sum(heights) + 2 * lineWidth
  const items = sheets.flatMap((sheet): Item[] => {
    const [sheetWidth = 0, sheetHeight = 0] = [widths[sheet.across], heights[sheet.up]]
    const before = sum(widths.slice(0, sheet.across))
    const x = peg1AtRight ? width - lineWidth - before - sheetWidth : lineWidth + before
    const y = height - lineWidth - sum(heights.slice(0, sheet.up + 1))
    return [
      stroked(
        `M${round(x)} ${round(y)}h${round(sheetWidth)}v${round(sheetHeight)}h${round(-sheetWidth)}Z`,
        'frame',
        lineWidth,
      ),
      written(
        sheet.letter,
        [x + sheetWidth / 2, y + sheetHeight / 2 + 0.34 * letter],
        size,
        'middle',
        'note',
        'bold',
      ),
    ]
  })
  return {
    width,
    height,
    title: languages[terms].drawings.sheets(sheets[0]?.letter ?? '', sheets.at(-1)?.letter ?? ''),
    layers: [{ key: 'sheets', x: 0, y: 0, items }],
  }
}

const sum = (list: readonly number[]): number => list.reduce((total, item) => total + item, 0)
const round = (value: number): number => Math.round(value * 1000) / 1000

export interface Neighbours {
  readonly above: Sheet | undefined
  readonly below: Sheet | undefined
  readonly left: Sheet | undefined
  readonly right: Sheet | undefined
}

/** The sheets that a sheet goes on to, as they lie on the table. */
export function neighbours({ sheets }: Tiling, sheet: Sheet, peg1AtRight: boolean): Neighbours {
  const at = (across: number, up: number) =>
    sheets.find((other) => other.across === across && other.up === up)
  const next = at(sheet.across + 1, sheet.up)
  const last = at(sheet.across - 1, sheet.up)
  return {
    above: at(sheet.across, sheet.up + 1),
    below: at(sheet.across, sheet.up - 1),
    left: peg1AtRight ? next : last,
    right: peg1AtRight ? last : next,
  }
}
