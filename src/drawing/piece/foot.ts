import type { Slice } from './profile'

/**
 * How long the foot of a sock is, mm: from the back of the last heel, which reaches as far out as half of its
 * short rows are high, to the closed end of the toe. Null for a piece that is no sock.
 */
export function footLength(slices: readonly Slice[]): number | null {
  const heel = slices.findLastIndex(({ kind }) => kind === 'cup')
  const cup = slices[heel]
  const after = slices.slice(heel + 1)
  const closed = after.some(({ kind }) => kind === 'toe' || kind === 'gathered')
  if (!cup || !closed) return null
  const foot = after.reduce((sum, { height }) => sum + height, 0)
  return foot > cup.out ? cup.out + foot : null
}
