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
 * in front is hatched, one behind is shown by purl dots.
 * JIS form: one line for each loop in front and each knitted one behind; loops purled behind are
 * short purl bars, and a bar crosses each one purled in front.
 */
const top = 0.15
const bottom = 0.85
const rise = bottom - top
/** Between a band and the edge of its columns. */
const inset = 0.15
const dotRadius = 0.1
const barHalf = 0.2
const crossbarHalf = 0.13
/** Columns between two strokes of a hatched band. */
const hatch = 0.5
/** A line behind that would show less of its way than this is left out. */
const leastSeen = 0.1

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

/** The part of an open back band that can be seen below the front band: its foot and outer edge. */
function backBand({ front, back }: Cross): Mark {
  const gap = along(0.1, back)
  const foot = front - inset + Math.max(2 * inset, gap)
  const cut = (back - gap) / (front + back)
  return line(at(foot, 0), at(front + back - inset, 0), at(front + back - inset - front * cut, cut))
}

/** Upright strokes in the front band, from its lower to its upper edge, even about its middle. */
function hatching({ front, back }: Cross): Mark[] {
  const middle = (front + back) / 2
  const strokes: Mark[] = []
  const most = Math.floor((middle - inset) / hatch)
  for (let step = -most; step <= most; step++) {
    const x = middle + step * hatch
    const low = Math.max(0, (x - front + inset) / back)
    const high = Math.min(1, (x - inset) / back)
    if (high - low > 0.12) strokes.push(line(at(x, low), at(x, high)))
  }
  return strokes
}

/** Where something of this half-width and half-height has room beside the front band. */
const freeFrom = ({ front, back }: Cross, share: number, room: number): number =>
  front - inset + back * share + along(room, back)

/** The centres of those back columns that are free from `least` on, the outermost in any case. */
const freeColumns = ({ front, back }: Cross, least: number): number[] =>
  Array.from({ length: back }, (_, strand) => front + strand + 0.5).filter(
    (x, strand) => x >= least || strand === back - 1,
  )

function backDots(cross: Cross): Mark[] {
  const least = freeFrom(cross, dotRadius / rise, dotRadius + 0.09)
  return freeColumns(cross, least).map((x) => dot(x, bottom - dotRadius, dotRadius))
}

function bands(cross: Cross): Sign {
  const { front, back } = cross
  const frontBand = polygon(
    'line',
    at(inset, 0),
    at(front - inset, 0),
    at(front + back - inset, 1),
    at(back + inset, 1),
  )
  const texture = cross.frontTexture === 'purl' ? hatching(cross) : []
  const behind = cross.backTexture === 'purl' ? backDots(cross) : [backBand(cross)]
  return [frontBand, ...texture, ...withBothEnds(behind, front + back)]
}

function backBars(cross: Cross): Mark[] {
  const share = 0.12 / rise
  const room = cross.frontTexture === 'purl' ? 0.2 : 0.1
  const least = freeFrom(cross, share, room) - inset + barHalf
  return freeColumns(cross, least).map((x) => line(at(x - barHalf, share), at(x + barHalf, share)))
}

/** The visible lower ends of loops behind, each up to the nearest line in front. */
function backLines({ front, back }: Cross): Mark[] {
  const gap = along(0.13, back)
  return Array.from({ length: back }, (_, strand) => strand).flatMap((strand) => {
    const x = front + strand + 0.5
    const seen = (strand + 1 - gap) / (front + back)
    return seen < leastSeen ? [] : [line(at(x, 0), at(x - front * seen, seen))]
  })
}

function strands(cross: Cross): Sign {
  const { front, back, frontTexture, backTexture } = cross
  const starts = Array.from({ length: front }, (_, strand) => strand + 0.5)
  const length = Math.hypot(back, rise)
  const across: SignPoint = [(crossbarHalf * rise) / length, (crossbarHalf * back) / length]
  const crossbar = (x: number): Mark =>
    line([x - across[0], 0.5 - across[1]], [x + across[0], 0.5 + across[1]])
  const behind = backTexture === 'purl' ? backBars(cross) : backLines(cross)
  return [
    ...starts.map((x) => line(at(x, 0), at(x + back, 1))),
    ...(frontTexture === 'purl' ? starts.map((x) => crossbar(x + back / 2)) : []),
    ...withBothEnds(behind, front + back),
  ]
}

export function crossSigns(cross: Cross): Signs {
  const right: Signs = { cyc: bands(cross), jis: strands(cross) }
  return cross.lean === 'right' ? right : mirrorSigns(right, cross.front + cross.back)
}
