import { memo } from '../../../pattern/memo'
import type { Run } from '../../../pattern/pattern'
import type { Comparison, Difference } from '../comparison'
import { findingIds } from './findingIds'
import { joined, type Joined } from './saidOnce'

export interface ToldRemark extends Joined {
  /** By which it can be set aside. */
  readonly id: string
}

export interface ToldDifference {
  readonly difference: Difference
  /** 0-based; none: the whole row. */
  readonly places: readonly Run[]
  readonly id: string
}

/** What is listed of own words: each fault once, with the name by which it can be set aside. */
export interface ToldOnce {
  readonly remarks: readonly ToldRemark[]
  readonly differences: readonly ToldDifference[]
}

export const toldOf = memo((comparison: Comparison): ToldOnce => {
  const { remarks, differences } = joined(comparison)
  const all = withoutCascade(comparison, differences)
  const ids = findingIds(
    comparison.reading,
    remarks.map(({ remark }) => remark),
    all.map(({ difference }) => difference),
  )
  return {
    remarks: remarks.map((told, index) => ({ ...told, id: ids[index] ?? '' })),
    differences: all.map((told, index) => ({ ...told, id: ids[remarks.length + index] ?? '' })),
  }
})

/** In how many places own words and chart differ, set aside or not. */
export function countDifferences(comparison: Comparison): number {
  const { remarks, differences } = toldOf(comparison)
  return remarks.filter((told) => told.differences.length > 0).length + differences.length
}

/** How many errors own words have that are not set aside. */
export function countErrors(comparison: Comparison, aside: readonly string[]): number {
  const { remarks, differences } = toldOf(comparison)
  return [
    ...remarks.map(({ remark, id }) => ({ severity: remark.severity, id })),
    ...differences.map(({ difference, id }) => ({ severity: difference.severity, id })),
  ].filter(({ severity, id }) => severity === 'error' && !aside.includes(id)).length
}

/**
 * Where the stitches of a line do not add up, those after the mistake stand beside others than they
 * should: of these differences one is enough, for the whole row.
 */
function withoutCascade(
  { reading }: Comparison,
  differences: readonly Difference[],
): Omit<ToldDifference, 'id'>[] {
  const wrong = new Set<number>()
  for (const { row, severity } of reading.remarks) {
    const line = severity === 'error' && row !== null ? reading.rows[row] : undefined
    if (line) wrong.add(line.range.from)
  }
  const said = new Set<string>()
  return differences.flatMap((difference) => {
    const line = difference.read === null ? undefined : reading.rows[difference.read]
    if (difference.rule !== 'words-differ' || !line || !wrong.has(line.range.from))
      return [{ difference, places: difference.places }]
    const key = difference.rows.join(' ')
    if (said.has(key)) return []
    said.add(key)
    return [{ difference, places: [] }]
  })
}
