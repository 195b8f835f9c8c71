import type { Item, Scene } from './scene'
import { written } from './items'

/** Stands over what is not to be published yet. */
export const draftMark = 'DRAFT'

/** Letter height of the mark over a drawing, mm; as much again is left free round it. */
const size = 5

/** The drawing as a draft: the mark stands over it, at the right. */
export function asDraft(scene: Scene): Scene {
  const band = 2 * size
  const mark: Item = written(
    draftMark,
    [Math.max(scene.width, 6 * size) - size, 1.35 * size],
    size,
    'end',
    'note',
    'bold',
  )
  return {
    width: Math.max(scene.width, 6 * size),
    height: scene.height + band,
    title: `Draft, with errors. ${scene.title}`,
    layers: [
      { key: 'draft', x: 0, y: 0, items: [mark] },
      ...scene.layers.map((layer) => ({ ...layer, y: layer.y + band })),
    ],
  }
}
