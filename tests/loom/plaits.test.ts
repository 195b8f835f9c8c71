import fc from 'fast-check'
import invertPermutation from 'invert-permutation'
import permutationParity from 'permutation-parity'
import { describe, expect, it } from 'vitest'
import { directions, headings, runsRightToLeft } from '../../src/loom/direction'
import { crossings } from '../../src/loom/row'
import { setBand } from '../../src/pattern/edits/rows'
import { workPattern } from '../../src/pattern/work'
import { findStitch } from '../../src/stitches/vocabulary'
import { arbitraryCrossCells, endOf, piece, walesOn } from './pieces'

/**
 * The order of strands by another way than the loom's: each cross as a permutation of places seen
 * from the right side, left to right. "a/b LC": the right-hand a strands go left in front of the b;
 * "a/b RC": the left-hand a go right. `result[i]` is where the strand at place i came from.
 */
function asSeen(cells: readonly string[], peg1AtRight: boolean): number[] {
  const pegs = cells.length
  const from = Array.from({ length: pegs }, (_, place) => place)
  cells.forEach((id, column) => {
    const [, a, b, lean] = /^(\d)\/(\d) (L|R)/.exec(id) ?? []
    if (!a || !b) return
    const width = Number(a) + Number(b)
    const left = peg1AtRight ? pegs - column - width : column
    const places = Array.from({ length: width }, (_, i) => left + i)
    // Whichever group was on the right comes first now: a for a left cross, b for a right one.
    const onTheRight = Number(lean === 'L' ? a : b)
    const now = [...places.slice(width - onTheRight), ...places.slice(0, width - onTheRight)]
    places.forEach((place, i) => (from[place] = now[i] ?? place))
  })
  return from
}

const compose = (first: readonly number[], then: readonly number[]): number[] =>
  then.map((place) => first[place] ?? place)

const identity = (length: number) => Array.from({ length }, (_, i) => i)

function cycleLengths(from: readonly number[]): number[] {
  const seen = new Set<number>()
  return from.flatMap((_, start) => {
    let length = 0
    for (let at = start; !seen.has(at); at = from[at] ?? at) {
      seen.add(at)
      length++
    }
    return length > 0 ? [length] : []
  })
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b))
const lcm = (numbers: readonly number[]): number =>
  numbers.reduce((all, one) => (all * one) / gcd(all, one), 1)

/** Strands by place, left to right as the right side is seen; each called by its first place. */
const strandsSeen = (wales: readonly number[], peg1AtRight: boolean): number[] =>
  peg1AtRight ? wales.map((wale) => wales.length - 1 - wale).reverse() : [...wales]

describe('any stack of crosses', () => {
  const arbitraryCase = fc.tuple(
    fc.array(arbitraryCrossCells(13), { minLength: 1, maxLength: 9 }),
    fc.constantFrom(...directions),
    fc.constantFrom('ring' as const, 'bar' as const),
    fc.constantFrom(...crossings),
  )

  it('puts the strands where the composed permutations say', () => {
    fc.assert(
      fc.property(arbitraryCase, ([rows, direction, shape, crossing]) => {
        const right = direction === 'clockwise'
        const wales = walesOn(endOf(piece(rows, { direction, shape }, { crossing })))
        const composed = rows.map((cells) => asSeen(cells, right)).reduce(compose, identity(13))
        expect(strandsSeen(wales, right)).toEqual(composed)
        // Where each strand has gone is the inverse of where each place's strand comes from.
        const gone = identity(13).map((wale) => wales.indexOf(wale))
        expect(gone).toEqual(invertPermutation(wales))
      }),
    )
  })

  it('over 50 rows too, with every cross up to 4/4', () => {
    const fifty = fc.array(arbitraryCrossCells(24), { minLength: 50, maxLength: 50 })
    fc.assert(
      fc.property(fifty, fc.constantFrom(...directions), (rows, direction) => {
        const right = direction === 'clockwise'
        const wales = walesOn(endOf(piece(rows, { direction })))
        const composed = rows.map((cells) => asSeen(cells, right)).reduce(compose, identity(24))
        expect(strandsSeen(wales, right)).toEqual(composed)
        expect(identity(24).map((wale) => wales.indexOf(wale))).toEqual(invertPermutation(wales))
      }),
      { numRuns: 40 },
    )
  })

  it('is as even or odd as the strands that pass each other', () => {
    fc.assert(
      fc.property(arbitraryCase, ([rows, direction, shape, crossing]) => {
        const wales = walesOn(endOf(piece(rows, { direction, shape }, { crossing })))
        const passes = rows.flat().reduce((sum, id) => {
          const cross = findStitch(id)?.cross
          return sum + (cross ? cross.front * cross.back : 0)
        }, 0)
        expect(permutationParity(wales)).toBe(passes % 2 === 0 ? 1 : -1)
      }),
    )
  })
})

describe('a plait', () => {
  it('is back in order after its period, the least common multiple of its cycles', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 6, max: 16 })
          .chain((pegs) => fc.array(arbitraryCrossCells(pegs), { minLength: 1, maxLength: 4 })),
        fc.constantFrom(...directions),
        (rows, direction) => {
          const right = direction === 'clockwise'
          const places = identity(rows[0]?.length ?? 0)
          const once = rows.map((cells) => asSeen(cells, right)).reduce(compose, places)
          const period = lcm(cycleLengths(once))
          fc.pre(period > 1 && period <= 99)
          const pattern = setBand(piece(rows, { direction }), 0, rows.length - 1, period)
          const { run, passes } = workPattern(pattern)
          const inOrder = run.rows.flatMap(({ after }, index) =>
            passes[index]?.row === rows.length - 1 &&
            walesOn(after).every((wale, peg) => wale === peg)
              ? [(passes[index]?.time ?? 0) + 1]
              : [],
          )
          expect(inOrder).toEqual([period])
        },
      ),
    )
  })

  it('of three strands over two rows comes back after three times', () => {
    // A plait of three: left cross, then right cross of the other pair; common practice.
    const rows = [
      ['2/2 LC', '', '', '', 'k', 'k'],
      ['k', 'k', '2/2 RC', '', '', ''],
    ]
    const { run } = workPattern(setBand(piece(rows), 0, 1, 3))
    const ends = run.rows.filter((_, index) => index % 2 === 1).map(({ after }) => walesOn(after))
    expect(ends.at(-1)).toEqual([0, 1, 2, 3, 4, 5])
    expect(ends[0]).not.toEqual(ends[2])
    expect(ends[1]).not.toEqual(ends[2])
  })
})

/**
 * Crosses on pegs as two loom pages give them: pegs numbered in working order, held loops inside,
 * peg <- old loop, worked right to left. Worked the other way the same peg numbers make the mirror
 * image.
 */
describe.each([
  { seen: '2/1 RC', mirrored: '2/1 LC', loops: [2, 3, 1] },
  { seen: '2/1 LC', mirrored: '2/1 RC', loops: [3, 1, 2] },
  { seen: '2/2 LC', mirrored: '2/2 RC', loops: [3, 4, 1, 2] },
])('published lists of loops: $loops', ({ seen, mirrored, loops }) => {
  const cells = (id: string) => [id, ...loops.slice(1).map(() => '')]
  const inWorkingOrder = (heading: (typeof headings)[number], wales: number[]) =>
    heading === 'forward'
      ? wales.map((wale) => wale + 1)
      : wales.toReversed().map((wale) => loops.length - wale)

  it.each(
    directions.flatMap((direction) =>
      headings.flatMap((heading) =>
        crossings.map((crossing) => ({ direction, heading, crossing })),
      ),
    ),
  )('on a $direction loom, heading $heading, $crossing', ({ direction, heading, crossing }) => {
    const id = runsRightToLeft(direction, heading) ? seen : mirrored
    const plain = loops.map(() => 'k')
    const rows = heading === 'forward' ? [cells(id)] : [plain, cells(id)]
    const pattern = piece(rows, { shape: 'bar', direction }, { crossing })
    const work = workPattern(pattern)
    expect(work.run.rows.at(-1)?.heading).toBe(heading)
    expect(inWorkingOrder(heading, walesOn(work.run.end))).toEqual(loops)
  })
})
