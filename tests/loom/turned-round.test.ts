import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { directions } from '../../src/loom/direction'
import { crossings } from '../../src/loom/row'
import { noWale } from '../../src/loom/strand'
import type { LoomState } from '../../src/loom/state'
import { mirror } from '../../src/pattern/edits/mirror'
import { reverseDirection } from '../../src/pattern/edits/turn-round'
import { workPattern } from '../../src/pattern/work'
import { arbitraryBalancedCells, arbitrarySteadyCells, piece } from './pieces'

/** Stacks from left to right as the right side is seen, each strand's wale called by its first place. */
const picture = ({ stacks }: LoomState, peg1AtRight: boolean) => {
  const last = stacks.length - 1
  const seen = stacks.map((stack) =>
    stack.map(({ kind, wale }) => ({
      kind,
      from: wale === noWale ? null : peg1AtRight ? last - wale : wale,
    })),
  )
  return peg1AtRight ? seen.reverse() : seen
}

const kinds = (state: LoomState, peg1AtRight: boolean) =>
  picture(state, peg1AtRight).map((stack) => stack.map(({ kind }) => kind))

const arbitrarySetup = fc.record({
  shape: fc.constantFrom('ring' as const, 'bar' as const),
  direction: fc.constantFrom(...directions),
})

describe('switching the working direction', () => {
  it('keeps every strand where it is seen, row by row', () => {
    fc.assert(
      fc.property(
        fc.array(arbitrarySteadyCells(12), { minLength: 1, maxLength: 7 }),
        arbitrarySetup,
        fc.constantFrom(...crossings),
        (rows, loom, crossing) => {
          const pattern = piece(rows, loom, { crossing })
          const right = loom.direction === 'clockwise'
          const one = workPattern(pattern).run.rows
          const other = workPattern(reverseDirection(pattern)).run.rows
          one.forEach(({ after }, index) => {
            const state = other[index]?.after
            expect(state && picture(state, !right)).toEqual(picture(after, right))
          })
        },
      ),
    )
  })

  it('keeps what lies on every peg where loops move, begin and end', () => {
    fc.assert(
      fc.property(
        fc.array(arbitraryBalancedCells(12), { minLength: 1, maxLength: 5 }),
        arbitrarySetup,
        (rows, loom) => {
          // Knit front and back draws its new loop to the peg worked next, so it has a side.
          fc.pre(!rows.flat().includes('kfb'))
          const pattern = piece(rows, loom)
          const right = loom.direction === 'clockwise'
          expect(kinds(workPattern(reverseDirection(pattern)).run.end, !right)).toEqual(
            kinds(workPattern(pattern).run.end, right),
          )
        },
      ),
    )
  })

  it('twice gives the piece back', () => {
    fc.assert(
      fc.property(fc.array(arbitrarySteadyCells(9), { minLength: 1, maxLength: 4 }), (rows) => {
        const pattern = piece(rows)
        expect(reverseDirection(reverseDirection(pattern))).toEqual(pattern)
      }),
    )
  })
})

describe('mirroring', () => {
  it('shows every strand at the other side, row by row', () => {
    fc.assert(
      fc.property(
        fc.array(arbitrarySteadyCells(12), { minLength: 1, maxLength: 7 }),
        arbitrarySetup,
        (rows, loom) => {
          const pattern = piece(rows, loom)
          const mirrored = mirror(pattern)
          // As they are seen: a bar is mirrored by beginning at its other end.
          const [right, now] = [pattern, mirrored].map((p) => p.loom.direction === 'clockwise')
          const one = workPattern(pattern).run.rows
          const other = workPattern(mirrored).run.rows
          one.forEach(({ after }, index) => {
            const state = other[index]?.after
            expect(state && picture(state, now === true)).toEqual(picture(after, right !== true))
          })
        },
      ),
    )
  })
})
