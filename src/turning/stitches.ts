import { runsRightToLeft } from '../loom/direction'
import type { Chart } from '../pattern/pattern'
import { placed } from '../pattern/row'
import type { Terms } from '../languages/terms'
import type { Stitch } from '../stitches/stitch'
import type { NowAndThen } from './sides'
import { termOf } from '../languages/languages'

/**
 * What becomes its mirror image, counted in the charts: "12 left crosses become right crosses".
 * A stitch is held against the one that stands as far from the other edge; where the second is begun
 * at the other end of the loom instead, against the one in its own columns.
 */
export function leansThatSwap(sides: readonly NowAndThen[], terms: Terms): readonly string[] {
  const swaps = new Map<string, { from: string; to: string; count: number; rank: number }>()
  const inPlace = sides.every(isMirroredInPlace)
  for (const { now, then } of sides)
    now.work.chart.rows.forEach((row, index) => {
      const opposite = stitchesByEnd(then.work.chart, index, inPlace)
      for (const { stitch, column, columns } of placed(row)) {
        const other = opposite.get(column + columns)
        if (!other || other.id !== stitch.mirror || other === stitch) continue
        const named = nameOf(stitch, terms)
        const { rank, many: from } = named
        const pair = { from, to: nameOf(other, terms).many, rank }
        const swap = swaps.get(named.one) ?? { ...pair, count: 0 }
        swaps.set(named.one, { ...swap, count: swap.count + 1 })
      }
    })
  return [...swaps.entries()]
    .toSorted(([, a], [, b]) => a.rank - b.rank)
    .map(([one, { from, to, count }]) =>
      count === 1 ? `1 ${one} becomes ${oneOf(to)}.` : `${count} ${from} become ${to}.`,
    )
}

/** Has every column of the chart the mirror image of what it had, on a loom worked the other way? */
const isMirroredInPlace = ({ now, then }: NowAndThen): boolean =>
  now.pattern.loom.direction !== then.pattern.loom.direction &&
  now.work.chart.rows.every(({ cells }, row) => {
    const others = then.work.chart.rows[row]?.cells
    return cells.every(
      (cell, at) => others?.[at] === (cell && now.pattern.vocabulary.mirrorOf(cell)),
    )
  })

/**
 * The stitches of a row by the column after their last one, counted from the other edge unless they
 * are mirrored in place.
 */
function stitchesByEnd(chart: Chart, row: number, inPlace: boolean): ReadonlyMap<number, Stitch> {
  const cells = chart.rows[row]
  return new Map(
    cells
      ? placed(cells).map(({ stitch, column, columns }) => [
          inPlace ? column + columns : chart.columns - column,
          stitch,
        ])
      : [],
  )
}

function nameOf(stitch: Stitch, terms: Terms) {
  const { cross } = stitch
  return cross
    ? { one: `${cross.lean} cross`, many: `${cross.lean} crosses`, rank: 0 }
    : { one: termOf(stitch, terms).abbr, many: termOf(stitch, terms).abbr, rank: 1 }
}

const oneOf = (many: string): string =>
  many.endsWith(' crosses') ? `a ${many.slice(0, -2)}` : many

/**
 * Do both versions put the same stitches in the same order on the same places, as the right side
 * is seen? Then the fabric looks the same.
 */
export const looksTheSame = (sides: readonly NowAndThen[]): boolean =>
  sides.every(({ now, then }) => {
    const a = walesOf(now)
    const b = walesOf(then)
    return a.length === b.length && a.every((wale, place) => wale === b[place])
  })

/** What is worked on each place from left to right, stitch after stitch, each chart row once. */
function walesOf({ pattern, work }: NowAndThen['now']): readonly string[] {
  const wales = Array.from({ length: pattern.loom.pegs }, () => '')
  for (const { row } of work.firstRuns)
    for (const { stitch, peg } of row.sites)
      for (let part = 0; part < stitch.width; part++) {
        const place = runsRightToLeft(pattern.loom.direction)
          ? wales.length - 1 - peg - part
          : peg + part
        const first = runsRightToLeft(pattern.loom.direction) ? stitch.width - 1 - part : part
        wales[place] += `${stitch.id} ${first}, `
      }
  return wales
}
