import type { Stitch } from '../stitches/stitch'
import type { Chart } from './pattern'
import { placed, type Placed } from './row'

/** A stitch of several columns that an edit took away, or left with fewer of them. */
export interface Lost {
  /** Chart row, 0-based. */
  readonly row: number
  readonly stitch: Stitch
  readonly how: 'gone' | 'cut'
}

const isWide = ({ stitch }: Placed): boolean => stitch.width > 1
const isWhole = ({ stitch, columns }: Placed): boolean => columns === stitch.width

/**
 * The whole stitches of several columns that `before` has and `after` has no longer, row by row. One
 * that a stitch of the same columns took the place of is no loss. Where rows came in or went there
 * is nothing to hold against each other: then there are none.
 */
export function lostStitches(before: Chart, after: Chart): readonly Lost[] {
  if (before.rows.length !== after.rows.length) return []
  const sameColumns = before.columns === after.columns
  return before.rows.flatMap((row, index) => {
    const other = after.rows[index]
    if (!other || other.cells === row.cells) return []
    const left = placed(other).filter(isWide)
    return placed(row).flatMap((item): Lost[] => {
      if (!isWide(item) || !isWhole(item)) return []
      const { stitch, column } = item
      const takes = (whole: boolean) => {
        const at = left.findIndex((one) => one.stitch.id === stitch.id && isWhole(one) === whole)
        return at >= 0 && left.splice(at, 1).length > 0
      }
      if (takes(true)) return []
      const inItsPlace = (one: Placed) =>
        one.column === column && isWhole(one) && one.stitch.width === stitch.width
      if (sameColumns && left.some(inItsPlace)) return []
      return [{ row: index, stitch, how: takes(false) ? 'cut' : 'gone' }]
    })
  })
}
