// Reads a PDF back with a reader that shares no code with its writer (pdf.js).

import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface ReadPage {
  /** Points, 72 to the inch. */
  readonly width: number
  readonly height: number
  /** Its lines of text, in the order they are written. */
  readonly text: string
  /** How often a path is stroked or filled. */
  readonly paths: number
  /** Straight lines from one point to another, stroked. */
  readonly lines: number
  /** Filled round dots. */
  readonly dots: number
}

export interface ReadPdf {
  readonly bytes: number
  readonly title: string
  readonly author: string
  readonly language: string | null
  readonly showsTitle: boolean
  readonly pages: readonly ReadPage[]
  /** The fonts' names, one for each font used; and whether the file carries all of them. */
  readonly fonts: readonly string[]
  readonly embedded: boolean
}

interface ReadFont {
  readonly name: string
  readonly missingFile?: boolean
}

/** pdf.js writes a path as numbers: 0 x y moves, 1 x y draws a line, 2 and six a curve, 4 closes. */
const lengths: Readonly<Record<number, number>> = { 0: 3, 1: 3, 2: 7, 3: 5, 4: 1 }

function countShapes(fnArray: readonly number[], argsArray: readonly unknown[]) {
  const count = { lines: 0, dots: 0 }
  fnArray.forEach((operation, i) => {
    if (operation !== OPS.constructPath) return
    const [paint, data] = argsArray[i] as [number, [Float32Array | null]]
    let shapes = ''
    for (let at = 0; at < (data[0]?.length ?? 0);) {
      const step = data[0]?.[at] ?? 4
      shapes += step
      at += lengths[step] ?? 1
    }
    if (paint === OPS.stroke) count.lines += shapes.match(/01(?=0|$)/g)?.length ?? 0
    if (paint === OPS.fill) count.dots += shapes.match(/02{3,8}4/g)?.length ?? 0
  })
  return count
}

export async function readPdf(data: Uint8Array): Promise<ReadPdf> {
  const bytes = data.length
  const task = getDocument({ data, useSystemFonts: false, verbosity: 0 })
  const file = await task.promise
  const info = (await file.getMetadata()).info as Record<string, string | undefined>
  const preferences = (await file.getViewerPreferences()) as Record<string, unknown> | null
  const pages: ReadPage[] = []
  const fonts = new Map<string, ReadFont>()
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number)
    const { fnArray, argsArray } = await page.getOperatorList()
    fnArray.forEach((operation, i) => {
      if (operation !== OPS.setFont) return
      const id = (argsArray[i] as [string])[0]
      fonts.set(id, page.commonObjs.get(id) as ReadFont)
    })
    const { items } = await page.getTextContent()
    const [left = 0, top = 0, right = 0, bottom = 0] = page.view
    pages.push({
      width: right - left,
      height: bottom - top,
      text: items
        .map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : ''))
        .join(''),
      paths: fnArray.filter((operation) => operation === OPS.constructPath).length,
      ...countShapes(fnArray, argsArray),
    })
  }
  await task.destroy()
  return {
    bytes,
    title: info.Title ?? '',
    author: info.Author ?? '',
    language: info.Language ?? null,
    showsTitle: preferences?.DisplayDocTitle === true,
    pages,
    fonts: [...fonts.values()].map(({ name }) => name),
    embedded: [...fonts.values()].every(({ missingFile }) => !missingFile),
  }
}
