/**
 * Strands: what lies on a peg. Strands and stacks are interned, so two stacks hold the same things
 * exactly when they are the same object; a loom's states can then be compared peg by peg with ===.
 *
 * A strand's *wale* says which column of the cast-on it continues: it follows the loop through
 * crosses. Strands that are only laid on a loop (wrap, German turn, tuck) have none.
 */
export const strandKinds = [
  'cast-on',
  'knit',
  'twisted knit',
  'purl',
  'twisted purl',
  'yarn over',
  'tuck',
  'wrap',
  'German turn',
  'bar',
] as const
export type StrandKind = (typeof strandKinds)[number]

export interface Strand {
  readonly kind: StrandKind
  /** 0-based wale, or noWale for a strand that is only laid over a loop. */
  readonly wale: number
}

/** Bottom to top. */
export type Stack = readonly Strand[]

export const noWale = -1
export const emptyStack: Stack = Object.freeze([])

const strands = new Map<StrandKind, Map<number, Strand>>()
const singles = new Map<Strand, Stack>()
const stacks = new Map<Strand, Map<Stack, Stack>>()

/** The stacks that hold a turn's strand: known when they are made, so that no tall one is searched. */
const turned = new WeakSet<Stack>()

/** The one strand of this kind and wale. */
export function strand(kind: StrandKind, wale: number): Strand {
  let ofKind = strands.get(kind)
  if (!ofKind) strands.set(kind, (ofKind = new Map<number, Strand>()))
  let found = ofKind.get(wale)
  if (!found) ofKind.set(wale, (found = Object.freeze({ kind, wale })))
  return found
}

/** The one stack that holds just this strand. */
export function single(only: Strand): Stack {
  let found = singles.get(only)
  if (!found) {
    singles.set(only, (found = Object.freeze([only])))
    if (isTurn(only)) turned.add(found)
  }
  return found
}

/** The one stack with `top` laid on `below`. */
export function onTop(below: Stack, top: Strand): Stack {
  if (below.length === 0) return single(top)
  let onto = stacks.get(top)
  if (!onto) stacks.set(top, (onto = new Map<Stack, Stack>()))
  let found = onto.get(below)
  if (!found) {
    onto.set(below, (found = Object.freeze([...below, top])))
    if (isTurn(top) || turned.has(below)) turned.add(found)
  }
  return found
}

/** The one stack of these strands, bottom to top. */
export const stackOf = (list: Iterable<Strand>): Stack => {
  let built = emptyStack
  for (const item of list) built = onTop(built, item)
  return built
}

export const isTurn = (item: Strand): boolean => item.kind === 'wrap' || item.kind === 'German turn'

/** Does the stack still hold a turn's strand that was not worked off? */
export const holdsTurn = (stack: Stack): boolean => stack.length > 1 && turned.has(stack)

/** The wale that goes on when the stack is worked as one: the lowest real loop shows. */
export function waleOf(stack: Stack): number {
  for (const item of stack) if (item.wale !== noWale) return item.wale
  return noWale
}
