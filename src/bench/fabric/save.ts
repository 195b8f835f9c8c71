import { fabricDrawing, type FabricDetail } from '../../drawing/fabric/fabric'
import { followOf, tagLayer } from '../../drawing/fabric/tags'
import type { Scene } from '../../drawing/scene'
import { habitsOf } from '../../pattern/habits'
import { saveDrawing } from '../saveDrawing'
import type { Bench } from '../state/bench.svelte'
import { fabricOf } from '../state/fabric.svelte'

/** A file of more loops than this would be too large as yarn (some 0.4 kB for each loop). */
const mostAsYarn = 20_000

/** Of a tag in a file, mm; and the room for it round the fabric. */
const tagSize = 4
const room = 8

/** Save the fabric as it lies, with the strands that are followed. */
export function saveFabric(bench: Bench): void {
  const fabric = fabricOf(bench)
  const { rows, view, turn, bundles } = fabric
  const { loom, gauge, title } = bench.pattern
  const detail: FabricDetail = rows.length * loom.pegs > mostAsYarn ? 'texture' : 'yarn'
  const { scene, geometry } = fabricDrawing(rows, habitsOf(bench.pattern), loom, gauge, {
    view,
    turn,
    detail,
    follow: followOf(bundles),
    name: title,
    terms: bench.pattern.style.terms,
  })
  const tags = tagLayer(rows, geometry, bundles, tagSize)
  const whole = bundles.length === 0 ? scene : framed({ ...scene, layers: [...scene.layers, tags] })
  const note =
    detail === 'texture'
      ? `, as texture: as yarn a fabric of ${rows.length} rows on ${loom.pegs} pegs would be too large a file`
      : ''
  saveDrawing(bench, 'fabric', whole, note)
}

const framed = (scene: Scene): Scene => ({
  ...scene,
  width: scene.width + 2 * room,
  height: scene.height + 2 * room,
  layers: scene.layers.map(({ key, x, y, items }) => ({ key, items, x: x + room, y: y + room })),
})
