import type { Moment } from '../../loom/walk'
import type { LoomSetup } from '../../pattern/pattern'
import type { Item, Layer, Scene } from '../scene'
import { partOf, stepPicture } from './step'
import type { StripPart } from './window'

/** Moves of a list of moments that one figure shows: those that led to moments `first`..`last`. */
export interface FigureMoves {
  readonly first: number
  readonly last: number
}

const mostPegs = 16

/** The picture of a figure: the loom after its last move, with all pegs that its moves touch. */
export function figurePicture(
  moments: readonly Moment[],
  { first, last }: FigureMoves,
  loom: LoomSetup,
  options: { readonly number?: number; readonly width?: number } = {},
): Scene {
  const at = (index: number): Moment => moments[index] as Moment
  const { scene } = stepPicture(at(last - 1), at(last), loom, {
    ...options,
    trail: moments.slice(first - 1, last - 1),
    part: joined(
      partOf(at(first - 1), at(first), loom),
      partOf(at(last - 1), at(last), loom),
      loom,
    ),
  })
  return scene
}

/** A run of pegs that holds both parts; the second one where that would be too long. */
function joined(one: StripPart, other: StripPart, { pegs }: LoomSetup): StripPart {
  if ('count' in one || 'count' in other) return other
  const span = { from: Math.min(one.from, other.from), to: Math.max(one.to, other.to) }
  return span.to - span.from < Math.min(mostPegs, pegs) ? span : other
}

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
}

export const sheetSizes = { width: 190, columns: 3, text: 3.4, margin: 6, gutter: 7 } as const

/** How wide a picture can be on a sheet, mm. */
export const pictureWidth = ({
  width = sheetSizes.width,
  columns = sheetSizes.columns,
}: Partial<SheetOptions> = {}): number =>
  (width - 2 * sheetSizes.margin - (columns - 1) * sheetSizes.gutter) / columns

/** Numbered figures in rows, each with its sentence under it; headings stand over their figures. */
export function figureSheet(figures: readonly SheetFigure[], options: SheetOptions): Scene {
  const { width = sheetSizes.width, columns = sheetSizes.columns, text = sheetSizes.text } = options
  const { margin, gutter } = sheetSizes
  const measure = pictureWidth(options)
  const leading = text * 1.35
  const layers: Layer[] = []
  let y: number = margin
  const write = (lines: readonly string[], x: number, top: number, bold: boolean): Item[] =>
    lines.map((line, index) => ({
      kind: 'text',
      x,
      y: top + text + index * leading,
      text: line,
      size: text,
      anchor: 'start',
      ink: 'note',
      ...(bold ? { weight: 'bold' as const } : {}),
    }))

  let number = 0
  for (const group of byHeading(figures)) {
    const heading = options.breakLines(group[0]?.heading ?? '', width - 2 * margin, text, 'bold')
    layers.push({
      key: `heading ${number + 1}`,
      x: 0,
      y: 0,
      items: write(heading, margin, y, true),
    })
    y += heading.length * leading + 0.8 * text
    for (let start = 0; start < group.length; start += columns) {
      const row = group.slice(start, start + columns)
      const high = Math.max(...row.map(({ picture }) => picture.height))
      let most = 0
      row.forEach(({ picture, sentence }, column) => {
        number++
        const x = margin + column * (measure + gutter)
        // Pictures of one row stand on one line.
        const top = y + high - picture.height
        for (const layer of picture.layers)
          layers.push({
            ...layer,
            key: `figure ${number} ${layer.key}`,
            x: layer.x + x,
            y: layer.y + top,
          })
        const lines = options.breakLines(`${number}. ${sentence}`, measure, text, 'regular')
        layers.push({
          key: `sentence ${number}`,
          x: 0,
          y: 0,
          items: write(lines, x, y + high + 0.4 * text, false),
        })
        most = Math.max(most, lines.length)
      })
      y += high + 0.4 * text + most * leading + 1.6 * text
    }
  }
  const height = y + margin
  const told = figures.map(({ sentence }, index) => `${index + 1}. ${sentence}`).join(' ')
  return { width, height, title: `Step pictures. ${told}`, layers }
}

/** Neighbouring figures that share a heading. */
export function byHeading<Figure extends { readonly heading: string }>(
  figures: readonly Figure[],
): Figure[][] {
  const groups: Figure[][] = []
  for (const figure of figures) {
    const open = groups.at(-1)
    if (open?.[0]?.heading === figure.heading) open.push(figure)
    else groups.push([figure])
  }
  return groups
}
