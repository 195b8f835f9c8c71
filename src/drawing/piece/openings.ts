import { runsRightToLeft } from '../../loom/direction'
import type { LoomSetup, Run } from '../../pattern/pattern'
import type { Opening } from '../../pattern/pegs/openings'
import type { Placed } from './sideLabels'

/** Which way a tube lies: the pegs of its front half go from left to right, from `first` on. */
export interface Lying {
  /** The first peg at the left edge of the front, 0-based. */
  readonly first: number
  readonly loom: Pick<LoomSetup, 'pegs' | 'direction' | 'shape'>
}

/** Some pegs as they lie: parts of the width from the left, 0 to 1, in front or behind. */
export interface Lies {
  readonly left: number
  readonly right: number
  readonly behind: boolean
}

/**
 * A heel lies at the left, as it is drawn. Else peg 1 stands at the edge where the flat chart has it;
 * where an opening would then lie behind, the tube is turned by quarters until it lies in front.
 */
export function lyingOf(loom: Lying['loom'], openings: readonly Opening[], cup: Run | null): Lying {
  const { pegs, direction } = loom
  const half = Math.floor(pegs / 2)
  const peg1 = runsRightToLeft(direction) ? half - 1 : 0
  if (loom.shape === 'bar') return { first: runsRightToLeft(direction) ? pegs - 1 : 0, loom }
  if (cup) return { first: Math.round((cup.from + cup.to) / 2), loom }
  const hidden = (first: number): number =>
    openings
      .flatMap(({ pegs }) => lieOf({ first, loom }, pegs))
      .reduce((sum, { left, right, behind }) => sum + (behind ? right - left : 0), 0)
  const turns = [0, half, Math.round(pegs / 4), Math.round((3 * pegs) / 4)]
  const firsts = turns.map((turn) => (peg1 + turn) % pegs)
  return { first: firsts.toSorted((a, b) => hidden(a) - hidden(b))[0] ?? peg1, loom }
}

/** Where some pegs lie: one part, or one in front and one behind. */
export function lieOf({ first, loom }: Lying, { from, to }: Run): readonly Lies[] {
  const { pegs, direction, shape } = loom
  const seen = shape === 'ring' ? pegs / 2 : pegs
  // Places go on round the tube: those beyond the front lie behind, and come back from the right.
  const offset = runsRightToLeft(direction) ? first - to : from - first
  const start = ((offset % pegs) + pegs) % pegs
  const end = start + (to - from + 1)
  const parts: Lies[] = []
  for (let half = 0; half * seen < end; half++) {
    const [low, high] = [Math.max(start, half * seen), Math.min(end, (half + 1) * seen)]
    if (high <= low) continue
    const [a, b] = [low / seen - half, high / seen - half]
    const behind = half % 2 === 1
    parts.push(behind ? { left: 1 - b, right: 1 - a, behind } : { left: a, right: b, behind })
  }
  return parts
}

/** An opening at its place in the picture, mm. */
export interface PlacedOpening extends Opening {
  readonly bottom: number
  readonly top: number
  readonly width: number
}

/** From the edge it was bound off at up to the one it was cast on at. */
export function placeOpenings(
  openings: readonly Opening[],
  placed: readonly Placed[],
): readonly PlacedOpening[] {
  return openings.flatMap((opening): PlacedOpening[] => {
    const low = placed.find(({ step }) => step === opening.from)
    const high = placed.find(({ step }) => step === opening.to)
    return low && high
      ? [{ ...opening, bottom: low.top, top: high.bottom, width: Math.max(low.lower, high.upper) }]
      : []
  })
}
