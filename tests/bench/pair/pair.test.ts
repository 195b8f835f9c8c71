import { chartOn } from '../../../src/pattern/charts'
import { screen } from '@testing-library/svelte'
import { expect, test } from 'vitest'
import TurnRoundDialog from '../../../src/bench/dialogs/TurnRoundDialog.svelte'
import {
  mirrorCommand,
  paintHere,
  reverseCommand,
  rowCommands,
} from '../../../src/bench/commands/chart'
import { reasonAgainst } from '../../../src/bench/commands/command'
import PlaceMenu from '../../../src/bench/place/PlaceMenu.svelte'
import { followsTheFirst, type Bench } from '../../../src/bench/state/bench.svelte'
import { addChart, setPair } from '../../../src/pattern/edits/piece'
import { paint } from '../../../src/pattern/edits/paint'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import type { Turning } from '../../../src/turning/turnings'
import { cellsOf, show, smallBench } from '../render'
import { stitchOf } from '../../../src/stitches/vocabulary'

const crossed = paint(newPattern(12, 6), stitchOf('2/2 LC'), 2, 0)
const pairBench = () => smallBench(setPair(crossed, 'mirrored'))

const second = (): Bench => {
  const bench = pairBench()
  bench.look('second')
  return bench
}

const preview = (bench: Bench, turning: Turning) => show(TurnRoundDialog, { bench, turning })

test('reversing asks first, shows what changes, and is one step to take back', async () => {
  const bench = smallBench(crossed)
  const { user } = preview(bench, 'reverse')
  reverseCommand.run(bench)
  await screen.findByRole('heading', { name: 'What changes' })
  expect(bench.history.past).toHaveLength(0)
  expect(screen.getByRole('img', { name: /^Now: .*peg 1 at the right/ })).toBeInTheDocument()
  expect(screen.getByRole('img', { name: /^Then: .*peg 1 at the left/ })).toBeInTheDocument()
  await user.click(screen.getByRole('button', { name: 'Reverse the direction' }))
  expect(bench.pattern.loom.direction).toBe('counterclockwise')
  expect(bench.said.text).toBe('The loom is now worked counterclockwise.')
  expect(bench.dialogs).toEqual([])
  bench.undo()
  expect(bench.pattern.loom.direction).toBe('clockwise')
  expect(bench.history.past).toHaveLength(0)
})

test('mirroring that is not wanted leaves all as it is', async () => {
  const bench = smallBench(crossed)
  const { user } = preview(bench, 'mirror')
  mirrorCommand.run(bench)
  await screen.findByText('1 left cross becomes a right cross.')
  await user.click(screen.getByRole('button', { name: 'Leave it as it is' }))
  expect(bench.dialogs).toEqual([])
  expect(bench.history.past).toHaveLength(0)
})

test('a piece that cannot be turned is left as it is, and it is said why', async () => {
  const plain = newPattern(12, 2)
  const bar: Pattern = {
    ...plain,
    loom: { ...plain.loom, shape: 'bar' },
    steps: [
      { kind: 'cast on', how: 'e-wrap', pegs: null },
      { kind: 'pegs', run: { from: 0, to: 5 }, toAndFro: true },
      { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 2 } },
      { kind: 'bind off', how: 'basic', pegs: null },
    ],
  }
  const bench = smallBench(bar)
  preview(bench, 'reverse')
  reverseCommand.run(bench)
  await screen.findByText(/step 3 \(plain rows\) would not begin where the yarn is\.$/)
  expect(screen.queryByRole('button', { name: 'Reverse the direction' })).toBeNull()
  expect(screen.queryByRole('heading', { name: 'What changes' })).toBeNull()
})

test('mirroring a bar piece says which way it is worked then', async () => {
  const bench = smallBench({ ...crossed, loom: { ...crossed.loom, shape: 'bar' } })
  const { user } = preview(bench, 'mirror')
  mirrorCommand.run(bench)
  await user.click(await screen.findByRole('button', { name: 'Mirror the design' }))
  expect(bench.said.text).toBe('The design is mirrored; the loom is now worked counterclockwise.')
})

test('the second is shown in every reading and follows the first', () => {
  const bench = second()
  expect(cellsOf(bench, 2)).toBe('k k k k k k k k 2/2 RC . . .')
  expect(bench.words.lines.some(({ text }) => text.includes('2/2 RC'))).toBe(true)
  expect(bench.piece.work.pattern).toBe(bench.pattern)
  bench.look('first')
  expect(cellsOf(bench, 2)).toBe('2/2 LC . . . k k k k k k k k')
  bench.apply('Paint', (p) => paint(p, stitchOf('p'), 0, 0))
  bench.look('second')
  expect(bench.chart.rows[0]?.cells.at(-1)?.id).toBe('p')
})

test('the current place goes with its stitch', () => {
  const bench = pairBench()
  bench.goTo({ row: 1, peg: 3 })
  bench.look('second')
  expect(bench.spot).toEqual({ row: 1, peg: 8 })
  bench.look('first')
  expect(bench.spot).toEqual({ row: 1, peg: 3 })
})

test('on a bar the current place stays on its peg, which is counted from the other end', () => {
  const bar: Pattern = { ...crossed, loom: { ...crossed.loom, shape: 'bar' } }
  const bench = smallBench(setPair(bar, 'mirrored'))
  bench.goTo({ row: 1, peg: 3 })
  bench.look('second')
  expect(bench.spot).toEqual({ row: 1, peg: 3 })
  expect(cellsOf(bench, 2)).toBe('2/2 RC . . . k k k k k k k k')
})

test('nothing edits the second, and that is what is said', async () => {
  const bench = second()
  const { history } = bench
  paintHere(bench)
  expect(bench.said.text).toBe(followsTheFirst)
  expect(bench.apply('Edit', (p) => ({ ...p, title: 'Other' }))).toBe(false)
  bench.say('Done: Edit.')
  expect(bench.said.text).toBe(followsTheFirst)
  await Promise.resolve()
  bench.say('Next.')
  expect(bench.said.text).toBe('Next.')
  for (const command of rowCommands) expect(reasonAgainst(command, bench)).toBe(followsTheFirst)
  expect(bench.history).toBe(history)
})

test('a number that is typed for the second is not taken', async () => {
  const { user, bench } = show(PlaceMenu, { bench: second() })
  const times = screen.getByLabelText(/Worked/)
  await user.clear(times)
  await user.type(times, '3')
  await user.tab()
  expect(times).toHaveValue('1')
  expect(bench.chart.bands).toEqual([])
})

test('what is taken back is taken back in the first, which is shown', () => {
  const bench = pairBench()
  bench.apply('Paint', (p) => paint(p, stitchOf('p'), 0, 0))
  bench.look('second')
  bench.undo()
  expect(bench.isSecond).toBe(false)
  expect(bench.chart.rows[0]?.cells[0]?.id).toBe('k')
  expect(bench.said.text).toBe('Undone: paint. The first of the pair is shown.')
})

test('without a mirrored pair there is no second to look at', () => {
  const bench = pairBench()
  bench.look('second')
  bench.look('first')
  bench.apply('Change the pair', (p) => setPair(p, 'alike'))
  bench.look('second')
  expect(bench.isSecond).toBe(false)
})

test('another section of the second can be looked at', () => {
  const bench = smallBench(
    setPair(addChart(crossed, 'Leg', chartOn(newPattern(12, 3))), 'mirrored'),
  )
  bench.look('second')
  expect(bench.lookAt('Leg')).toBe(true)
  expect(bench.isSecond).toBe(true)
  expect(bench.chart.rows).toHaveLength(3)
})
