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
