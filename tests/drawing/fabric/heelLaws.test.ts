import { describe, expect, it } from 'vitest'
import type { PlacedRow } from '../../../src/drawing/fabric/place'
import { reverseDirection } from '../../../src/pattern/edits/turn-round'
import { mostTurns } from '../../../src/pattern/generate/wish'
import type { Pattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { sectionPattern, turnKinds, turnsOf } from '../../pattern/generate/sections'
import { place } from './helpers'

interface Pair {
  readonly own: Pattern
  readonly reversed: Pattern
  readonly turnsAtOneSide: boolean
}

const pairs = [6, 11, 20].flatMap((length, a) =>
  [1, 2, 3].flatMap((step, b) =>
    turnKinds.flatMap((turn, c) =>
      (['heel', 'wedge'] as const).flatMap((shape, d) =>
        (['ring', 'bar', 'first', 'last'] as const).map((where, e): Pair => {
          const loomShape = where === 'ring' ? 'ring' : 'bar'
          const sides = where === 'ring' || where === 'bar' ? 'both' : where
          const before = where === 'last' ? 0 : 1 + ((a + b + d) % 3)
          const after = where === 'first' ? 0 : 1 + ((b + c + e) % 4)
          const run = { from: before, to: before + length - 1 }
          const turned = Math.min(mostTurns(run, step, sides), 1 + ((a + b + c + d) % 4))
          const closeCorners = (a + c + e) % 2 === 0
          const direction = (a + d + e) % 2 === 0 ? 'clockwise' : 'counterclockwise'
          const own = sectionPattern(
            { shape, turn, run, step, turned, sides, closeCorners, beside: null },
            { pegs: before + length + after, shape: loomShape, direction },
          )
          const reversed = reverseDirection(own)
          return { own, reversed, turnsAtOneSide: sides !== 'both' }
        }),
      ),
    ),
  ),
)

/** The same wale stands in the middle of both. */
function bothPlaced({ own, reversed }: Pair): [readonly PlacedRow[], readonly PlacedRow[]] {
  const { pegs } = own.loom
  const middle = Math.floor(pegs / 2)
  return [place(own, middle), place(reversed, pegs - 1 - middle)]
}

const byWale = (rows: readonly PlacedRow[]): string[] =>
  rows.flatMap(({ loops }) => loops.map(({ home, kind }) => `${home} ${kind}`)).sort()

const walesOf = (row: PlacedRow | undefined) => row?.loops.map(({ home }) => home)

/**
 * Reversing the direction leaves whole rows as they are, loop by loop (see laws.test.ts). Of short
 * rows less is true: peg 1 is at the other end then, and the yarn with it. The first row comes to
 * the heel from there, so of each two turns the one at the other side is the first, and a loop
 * beside a turn belongs to the row before or after the one it belonged to. No wale can tell: it has
 * the same loops and the same strands of turns.
 */
describe('reversing the working direction of short rows', () => {
  it('leaves each wale its loops and its strands of turns', () => {
    for (const pair of pairs) {
      expect(pair.reversed.loom.direction).not.toBe(pair.own.loom.direction)
      const [own, reversed] = bothPlaced(pair)
      expect(byWale(reversed)).toEqual(byWale(own))
      // The cast-on and the row over all the pegs that ends the section are whole rows.
      expect(reversed).toHaveLength(own.length)
      for (const end of [0, -1]) {
        expect(walesOf(own.at(end))).toHaveLength(pair.own.loom.pegs)
        expect(walesOf(reversed.at(end))).toEqual(walesOf(own.at(end)))
      }
    }
  })

  it('begins them from the other end: of two turns at two sides the second is the first', () => {
    for (const { own, reversed, turnsAtOneSide } of pairs) {
      // Counted from the same end of the fabric.
      const turns = turnsOf(workPattern(own)).map(({ peg }) => peg)
      const others = turnsOf(workPattern(reversed)).map(({ peg }) => own.loom.pegs - 1 - peg)
      const swapped = turns.map((_, at) => turns[at % 2 === 0 ? at + 1 : at - 1])
      expect(others).toEqual(turnsAtOneSide ? turns : swapped)
    }
  })
})
