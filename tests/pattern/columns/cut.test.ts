/** Why a cross does not stand whole on its pegs. */
import { expect, test } from 'vitest'
import { whyCut } from '../../../src/pattern/columns/cut'
import { layOut } from '../../../src/pattern/layout'
import { blankRow, type LoomSetup, type Run } from '../../../src/pattern/pattern'
import { placed } from '../../../src/pattern/row'
import { stitchOf } from '../../../src/stitches/vocabulary'
import { cellsFrom } from '../../cells'

const k = (count: number): string[] => new Array<string>(count).fill('k')
const rope = ['2/2 LC', '', '', '']
const why = (
  ids: readonly string[],
  {
    pegs = ids.length,
    repeat = null,
    run = null,
    shape = 'ring',
  }: Partial<{ pegs: number; repeat: Run | null; run: Run | null; shape: LoomSetup['shape'] }> = {},
) => {
  const row = { ...blankRow(ids.length, stitchOf('k')), cells: cellsFrom(ids), run }
  const cross = placed(row).find(({ stitch }) => stitch.width > 1)
  return cross && whyCut(cross, row, layOut({ columns: ids.length, repeat }, pegs, shape))
}

test.each<[what: string, cut: ReturnType<typeof why>, is: ReturnType<typeof why>]>([
  ['whole', why([...k(2), ...rope, ...k(2)]), null],
  ['whole at the first and at the last peg', why(rope), null],
  ['under the stitch beside it', why([...k(2), ...rope.slice(0, 3), ...k(3)]), 'overlap'],
  ['at the end of a round', why([...k(5), ...rope.slice(0, 3)]), 'join'],
  ['at the edge of a bar', why([...k(5), ...rope.slice(0, 3)], { shape: 'bar' }), 'bar edge'],
  ['into the repeat', why([...k(1), ...rope, ...k(3)], { repeat: { from: 4, to: 6 } }), 'repeat'],
  ['before the repeat', why([...k(1), ...rope, ...k(3)], { repeat: { from: 5, to: 7 } }), null],
  ['out of the repeat', why([...k(1), ...rope, ...k(3)], { repeat: { from: 0, to: 3 } }), 'repeat'],
  [
    'to the end of the repeat',
    why([...k(1), ...rope, ...k(3)], { repeat: { from: 0, to: 4 } }),
    null,
  ],
  ['after the repeat', why([...k(1), ...rope, ...k(3)], { repeat: { from: 0, to: 0 } }), null],
  [
    'by what stands right behind the repeat',
    why([...k(1), ...rope.slice(0, 2), ...k(3)], { repeat: { from: 0, to: 2 } }),
    'repeat',
  ],
  [
    'inside the repeat by what stands beside it',
    why([...k(1), ...rope.slice(0, 2), ...k(3)], { repeat: { from: 0, to: 3 } }),
    'overlap',
  ],
  [
    'at the end of a repeat that comes again',
    why([...k(6), ...rope.slice(0, 2)], { pegs: 16, repeat: { from: 0, to: 7 } }),
    'repeat',
  ],
  [
    'at the end of a repeat that goes once round',
    why([...k(6), ...rope.slice(0, 2)], { repeat: { from: 0, to: 7 } }),
    'join',
  ],
  ['inside its row', why([...k(2), ...rope, ...k(2)], { run: { from: 2, to: 5 } }), null],
  [
    'at the end of its row',
    why([...k(2), ...rope, ...k(2)], { run: { from: 0, to: 4 } }),
    'run edge',
  ],
  [
    'at the start of its row',
    why([...k(2), ...rope, ...k(2)], { run: { from: 3, to: 7 } }),
    'run edge',
  ],
  [
    'on its last peg in the row',
    why([...k(2), ...rope, ...k(2)], { run: { from: 5, to: 7 } }),
    'run edge',
  ],
  ['outside its row', why([...k(2), ...rope, ...k(2)], { run: { from: 6, to: 7 } }), null],
])('%s', (_, cut, is) => {
  expect(cut).toBe(is)
})
