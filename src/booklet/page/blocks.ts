import type { Block, Strip } from './flow'
import { movedText, textLine, type PagePicture, type PageText } from './page'
import type { TypeScale } from './typeScale'
import { breakLines, widthOf, type Weight } from './text'

/** The column that a booklet's text is set in. All millimetres. */
export interface Column {
  readonly width: number
  readonly type: TypeScale
  /** Where text beside a label begins; 0 when labels stand above it. */
  readonly indent: number
  /** Widest line of running text: about 68 letters. */
  readonly measure: number
}

/** In letter heights: the column for labels, the least text beside them, the readable measure. */
const labelEms = 8.2
const leastTextEms = 18
const measureEms = 34

export function textColumn(width: number, type: TypeScale): Column {
  const label = labelEms * type.text
  const beside = width - label >= leastTextEms * type.text
  const indent = beside ? label : 0
  return { width, type, indent, measure: Math.min(width - indent, measureEms * type.text) }
}

/** Where in a line of one unit the letters stand, so that they sit in the middle of it. */
const baselineShare = 0.74

/** Lines on the baseline grid: whole units high, the last line's baseline on the grid. */
export function gridLine(
  type: TypeScale,
  size: number,
  texts: (baseline: number) => PageText[],
  pictures: readonly PagePicture[] = [],
): Strip {
  const height = Math.ceil((1.2 * size) / type.unit - 0.05) * type.unit
  return { height, texts: texts(height - (1 - baselineShare) * type.unit), pictures }
}

export interface TextStyle {
  readonly size?: number
  readonly weight?: Weight
  readonly x?: number
  readonly measure?: number
}

/** Strips of a text broken into lines. */
export function textStrips(text: string, column: Column, style: TextStyle = {}): Strip[] {
  const { type } = column
  const { size = type.text, weight = 'regular', x = 0 } = style
  const measure = style.measure ?? Math.min(column.width - x, measureEms * type.text)
  return breakLines(text, measure, size, weight).map((line) =>
    gridLine(type, size, (y) => textLine(line, x, y, { size, weight })),
  )
}

export const paragraph = (
  text: string,
  column: Column,
  before = 0,
  style: TextStyle = {},
): Block => ({
  strips: textStrips(text, column, style),
  before: before * column.type.unit,
})

/** Over a part of the instructions: its letters stand between those of a heading and of the text. */
export function subheading(text: string, column: Column): Block {
  const { text: small, heading: large } = column.type
  const size = small + 0.35 * (large - small)
  const strips = textStrips(text, column, { size, weight: 'bold', measure: column.width })
  return { strips, before: 0.8 * column.type.unit, withNext: true }
}

/** Begins a part of the booklet, on a page of its own. */
export function partHeading(text: string, column: Column): Block {
  const { heading: small, title: large } = column.type
  const size = small + 0.5 * (large - small)
  const strips = textStrips(text, column, { size, weight: 'bold', measure: column.width })
  return { strips, before: 0, withNext: true, newPage: true }
}

/** A heading stands two units high, a little above the grid: nearer to its text than to the last. */
export function heading(text: string, column: Column, newPage = false): Block {
  const { unit, heading: size } = column.type
  const strips = textStrips(text, column, { size, weight: 'bold', measure: column.width })
  // Its further lines follow close, a unit apart.
  const raised = strips.map((strip, index) => {
    const closer = index > 0 ? strip.height - unit : 0
    return {
      ...strip,
      height: strip.height - closer,
      texts: strip.texts.map((line) => movedText(line, 0, -0.4 * unit - closer)),
    }
  })
  return { strips: raised, before: 1.4 * unit, withNext: true, newPage }
}

/** Space over a label that stands above its text, in units. */
const stackedSpace = 0.4

/** A bold label with its text hanging beside it, or below it where the column is narrow. */
export function labelled(label: string, text: string, column: Column, before = 0): Block {
  const { type, indent, measure } = column
  const above = indent === 0 || widthOf(label, type.text, 'bold') > indent - 0.5 * type.text
  const body = textStrips(text, column, { x: indent, measure })
  if (label === '') return { strips: body, before: before * type.unit }
  if (above) {
    const head = textStrips(label, column, { weight: 'bold', measure: column.width })
    return { strips: [...head, ...body], before: Math.max(before, stackedSpace) * type.unit }
  }
  const [first, ...rest] = body
  const strips = first ? [withLabel(first, label, type), ...rest] : []
  return { strips, before: before * type.unit }
}

function withLabel(strip: Strip, label: string, type: TypeScale): Strip {
  const y = strip.height - (1 - baselineShare) * type.unit
  const texts = textLine(label, 0, y, { size: type.text, weight: 'bold' })
  return { ...strip, texts: [...texts, ...strip.texts] }
}

/** A picture as a block, on whole units of the grid. */
export function pictureBlock(picture: PagePicture, column: Column, before = 0): Block {
  const { unit } = column.type
  const height = Math.ceil((picture.y + picture.scale * picture.scene.height) / unit - 0.01) * unit
  return { strips: [{ height, texts: [], pictures: [picture] }], before: before * unit }
}
