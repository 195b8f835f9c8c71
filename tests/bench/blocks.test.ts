import { screen } from '@testing-library/svelte'
import { expect, test } from 'vitest'
import SwapPanel from '../../src/bench/block/SwapPanel.svelte'
import { chartKey } from '../../src/bench/commands/keys'
import { runCommand } from '../../src/bench/commands/command'
import { cutCommand, moveCommand, pasteEvent } from '../../src/bench/commands/blocks/clipboard'
import { flipCommand, turnCommand } from '../../src/bench/commands/blocks/shapes'
import { countIn, swapFor, swappable } from '../../src/bench/commands/blocks/swapping'
import { followsTheFirst, type Bench } from '../../src/bench/state/bench.svelte'
import { paint } from '../../src/pattern/edits/paint'
import { setRepeat } from '../../src/pattern/edits/columns'
import { newPattern } from '../../src/pattern/pattern'
import { stitchOf } from '../../src/stitches/vocabulary'
import { cellsOf, show, smallBench } from './render'

const press = (bench: Bench, key: string, held: KeyboardEventInit = {}): void =>
  chartKey(bench, new KeyboardEvent('keydown', { key, cancelable: true, ...held }))

/** A ring of 12 pegs with a 2/2 left cross on pegs 5 to 8 of round 3. */
const crossed = (): Bench => smallBench(paint(newPattern(12, 6), stitchOf('2/2 LC'), 2, 4))

test('a mark takes crosses whole', () => {
  const bench = crossed()
  bench.goTo({ row: 2, peg: 5 }, { row: 1, peg: 2 })
  expect(bench.marked).toEqual({ rows: { from: 1, to: 2 }, columns: { from: 2, to: 7 } })
})

test('a block is moved by arrows, put by Enter, and that is one step to take back', () => {
  const bench = crossed()
  bench.goTo({ row: 2, peg: 5 })
  runCommand(moveCommand, bench)
  press(bench, 'ArrowUp')
  press(bench, 'ArrowLeft')
  expect(cellsOf(bench, 2)).toContain('2/2 LC')
  press(bench, 'Enter')
  expect(cellsOf(bench, 3)).toBe('k k k k k 2/2 LC . . . k k k')
  expect(cellsOf(bench, 2)).not.toContain('LC')
  expect(bench.history.past).toHaveLength(1)
  // It stands elsewhere: nothing was painted over.
  expect(bench.said.text).not.toMatch(/painted over/)
  bench.undo()
  expect(cellsOf(bench, 2)).toBe('k k k k 2/2 LC . . . k k k k')
})

test('a shift that would cut says so and offers the next place where it would not', () => {
  const bench = crossed()
  bench.apply('Repeat', (p) => setRepeat(p, { from: 0, to: 7 }))
  bench.goTo({ row: 2, peg: 0 })
  press(bench, 'ArrowLeft', { altKey: true })
  expect(bench.block.question).toMatchObject({
    says: 'Would cut 2/2 LC, round 3',
    instead: { label: '3 pegs on', key: 'ArrowLeft' },
  })
  expect(cellsOf(bench, 2)).toContain('2/2 LC')
  press(bench, 'ArrowLeft')
  expect(cellsOf(bench, 2)).toBe('2/2 LC . . . k k k k k k k k')
})

test('what cannot be turned is named, and left only where that is wanted', () => {
  const bench = smallBench(paint(newPattern(12, 6), stitchOf('k2tog'), 0, 2))
  bench.goTo({ row: 0, peg: 0 }, { row: 1, peg: 2 })
  runCommand(turnCommand, bench)
  expect(bench.block.question?.says).toBe('k2tog cannot be turned half round')
  press(bench, 'Escape')
  expect(bench.history.past).toEqual([])
  runCommand(turnCommand, bench)
  press(bench, 'Enter')
  expect(cellsOf(bench, 1)).toBe('k2tog k k k k k k k k k k k')
})

test('a question goes with the next step, and the preview with the chart', () => {
  const bench = crossed()
  bench.goTo({ row: 2, peg: 7 })
  press(bench, 'Delete', { altKey: true })
  expect(bench.block.question?.says).toBe('Would cut 2/2 LC, round 3')
  bench.apply('Paint', (p) => paint(p, stitchOf('p'), 0, 0))
  expect(bench.block.question).toBeNull()
  runCommand(moveCommand, bench)
  bench.open(newPattern(8, 4), 'Open')
  expect(bench.block.preview).toBeNull()
})

test('a repeat that would cut a cross asks first', () => {
  const bench = crossed()
  bench.goTo({ row: 0, peg: 0 }, { row: 0, peg: 5 })
  press(bench, 'r')
  expect(bench.chart.repeat).toBeNull()
  expect(bench.block.question?.says).toBe('Would cut 2/2 LC, round 3')
  press(bench, 'Enter')
  expect(bench.chart.repeat).toEqual({ from: 0, to: 5 })
})

test('the second of a pair is only read', () => {
  const bench = crossed()
  bench.apply('Pair', (p) => ({ ...p, pair: 'mirrored' as const }))
  bench.look('second')
  for (const command of [cutCommand, moveCommand, flipCommand, turnCommand]) {
    bench.say('')
    runCommand(command, bench)
    expect(bench.said.text).toBe(followsTheFirst)
  }
  expect(bench.block.preview).toBeNull()
})

test('a stitch is swapped for the one in the hand, here, in the chart or in the piece', async () => {
  const bench = crossed()
  bench.stitch = stitchOf('2/2 RC')
  const { user } = show(SwapPanel, { bench })
  await user.click(screen.getByRole('button', { name: 'Swap' }))
  expect(swappable(bench).map(({ id }) => id)).toEqual(['2/2 LC'])
  bench.goTo({ row: 0, peg: 0 })
  swapFor(bench, stitchOf('2/2 LC'), 'here')
  expect(bench.history.past).toEqual([])
  swapFor(bench, stitchOf('2/2 LC'), 'chart')
  expect(cellsOf(bench, 2)).toBe('k k k k 2/2 RC . . . k k k k')
  expect(bench.said.text).toBe('1 2/2 LC swapped for 2/2 RC.')
  bench.stitch = stitchOf('p')
  bench.goTo({ row: 0, peg: 0 }, { row: 0, peg: 2 })
  expect(countIn(bench, stitchOf('k'), 'here')).toBe(3)
  swapFor(bench, stitchOf('k'), 'here')
  expect(cellsOf(bench, 0)).toBe('p p p k k k k k k k k k')
})

test('words that are pasted lie on the chart; the text of a file is left to whoever opens it', () => {
  const bench = crossed()
  const paste = (text: string) => {
    let taken = false
    pasteEvent(bench, {
      clipboardData: { getData: () => text, files: [] },
      defaultPrevented: false,
      preventDefault: () => (taken = true),
    } as unknown as ClipboardEvent)
    return taken
  }
  expect(paste('{ "pegwright": 5 }')).toBe(false)
  expect(bench.block.preview).toBeNull()
  expect(paste('Rnd 1: k2, p2.')).toBe(true)
  expect(bench.block.preview?.block.columns).toBe(4)
})
