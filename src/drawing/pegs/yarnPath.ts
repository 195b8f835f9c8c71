import type { Moment } from '../../loom/walk'
import type { Side } from '../../loom/state'

/** Where the yarn was last caught, and what it went past since. Pegs are 0-based. */
export interface Catch {
  /** null: on the spare needle now, or gone from the loom. */
  readonly peg: number | null
  readonly onNeedle: boolean
  /** Caught in the lowest strand of the peg: a wrap lies below the loop. */
  readonly low: boolean
  readonly passes: readonly { readonly peg: number; readonly side: Side }[]
}

interface Tied {
  peg: number | null
  onNeedle: boolean
  low: boolean
  readonly passes: { peg: number; side: Side }[]
}

/**
 * The way of the yarn over the moments given, oldest first: the last `most` loops it was caught in,
 * each where that loop is now. Without any such move, the peg that work has just left.
 */
export function yarnPath(moments: readonly Moment[], most = 3): readonly Catch[] {
  const ties: Tied[] = []
  const queue: Tied[][] = []
  const tiedTo = (peg: number): Tied[] => ties.filter((tie) => tie.peg === peg)
  const tie = (peg: number, low = false): void => {
    const last = ties.at(-1)
    if (last?.peg === peg && last.passes.length === 0) {
      last.low = low
      return
    }
    ties.push({ peg, onNeedle: false, low, passes: [] })
  }
  const first = moments[0]
  const start = first && caughtBefore(first)
  if (start !== undefined && first?.move === null) tie(start)
  for (const { move } of moments) {
    switch (move?.do) {
      case 'lay':
        tie(move.peg, move.as === 'wrap')
        break
      case 'work':
      case 'cast on':
        tie(move.peg)
        break
      case 'draw':
        tie(move.to)
        break
      case 'pass':
        ties.at(-1)?.passes.push({ peg: move.peg, side: move.yarn })
        break
      case 'move':
        for (const tied of tiedTo(move.from)) tied.peg = move.to
        break
      case 'take': {
        const taken = tiedTo(move.peg)
        for (const tied of taken) Object.assign(tied, { peg: null, onNeedle: true })
        queue.push(taken)
        break
      }
      case 'put':
        for (const tied of queue.shift() ?? [])
          Object.assign(tied, { peg: move.peg, onNeedle: false })
        break
      case 'let go':
      case 'drop':
        for (const tied of tiedTo(move.peg)) tied.peg = null
        break
      default:
        break
    }
  }
  const now = moments.at(-1)
  if (ties.length === 0 && now) {
    const peg = caughtBefore(now)
    if (peg !== undefined) tie(peg)
    if (now.move?.do === 'pass')
      ties.at(-1)?.passes.push({ peg: now.move.peg, side: now.move.yarn })
  }
  return ties.slice(-most)
}

/** The nearest peg with a loop that work comes from; undefined when there is none near. */
function caughtBefore({ gap, heading, stacks, move }: Moment): number | undefined {
  const step = heading === 'forward' ? -1 : 1
  const first = heading === 'forward' ? gap - 1 : gap
  const passed = move?.do === 'pass' ? 1 : 0
  for (let away = passed; away < 4; away++) {
    const peg = first + step * away
    if ((stacks[peg]?.length ?? 0) > 0) return peg
  }
  return undefined
}
