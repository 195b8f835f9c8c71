import { isMended, type Fix, type Repairs } from '../pattern/finding'
import type { Sheet } from '../pattern/pattern'

/** At most so many ways are offered for one finding. */
const mostFixes = 4

type Found = readonly { readonly rule: string }[]

/**
 * Of the repairs tried for a finding of `rule`, those after which it is mended and nothing else is broken.
 * @param candidates asked for when the first is to be tried
 * @param before what is found in `sheet`, asked for when there is something to try
 * @param after what is found in an edited one
 */
export function repairsThatWork(
  sheet: Sheet,
  rule: string,
  candidates: () => readonly Fix[],
  before: () => Found,
  after: (sheet: Sheet) => Found,
): Repairs {
  let waiting: Fix[] | undefined
  let was: Found | undefined
  let soFar: readonly Fix[] = []
  const tryNext = (): boolean => {
    waiting ??= [...candidates()]
    const next = soFar.length < mostFixes ? waiting.shift() : undefined
    if (!next) return false
    if (soFar.some(({ label }) => label === next.label)) return true
    const edited = next.edit(sheet)
    if (edited !== sheet && isMended(rule, (was ??= before()), after(edited)))
      soFar = [...soFar, next]
    return true
  }
  return {
    tryNext,
    get soFar() {
      return soFar
    },
  }
}

/** All of them. */
export function allOf(repairs: Repairs): readonly Fix[] {
  while (repairs.tryNext());
  return repairs.soFar
}
