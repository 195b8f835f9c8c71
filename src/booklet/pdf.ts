/**
 * The only file of the lower house that needs a page (DOM): it hands finished SVG elements to the
 * PDF writer. jsPDF and svg2pdf.js are large, so import this file only when a booklet is printed.
 */
import regularUrl from '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf?url'
import boldUrl from '@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf?url'
import fallbackUrl from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url'
import { jsPDF } from 'jspdf'
import { svg2pdf } from 'svg2pdf.js'
import type { Scene } from '../drawing/scene'
import { writeSvg } from '../drawing/svg'
import { pageTexts, withoutTexts, type Booklet, type Page, type PagePicture } from './page/page'
import type { Face } from './page/text'

interface Font {
  readonly family: string
  readonly style: 'normal' | 'bold'
  readonly file: string
  readonly url: string
}

const family = 'Atkinson Hyperlegible'
const fonts: Readonly<Record<Face, Font>> = {
  regular: { family, style: 'normal', file: 'regular.ttf', url: regularUrl },
  bold: { family, style: 'bold', file: 'bold.ttf', url: boldUrl },
  fallback: { family: 'DejaVu Sans', style: 'normal', file: 'fallback.ttf', url: fallbackUrl },
}

/**
 * Write a booklet as a PDF file: fonts embedded, text searchable, title and language set.
 * Rejects with a sentence for people when a font cannot be fetched.
 */
export async function writePdf(booklet: Booklet): Promise<Uint8Array<ArrayBuffer>> {
  const [first] = booklet.pages
  if (!first) throw new RangeError('The booklet has no pages.')
  const format = ({ width, height }: Page) => [width, height]
  const doc = new jsPDF({
    unit: 'mm',
    format: format(first),
    compress: true,
    putOnlyUsedFonts: true,
    floatPrecision: 3,
  })
  await addFonts(doc, booklet)
  describe(doc, booklet)
  for (const [index, page] of booklet.pages.entries()) {
    if (index > 0) doc.addPage(format(page))
    for (const picture of page.pictures) await drawPicture(doc, picture)
    drawTexts(doc, page)
  }
  return new Uint8Array(doc.output('arraybuffer'))
}

async function addFonts(doc: jsPDF, { pages }: Booklet): Promise<void> {
  const used = new Set<Face>(['regular', 'bold'])
  for (const page of pages) for (const { face } of pageTexts(page)) used.add(face)
  await Promise.all(
    [...used].map(async (face) => {
      const font = fonts[face]
      doc.addFileToVFS(font.file, await fetchFont(font))
      doc.addFont(font.file, font.family, font.style)
    }),
  )
}

const fetched = new Map<string, Promise<string>>()

/** The font file as a string of bytes, which is how jsPDF takes it. Fetched once. */
function fetchFont({ family: name, url }: Font): Promise<string> {
  let bytes = fetched.get(url)
  if (!bytes) {
    bytes = readFont(name, url)
    fetched.set(url, bytes)
    bytes.catch(() => fetched.delete(url))
  }
  return bytes
}

async function readFont(name: string, url: string): Promise<string> {
  const response = await fetch(url).catch(() => null)
  if (!response?.ok)
    throw new Error(
      `The font ${name} could not be loaded, so no PDF was written. Check the connection and print again.`,
    )
  const bytes = new Uint8Array(await response.arrayBuffer())
  let text = ''
  for (let at = 0; at < bytes.length; at += 0x4000)
    text += String.fromCharCode(...bytes.subarray(at, at + 0x4000))
  return text
}

function describe(doc: jsPDF, { title, author, language }: Booklet): void {
  doc.setProperties({ title, author, creator: 'Pegwright' })
  doc.setLanguage(language as Parameters<jsPDF['setLanguage']>[0])
  doc.viewerPreferences({ DisplayDocTitle: true }, true)
}

const pointsPerMillimetre = 72 / 25.4

function drawTexts(doc: jsPDF, page: Page): void {
  doc.setTextColor(0)
  for (const { x, y, text, face, size } of pageTexts(page)) {
    const font = fonts[face]
    doc.setFont(font.family, font.style)
    doc.setFontSize(size * pointsPerMillimetre)
    doc.text(text, x, y, { baseline: 'alphabetic' })
  }
}

async function drawPicture(doc: jsPDF, { x, y, scale, scene }: PagePicture): Promise<void> {
  const element = sceneElement(scene)
  await svg2pdf(element, doc, { x, y, width: scale * scene.width, height: scale * scene.height })
}

/** The same SVG that the screen and the SVG file have, but for texts, which `drawTexts` writes. */
function sceneElement(scene: Scene): Element {
  const svg = writeSvg(withoutTexts(scene))
  return new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement
}
