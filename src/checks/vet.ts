import { isMended, type Fix } from '../pattern/finding'
import type { Sheet } from '../pattern/pattern'

/** At most so many ways are offered for one finding. */
const mostFixes = 4

type Found = readonly { readonly rule: string }[]

/**
 * Of the repairs tried for a finding of `rule`, those after which it is mended and nothing else is broken.
 * @param before what is found in `sheet`, asked for when there is something to try
 * @param after what is found in an edited one
 */
export function thatWork(
  sheet: Sheet,
  rule: string,
  candidates: readonly Fix[],
  before: () => Found,
  after: (sheet: Sheet) => Found,
): readonly Fix[] {
  if (candidates.length === 0) return candidates
  const was = before()
  const good: Fix[] = []
  for (const candidate of candidates) {
    if (good.length === mostFixes) break
    if (good.some(({ label }) => label === candidate.label)) continue
    const edited = candidate.edit(sheet)
    if (edited !== sheet && isMended(rule, was, after(edited))) good.push(candidate)
  }
  return good
}
