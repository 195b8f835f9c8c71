import { Window } from 'happy-dom'
import { describe, expect, it } from 'vitest'
import { flatChart } from '../../src/drawing/flat'
import { signScene } from '../../src/drawing/key'
import { ringChart } from '../../src/drawing/ring'
import { inks, type Scene } from '../../src/drawing/scene'
import { inkTable, writeSvg } from '../../src/drawing/svg'
import { workPattern } from '../../src/pattern/work'
import { traditions, type Tradition } from '../../src/stitches/sign'
import { stitchOf, standardVocabulary } from '../../src/stitches/vocabulary'
import { ribCuff, turnedHeel } from './pieces'

const file = (name: string) => `output/${name}.svg`

/** The sign of every stitch, twelve to a column. */
function allSigns(tradition: Tradition): Scene {
  const signs = standardVocabulary.stitches.map((stitch) => signScene(stitch, tradition))
  const layers = signs.flatMap((sign, index) =>
    sign.layers.map((layer) => ({
      ...layer,
      key: `sign-${index}`,
      x: 2 + 36 * Math.floor(index / 12),
      y: 2 + 6 * (index % 12),
    })),
  )
  return { width: 36 * Math.ceil(signs.length / 12), height: 76, title: 'All signs.', layers }
}

/** Kept as files: look at them in a browser when they change. */
describe('drawings', () => {
  const cuff = workPattern(ribCuff())
  const drawings: readonly (readonly [string, Scene])[] = [
    ['cuff-flat', flatChart(cuff)],
    [
      'cuff-loom-left-to-right',
      flatChart(workPattern(ribCuff('counterclockwise')), { columns: 'loom' }),
    ],
    ['cuff-ring-outside', ringChart(cuff, { castOn: 'outside' })],
    ['cuff-ring-inside', ringChart(cuff, { castOn: 'inside' })],
    ['heel-flat', flatChart(workPattern(turnedHeel()))],
    ...traditions.map((tradition) => [`signs-${tradition}`, allSigns(tradition)] as const),
  ]
  it.each(drawings)('%s', async (name, scene) => {
    await expect(writeSvg(scene)).toMatchFileSnapshot(file(name))
  })
})

describe('an SVG file', () => {
  const pattern = { ...ribCuff(), title: 'Tide & <foam> "lace"\u0000' }
  const scene = flatChart(workPattern(pattern))
  const parse = (svg: string) =>
    new new Window().DOMParser().parseFromString(svg, 'image/svg+xml').documentElement

  it('is in millimetres and says what it shows', () => {
    const svg = parse(writeSvg(scene, { language: 'en-GB', name: 'Tide' }))
    expect(svg.getAttribute('width')).toBe(`${scene.width.toFixed(2).replace(/\.?0+$/, '')}mm`)
    expect(svg.getAttribute('viewBox')?.split(' ').map(Number)[3]).toBeCloseTo(scene.height, 2)
    expect(svg.getAttribute('role')).toBe('img')
    expect(svg.getAttribute('xml:lang')).toBe('en-GB')
    expect(svg.querySelector('title')?.textContent).toBe('Tide')
    expect(svg.querySelector('desc')?.textContent).toContain('Tide & <foam> "lace"\ufffd')
  })

  it('holds every item of the scene', () => {
    const svg = parse(writeSvg(scene))
    const items = scene.layers.flatMap((layer) => layer.items)
    const count = (kind: string) => items.filter((item) => item.kind === kind).length
    expect(svg.querySelectorAll('path')).toHaveLength(count('path'))
    expect(svg.querySelectorAll('text')).toHaveLength(count('text'))
    expect([...svg.querySelectorAll('text')].map(({ textContent }) => textContent)).toEqual(
      items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
    )
  })

  it('is black, white and grey', () => {
    for (const ink of inks) expect(inkTable[ink]).toMatch(/^#(..)\1\1$/)
  })
})

describe('a sign', () => {
  it('leaves the background stitch blank, as the chart does', () => {
    const drawn = (blank: boolean) =>
      signScene(stitchOf('k'), 'cyc', { blank }).layers[0]?.items.map(({ ink }) => ink)
    expect(drawn(true)).toEqual(['grid'])
    expect(drawn(false)).toEqual(['grid', 'line'])
  })

  it('shows a sign in as many cells as it has', () => {
    const { width, height } = signScene(stitchOf('3/4 RPC'), 'jis', { cell: 5, ratio: 0.8 })
    expect(width).toBeCloseTo(35, 0)
    expect(height).toBeCloseTo(4, 0)
  })
})
