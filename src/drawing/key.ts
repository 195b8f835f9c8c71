import type { Style } from '../pattern/pattern'
import type { Sign, Tradition } from '../stitches/sign'
import type { Stitch } from '../stitches/stitch'
import { cutSign } from './cutSign'
import { polyline, rectangle, type Point } from './path'
import { drawSign } from './rowItems'
import type { Item, Layer, Scene } from './scene'
import { signWeight, textWidth, weights } from './sizes'
import { termOf } from '../languages/languages'

export interface SignOptions {
  /** Width of a cell, mm. */
  readonly cell?: number
  /** Height of a cell for each mm of its width. */
  readonly ratio?: number
  /** The stitch that the chart leaves blank. */
  readonly blank?: boolean
  /** Peg 1 is at the right: so what is left of a stitch that is cut is its right part. */
  readonly leftward?: boolean
}

/** Room for the outer line. */
const rim = weights.grid

/** One sign in its cells, as it stands in a chart: for the tray, the key and the booklet. */
export function signScene(stitch: Stitch, tradition: Tradition, options: SignOptions = {}): Scene {
  const { cell = 4, ratio = 1, blank = false, leftward = true } = options
  const height = cell * ratio
  return {
    width: stitch.width * cell + 2 * rim,
    height: height + 2 * rim,
    title: termOf(stitch, 'us').name,
    layers: [
      {
        key: 'sign',
        x: rim,
        y: rim,
        items: signItems(stitch, tradition, { width: cell, height }, blank, leftward),
      },
    ],
  }
}

/** The sign; of a stitch that is cut its first columns, torn where the others are missing. */
function signOf({ signs, cut, width }: Stitch, tradition: Tradition, leftward: boolean): Sign {
  const sign = signs[tradition]
  if (!cut) return sign
  const missing = cut.of.width - width
  return leftward
    ? cutSign(sign, { from: missing, to: cut.of.width, torn: { left: true, right: false } })
    : cutSign(sign, { from: 0, to: width, torn: { left: false, right: true } })
}

function signItems(
  stitch: Stitch,
  tradition: Tradition,
  cell: { readonly width: number; readonly height: number },
  blank: boolean,
  leftward: boolean,
): Item[] {
  const { width, height } = cell
  const unit = Math.min(width, height)
  const paths = blank
    ? {}
    : drawSign(
        signOf(stitch, tradition, leftward),
        stitch,
        { place: (x, y): Point => [x * width, y * height], unit, straight: 0 },
        cell,
      )
  let lines = rectangle(0, 0, stitch.width * width, height)
  for (let column = 1; column < stitch.width; column++)
    lines += polyline([
      [column * width, 0],
      [column * width, height],
    ])
  const path = (d: string | undefined, ink: Item['ink'], stroke: number, fill: boolean): Item[] =>
    d ? [{ kind: 'path', d, ink, stroke, fill }] : []
  return [
    ...path(paths.shade, 'shade', 0, true),
    ...path(lines, 'grid', weights.grid, false),
    ...path(paths.ground, 'ground', 0, true),
    ...path(paths.line, 'line', signWeight(unit), false),
    ...path(paths.solid, 'solid', 0, true),
  ]
}

export interface KeyOptions extends Omit<SignOptions, 'blank'> {
  /** Columns of entries side by side. */
  readonly columns?: number
  /** Width of a column, mm; as wide as its longest name unless said otherwise. */
  readonly columnWidth?: number
  /** Size of letters, mm. */
  readonly text?: number
}

/** The key: every sign with its abbreviation and name, down the columns, one below the other. */
export function keyScene(
  stitches: readonly Stitch[],
  { symbols, terms, background }: Pick<Style, 'symbols' | 'terms' | 'background'>,
  options: KeyOptions = {},
): Scene {
  const { cell = 4, ratio = 1, columns = 1, text = 2.8, leftward = true } = options
  const signs = Math.max(1, ...stitches.map(({ width }) => width)) * cell
  const rowHeight = Math.max(cell * ratio, text) + 0.4 * cell
  const perColumn = Math.max(1, Math.ceil(stitches.length / columns))
  const size = { width: cell, height: cell * ratio }
  const abbrX = signs + text
  const nameX =
    abbrX + Math.max(...stitches.map((s) => textWidth(termOf(s, terms).abbr, text)), text) + text
  const names = Math.max(...stitches.map((s) => textWidth(termOf(s, terms).name, text)), 0)
  const columnWidth = options.columnWidth ?? nameX + names + text
  const layers = stitches.map((stitch, index): Layer => {
    const { abbr, name } = termOf(stitch, terms)
    const y = size.height / 2 + 0.35 * text
    const words = { kind: 'text', y, size: text, anchor: 'start', ink: 'note' } as const
    return {
      key: `key-${abbr}`,
      x: 1 + Math.floor(index / perColumn) * columnWidth,
      y: 1 + (index % perColumn) * rowHeight,
      items: [
        ...signItems(stitch, symbols, size, stitch.id === background, leftward),
        { ...words, x: abbrX, text: abbr, weight: 'bold' },
        { ...words, x: nameX, text: name },
      ],
    }
  })
  return {
    width: 2 + columns * columnWidth,
    height: 2 + perColumn * rowHeight,
    title: `Key of ${stitches.length} ${stitches.length === 1 ? 'stitch' : 'stitches'}.`,
    layers,
  }
}
