import type { Step } from '../../src/pattern/piece'
import { describe, expect, test } from 'vitest'
import { chartKey } from '../../src/bench/commands/keys'
import { walkCommand } from '../../src/bench/commands/walk'
import { putIntoBooklet, reasonAgainstPictures, picturesOf } from '../../src/booklet/stepPictures'
import { stretchName, walkableSteps } from '../../src/bench/pegs/names'
import { mostRowsInPictures, walkOf, type WalkState } from '../../src/bench/state/walk.svelte'
import type { Bench } from '../../src/bench/state/bench.svelte'
import { paint } from '../../src/pattern/edits/paint'
import { insertRows, setBand } from '../../src/pattern/edits/rows'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { starterCharts } from '../../src/shelf/seeds'
import { handsContext } from '../../src/words/hands/context'
import { sayMove } from '../../src/words/hands/say'
import { smallBench } from './render'
import { stitchOf } from '../../src/stitches/vocabulary'

/** A bench with a walk that is seen. */
function walking(pattern: Pattern = newPattern(12, 6)): { bench: Bench; walk: WalkState } {
  const bench = smallBench(pattern)
  const walk = walkOf(bench)
  walk.shown = true
  return { bench, walk }
}

const withCross = (): Pattern => paint(newPattern(12, 6), stitchOf('2/2 LC'), 2, 4)
const heel = (): Pattern =>
  starterCharts.find(({ id }) => id === 'hundred-steps-heel')?.pattern() ?? newPattern()

const said = ({ pattern }: Bench, { moment, before }: WalkState): string =>
  moment && before ? sayMove(moment, before, handsContext(pattern)) : ''
const stands = ({ stretchIndex, done }: WalkState) => [stretchIndex, done]

test('the walk begins at the stitch of the place and goes where the place is moved', () => {
  const { bench, walk } = walking(withCross())
  expect(stands(walk)).toEqual([0, 1])
  bench.goTo({ row: 2, peg: 7 })
  expect(walk.stretchIndex).toBe(2)
  expect(walk.moment?.site?.peg).toBe(4)
  expect(walk.before?.site?.peg).toBe(3)
  bench.goTo({ row: 4, peg: 11 })
  expect(stands(walk)).toEqual([4, 12])
})

test('the place goes with the walk, and the walk stays at its move', () => {
  const { bench, walk } = walking(withCross())
  bench.goTo({ row: 2, peg: 4 })
  const first = walk.done
  const places: number[] = []
  while (walk.moment?.site?.peg === 4) {
    places.push(bench.spot.peg)
    walk.forward()
  }
  expect(walk.done).toBe(first + places.length)
  expect(places.every((peg) => peg >= 4 && peg <= 7)).toBe(true)
  expect(new Set(places).size).toBe(4)
  expect(bench.spot).toEqual({ row: 2, peg: 8 })
})

test('forward through all rows and back again passes the same moves', () => {
  const { walk } = walking(withCross())
  walk.toMove(0)
  expect(walk.atStart).toBe(true)
  const on: number[][] = [stands(walk)]
  while (walk.forward()) on.push(stands(walk))
  expect(walk.atEnd).toBe(true)
  const back: number[][] = [stands(walk)]
  while (walk.back()) back.push(stands(walk))
  expect(back.toReversed()).toEqual(on)
  const moves = on.filter(([stretch]) => stretch === 2).length
  // Six rows of twelve pegs; the cross adds to its own row only; one moment before all.
  expect(on).toHaveLength(5 * 12 + moves + 1)
})

test('rows: to the start of this one first, then to the one before', () => {
  const { walk } = walking()
  walk.nextRow()
  walk.nextRow()
  walk.toMove(5)
  walk.rowBefore()
  expect(stands(walk)).toEqual([2, 1])
  walk.rowBefore()
  expect(stands(walk)).toEqual([1, 1])
  walk.toMove(Infinity)
  expect(stands(walk)).toEqual([1, 12])
})

test('each working of a band is walked; a place in it is its first working', () => {
  const { bench, walk } = walking(setBand(newPattern(12, 4), 1, 2, 3))
  expect(walk.stretches).toHaveLength(1 + 2 * 3 + 1)
  bench.goTo({ row: 2, peg: 0 })
  expect(walk.stretchIndex).toBe(2)
  for (let move = 0; move < 24; move++) walk.forward()
  expect(bench.spot.row).toBe(2)
  expect(walk.stretchIndex).toBe(4)
  expect(walk.stretch && stretchName(walk.stretch, 'us')).toBe('Round 5')
})

test('an edit elsewhere leaves the walk where it is; one that cuts its row keeps it inside', () => {
  const { bench, walk } = walking(withCross())
  bench.goTo({ row: 2, peg: 4 })
  walk.forward()
  const before = stands(walk)
  bench.apply('Paint', (p) => paint(p, stitchOf('p'), 4, 1))
  expect(stands(walk)).toEqual(before)
  walk.toMove(Infinity)
  bench.apply('Paint', (p) => paint(p, stitchOf('k'), 2, 4))
  expect(stands(walk)).toEqual([2, 12])
})

test('over the turn of a German heel work goes on the other way', () => {
  const { bench, walk } = walking(heel())
  const turned = bench.chart.rows.findIndex(({ end }) => end === 'German turn')
  bench.goTo({ row: turned, peg: 0 })
  walk.toMove(Infinity)
  expect(said(bench, walk)).toMatch(/^Turn back: from here, work/)
  walk.back()
  expect(said(bench, walk)).toMatch(/a German turn/)
  walk.forward()
  const { heading } = walk.moment ?? {}
  const at = walk.stretchIndex
  walk.forward()
  expect(walk.stretchIndex).toBe(at + 1)
  expect(walk.moment?.heading).toBe(heading)
  expect(bench.spot.row).toBe(turned + 1)
})

describe('the whole piece', () => {
  test('is walked from the cast-on to the bind-off, with the place in the rows of the chart', () => {
    const { bench, walk } = walking(withCross())
    bench.goTo({ row: 3, peg: 3 })
    expect(walkableSteps(bench.piece.work).map(({ name }) => name)).toEqual([
      '1. Cast on: e-wrap',
      '2. Chart',
      '3. Bind off: basic',
    ])
    walk.walk('piece', 0)
    expect(said(bench, walk)).toMatch(/^Wind the yarn once round peg 1/)
    expect(bench.spot).toEqual({ row: 3, peg: 3 })
    walk.toMove(Infinity)
    walk.forward()
    expect(bench.spot).toEqual({ row: 0, peg: 0 })
    expect(walk.stretch && stretchName(walk.stretch, 'us')).toBe('Round 1 of Chart')
    walk.walk('piece', 2)
    expect(walk.stretch?.kind).toBe('edge')
    while (walk.forward());
    expect(walk.moment?.stacks.every((stack) => stack.length === 0)).toBe(true)
    expect(said(bench, walk)).toMatch(/^Cut the yarn/)
  })

  test('a place chosen in the chart is found in the piece', () => {
    const { bench, walk } = walking(withCross())
    walk.walk('piece', 2)
    bench.goTo({ row: 1, peg: 6 })
    expect(walk.source).toBe('piece')
    expect(walk.stretch?.chart).toEqual({ chart: 'Chart', row: 1 })
    expect(walk.moment?.site?.peg).toBe(6)
  })
})

describe('step pictures', () => {
  test('are those of the stitch here, or from the mark to here in either order', () => {
    const { bench, walk } = walking(withCross())
    bench.goTo({ row: 2, peg: 5 })
    const [cross] = walk.parts()
    const moments = walk.momentsIn(walk.parts())
    expect(moments.slice(1).every(({ site }) => site?.peg === 4)).toBe(true)
    expect(moments).toHaveLength((cross?.to ?? 0) - (cross?.from ?? 0) + 2)
    walk.toMove(2)
    walk.toggleMark()
    walk.toMove(5)
    // The second move to the fifth, as both are shown; moves count from 0.
    expect(picturesOf(walk.parts())).toEqual([{ chart: 'Chart', row: 2, from: 1, to: 4 }])
    walk.toMove(1)
    expect(picturesOf(walk.parts())).toEqual([{ chart: 'Chart', row: 2, from: 0, to: 1 }])
  })

  test('a mark is taken away from anywhere', () => {
    const { walk } = walking()
    walk.toMove(2)
    walk.toggleMark()
    walk.toMove(9)
    expect(walk.marked?.moment).toBe(1)
    walk.toggleMark()
    expect(walk.marked).toBe(null)
  })

  test('go over rows, and a mark is gone when its row is worked otherwise', () => {
    const { bench, walk } = walking()
    walk.toMove(10)
    walk.toggleMark()
    for (let move = 0; move < 5; move++) walk.forward()
    expect(picturesOf(walk.parts())).toEqual([
      { chart: 'Chart', row: 0, from: 9, to: 11 },
      { chart: 'Chart', row: 1, from: 0, to: 2 },
    ])
    bench.apply('Paint', (p) => paint(p, stitchOf('p'), 0, 0))
    expect(walk.marked).toBe(null)
  })

  test('go into the booklet in one step, once, and edges do not', () => {
    const { bench, walk } = walking()
    walk.toMove(10)
    walk.toggleMark()
    for (let move = 0; move < 5; move++) walk.forward()
    const list = picturesOf(walk.parts()) ?? []
    expect(reasonAgainstPictures(bench.pattern, list)).toBe(null)
    bench.apply('Put', putIntoBooklet(list))
    expect(bench.history.past).toHaveLength(1)
    expect(bench.pattern.pictures).toEqual(list)
    expect(reasonAgainstPictures(bench.pattern, list)).toMatch(/already/)
    walk.walk('piece', 0)
    expect(reasonAgainstPictures(bench.pattern, picturesOf(walk.parts()))).toMatch(/SVG/)
  })

  test('more rows than fit are refused', () => {
    const { walk } = walking(insertRows(newPattern(4, 60), 0))
    walk.toggleMark()
    for (let row = 0; row < mostRowsInPictures; row++) walk.nextRow()
    expect(walk.markedRows).toBe(mostRowsInPictures + 1)
    expect(walk.parts()).toEqual([])
  })
})

test('comma and full stop walk from the chart, when the pegs are shown', () => {
  const { bench, walk } = walking()
  const press = (key: string) => chartKey(bench, new KeyboardEvent('keydown', { key }))
  press('.')
  press('.')
  press(',')
  expect(stands(walk)).toEqual([0, 2])
  walk.shown = false
  press('.')
  expect(stands(walk)).toEqual([0, 2])
  expect(bench.said.text).toMatch(/Choose “Pegs”/)
})

test('at an end the keys say why they do nothing', () => {
  const { bench, walk } = walking()
  walk.toMove(0)
  expect(walkCommand('ArrowLeft')?.reason?.(bench)).toMatch(/before the first move/)
  walk.nextRow()
  while (walk.forward());
  expect(walkCommand('Space')?.reason?.(bench)).toMatch(/last move/)
  expect(walkCommand('Home')?.reason?.(bench)).toBe(null)
})

test('looking at the second of a pair stays at the same step', () => {
  const pattern = newPattern(12, 2)
  const [castOn, chart, bindOff] = pattern.steps as [Step, Step, Step]
  const plain: Step = { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 3 } }
  const piece = {
    ...pattern,
    pair: 'mirrored' as const,
    steps: [castOn, chart, plain, bindOff],
  }
  const { bench, walk } = walking(piece)
  bench.goTo({ row: 1, peg: 4 })
  walk.walk('piece', 2)
  walk.forward()
  const there = [walk.stretch?.step, walk.done]
  bench.look('second')
  expect([walk.stretch?.step, walk.done]).toEqual(there)
  bench.look('first')
  expect([walk.stretch?.step, walk.done]).toEqual(there)
  // The place moved by hand takes the walk along.
  bench.goTo({ row: 0, peg: 3 })
  expect(walk.stretch?.chart?.row).toBe(0)
})
