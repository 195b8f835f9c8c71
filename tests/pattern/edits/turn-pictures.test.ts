import { namedOn } from '../../../src/pattern/charts'
import { withChart } from '../../../src/pattern/edits/chart'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { walkRow } from '../../../src/loom/walk'
import { mirror } from '../../../src/pattern/edits/mirror'
import { reverseDirection } from '../../../src/pattern/edits/turn-round'
import { shortRowChart } from '../../../src/pattern/generate/shortRows'
import { usualHeel } from '../../../src/pattern/generate/wish'
import { secondOf } from '../../../src/pattern/pair'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import type { Pictures } from '../../../src/pattern/piece'
import { habitsOf } from '../../../src/pattern/habits'
import { workPattern } from '../../../src/pattern/work'
import { patternOf } from './chart-text'

const rope = patternOf('p 2/2_LC . . . p k2tog yo k k p p')

const withPictures = (pattern: Pattern, ...pictures: Pictures[]): Pattern => ({
  ...pattern,
  pictures,
})

const movesOf = (pattern: Pattern) => {
  const [run] = workPattern(pattern).firstRuns
  return run ? walkRow(run, habitsOf(pattern)).slice(1) : []
}

/** The moves of the stitch on a peg. */
function stretchAt(pattern: Pattern, peg: number): Pictures {
  const moves = movesOf(pattern)
  const isThere = ({ site }: (typeof moves)[number]) => site?.peg === peg
  const [from, to] = [moves.findIndex(isThere), moves.findLastIndex(isThere)]
  return { chart: namedOn(pattern).name, row: 0, from, to }
}

const idOf = (site: ReturnType<typeof movesOf>[number]['site']): string => {
  const stitch = site?.stitch
  return stitch && 'id' in stitch ? String(stitch.id) : ''
}

/** Pegs and stitches whose moves the pictures show, every move of them counted. */
const shown = (pattern: Pattern) =>
  pattern.pictures.map(({ from, to }) =>
    movesOf(pattern)
      .slice(from, to + 1)
      .map(({ site }) => `${idOf(site)} on peg ${(site?.peg ?? -1) + 1}`),
  )

describe('step pictures of a cross', () => {
  const pattern = withPictures(rope, stretchAt(rope, 1))

  test('are those of the same cross when the loom is worked the other way', () => {
    const turned = reverseDirection(pattern)
    expect(new Set(shown(turned)[0])).toEqual(new Set(['2/2 LC on peg 8']))
    expect(turned.pictures).toEqual([stretchAt(turned, 7)])
    expect(reverseDirection(turned).pictures).toEqual(pattern.pictures)
  })

  test('are those of the mirrored cross in the mirrored piece and in the second of a pair', () => {
    const mirrored = mirror(pattern)
    expect(new Set(shown(mirrored)[0])).toEqual(new Set(['2/2 RC on peg 8']))
    const pair = { ...pattern, pair: 'mirrored' as const }
    expect(secondOf(pair).pictures).toEqual(mirrored.pictures)
  })

  test('a bar that is begun at its other end has the same moves', () => {
    const bar: Pattern = { ...pattern, loom: { ...pattern.loom, shape: 'bar' } }
    expect(mirror(bar).pictures).toEqual(bar.pictures)
  })
})

// The moves of the rope: 0 p, 1-10 the cross, 11 p, 12 and 13 k2tog, 14 yo, 15-18 plain. Turned the
// cross has moves 8-17, and the decrease one: its loop is moved for the yarn over before it.
test.each([
  [1, 9, 8, 16],
  [2, 8, 9, 15],
  [2, 2, 9, 9],
  [0, 10, 8, 18],
  [10, 12, 6, 8],
  [12, 12, 6, 6],
  [11, 14, 4, 7],
  [0, 16, 2, 18],
  [15, 15, 3, 3],
])(
  'moves %i to %i become %i to %i: what they leave out is left out again',
  (from, to, first, last) => {
    const own = withPictures(rope, { chart: 'Chart', row: 0, from, to })
    for (const turned of [reverseDirection(own), mirror(own)])
      expect(turned.pictures).toEqual([{ chart: 'Chart', row: 0, from: first, to: last }])
  },
)

test('pictures of moves, rows and charts that are not there stay as they are', () => {
  for (const lost of [{ from: 30 }, { row: 7 }, { chart: 'Gone' }]) {
    const pictures = { chart: 'Chart', row: 0, from: 0, to: 31, ...lost }
    expect(mirror(withPictures(rope, pictures)).pictures).toEqual([pictures])
  }
})

const moveOf = fc.integer({ min: 0, max: movesOf(rope).length - 1 })

test('any stretch of moves shows the same stitches when the loom is worked the other way', () => {
  fc.assert(
    fc.property(moveOf, moveOf, (a, b) => {
      const stretch = {
        chart: namedOn(rope).name,
        row: 0,
        from: Math.min(a, b),
        to: Math.max(a, b),
      }
      const places = (p: Pattern, place: (peg: number, width: number) => number) =>
        movesOf(p)
          .slice(p.pictures[0]?.from, (p.pictures[0]?.to ?? 0) + 1)
          .flatMap(({ site }) => (site ? [place(site.peg, site.stitch.width)] : []))
      const pattern = withPictures(rope, stretch)
      const there = new Set(places(reverseDirection(pattern), (peg) => peg))
      expect(there).toEqual(new Set(places(pattern, (peg, width) => 12 - peg - width)))
    }),
  )
})

test('whole stitches: turned twice they are themselves', () => {
  const pegs = [...new Set(movesOf(rope).flatMap(({ site }) => (site ? [site.peg] : [])))]
  for (const [index, first] of pegs.entries())
    for (const last of pegs.slice(index)) {
      const pattern = withPictures(rope, {
        ...stretchAt(rope, first),
        to: stretchAt(rope, last).to,
      })
      const again = reverseDirection(reverseDirection(pattern))
      expect(again.pictures).toEqual(pattern.pictures)
    }
})

test('what shows a turn goes on showing it, though the mirrored row has more pegs before it', () => {
  const tube = newPattern(40, 1)
  const heel = shortRowChart(tube.loom, usualHeel(tube.loom))
  if (!heel.ok) throw new Error(heel.message)
  const pattern = withChart(tube, heel.chart)
  const moves = movesOf(pattern)
  const last = moves.length - 1
  const own = withPictures(pattern, { chart: 'Chart', row: 0, from: last - 4, to: last })
  const mirrored = mirror(own)
  const endOf = (p: Pattern) => {
    const [{ from, to } = { from: 0, to: 0 }] = p.pictures
    return movesOf(p)
      .slice(from, to + 1)
      .map(({ move }) => (move?.do === 'lay' ? move.as : move?.do))
  }
  expect(movesOf(mirrored).length).toBeGreaterThan(moves.length)
  expect(endOf(own)).toContain('German turn')
  expect(endOf(mirrored)).toEqual(endOf(own))
  expect(mirror(mirrored).pictures).toEqual(own.pictures)
})
