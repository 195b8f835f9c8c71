import { render } from '@testing-library/svelte'
import { expect, test } from 'vitest'
import PlaceMarks from '../../src/bench/charts/PlaceMarks.svelte'
import { flatChart } from '../../src/drawing/flat'
import { placeMark } from '../../src/drawing/geometry'
import { setColumns } from '../../src/pattern/edits/columns'
import { paint } from '../../src/pattern/edits/paint'
import { newPattern } from '../../src/pattern/pattern'
import { smallBench } from './render'
import { stitchOf } from '../../src/stitches/vocabulary'

/** What is framed as going when the pointer or the current place is on a peg of round 3. */
function framed(
  peg: number,
  hold: Partial<Pick<ReturnType<typeof smallBench>, 'hand' | 'stitch'>>,
  by: 'pointer' | 'place' | 'marked' = 'pointer',
) {
  // A 2/2 left cross on pegs 5 to 8, and one that the edge cuts on pegs 9 and 10.
  const whole = paint(paint(newPattern(12, 6), stitchOf('2/2 LC'), 2, 4), stitchOf('2/2 LC'), 2, 8)
  const bench = Object.assign(smallBench(setColumns(whole, 10)), hold)
  if (by === 'pointer') bench.hover = { row: 2, peg }
  else bench.goTo({ row: 2, peg }, by === 'marked' ? { row: 2, peg: 0 } : null)
  const { geometry } = flatChart(bench.work, {})
  const { container, unmount } = render(PlaceMarks, { props: { bench, geometry } })
  const frames = [...container.querySelectorAll('.goes')].map((path) => path.getAttribute('d'))
  unmount()
  return {
    frames,
    of: (from: number, pegs: number) => placeMark(geometry, 2, from, pegs)?.d,
  }
}

test.each([
  { hand: 'paint', stitch: stitchOf('p') },
  { hand: 'erase', stitch: stitchOf('p') },
] as const)('with $hand over a part of a cross the whole cross is framed that goes', (hold) => {
  const inside = framed(6, hold)
  expect(inside.frames).toEqual([inside.of(4, 4)])
  const cut = framed(9, hold)
  expect(cut.frames).toEqual([cut.of(8, 2)])
  expect(framed(2, hold).frames).toEqual([])
})

test('a wide stitch frames the cross of which it covers a part, and none whose place it takes', () => {
  const between = framed(6, { hand: 'paint', stitch: stitchOf('2/2 RC') })
  expect(between.frames).toEqual([between.of(4, 4)])
  expect(framed(4, { hand: 'paint', stitch: stitchOf('2/2 RC') }).frames).toEqual([])
  expect(framed(6, { hand: 'pick up', stitch: stitchOf('p') }).frames).toEqual([])
})

test.each(['p', '2/2 RC'])(
  'by keyboard %s frames what it would take from the current place',
  (id) => {
    const stitch = stitchOf(id)
    const inside = framed(6, { hand: 'paint', stitch }, 'place')
    expect(inside.frames).toEqual([inside.of(4, 4)])
    expect(framed(2, { hand: 'paint', stitch: stitchOf('p') }, 'place').frames).toEqual([])
    // Enter fills all that is marked: the place alone would not tell what goes.
    expect(framed(6, { hand: 'paint', stitch }, 'marked').frames).toEqual([])
  },
)
