import type { Site } from '../loom/row'
import type { PatternRow } from '../pattern/row'
import type { Stitch } from '../stitches/stitch'
import { nothing } from './nothing'

/** What a row looks like, whoever works it: read once, in one go over its stitches. */
export interface RowLook {
  /** What stands on each peg: a stitch, or the object for its second, third ... column. */
  readonly texture: readonly object[]
  readonly crosses: readonly Site<Stitch>[]
}

const looks = new WeakMap<PatternRow, RowLook>()

export function lookOf(row: PatternRow): RowLook {
  let look = looks.get(row)
  if (!look) looks.set(row, (look = readLook(row)))
  return look
}

function readLook({ sites, from, to }: PatternRow): RowLook {
  const texture = new Array<object>(Math.max(0, to - from + 1))
  let crosses: Site<Stitch>[] | undefined
  for (const site of sites) {
    const { stitch, peg } = site
    texture[peg - from] = stitch
    for (let offset = 1; offset < stitch.width; offset++)
      texture[peg - from + offset] = columnOf(stitch, offset)
    if (stitch.cross) (crosses ??= []).push(site)
  }
  return { texture, crosses: crosses ?? nothing }
}

const furtherColumns = new WeakMap<Stitch, object[]>()

/** The same object for the same column of a stitch, so that pegs are compared by identity. */
function columnOf(stitch: Stitch, offset: number): object {
  let columns = furtherColumns.get(stitch)
  if (!columns) furtherColumns.set(stitch, (columns = []))
  return (columns[offset] ??= {})
}
