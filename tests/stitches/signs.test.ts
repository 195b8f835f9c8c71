import { describe, expect, it } from 'vitest'
import { mirrorSign, traditions, type Command, type Sign } from '../../src/stitches/sign'
import type { Stitch } from '../../src/stitches/stitch'
import { signOf } from '../../src/stitches/signs/signOf'
import { stitchOf, standardVocabulary } from '../../src/stitches/vocabulary'

const round = (n: number) => (Math.round(n * 1e6) / 1e6 + 0).toFixed(6)

/** Every stroke of a sign as text, without the way it was drawn in: equal signs, equal lists. */
function strokes(sign: Sign): string[] {
  const list: string[] = []
  for (const { ink, path } of sign) {
    let start: number[] = []
    let here: number[] = []
    const add = (...points: number[][]) => {
      const there = points.map((p) => p.map(round).join(','))
      const back = there.toReversed()
      list.push(`${ink} ${[there.join(' '), back.join(' ')].sort()[0]}`)
    }
    for (const command of path) {
      const [kind, ...n] = command
      if (kind === 'M') start = n
      else if (kind === 'O') add(n)
      else if (kind === 'L') add(here, n)
      else if (kind === 'C') add(here, n.slice(0, 2), n.slice(2, 4), n.slice(4))
      else add(here, start)
      here = kind === 'C' ? n.slice(4) : kind === 'Z' ? start : n
    }
  }
  return list.sort()
}

const points = (command: Command): [number, number][] => {
  if (command[0] === 'O') {
    const [, x, y, r] = command
    return [
      [x - r, y - r],
      [x + r, y + r],
    ]
  }
  const numbers = command.slice(1) as number[]
  return numbers.flatMap((x, i) => (i % 2 === 0 ? [[x, numbers[i + 1] ?? 0]] : []))
}

/** Cells are from 0.6 to 1.2 times as high as wide. */
const ratios = [0.6, 0.8, 1, 1.2]
const each = traditions.flatMap((tradition) => ratios.map((ratio) => [tradition, ratio] as const))

describe.each(each)('signs after %s in cells of %d', (tradition, ratio) => {
  const sign = (stitch: Stitch) => signOf(stitch, tradition, ratio)

  it('differ from stitch to stitch', () => {
    const seen = new Map<string, string>()
    for (const stitch of standardVocabulary.stitches) {
      const { id, width } = stitch
      const drawn = `${width}: ${strokes(sign(stitch)).join('; ')}`
      expect(sign(stitch).length, id).toBeGreaterThan(0)
      expect(seen.get(drawn), id).toBeUndefined()
      seen.set(drawn, id)
    }
    expect(seen.size).toBe(standardVocabulary.stitches.length)
  })

  it('stay inside their columns', () => {
    for (const stitch of standardVocabulary.stitches)
      for (const { ink, path } of sign(stitch))
        for (const [x, y] of path.flatMap(points)) {
          const { id, width } = stitch
          const margin = ink === 'shade' ? 0 : 0.04
          expect(x, id).toBeGreaterThanOrEqual(margin)
          expect(x, id).toBeLessThanOrEqual(width - margin)
          expect(y, id).toBeGreaterThanOrEqual(margin)
          expect(y, id).toBeLessThanOrEqual(1 - margin)
        }
  })

  it('are mirror images where the stitches are', () => {
    for (const stitch of standardVocabulary.stitches)
      expect(strokes(mirrorSign(sign(stitch), stitch.width)), stitch.id).toEqual(
        strokes(sign(stitchOf(stitch.mirror))),
      )
  })

  it('draw a front band without a break and lean it to its side', () => {
    for (const stitch of standardVocabulary.stitches) {
      const { id, cross, width } = stitch
      if (!cross) continue
      const [first] = sign(stitch)
      // What passes in front is drawn heaviest; several strands close together may be finer.
      const others = sign(stitch).slice(1)
      if (tradition === 'cyc') {
        expect(first?.ink, id).toBe('front')
        expect(
          others.map(({ ink }) => ink),
          id,
        ).not.toContain('front')
      } else expect(['front', 'line'], id).toContain(first?.ink)
      const drawn = first?.path.flatMap(points) ?? []
      const meanX = (wanted: (y: number) => boolean) => {
        const list = drawn.filter(([, y]) => wanted(y)).map(([x]) => x)
        return list.reduce((sum, x) => sum + x, 0) / list.length
      }
      const moved = meanX((y) => y < 0.5) - meanX((y) => y > 0.5)
      expect(Math.sign(moved), id).toBe(cross.lean === 'right' ? 1 : -1)
      expect(Math.abs(moved), id).toBeGreaterThan(0.49 * Math.min(cross.front, cross.back))
      expect(Math.abs(moved), id).toBeLessThanOrEqual(cross.back)
      expect(width, id).toBe(cross.front + cross.back)
    }
  })
})

// Values from the published chart symbols (Craft Yarn Council; JIS L 0201): knit a vertical line,
// purl a dot or a horizontal line, yarn over a circle, two-together slants the way it leans.
describe('published forms', () => {
  const only = (id: string, tradition: 'cyc' | 'jis') => signOf(stitchOf(id), tradition, 1)

  it('draws knit as a vertical line', () => {
    for (const tradition of traditions) {
      const [mark] = only('k', tradition)
      const xs = mark?.path.flatMap(points).map(([x]) => x)
      expect(xs).toEqual([0.5, 0.5])
    }
  })

  it('draws purl as a dot and as a horizontal line', () => {
    expect(only('p', 'cyc').map(({ ink, path }) => [ink, path[0]?.[0]])).toEqual([['solid', 'O']])
    const ys = only('p', 'jis').flatMap(({ path }) => path.flatMap(points).map(([, y]) => y))
    expect(ys).toEqual([0.5, 0.5])
  })

  it('draws a yarn over as a circle', () => {
    for (const tradition of traditions)
      expect(only('yo', tradition).map(({ ink, path }) => [ink, path[0]?.[0]])).toEqual([
        ['line', 'O'],
      ])
  })

  it('slants a two-together by its lean', () => {
    for (const tradition of traditions)
      for (const [id, sense] of [
        ['k2tog', 1],
        ['p2tog', 1],
        ['ssk', -1],
        ['ssp', -1],
      ] as const) {
        const [[x0, y0] = [0, 0], [x1, y1] = [0, 0]] =
          only(id, tradition)[0]?.path.flatMap(points) ?? []
        expect(Math.sign((x1 - x0) * (y0 - y1)), id).toBe(sense)
      }
  })

  it('puts a bar below the purl variants of JIS', () => {
    for (const [plain, purl] of [
      ['k2tog', 'p2tog'],
      ['ssk', 'ssp'],
      ['ew', 'ptbl'],
    ] as const) {
      const bars = (id: string) =>
        only(id, 'jis').filter(({ path }) => path.flatMap(points).every(([, y]) => y > 0.8)).length
      expect([bars(plain), bars(purl)]).toEqual([0, 1])
    }
  })
})
