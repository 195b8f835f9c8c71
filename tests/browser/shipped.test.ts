import { gzipSync } from 'node:zlib'
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { join } from 'node:path'
import { expect, test } from 'vitest'

// The built folder, as `npm run build` leaves it.

const built = fileURLToPath(new URL('../../.build/app', import.meta.url))
const scripts = readdirSync(join(built, 'assets')).filter((name) => name.endsWith('.js'))
const textOf = (...path: string[]) => readFileSync(join(built, ...path), 'utf8')

test('parts of the PDF library that no booklet uses are not shipped', () => {
  const code = scripts.map((name) => textOf('assets', name)).join('\n')
  // Each says its own name in what it does: shots of pages, sanitizer, SVG on a canvas.
  for (const part of ['data-html2canvas-ignore', 'ALLOWED_NAMESPACES', 'missing-glyph'])
    expect(code).not.toContain(part)
  expect(scripts.some((name) => /html2canvas|purify|canvg/.test(name))).toBe(false)
})

test('the licences of all that is shipped lie beside the app', () => {
  const licences = textOf('licences.md')
  const parts = licences.split(/^## /m).slice(1)
  for (const name of ['Pegwright', 'svelte', 'jspdf', 'svg2pdf.js', 'idb-keyval', 'workbox-core'])
    expect(parts.some((part) => part.startsWith(`${name} `) || part.startsWith(`${name}\n`))).toBe(
      true,
    )
  // Each has its text, and the fonts theirs.
  expect(parts.filter((part) => part.length < 300)).toEqual([])
  expect(licences).toContain('SIL OPEN FONT LICENSE Version 1.1')
  expect(licences).toContain('Bitstream Vera Fonts Copyright')
})

test('the app can be installed', () => {
  const manifest = JSON.parse(textOf('manifest.webmanifest')) as {
    start_url: string
    display: string
    icons: { src: string }[]
  }
  expect(manifest).toMatchObject({ start_url: './', display: 'standalone' })
  for (const { src } of manifest.icons) expect(textOf(src)).toContain('<svg')
  expect(textOf('index.html')).toContain('rel="manifest"')
})

test('the first script is under 200 kB compressed', () => {
  const first = new Set<string>()
  const add = (name: string) => {
    if (first.has(name)) return
    first.add(name)
    for (const [, other = ''] of textOf('assets', name).matchAll(
      /(?:from|import)"\.\/([^"]+\.js)"/g,
    ))
      add(other)
  }
  for (const [, name = ''] of textOf('index.html').matchAll(/assets\/([^"]+\.js)/g)) add(name)
  expect(first.size).toBeGreaterThan(0)
  const sizes = [...first].map((name) => gzipSync(textOf('assets', name)).length)
  expect(sizes.reduce((all, size) => all + size)).toBeLessThan(200_000)
})
