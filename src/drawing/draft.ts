import { languages } from '../languages/languages'
import type { Terms } from '../languages/terms'
import type { Item, Scene } from './scene'
import { written } from './items'

/** Letter height of the mark over a drawing, mm; as much again is left free round it. */
const size = 5

/** The drawing as a draft: the mark stands over it, at the right. */
export function asDraft(scene: Scene, terms: Terms): Scene {
  const { draft, draftOf } = languages[terms].drawings
  const band = 2 * size
  const mark: Item = written(
    draft,
    [Math.max(scene.width, 6 * size) - size, 1.35 * size],
    size,
    'end',
    'note',
    'bold',
  )
  return {
    width: Math.max(scene.width, 6 * size),
    height: scene.height + band,
    title: draftOf(scene.title),
    layers: [
      { key: 'draft', x: 0, y: 0, items: [mark] },
      ...scene.layers.map((layer) => ({ ...layer, y: layer.y + band })),
    ],
  }
}
