import type { Heading } from '../../../loom/direction'
import { loomRow, type LoomRow, type RowEnd, type Site } from '../../../loom/row'
import { emptyStack } from '../../../loom/strand'
import type { Run } from '../../../pattern/pattern'
import type { Stitch } from '../../../stitches/stitch'
import { standardVocabulary } from '../../../stitches/vocabulary'
import type { LoomThen } from './place'

const none = standardVocabulary.withRole('no stitch')

/** Pegs that stitches stand on. */
export const widthOf = (stitches: readonly Pick<Stitch, 'width'>[]): number =>
  stitches.reduce((sum, { width }) => sum + width, 0)

/** Cells tried at most for one row; longer rows are laid from the first peg on as they come. */
const mostTried = 60_000

/**
 * Lay stitches on pegs `from`..`to`. Where they have fewer columns than there are pegs, no-stitch
 * cells fill the pegs that stay empty, each beside the decrease that emptied it, and increases go
 * to the nearest empty peg: the loops in all move as little as can be. Null: they have too many.
 */
export function layStitches(
  place: LoomThen,
  run: Run,
  goes: Heading,
  end: RowEnd,
  stitches: readonly Stitch[],
): LoomRow<Stitch> | null {
  const { from, to } = run
  const pegs = to - from + 1
  const free = pegs - widthOf(stitches)
  if (free < 0) return null
  const forward = goes === 'forward'
  const skips = free > 0 ? placeFree(stitches, loopsInOrder(place, run, forward), pegs, free) : []
  const sites = sitesOf(stitches, skips, run, forward)
  return loomRow(forward ? sites : sites.reverse(), from, to, goes, end)
}

/** The stitches one after the other, so many no-stitch cells before each, and the rest behind. */
function sitesOf(
  stitches: readonly Stitch[],
  skips: readonly number[],
  { from, to }: Run,
  forward: boolean,
): Site<Stitch>[] {
  const sites: Site<Stitch>[] = []
  let at = 0
  const put = (stitch: Stitch) => {
    sites.push({ stitch, peg: forward ? from + at : to - at - stitch.width + 1 })
    at += stitch.width
  }
  stitches.forEach((stitch, index) => {
    for (let skip = skips[index] ?? 0; skip > 0; skip--) put(none)
    put(stitch)
  })
  while (at <= to - from) put(none)
  return sites
}

/** Places of the loops in the run, counted from 0 in the order they are worked. */
function loopsInOrder({ stacks }: LoomThen, { from, to }: Run, forward: boolean): number[] {
  const run = stacks.slice(from, to + 1)
  return (forward ? run : run.reverse()).flatMap((stack, at) => (stack === emptyStack ? [] : at))
}

/** How many free pegs to leave before each stitch, so that the loops move least. */
function placeFree(
  stitches: readonly Stitch[],
  loops: readonly number[],
  pegs: number,
  free: number,
): number[] {
  const count = stitches.length
  const wanted: [first: number, last: number][] = []
  let loop = 0
  for (const { takes } of stitches) {
    wanted.push([loops[loop] ?? pegs, loops[loop + takes - 1] ?? pegs])
    loop += takes
  }
  const unmoved = overTheirLoops(stitches, wanted, pegs)
  if (unmoved) return unmoved
  if ((free + 1) * count > mostTried) return greedyFree(stitches, wanted, free)
  const steps = free + 1
  // cost[i * steps + f]: the least that stitches i.. cost when f free pegs stand before stitch i.
  const cost = new Float64Array((count + 1) * steps)
  const choice = new Int32Array(count * steps)
  const starts = new Int32Array(count + 1)
  stitches.forEach(({ width }, i) => (starts[i + 1] = (starts[i] ?? 0) + width))
  for (let i = count - 1; i >= 0; i--) {
    const stitch = stitches[i] as Stitch
    const [first, last] = wanted[i] as [number, number]
    let best = Infinity
    let bestAt = free
    for (let f = free; f >= 0; f--) {
      const position = (starts[i] ?? 0) + f
      const moved = movedBy(stitch, position, first, last)
      const total = moved + (cost[(i + 1) * steps + f] ?? 0)
      if (total <= best) {
        best = total
        bestAt = f
      }
      cost[i * steps + f] = best
      choice[i * steps + f] = bestAt
    }
  }
  const skips: number[] = []
  let f = 0
  for (let i = 0; i < count; i++) {
    const next = choice[i * steps + f] ?? f
    skips.push(next - f)
    f = next
  }
  return skips
}

/** Each stitch over the loops that it takes, where that is possible and there is no other such way; else null. */
function overTheirLoops(
  stitches: readonly Stitch[],
  wanted: readonly (readonly [number, number])[],
  pegs: number,
): number[] | null {
  const skips: number[] = []
  let at = 0
  for (const [i, { takes, width }] of stitches.entries()) {
    const skip = (wanted[i]?.[0] ?? 0) - at
    if (takes === 0 || takes > width || skip < 0 || at + skip + width > pegs) return null
    skips.push(skip)
    at += skip + width
  }
  return skips
}

/** Pegs that the loops of a stitch are moved when it stands at a place. */
function movedBy({ takes, width }: Stitch, position: number, first: number, last: number): number {
  if (takes === 0) return 0
  if (takes > width) return Math.max(0, first - position, position - last)
  return Math.abs(position - first)
}

function greedyFree(
  stitches: readonly Stitch[],
  wanted: readonly (readonly [number, number])[],
  free: number,
): number[] {
  let left = free
  let at = 0
  return stitches.map((stitch, i) => {
    const skip = stitch.takes === 0 ? 0 : Math.min(left, Math.max(0, (wanted[i]?.[0] ?? 0) - at))
    left -= skip
    at += skip + stitch.width
    return skip
  })
}
