import { screen, within } from '@testing-library/svelte'
import { tick } from 'svelte'
import { expect, test } from 'vitest'
import {
  chooseStep,
  editStep,
  putChart,
  showChart,
  stepCommands,
} from '../../src/bench/commands/piece'
import YarnLine from '../../src/bench/head/YarnLine.svelte'
import { fabricOf } from '../../src/bench/state/fabric.svelte'
import type { Bench } from '../../src/bench/state/bench.svelte'
import { addStep, removeStep } from '../../src/pattern/edits/piece'
import { newPattern, blankRow } from '../../src/pattern/pattern'
import { show, smallBench } from './render'
import { stitchOf } from '../../src/stitches/vocabulary'

const heel = {
  columns: 12,
  repeat: null,
  bands: [],
  rows: [blankRow(12, stitchOf('k')), blankRow(12, stitchOf('k'))],
}

/** Steps: cast on, Chart, Heel, Chart again, bind off; Chart is on the bench. */
function sock(): Bench {
  const bench = smallBench()
  putChart(bench, 'Heel', heel, true)
  bench.apply('Add', (p) => addStep(p, 3, { kind: 'chart', chart: 'Chart', times: 1 }))
  bench.piece.chosen = null
  return bench
}

const showLine = (bench: Bench) =>
  show(YarnLine, { bench, keeping: { state: 'unchanged' as const }, saveFile: () => undefined })

/** Numbers of the steps that are lit in the list. */
async function lit(): Promise<string[]> {
  await tick()
  return within(screen.getByRole('list', { name: 'Steps' }))
    .getAllByRole('button')
    .filter((button) => button.getAttribute('aria-current') === 'step')
    .map((button) => button.textContent.trim().replace(/\D.*$/s, ''))
}

test('the step of the chart on the bench is lit, however it came there', async () => {
  const bench = sock()
  showLine(bench)
  expect(await lit()).toEqual(['2'])
  chooseStep(bench, 2)
  expect(await lit()).toEqual(['3'])
  // From the list of charts, not from the steps.
  showChart(bench, 'Chart')
  expect(await lit()).toEqual(['2'])
})

test('of a chart that several steps work the chosen one stays lit while the place moves in it', async () => {
  const bench = sock()
  showLine(bench)
  chooseStep(bench, 3)
  bench.goTo({ row: 2, peg: 3 })
  expect(await lit()).toEqual(['4'])
})

test('a step without a chart is lit until the place moves', async () => {
  const bench = sock()
  showLine(bench)
  chooseStep(bench, 0)
  expect(await lit()).toEqual(['1'])
  bench.goTo({ row: 2, peg: 3 })
  expect(await lit()).toEqual(['2'])
})

test('steps that come in, change, go and come back take the light along', async () => {
  const bench = sock()
  showLine(bench)
  chooseStep(bench, 3)
  bench.apply('Add', (p) => addStep(p, 1, { kind: 'note', text: 'Mark peg 1.' }))
  expect(await lit()).toEqual(['5'])
  bench.undo()
  expect(await lit()).toEqual(['4'])
  editStep(bench, 3, { kind: 'chart', chart: 'Chart', times: 4 })
  expect(await lit()).toEqual(['4'])
  bench.apply('Remove', (p) => removeStep(p, 0))
  expect(await lit()).toEqual(['3'])
  stepCommands(2)
    .find(({ id }) => id === 'step-out')
    ?.run(bench)
  // What is chosen now, the bind-off, until the place moves.
  bench.goTo({ row: 0, peg: 1 })
  expect(await lit()).toEqual(['1'])
})

test('another piece begins with a light of its own', async () => {
  const bench = sock()
  showLine(bench)
  chooseStep(bench, 3)
  bench.open(newPattern(8, 2), 'Start')
  expect(await lit()).toEqual(['2'])
  const twice = sock().first
  bench.open(twice, 'Start')
  expect(await lit()).toEqual(['2'])
})

test('a row pressed in the fabric of the whole piece lights the step that works it', async () => {
  const bench = sock()
  showLine(bench)
  const fabric = fabricOf(bench)
  fabric.source = 'piece'
  // 6 rows of the chart, 2 of the heel, then the chart once more.
  fabric.goTo(6 + 2 + 1, 4)
  expect(bench.spot).toEqual({ row: 1, peg: 4 })
  expect(await lit()).toEqual(['4'])
  fabric.goTo(1, 4)
  expect(await lit()).toEqual(['2'])
})
