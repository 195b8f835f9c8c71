import type { Heading } from '../../../loom/direction'
import type { Run } from '../../../pattern/pattern'
import type { Stitch } from '../../../stitches/stitch'
import { standardVocabulary } from '../../../stitches/vocabulary'
import { loopsOn, type Laid, type LoomThen } from './place'

const none = standardVocabulary.withRole('no stitch')
const isSteady = ({ takes, makes, width }: Stitch) => takes === width && makes === width

/** Cells tried at most for one row; longer rows are laid from the first peg on as they come. */
const mostTried = 60_000

/**
 * Lay stitches on pegs `from`..`to`. Where they have fewer columns than there are pegs, no-stitch
 * cells fill the pegs that stay empty, each beside the decrease that emptied it, and increases go
 * to the nearest empty peg: the loops in all move as little as can be. Null: they have too many.
 */
export function layStitches(
  place: LoomThen,
  { from, to }: Run,
  goes: Heading,
  stitches: readonly Stitch[],
): Laid | null {
  const pegs = to - from + 1
  let width = 0
  let takes = 0
  let steady = true
  for (const stitch of stitches) {
    width += stitch.width
    takes += stitch.takes
    if (!isSteady(stitch)) steady = false
  }
  if (width > pegs) return null
  const forward = goes === 'forward'
  const free = pegs - width
  const loops = place.occupied ? loopsOn(place, from, to) : pegs
  let sites: Laid['sites'] | null = null
  const put = () => {
    const skips =
      free === 0 ? [] : placeFree(stitches, loopsInOrder(place, from, to, forward), pegs, free)
    return sitesOf(stitches, skips, { from, to }, forward)
  }
  return {
    // A steady row leaves the loom as it was: where its stitches stand is hardly ever asked.
    get sites() {
      return (sites ??= put())
    },
    steady: steady && free === 0,
    miscount: takes !== loops,
  }
}

/** The stitches one after the other, so many no-stitch cells before each, and the rest behind. */
function sitesOf(
  stitches: readonly Stitch[],
  skips: readonly number[],
  { from, to }: Run,
  forward: boolean,
): Laid['sites'] {
  const sites: { stitch: Stitch; peg: number }[] = []
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
function loopsInOrder(place: LoomThen, from: number, to: number, forward: boolean): number[] {
  const places: number[] = []
  for (let i = 0; i <= to - from; i++) {
    const peg = forward ? from + i : to - i
    if (!place.occupied || place.occupied[peg] === 1) places.push(i)
  }
  return places
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
