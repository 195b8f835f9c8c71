import { describe, expect, test } from 'vitest'
import { Typing } from '../../src/bench/widgets/typing'
import { benchKey, chartCommands, chartKey } from '../../src/bench/commands/keys'
import { historyCommands } from '../../src/bench/commands/history'
import { setEnd, setRun } from '../../src/pattern/edits/turning'
import { trayItems } from '../../src/bench/state/tray'
import type { Bench } from '../../src/bench/state/bench.svelte'
import { cellsOf, smallBench } from './render'
import { stitchOf } from '../../src/stitches/vocabulary'

const press = (bench: Bench, key: string, held: KeyboardEventInit = {}): void =>
  chartKey(bench, new KeyboardEvent('keydown', { key, cancelable: true, ...held }))

test('arrows move the place as the right side is seen: left is on, on a clockwise loom', () => {
  const bench = smallBench()
  press(bench, 'ArrowLeft')
  press(bench, 'ArrowUp')
  expect(bench.spot).toEqual({ row: 1, peg: 1 })
  press(bench, 'ArrowRight')
  press(bench, 'ArrowRight')
  expect(bench.spot).toEqual({ row: 1, peg: 11 })
})

test('a letter takes a stitch into the hand and Enter puts it down', () => {
  const bench = smallBench()
  press(bench, 'y')
  press(bench, 'Enter')
  expect(cellsOf(bench, 0)).toBe('yo k k k k k k k k k k k')
  press(bench, 'Delete')
  expect(cellsOf(bench, 0)).toBe('k k k k k k k k k k k k')
})

test('a stitch that is picked up is named in the terms of the piece', () => {
  const bench = smallBench()
  press(bench, '\\')
  press(bench, 'Enter')
  bench.apply('Terms', (p) => ({ ...p, style: { ...p.style, terms: 'uk' } }))
  press(bench, 'i')
  expect(bench.said.text).toBe('In hand: slip one, knit one, pass slipped stitch over.')
})

test('a stitch that cannot land says why and changes nothing', () => {
  const bench = smallBench()
  bench.stitch = stitchOf('2/2 LC')
  press(bench, 'End')
  press(bench, 'Enter')
  expect(bench.said.text).toBe('2/2 LC needs 4 pegs; only 1 is left before the end of the round.')
  expect(bench.history.past).toEqual([])
})

test('rows and columns that are marked are copied and repeated', () => {
  const bench = smallBench()
  press(bench, 'p')
  press(bench, 'Enter')
  press(bench, 'ArrowUp', { shiftKey: true })
  press(bench, 'd')
  expect(bench.chart.rows).toHaveLength(8)
  expect(cellsOf(bench, 2)).toBe('p k k k k k k k k k k k')
  press(bench, 'Home')
  press(bench, 'ArrowLeft', { shiftKey: true })
  press(bench, 'r')
  expect(bench.chart.repeat).toEqual({ from: 0, to: 1 })
})

test('marked columns fill the loom, and undo brings the others back', () => {
  const bench = smallBench()
  press(bench, 'p')
  press(bench, 'Enter')
  for (let column = 0; column < 3; column++) press(bench, 'ArrowLeft', { shiftKey: true })
  press(bench, 'R', { shiftKey: true })
  expect(cellsOf(bench, 0)).toBe('p k k k')
  expect(bench.chart.repeat).toEqual({ from: 0, to: 3 })
  expect(bench.work.layout).toMatchObject({ copies: 3, over: 0 })
  bench.undo()
  expect(bench.chart).toMatchObject({ columns: 12, repeat: null })
})

test('a row put in after a turn starts beside the yarn and goes back', () => {
  const bench = smallBench()
  bench.apply('Turn', (p) => setEnd(setRun(p, 0, { from: 0, to: 5 }), 0, 'German turn'))
  press(bench, 'Insert')
  // The turned peg keeps its strand: work goes back from its neighbour (common practice).
  expect(bench.chart.rows[1]?.run).toEqual({ from: 0, to: 4 })
  expect(bench.work.firstRuns[1]).toMatchObject({ heading: 'back', faults: [] })
})

test('a command that cannot run says why', () => {
  const bench = smallBench()
  bench.goTo({ row: 0, peg: 0 }, { row: 5, peg: 0 })
  press(bench, 'Backspace', { ctrlKey: true })
  expect(bench.said.text).toBe('A chart keeps at least one round.')
  expect(bench.chart.rows).toHaveLength(6)
})

test('undo and redo give back the very versions', () => {
  const bench = smallBench()
  const first = bench.first
  press(bench, 'Enter')
  const second = bench.first
  const key = (init: KeyboardEventInit) => {
    const event = new KeyboardEvent('keydown', { cancelable: true, ...init })
    Object.defineProperty(event, 'target', { value: document.body })
    benchKey(bench, new Typing(), event)
  }
  key({ key: 'z', ctrlKey: true })
  expect(bench.first).toBe(first)
  key({ key: 'Z', ctrlKey: true, shiftKey: true })
  expect(bench.first).toBe(second)
})

test('no key means two things', () => {
  const keys = [
    ...chartCommands.flatMap((command) => command.keys),
    ...historyCommands.flatMap((command) => command.keys),
    ...trayItems(smallBench().pattern, stitchOf('p')).flatMap(({ key }) => key ?? []),
  ]
  expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([])
})

describe('with rows and columns marked', () => {
  const shift = { shiftKey: true }
  const marked = (stitch: string) => {
    const bench = smallBench()
    bench.stitch = stitchOf(stitch)
    bench.goTo({ row: 1, peg: 0 })
    press(bench, 'ArrowUp', shift)
    for (let column = 0; column < 4; column++) press(bench, 'ArrowLeft', shift)
    return bench
  }

  test('Enter fills them, Delete empties them, each in one step', () => {
    const bench = marked('p')
    press(bench, 'Enter')
    const filled = 'p p p p p k k k k k k k'
    expect([0, 1, 2, 3].map((row) => cellsOf(bench, row))).toEqual([
      'k k k k k k k k k k k k',
      filled,
      filled,
      'k k k k k k k k k k k k',
    ])
    expect(bench.history.past).toHaveLength(1)
    press(bench, 'Delete')
    expect(cellsOf(bench, 1)).toBe('k k k k k k k k k k k k')
    expect(bench.history.past).toHaveLength(2)
  })

  test('a cross goes in as often as it has room, and says so where it has none', () => {
    const bench = marked('1/1 LC')
    press(bench, 'Enter')
    expect(cellsOf(bench, 1)).toBe('1/1 LC . 1/1 LC . k k k k k k k k')
    bench.stitch = stitchOf('3/3 LC')
    press(bench, 'Enter')
    expect(bench.said.text).toMatch(/the marked pegs have no room for it/)
    expect(cellsOf(bench, 1)).toBe('1/1 LC . 1/1 LC . k k k k k k k k')
  })

  test('a repeat of them fills the loom, marked or not', () => {
    const bench = smallBench()
    bench.goTo({ row: 0, peg: 0 })
    for (let column = 0; column < 3; column++) press(bench, 'ArrowLeft', shift)
    press(bench, 'r')
    press(bench, 'R', shift)
    expect(bench.chart.columns).toBe(4)
    expect(bench.chart.repeat).toEqual({ from: 0, to: 3 })
    expect(bench.said.text).toBe(
      'The 4-peg repeat now goes 3 times round the loom; the other stitches are gone.',
    )
  })

  test('a repeat that does not fit the loom leaves the chart as it is and says what fits', () => {
    const bench = smallBench()
    bench.goTo({ row: 0, peg: 0 })
    for (let column = 0; column < 4; column++) press(bench, 'ArrowLeft', shift)
    const before = bench.pattern
    press(bench, 'R', shift)
    expect(bench.pattern).toBe(before)
    expect(bench.said.text).toBe(
      'The repeat is 5 sts; on 12 pegs it must be 4 or 6; it fits a loom with 10 or 15 pegs.',
    )
  })
})

test('the keys of the whole piece work wherever the focus is, and in dialogs only keep the browser out', () => {
  const bench = smallBench()
  const done: string[] = []
  bench.files = { open: () => done.push('open'), save: () => done.push('save') }
  const field = document.createElement('input')
  const key = (name: string) => {
    const event = new KeyboardEvent('keydown', { key: name, ctrlKey: true, cancelable: true })
    Object.defineProperty(event, 'target', { value: field })
    benchKey(bench, new Typing(), event)
    return event.defaultPrevented
  }
  expect([key('s'), key('o'), key('p')]).toEqual([true, true, true])
  expect(done).toEqual(['save', 'open'])
  expect(bench.dialogs).toEqual(['booklet'])
  expect(key('s')).toBe(true)
  expect(done).toEqual(['save', 'open'])
})
