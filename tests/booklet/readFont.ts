// Reads advance widths from a TrueType file (OpenType specification: cmap format 4, hhea, hmtx)
// and, run by itself, writes the table that the booklet measures its text with:
//
//   npx tsx tests/booklet/readFont.ts

import { readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { pathToFileURL } from 'node:url'

const require = createRequire(import.meta.url)

export const fontFiles = {
  regular:
    require.resolve('@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf'),
  bold: require.resolve('@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf'),
  fallback: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
} as const

/** Of the fallback only what reads left to right without shaping: Latin to Cyrillic, signs. */
const kept = {
  regular: [[0x20, 0xffff]],
  bold: [[0x20, 0xffff]],
  fallback: [
    [0xa0, 0x52f],
    [0x1e00, 0x1fff],
    [0x2000, 0x27bf],
  ],
} as const

/** Advance width of each character, in thousandths of the letter height (em). */
export function readWidths(file: string): Map<number, number> {
  const bytes = readFileSync(file)
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const tables = new Map<string, number>()
  for (let i = 0; i < view.getUint16(4); i++) {
    const at = 12 + 16 * i
    tables.set(bytes.toString('latin1', at, at + 4), view.getUint32(at + 8))
  }
  const table = (name: string): number => {
    const at = tables.get(name)
    if (at === undefined) throw new Error(`${file} has no table "${name}"`)
    return at
  }
  const perEm = view.getUint16(table('head') + 18)
  const advances = view.getUint16(table('hhea') + 34)
  const advance = (glyph: number): number =>
    view.getUint16(table('hmtx') + 4 * Math.min(glyph, advances - 1))

  const widths = new Map<number, number>()
  const cmap = findCmap(view, table('cmap'))
  const segments = view.getUint16(cmap + 6) / 2
  const [ends, starts] = [cmap + 14, cmap + 16 + 2 * segments]
  const [deltas, offsets] = [starts + 2 * segments, starts + 4 * segments]
  for (let i = 0; i < segments; i++) {
    const [first, last] = [view.getUint16(starts + 2 * i), view.getUint16(ends + 2 * i)]
    const delta = view.getUint16(deltas + 2 * i)
    const offset = view.getUint16(offsets + 2 * i)
    for (let code = first; code <= last && code < 0xffff; code++) {
      let glyph = code
      if (offset > 0) glyph = view.getUint16(offsets + 2 * i + offset + 2 * (code - first))
      if (offset === 0 || glyph > 0) glyph = (glyph + delta) & 0xffff
      if (glyph > 0) widths.set(code, Math.round((1000 * advance(glyph)) / perEm))
    }
  }
  return widths
}

function findCmap(view: DataView, cmap: number): number {
  for (let i = 0; i < view.getUint16(cmap + 2); i++) {
    const at = cmap + view.getUint32(cmap + 8 + 8 * i)
    if (view.getUint16(at) === 4) return at
  }
  throw new Error('The font has no character map of format 4')
}

type Runs = Record<string, number[]>

/** Runs of neighbouring characters: first character code -> widths. */
function runs(widths: Map<number, number>, ranges: readonly (readonly number[])[]): Runs {
  const result: Runs = {}
  let run: number[] = []
  let next = -1
  for (const [code, width] of [...widths].sort(([a], [b]) => a - b)) {
    if (!ranges.some(([from = 0, to = 0]) => code >= from && code <= to)) continue
    if (code !== next) result[String(code)] = run = []
    run.push(width)
    next = code + 1
  }
  return result
}

export const makeTable = (): Record<keyof typeof fontFiles, Runs> => ({
  regular: runs(readWidths(fontFiles.regular), kept.regular),
  bold: runs(readWidths(fontFiles.bold), kept.bold),
  fallback: runs(readWidths(fontFiles.fallback), kept.fallback),
})

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const file = new URL('../../src/booklet/page/fontWidths.json', import.meta.url)
  writeFileSync(file, JSON.stringify(makeTable()))
}
