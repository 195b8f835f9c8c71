import {
  dot,
  line,
  mirrorSigns,
  polygon,
  type Mark,
  type Sign,
  type SignPoint,
  type Signs,
} from '../sign'
import type { Cross } from '../stitch'

/**
 * Crosses, one drawing for the whole family: bands across the squares, the front band unbroken
 * (from memory, as are all details). Everything is worked out for a right cross, whose front group
 * starts in the left columns at the bottom and ends in the right ones at the top; a left cross is
 * its mirror image.
 *
 * Craft Yarn Council form: groups are bands as wide as their pegs. A knit band is open; a purl band
 * in front is filled, one behind is shown by purl dots.
 * JIS form: one line for each loop; purled loops carry a bar at both ends.
 */
const top = 0.15
const bottom = 0.85
const rise = bottom - top
/** Between a band and the edge of its columns. */
const inset = 0.15
const dotRadius = 0.1
const barHalf = 0.2

/** From `share` of the way up. */
const at = (x: number, share: number): SignPoint => [x, bottom - share * rise]

/** A clearance measured square to the front band, as a distance along the row. */
const along = (clearance: number, back: number): number =>
  (clearance * Math.hypot(back, rise)) / rise

/** The same mark turned half round in its columns: the other end of the back group. */
const turned = ({ ink, path }: Mark, width: number): Mark => ({
  ink,
  path: path.map((command) => {
    switch (command[0]) {
      case 'M':
      case 'L':
        return [command[0], width - command[1], 1 - command[2]]
      case 'O':
        return ['O', width - command[1], 1 - command[2], command[3]]
      default:
        return command
    }
  }),
})

const withBothEnds = (marks: readonly Mark[], width: number): Sign => [
  ...marks,
  ...marks.map((mark) => turned(mark, width)),
]

/** The part of an open back band that can be seen below the front band. */
function backBand({ front, back }: Cross): Mark {
  const gap = along(0.1, back)
  const edge = (share: number) => front - inset + gap + back * share
  const cutLeft = (2 * inset - gap) / (front + back)
  const cutRight = (back - gap) / (front + back)
  const points = [
    at(Math.max(front + inset, edge(0)), 0),
    at(front + back - inset, 0),
    at(edge(cutRight), cutRight),
  ]
  if (cutLeft > 0) points.push(at(edge(cutLeft), cutLeft))
  return polygon('line', ...points)
}

/** Purl dots in those back columns where the front band leaves room for one. */
function backDots({ front, back }: Cross): Mark[] {
  const share = dotRadius / rise
  const least = front - inset + back * share + along(dotRadius + 0.09, back)
  const centres = Array.from({ length: back }, (_, strand) => front + strand + 0.5)
  return centres
    .filter((x, strand) => x >= least || strand === back - 1)
    .map((x) => dot(x, bottom - dotRadius, dotRadius))
}

function bands(cross: Cross): Sign {
  const { front, back } = cross
  const frontBand = polygon(
    cross.frontTexture === 'purl' ? 'solid' : 'line',
    at(inset, 0),
    at(front - inset, 0),
    at(front + back - inset, 1),
    at(back + inset, 1),
  )
  const behind = cross.backTexture === 'purl' ? backDots(cross) : [backBand(cross)]
  return [frontBand, ...withBothEnds(behind, front + back)]
}

const bar = (x: number): Mark => line(at(x - barHalf, 0), at(x + barHalf, 0))

function strands({ front, back, frontTexture, backTexture }: Cross): Sign {
  const gap = along(0.13, back)
  const inFront: Mark[] = []
  const ends: Mark[] = []
  for (let strand = 0; strand < front; strand++) {
    const x = strand + 0.5
    inFront.push(line(at(x, 0), at(x + back, 1)))
    if (frontTexture === 'purl') ends.push(bar(x))
  }
  for (let strand = 0; strand < back; strand++) {
    const x = front + strand + 0.5
    const seen = (strand + 1 - gap) / (front + back)
    if (seen > 0.03) ends.push(line(at(x, 0), at(x - front * seen, seen)))
    if (backTexture === 'purl') ends.push(bar(x))
  }
  return [...inFront, ...withBothEnds(ends, front + back)]
}

export function crossSigns(cross: Cross): Signs {
  const right: Signs = { cyc: bands(cross), jis: strands(cross) }
  return cross.lean === 'right' ? right : mirrorSigns(right, cross.front + cross.back)
}
