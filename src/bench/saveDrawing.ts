import type { Scene } from '../drawing/scene'
import { writeSvg } from '../drawing/svg'
import { download } from '../shelf/download'
import { fileStem } from '../shelf/format'
import type { Bench } from './state/bench.svelte'

/**
 * Save a drawing as SVG. Its name and title end with what it shows, as in "hat-steps.svg"; a note on it
 * is said too.
 */
export function saveDrawing(bench: Bench, what: string, scene: Scene, note = ''): void {
  const name = `${fileStem(bench.pattern)}-${what}.svg`
  const text = writeSvg(scene, { name: `${bench.pattern.title}: ${what}` })
  download({ name, type: 'image/svg+xml', text })
  bench.say(`Saved as ${name}${note}.`)
}
