import { setWords } from '../../src/pattern/edits/words'
import { namedOn } from '../../src/pattern/charts'
import { screen } from '@testing-library/svelte'
import { expect, test } from 'vitest'
import { doneSaid } from '../../src/languages/english/done'
import { chartKey } from '../../src/bench/commands/keys'
import Findings from '../../src/bench/findings/Findings.svelte'
import Said from '../../src/bench/widgets/Said.svelte'
import { pressOn } from '../../src/bench/charts/press'
import type { Bench } from '../../src/bench/state/bench.svelte'
import { flatChart } from '../../src/drawing/flat'
import { setColumns } from '../../src/pattern/edits/columns'
import { paint } from '../../src/pattern/edits/paint'
import { newPattern } from '../../src/pattern/pattern'
import { cellsOf, show, smallBench } from './render'
import { stitchOf } from '../../src/stitches/vocabulary'

const press = (bench: Bench, key: string, held: KeyboardEventInit = {}): void =>
  chartKey(bench, new KeyboardEvent('keydown', { key, cancelable: true, ...held }))

/** A ring of 12 pegs with a 2/2 left cross on pegs 5 to 8 of round 3, and so on of other rounds. */
const crossed = (...rounds: number[]): Bench =>
  smallBench(
    rounds.reduce(
      (pattern, round) => paint(pattern, stitchOf('2/2 LC'), round - 1, 4),
      newPattern(12, 6),
    ),
  )
const gone = 'The 2/2 LC in round 3 was painted over. Undo brings it back.'

test('a stitch painted over a part of a cross says what was painted over', () => {
  const bench = crossed(3)
  bench.stitch = stitchOf('p')
  bench.goTo({ row: 2, peg: 6 })
  press(bench, 'Enter')
  expect(cellsOf(bench, 2)).toBe('k k k k k k p k k k k k')
  expect(bench.said.text).toBe(gone)
  bench.undo()
  expect(cellsOf(bench, 2)).toBe('k k k k 2/2 LC . . . k k k k')
})

test('so does Plain, and a block that is filled or made plain', () => {
  const plain = crossed(3)
  plain.goTo({ row: 2, peg: 7 })
  press(plain, 'Delete')
  expect(plain.said.text).toBe(gone)

  for (const key of ['Enter', 'Delete']) {
    const bench = crossed(3)
    bench.stitch = stitchOf('p')
    bench.goTo({ row: 2, peg: 5 }, { row: 1, peg: 2 })
    press(bench, key)
    expect(bench.said.text).toBe(gone)
  }
})

test('several are named together, many are counted', () => {
  const two = crossed(2, 4)
  two.stitch = stitchOf('p')
  two.goTo({ row: 0, peg: 5 }, { row: 5, peg: 5 })
  press(two, 'Enter')
  expect(two.said.text).toBe(
    'The 2/2 LC in round 2 and the 2/2 LC in round 4 were painted over. Undo brings them back.',
  )
  const many = crossed(1, 2, 3, 4)
  many.stitch = stitchOf('p')
  many.goTo({ row: 0, peg: 5 }, { row: 5, peg: 5 })
  press(many, 'Enter')
  expect(many.said.text).toBe('4 crosses in 4 rounds were painted over. Undo brings them back.')
})

test('two of one kind in one round are said as two', () => {
  const bench = smallBench(
    [1, 5].reduce((pattern, peg) => paint(pattern, stitchOf('2/1 RC'), 2, peg), newPattern(12, 6)),
  )
  bench.stitch = stitchOf('p')
  bench.goTo({ row: 2, peg: 2 }, { row: 2, peg: 6 })
  press(bench, 'Enter')
  expect(bench.said.text).toBe('Two 2/1 RC in round 3 were painted over. Undo brings them back.')
})

test('a cross that another of its size takes the place of is swapped, not lost', () => {
  const bench = crossed(3)
  bench.stitch = stitchOf('2/2 RC')
  bench.goTo({ row: 2, peg: 4 })
  press(bench, 'Enter')
  expect(bench.said.text).toBe('')
})

test('a stitch painted over what an edge has left of a cross says so too', () => {
  const bench = crossed(3)
  // Away with pegs 7 and 8: the cross is cut.
  bench.goTo({ row: 2, peg: 7 })
  press(bench, 'Delete', { altKey: true })
  press(bench, 'Enter')
  expect(bench.said.text).toBe('The 2/2 LC in round 3 is cut. Undo brings it back.')
  const cut = cellsOf(bench, 2)
  bench.stitch = stitchOf('p')
  bench.goTo({ row: 2, peg: 5 })
  press(bench, 'Enter')
  expect(bench.said.text).toBe('The cut 2/2 LC in round 3 was painted over. Undo brings it back.')
  bench.undo()
  expect(cellsOf(bench, 2)).toBe(cut)
  // A stitch beside it takes nothing away.
  bench.goTo({ row: 2, peg: 1 })
  press(bench, 'Enter')
  expect(bench.said.text).not.toContain('2/2 LC')
})

test('of two alike, one whole and one cut, the one that went is named', () => {
  const both = () => {
    const pattern = paint(
      paint(newPattern(12, 6), stitchOf('2/2 LC'), 2, 4),
      stitchOf('2/2 LC'),
      2,
      8,
    )
    return smallBench(setColumns(pattern, 10))
  }
  for (const [peg, name] of [
    [5, 'The 2/2 LC'],
    [8, 'The cut 2/2 LC'],
  ] as const) {
    const bench = both()
    expect(cellsOf(bench, 2)).toBe('k k k k 2/2 LC . . . 2/2 LC .')
    bench.stitch = stitchOf('p')
    bench.goTo({ row: 2, peg })
    press(bench, 'Enter')
    expect(bench.said.text).toBe(`${name} in round 3 was painted over. Undo brings it back.`)
  }
})

test('pegs that come in or go say which cross they cut', () => {
  const wider = crossed(3)
  wider.goTo({ row: 0, peg: 5 })
  press(wider, 'Insert', { altKey: true })
  expect(wider.said.text).toBe('The 2/2 LC in round 3 is cut. Undo brings it back.')

  const turned = crossed(3)
  turned.goTo({ row: 2, peg: 7 })
  press(turned, 'Delete', { altKey: true })
  expect(turned.block.question?.says).toBe('Would cut 2/2 LC, round 3')
  press(turned, 'Enter')
  expect(turned.said.text).toBe('The 2/2 LC in round 3 is cut. Undo brings it back.')
})

test('a drag tells of all that it took, once for each', () => {
  const bench = crossed(3, 4)
  bench.stitch = stitchOf('p')
  const { geometry } = flatChart(bench.work, {})
  const svg = {
    getScreenCTM: () => ({ inverse: () => new DOMMatrix() }),
    setPointerCapture: () => undefined,
    hasPointerCapture: () => false,
  } as unknown as SVGSVGElement
  const pointer = pressOn(bench, () => geometry, svg)
  const at = (row: number, peg: number) => {
    const [clientX = 0, clientY = 0] = geometry.centre(row, peg) ?? []
    return { button: 0, pointerId: 1, pointerType: 'mouse', clientX, clientY } as PointerEvent
  }
  pointer.down(at(2, 5))
  expect(bench.said.text).toBe(gone)
  pointer.move(at(3, 5))
  expect(bench.said.text).toBe(
    'The 2/2 LC in round 3 and the 2/2 LC in round 4 were painted over. Undo brings them back.',
  )
  expect(bench.canTakeBack).toBe(true)
  pointer.up(at(3, 5))
  expect(bench.history.past).toHaveLength(1)
})

test('what is said has a button that takes it back, until something else is done', async () => {
  const { user, bench } = show(Said, { bench: crossed(3) })
  bench.stitch = stitchOf('p')
  bench.goTo({ row: 2, peg: 6 })
  press(bench, 'Enter')
  expect(await screen.findByRole('status')).toHaveTextContent(gone)
  await user.click(await screen.findByRole('button', { name: 'Undo' }))
  expect(cellsOf(bench, 2)).toBe('k k k k 2/2 LC . . . k k k k')
  expect(screen.queryByRole('button', { name: 'Undo' })).toBeNull()

  press(bench, 'Enter')
  await screen.findByRole('button', { name: 'Undo' })
  bench.goTo({ row: 0, peg: 0 })
  press(bench, 'Enter')
  await expect.poll(() => screen.queryByRole('button', { name: 'Undo' })).toBeNull()
})

test('a mend that takes a cross away says that too', async () => {
  // Words that purl peg 6 of round 3, where the chart has a cross.
  const bench = crossed(3)
  bench.apply('Write words', (p) => setWords(p, 'Rnd 3: k5, p1, k6.\n'))
  const { user } = show(Findings, { bench })
  const found = bench.wording.findings.find(({ message }) => message.includes('2/2 LC'))
  // The mend that changes the chart, not the words.
  const label = found?.fixes.find(
    ({ edit }) => namedOn(edit(bench.pattern)).words === bench.work.words,
  )?.label
  expect(label).toBeDefined()
  const mend = () => screen.queryAllByRole('button', { name: label ?? '' })[0]
  // Findings are shown one at a time.
  for (let tried = 0; tried < bench.wording.findings.length + 9 && !mend(); tried++)
    await user.click(screen.getByRole('button', { name: 'The next finding' }))
  await user.click(mend() as HTMLElement)
  expect(cellsOf(bench, 2)).not.toContain('2/2 LC')
  expect(bench.said.text).toBe(
    `${doneSaid(label ?? '')} The 2/2 LC in round 3 is gone. Undo brings it back.`,
  )
})
