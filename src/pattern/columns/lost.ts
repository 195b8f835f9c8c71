import type { Stitch } from '../../stitches/stitch'
import type { Chart } from '../pattern'
import { placed, type Placed } from '../row'

/** A stitch of several columns that an edit took away, or left with fewer of them. */
export interface Lost {
  /** Chart row, 0-based. */
  readonly row: number
  readonly stitch: Stitch
  /** It was cut before: by an edge, or by what stands beside it. */
  readonly wasCut: boolean
  readonly how: 'gone' | 'cut'
}

const isWide = ({ stitch }: Placed): boolean => stitch.width > 1
const isSame = (one: Placed, other: Placed): boolean =>
  one.stitch === other.stitch && one.column === other.column && one.columns === other.columns
const isWhole = ({ stitch, columns }: Placed): boolean => columns === stitch.width

/**
 * The stitches of several columns, cut ones too, that `before` has and `after` has no longer, row by row. One
 * that a stitch of the same columns took the place of is no loss. Where rows came in or went there
 * is nothing to hold against each other: then there are none.
 */
export function lostStitches(before: Chart, after: Chart): readonly Lost[] {
  if (before.rows.length !== after.rows.length) return []
  const sameColumns = before.columns === after.columns
  return before.rows.flatMap((row, index) => {
    const other = after.rows[index]
    if (!other || other.cells === row.cells) return []
    const [were, are] = [placed(row).filter(isWide), placed(other).filter(isWide)]
    // What stands where it stood is held against nothing else.
    const left = are.filter((one) => !were.some((item) => isSame(item, one)))
    return were.flatMap((item): Lost[] => {
      if (are.some((one) => isSame(item, one))) return []
      const { stitch, column, columns } = item
      const wasCut = !isWhole(item)
      const takes = (whole: boolean) => {
        const at = left.findIndex((one) => one.stitch === stitch && isWhole(one) === whole)
        return at >= 0 && left.splice(at, 1).length > 0
      }
      if (takes(true)) return []
      const inItsPlace = (one: Placed) =>
        one.column === column && isWhole(one) && one.columns === columns
      if (sameColumns && left.some(inItsPlace)) return []
      const isCut = takes(false)
      if (wasCut && isCut) return []
      return [{ row: index, stitch, wasCut, how: isCut ? 'cut' : 'gone' }]
    })
  })
}

/** Has `after` at least as many whole ones of each stitch of several columns, wherever they stand? */
export function keepsAll(before: Chart, after: Chart): boolean {
  const counts = new Map<Stitch, number>()
  const count = ({ rows }: Chart, by: number): void => {
    for (const item of rows.flatMap((row) => placed(row)))
      if (isWide(item) && isWhole(item))
        counts.set(item.stitch, (counts.get(item.stitch) ?? 0) + by)
  }
  count(before, -1)
  count(after, 1)
  return [...counts.values()].every((more) => more >= 0)
}
