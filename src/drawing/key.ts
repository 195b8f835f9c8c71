import { termOf } from '../languages/languages'
import type { Terms } from '../languages/terms'
import type { Sign, Tradition } from '../stitches/sign'
import { signOf } from '../stitches/signs/signOf'
import type { Stitch } from '../stitches/stitch'
import { cutSign } from './cutSign'
import { rectangle, mm, type Point } from './path'
import { drawSign } from './rowItems'
import { stroked } from './items'
import type { Item, Scene } from './scene'
import { signItems as paint } from './signItems'
import { weights } from './sizes'

export interface SignOptions {
  /** Width of a cell, mm. */
  readonly cell?: number
  /** Height of a cell for each mm of its width. */
  readonly ratio?: number
  /** The stitch that the chart leaves blank. */
  readonly blank?: boolean
  /** Peg 1 is at the right: so what is left of a stitch that is cut is its right part. */
  readonly leftward?: boolean
  /** In which its title is told. */
  readonly terms?: Terms
}

/** Room for the outer line. */
const rim = weights.grid

/** One sign in its cells, as it stands in a chart: for the tray, the key and the booklet. */
export function signScene(stitch: Stitch, tradition: Tradition, options: SignOptions = {}): Scene {
  const { cell = 4, ratio = 1, blank = false, leftward = true, terms = 'us' } = options
  const height = cell * ratio
  return {
    width: stitch.width * cell + 2 * rim,
    height: height + 2 * rim,
    title: termOf(stitch, terms).name,
    layers: [
      {
        key: 'sign',
        x: rim,
        y: rim,
        items: signItems(stitch, tradition, { width: cell, height }, blank, leftward),
      },
    ],
  }
}

/** The sign; of a stitch that is cut its first columns, torn where the others are missing. */
function tornSign(stitch: Stitch, tradition: Tradition, ratio: number, leftward: boolean): Sign {
  const sign = signOf(stitch, tradition, ratio)
  const { cut, width } = stitch
  if (!cut) return sign
  const missing = cut.of.width - width
  return leftward
    ? cutSign(sign, { from: missing, to: cut.of.width, torn: { left: true, right: false } })
    : cutSign(sign, { from: 0, to: width, torn: { left: false, right: true } })
}

function signItems(
  stitch: Stitch,
  tradition: Tradition,
  cell: { readonly width: number; readonly height: number },
  blank: boolean,
  leftward: boolean,
): Item[] {
  const { width, height } = cell
  const unit = Math.min(width, height)
  const paths = blank
    ? {}
    : drawSign(
        tornSign(stitch, tradition, height / width, leftward),
        stitch,
        { place: (x, y): Point => [x * width, y * height], unit, straight: 0 },
        cell,
      )
  let lines = rectangle(0, 0, stitch.width * width, height)
  for (let column = 1; column < stitch.width; column++)
    lines += mm`M${column * width} ${0}L${column * width} ${height}`
  return [stroked(lines, 'grid', weights.grid), ...paint(paths, unit)]
}
