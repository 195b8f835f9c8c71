import type { PatternRun } from '../../pattern/work'
import { circlePath, polyline, short, type Point } from '../path'
import { inks, type InkRole, type Item, type Layer } from '../scene'
import type { FabricGeometry } from './geometry'
import { tones } from './place'
import { strandEnds } from './strands'
import { filled, stroked, written } from '../items'

/** Strands that are followed as one, in one tone. */
export interface Bundle {
  /** From 1: its tone, and the number on its tags. */
  readonly number: number
  readonly wales: readonly number[]
}

/** The list of wales that gives each bundle its own tone. */
export const followOf = (bundles: readonly Bundle[]): readonly number[] => {
  const longest = Math.max(0, ...bundles.map(({ wales }) => wales.length))
  // Places without a strand keep the tones of those after them.
  const follow = Array.from({ length: longest * tones }, () => -1)
  for (const { number, wales } of bundles)
    wales.forEach((wale, i) => (follow[i * tones + number - 1] = wale))
  return follow
}

const toneInk = (number: number): InkRole =>
  inks.find((ink) => ink === `tone-${number}`) ?? 'tone-1'

interface Tag {
  readonly number: number
  readonly from: Point
  x: number
  readonly y: number
}

/**
 * Numbered tags at both ends of the strands that are followed, so that they are told apart without
 * their tones. `size` is the height of a tag, mm. Tags may reach over the edge of the drawing.
 */
export function tagLayer(
  rows: readonly PatternRun[],
  geometry: FabricGeometry,
  bundles: readonly Bundle[],
  size: number,
): Layer {
  const tags: Tag[] = []
  const { height } = geometry.stitch
  for (const { number, wales } of bundles) {
    const ends = wales.flatMap((wale) => strandEnds(rows, wale) ?? [])
    for (const [which, up] of [
      ['first', -1],
      ['last', 1],
    ] as const) {
      const points = ends.flatMap((end) => {
        const centre = geometry.centre(end[which].row, end[which].peg)
        return centre ? [centre] : []
      })
      if (points.length === 0) continue
      const x = points.reduce((sum, point) => sum + point[0], 0) / points.length
      const ys = points.map((point) => point[1])
      const edge = up > 0 ? Math.min(...ys) : Math.max(...ys)
      const from: Point = [x, edge - up * height * 0.9]
      tags.push({ number, from, x, y: edge - up * (height * 1.3 + size * 0.6) })
    }
  }
  spread(tags, size)
  const items = tags.flatMap(({ number, from, x, y }): Item[] => {
    const ring = circlePath([x, y], short(size / 2))
    const line = { kind: 'path', fill: false, d: polyline([from, [x, y]]) } as const
    return [
      { ...line, ink: 'line', stroke: short(size * 0.06) },
      filled(ring, 'ground'),
      stroked(ring, toneInk(number), size * 0.2),
      stroked(circlePath([x, y], short(size * 0.6)), 'line', size * 0.06),
      written(
        String(number),
        [short(x), short(y + size * 0.25)],
        short(size * 0.72),
        'middle',
        'line',
        'bold',
      ),
    ]
  })
  return { key: 'tags', x: 0, y: 0, items }
}

/** Tags of about one height are moved apart until none covers another. */
function spread(tags: Tag[], size: number): void {
  const apart = size * 1.3
  tags.sort((a, b) => a.x - b.x)
  for (let round = 0; round < 8; round++)
    tags.forEach((tag, i) => {
      for (const other of tags.slice(i + 1)) {
        const gap = other.x - tag.x
        if (gap >= apart || Math.abs(other.y - tag.y) >= apart) continue
        tag.x -= (apart - gap) / 2
        other.x += (apart - gap) / 2
      }
    })
}
