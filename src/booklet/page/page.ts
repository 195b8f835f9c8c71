import type { Scene } from '../../drawing/scene'
import type { PaperSize } from './paper'
import { faceRuns, widthOf, type Face, type Weight } from './text'

/** Text of one font at its place. Millimetres from the top left corner of what holds it. */
export interface PageText {
  readonly x: number
  /** Baseline. */
  readonly y: number
  readonly text: string
  readonly face: Face
  /** Letter height (font size) in mm. */
  readonly size: number
}

/** A drawing at its place, so many times as large as it was drawn. */
export interface PagePicture {
  readonly x: number
  readonly y: number
  readonly scale: number
  readonly scene: Scene
}

export interface PageContent {
  readonly texts: readonly PageText[]
  readonly pictures: readonly PagePicture[]
}

/** What stands on one page. Nothing is laid out after this; writers only write it. */
export interface Page extends PageContent {
  readonly width: number
  readonly height: number
}

/** Something the designer should know before printing: what it is, and what to do. */
export interface PrintWarning {
  readonly message: string
  readonly advice: string
}

export interface Booklet {
  readonly title: string
  readonly author: string
  /** BCP 47 language tag of its text. */
  readonly language: string
  readonly paper: PaperSize
  readonly pages: readonly Page[]
  readonly warnings: readonly PrintWarning[]
}

export interface LineStyle {
  readonly size: number
  readonly weight?: Weight
  readonly anchor?: 'start' | 'middle' | 'end'
}

/** One line of text, cut into the fonts that write it. `x` is where its anchor stands. */
export function textLine(text: string, x: number, y: number, style: LineStyle): PageText[] {
  const { size, weight = 'regular', anchor = 'start' } = style
  const width = widthOf(text, size, weight)
  let at = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2
  return faceRuns(text, weight).map((run) => {
    const placed = { x: at, y, text: run.text, face: run.face, size }
    at += widthOf(run.text, size, weight)
    return placed
  })
}

export const movedText = (text: PageText, dx: number, dy: number): PageText => ({
  ...text,
  x: text.x + dx,
  y: text.y + dy,
})

export const movedContent = (content: PageContent, dx: number, dy: number): PageContent => ({
  texts: content.texts.map((text) => movedText(text, dx, dy)),
  pictures: content.pictures.map((item) => ({ ...item, x: item.x + dx, y: item.y + dy })),
})

/** The texts of a picture, in page units; they are written as the page's own text is. */
export const pictureTexts = ({ x, y, scale, scene }: PagePicture): PageText[] =>
  scene.layers.flatMap((layer) =>
    layer.items.flatMap((item) =>
      item.kind === 'text'
        ? textLine(item.text, x + scale * (layer.x + item.x), y + scale * (layer.y + item.y), {
            size: scale * item.size,
            weight: item.weight ?? 'regular',
            anchor: item.anchor,
          })
        : [],
    ),
  )

/** The picture's drawing without its texts. */
export const withoutTexts = (scene: Scene): Scene => ({
  ...scene,
  layers: scene.layers.map((layer) => ({
    ...layer,
    items: layer.items.filter(({ kind }) => kind !== 'text'),
  })),
})

/** All texts of a page, those in its pictures too. */
export const pageTexts = (page: PageContent): PageText[] => [
  ...page.texts,
  ...page.pictures.flatMap(pictureTexts),
]
