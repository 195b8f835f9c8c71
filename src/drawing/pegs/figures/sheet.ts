import { languages } from '../../../languages/languages'
import type { Terms } from '../../../languages/terms'
import type { Item, Layer, Scene } from '../../scene'
import { numberKey } from '../strip/strip'

export { figurePicture, type FigureMoves } from './step'

/** One figure of a sheet. */
export interface SheetFigure {
  readonly picture: Scene
  /** What its move belongs to: written once over the figures that share it. */
  readonly heading: string
  readonly sentence: string
}

export interface SheetOptions {
  /** Breaks a text into lines no wider than `measure` mm, in letters of `size` mm. */
  readonly breakLines: (
    text: string,
    measure: number,
    size: number,
    weight: 'regular' | 'bold',
  ) => readonly string[]
  /** Width of the sheet, mm. */
  readonly width?: number
  readonly columns?: number
  /** Height of the letters, mm. */
  readonly text?: number
  readonly terms?: Terms
}

export const sheetSizes = { width: 190, columns: 3, text: 3.4, margin: 6, gutter: 7 } as const

/** A program that has not the font of the file sets wider letters: lines must not meet then. */
const fontRoom = 0.86

const noBreak = '\u00a0'

/** "pegs 6 and 7" stays on one line: a line that began with a number would look like a new step. */
const pegsTogether = (text: string): string =>
  text.replace(/\bpegs? \d+(?:(?:, | and | to )\d+)*/gu, (pegs) => pegs.replaceAll(' ', noBreak))

/** How wide a picture can be on a sheet, mm. */
export const pictureWidth = ({
  width = sheetSizes.width,
  columns = sheetSizes.columns,
}: Partial<SheetOptions> = {}): number =>
  (width - 2 * sheetSizes.margin - (columns - 1) * sheetSizes.gutter) / columns

/**
 * Figures in rows, each with its number and its sentence under it; a number in the picture is left
 * out. A heading stands over a figure where
 * it is another than the figure before has.
 */
export function figureSheet(figures: readonly SheetFigure[], options: SheetOptions): Scene {
  const { width = sheetSizes.width, columns = sheetSizes.columns, text = sheetSizes.text } = options
  const { margin, gutter } = sheetSizes
  const { breakLines, terms = 'us' } = options
  const measure = pictureWidth(options)
  const lineMeasure = fontRoom * measure
  const leading = text * 1.35
  const layers: Layer[] = []
  const put = (key: string, x: number, y: number, items: readonly Item[]): void => {
    if (items.length > 0) layers.push({ key, x, y, items })
  }
  const broken = (words: string, weight: 'regular' | 'bold'): readonly string[] =>
    breakLines(pegsTogether(words), lineMeasure, text, weight).map((line) =>
      line.replaceAll(noBreak, ' '),
    )
  const write = (lines: readonly string[], bold: boolean): Item[] =>
    lines.map((line, index) => ({
      kind: 'text',
      x: 0,
      y: text + index * leading,
      text: line,
      size: text,
      anchor: 'start',
      ink: 'note',
      ...(bold ? { weight: 'bold' as const } : {}),
    }))

  const headings = headingsShown(figures)
  const cells = figures.map(({ picture, sentence }, index) => ({
    number: index + 1,
    picture,
    heading: headings[index] ? broken(headings[index], 'bold') : [],
    sentence: broken(`${index + 1}. ${sentence}`, 'regular'),
  }))
  let y: number = margin
  for (let start = 0; start < cells.length; start += columns) {
    const row = cells.slice(start, start + columns)
    const headed = Math.max(...row.map(({ heading }) => heading.length)) * leading
    const high = Math.max(...row.map(({ picture }) => picture.height))
    const pictures = y + headed + (headed > 0 ? 0.5 * text : 0)
    const sentences = pictures + high + 0.4 * text
    row.forEach(({ number, picture, heading, sentence }, column) => {
      const x = margin + column * (measure + gutter)
      put(`heading ${number}`, x, y, write(heading, true))
      // Pictures of one row stand on one line.
      const top = pictures + high - picture.height
      for (const layer of picture.layers.filter(({ key }) => key !== numberKey))
        put(`figure ${number} ${layer.key}`, layer.x + x, layer.y + top, layer.items)
      put(`sentence ${number}`, x, sentences, write(sentence, false))
    })
    y = sentences + Math.max(...row.map(({ sentence }) => sentence.length)) * leading + 1.6 * text
  }
  const told = figures.map(({ sentence }, index) => `${index + 1}. ${sentence}`)
  const title = languages[terms].drawings.stepPictures(told)
  return { width, height: y + margin, title, layers }
}

/** The heading to write over each figure; empty where it goes on from the figure before. */
export const headingsShown = (
  figures: readonly { readonly heading: string }[],
): readonly string[] =>
  figures.map(({ heading }, index) => (heading === figures[index - 1]?.heading ? '' : heading))
