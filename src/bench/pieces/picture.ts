import { fabricDrawing, stitchSize } from '../../drawing/fabric/fabric'
import { inkTable, writeSvg } from '../../drawing/svg'
import { onChart } from '../../pattern/charts'
import { beginningOf } from '../../pattern/edits/beginning'
import { habitsOf } from '../../pattern/habits'
import type { Pattern } from '../../pattern/pattern'
import { workPattern } from '../../pattern/work'

/** Of all pictures on the shelf, so that fabrics can be compared: CSS pixels to a millimetre of fabric. */
const scale = 2.2
/** Fabric of more loops than this is drawn as texture. */
const mostAsYarn = 2500
const yarn = { ...inkTable, ground: '#fffefb', loop: '#f6efe0', shade: '#d3d0c8', ink: '#5b5346' }

export interface PictureSize {
  /** CSS pixels. */
  readonly width: number
  readonly height: number
}

/** The first rows of the longest chart as fabric, as the text of an SVG file: its middle, at one scale for all pieces. */
export function pictureOf(pattern: Pattern, { width, height }: PictureSize): string {
  const size = stitchSize(pattern.gauge)
  const most = Math.ceil(height / scale / size.height) + 2
  const { loom, gauge, charts } = pattern
  // What is most of the fabric.
  const [first, ...others] = charts
  const longest = others.reduce(
    (best, one) => (one.chart.rows.length > best.chart.rows.length ? one : best),
    first,
  )
  const sheet = onChart(pattern, longest.name)
  const work = workPattern(beginningOf(sheet, most * longest.chart.columns))
  const rows = work.run.rows.slice(0, most)
  const { scene } = fabricDrawing(rows, habitsOf(pattern), loom, gauge, {
    detail: rows.length * loom.pegs > mostAsYarn ? 'texture' : 'yarn',
    name: pattern.title,
  })
  const window = { width: width / scale, height: height / scale }
  const left = (scene.width - window.width) / 2
  const down = scene.height - window.height
  const layers = scene.layers
    .filter(({ y }) => y > down - 4 * size.height)
    .map(({ key, x, y, items }) => ({ key, items, x: x - left, y: y - down }))
  const svg = writeSvg({ ...scene, ...window, layers }, { inks: yarn })
  // Shown at this scale, not in its true size.
  return svg.replace(/width="[^"]*mm" height="[^"]*mm"/, `width="${width}" height="${height}"`)
}
