/** Yarn of a move, in widths and heights of a stitch: our own reckoning, printed with every estimate. */
import { expect, test } from 'vitest'
import { leanOf, yarnOf } from '../../src/loom/length'
import type { Move } from '../../src/loom/move'

const stitch = { width: 5, height: 4 }

test.each<[move: Move, mm: number]>([
  [{ do: 'work', peg: 0, how: 'flat' }, 18],
  [{ do: 'work', peg: 0, how: 'true' }, 18],
  [{ do: 'work', peg: 0, how: 'purl' }, 18],
  [{ do: 'work', peg: 0, how: 'u-wrap' }, 19.25],
  [{ do: 'work', peg: 0, how: 'twisted purl' }, 19.25],
  [{ do: 'work', peg: 0, how: 'e-wrap' }, 23],
  [{ do: 'lay', peg: 0, as: 'yarn over' }, 11.5],
  [{ do: 'lay', peg: 0, as: 'tuck' }, 9],
  [{ do: 'lay', peg: 0, as: 'wrap' }, 10],
  [{ do: 'lay', peg: 0, as: 'German turn' }, 13],
  [{ do: 'draw', from: 0, to: 1 }, 18],
  [{ do: 'pass', peg: 0, yarn: 'inside' }, 5],
  [{ do: 'cast on', peg: 0, how: 'e-wrap', last: false }, 19],
  [{ do: 'cast on', peg: 0, how: 'double e-wrap', last: false }, 33],
  [{ do: 'cast on', peg: 0, how: 'chain', last: false }, 24],
  [{ do: 'cast on', peg: 0, how: 'long-tail', last: false }, 29],
  [{ do: 'cast on', peg: 0, how: 'drawstring', last: false }, 5],
  [{ do: 'let go', peg: 0, how: 'basic' }, 0],
  [{ do: 'let go', peg: 0, how: 'elastic' }, 0],
  [{ do: 'let go', peg: 0, how: 'three-needle' }, 0],
  [{ do: 'let go', peg: 0, how: 'sewn' }, 15],
  [{ do: 'let go', peg: 0, how: 'gather' }, 10],
  [{ do: 'let go', peg: 0, how: 'graft' }, 18],
  [{ do: 'turn' }, 0],
  [{ do: 'lift', peg: 0 }, 0],
])('%o takes %d mm', (move, mm) => {
  expect(yarnOf(move, stitch)).toBe(mm)
})

test('a loop that stands on another peg leans over with both its legs (Pythagoras)', () => {
  expect(leanOf(2, 2, stitch)).toBe(0)
  expect(leanOf(0, 3, { width: 1, height: 4 })).toBe(2 * (5 - 4))
  expect(leanOf(3, 0, { width: 1, height: 4 })).toBe(2 * (5 - 4))
  expect(yarnOf({ do: 'move', from: 1, to: 4, under: false }, { width: 1, height: 4 })).toBe(2)
})
