import { short, mm } from './path'
import { inks, type InkRole, type Item, type Scene } from './scene'

/** A colour for each ink. */
export type InkTable = Readonly<Record<InkRole, string>>

const black = '#000000'

/** Paper: black on white, greys only where an area is meant. */
export const inkTable: InkTable = {
  ...(Object.fromEntries(inks.map((ink) => [ink, black])) as Record<InkRole, string>),
  ground: '#ffffff',
  shade: '#bdbdbd',
  behind: '#c9c9c9',
  unworked: '#ececec',
  peg: '#ececec',
  needle: '#8a8a8a',
  loop: '#ffffff',
  laid: '#a6a6a6',
  'tone-1': '#d4d4d4',
  'tone-2': '#a0a0a0',
  'tone-3': '#6c6c6c',
  'tone-4': '#383838',
  grid: '#6e6e6e',
  heavy: '#2b2b2b',
}

export interface SvgOptions {
  readonly inks?: InkTable
  /** BCP 47 tag of the texts. */
  readonly language?: string
  /** Name of the drawing; the scene's title is its description then. */
  readonly name?: string
}

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
}

/** Characters that no XML file may hold, and those that mean something in it. */
const escapeText = (text: string): string =>
  text
    // eslint-disable-next-line no-control-regex
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu, '\ufffd')
    .replace(/[&<>"]/g, (character) => escapes[character] ?? character)

function writeItem(item: Item, table: InkTable): string {
  const colour = table[item.ink]
  if (item.kind === 'text') {
    const weight = item.weight ? ` font-weight="${item.weight}"` : ''
    const place = mm`x="${item.x}" y="${item.y}" font-size="${item.size}"`
    return `<text class="ink-${item.ink}" ${place} text-anchor="${item.anchor}"${weight} fill="${colour}">${escapeText(item.text)}</text>`
  }
  const fill = item.fill ? colour : 'none'
  const stroke = item.stroke > 0 ? mm` stroke="${colour}" stroke-width="${item.stroke}"` : ''
  const dash = item.dash === undefined ? '' : ` stroke-dasharray="${item.dash}"`
  return `<path class="ink-${item.ink}" fill="${fill}"${stroke}${dash} d="${item.d}"/>`
}

/** The scene as the text of a stand-alone SVG file, in millimetres, black on white. */
export function writeSvg(scene: Scene, options: SvgOptions = {}): string {
  const { language = 'en', name } = options
  const table = options.inks ?? inkTable
  const [width, height] = [short(scene.width), short(scene.height)]
  // One list and one join: a large fabric is tens of megabytes, and each join copies it.
  const lines = scene.layers
    .filter(({ items }) => items.length > 0)
    .flatMap(({ x, y, items }) => [
      mm`<g transform="translate(${x} ${y})">`,
      ...items.map((item) => writeItem(item, table)),
      '</g>',
    ])
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img" aria-labelledby="title desc" xml:lang="${escapeText(language)}" lang="${escapeText(language)}" font-family="'Atkinson Hyperlegible', sans-serif" stroke-linecap="round" stroke-linejoin="round">`,
    `<title id="title">${escapeText(name ?? scene.title)}</title>`,
    `<desc id="desc">${escapeText(scene.title)}</desc>`,
    `<rect class="ink-ground" width="${width}" height="${height}" fill="${table.ground}"/>`,
    ...lines,
    '</svg>',
    '',
  ].join('\n')
}
