import type { Stack, StrandKind } from '../../loom/strand'

/** How the strands on a peg are spoken of. */
export interface StrandWords {
  /** "the loop", "both strands", "the loop and the strand over it". */
  readonly all: string
  /** "it" or "them". */
  readonly it: string
  /** Is there more than one? */
  readonly many: boolean
}

const laidOver: readonly StrandKind[] = ['German turn', 'tuck']

/** What lies on a peg: strands that were only laid there are no loops of their own. */
export function strandWords(stack: Stack): StrandWords {
  const count = stack.length
  if (count < 2) return { all: 'the loop', it: 'it', many: false }
  const wraps = stack.filter(({ kind }) => kind === 'wrap').length
  if (wraps > 0 && wraps === count - 1)
    return {
      all: wraps === 1 ? 'the loop and its wrap' : `the loop and its ${wraps} wraps`,
      it: 'them',
      many: true,
    }
  if (count === 2 && stack.some(({ kind }) => kind === 'German turn'))
    return { all: 'the loop and the strand over it', it: 'them', many: true }
  const noun = stack.some(({ kind }) => kind === 'wrap' || laidOver.includes(kind))
    ? 'strands'
    : 'loops'
  return { all: count === 2 ? `both ${noun}` : `all ${count} ${noun}`, it: 'them', many: true }
}
