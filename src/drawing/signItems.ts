import { filled, ifAny, stroked } from './items'
import type { Item } from './scene'
import type { InkPaths } from './signPath'
import { signWeights, weights } from './sizes'

/** Signs in cells whose shorter side is `side` mm, painted from what lies lowest to what lies on top. */
export function signItems(paths: InkPaths, side: number): Item[] {
  const weight = signWeights(side)
  return [
    ...ifAny(paths.shade, (d) => filled(d, 'shade')),
    ...ifAny(paths.shade, (d) => stroked(d, 'grid', weights.grid)),
    ...ifAny(paths.ground, (d) => filled(d, 'ground')),
    ...ifAny(paths.behind, (d) => filled(d, 'behind')),
    ...ifAny(paths.fine, (d) => stroked(d, 'line', weight.fine)),
    ...ifAny(paths.line, (d) => stroked(d, 'line', weight.line)),
    ...ifAny(paths.front, (d) => stroked(d, 'line', weight.front)),
    ...ifAny(paths.solid, (d) => filled(d, 'solid')),
  ]
}
