import { setWords } from '../../src/pattern/edits/words'
import { patternOf } from '../pattern/edits/chart-text'
import { withChart } from '../../src/pattern/edits/chart'
import { render, screen, within } from '@testing-library/svelte'
import { tick } from 'svelte'
import { expect, test } from 'vitest'
import {
  chooseStep,
  dropChart,
  editStep,
  placeForStep,
  putChart,
  putStep,
  stepCommands,
  showChart,
} from '../../src/bench/commands/piece'
import { paintHere } from '../../src/bench/commands/chart'
import { addShortRows, putShortRowsHere } from '../../src/bench/commands/shortRows'
import Findings from '../../src/bench/findings/Findings.svelte'
import PieceDialog from '../../src/bench/dialogs/PieceDialog.svelte'
import Estimates from '../../src/bench/piece/Estimates.svelte'
import ChartOnBench from '../../src/bench/charts/ChartOnBench.svelte'
import YarnLine from '../../src/bench/head/YarnLine.svelte'
import ChartList from '../../src/bench/piece/ChartList.svelte'
import ShortRowForm from '../../src/bench/piece/ShortRowForm.svelte'
import StepsEditor from '../../src/bench/piece/StepsEditor.svelte'
import { stepFacts, stepTitle } from '../../src/bench/piece/stepWords'
import { totalsInOneLine } from '../../src/bench/piece/totalsText'
import type { Bench } from '../../src/bench/state/bench.svelte'
import { paint } from '../../src/pattern/edits/paint'
import { insertRows } from '../../src/pattern/edits/rows'
import { addStep, addChart } from '../../src/pattern/edits/piece'
import { setLoom, setRuleOff } from '../../src/pattern/edits/settings'
import { makeShortRows } from '../../src/pattern/generate/shortRows'
import { usualHeel } from '../../src/pattern/generate/wish'
import { newPattern, blankRow } from '../../src/pattern/pattern'
import type { Step } from '../../src/pattern/piece'
import { chartsInOrder, chartOn, findChart } from '../../src/pattern/charts'
import userEvent from '@testing-library/user-event'
import { pressMend, show, smallBench } from './render'
import { stitchOf } from '../../src/stitches/vocabulary'

const kinds = (bench: Bench) => bench.pattern.steps.map(({ kind }) => kind)
const names = (bench: Bench) => chartsInOrder(bench.pattern).map(({ name }) => name)
const undoAll = (bench: Bench) => {
  while (bench.history.past.length > 0) bench.undo()
}
const emptyChart = {
  columns: 12,
  repeat: null,
  bands: [],
  rows: [blankRow(12, stitchOf('k')), blankRow(12, stitchOf('k'))],
}

test('each kind of step is named with what there is to say of it', () => {
  const steps: Step[] = [
    { kind: 'cast on', how: 'long-tail', pegs: { from: 0, to: 5 } },
    { kind: 'chart', chart: 'Chart', times: 3 },
    { kind: 'chart', chart: 'Gone', times: 1 },
    { kind: 'plain', stitch: stitchOf('p'), amount: { mm: 50 } },
    { kind: 'pegs', run: { from: 2, to: 7 }, toAndFro: true },
    { kind: 'note', text: 'Try it on.\nThen go on.' },
    { kind: 'bind off', how: 'graft', pegs: null },
  ]
  const pattern = newPattern(12, 6)
  const bench = smallBench({ ...pattern, steps })
  const { work, lengths } = bench.piece
  expect(
    steps.map((step, index) => [
      stepTitle(step, bench.pattern),
      ...stepFacts(work, index, lengths[index] ?? 0),
    ]),
  ).toEqual([
    ['Cast on', 'long-tail', 'pegs 1 to 6'],
    // 18 rounds and 13 rounds at 26 rows in 10 cm.
    ['Chart × 3', '18 rounds', '6.9 cm'],
    ['Gone', 'chart not found'],
    ['Plain purl', '13 rounds', '5 cm'],
    ['Pegs you work', 'pegs 3 to 8', 'back and forth'],
    ['Note', 'Try it on.'],
    ['Bind off', 'graft'],
  ])
})

test('a step of the pegs that are worked begins as the work before it goes', () => {
  const bench = smallBench()
  putStep(bench, 'pegs', 1)
  expect(bench.pattern.steps[1]).toEqual({ kind: 'pegs', run: null, toAndFro: false })
  editStep(bench, 1, { kind: 'pegs', run: { from: 0, to: 5 }, toAndFro: true })
  putStep(bench, 'pegs', 2)
  expect(bench.pattern.steps[2]).toMatchObject({ toAndFro: true })
})

test('a click on the name of a step, or beside its fields, says where the next one goes', async () => {
  const { user } = show(StepsEditor, { bench: smallBench() })
  await user.click(screen.getByText('Cast on', { selector: 'b' }))
  await screen.findByText('Add after step 1:')
  const chart = screen.getByRole('group', { name: 'Step 2: Chart' })
  await user.click(chart.closest('li') as HTMLElement)
  await screen.findByText('Add after step 2:')
})

test('a step that works a chart brings it on the bench, as an edit that undo takes back', () => {
  const bench = smallBench()
  putChart(bench, 'Heel', emptyChart, true)
  expect(kinds(bench)).toEqual(['cast on', 'chart', 'chart', 'bind off'])
  expect(bench.on).toBe('Chart')
  chooseStep(bench, 2)
  expect(bench.on).toBe('Heel')
  expect(bench.chart.rows).toHaveLength(2)
  bench.undo()
  expect(bench.on).toBe('Chart')
  expect(bench.chart.rows).toHaveLength(6)
  bench.redo()
  expect(kinds(bench)).toEqual(['cast on', 'chart', 'chart', 'bind off'])
  expect(bench.on).toBe('Chart')
  undoAll(bench)
  expect(names(bench)).toEqual(['Chart'])
})

test('own words of a chart that is not looked at are found at its step, and are marked there', () => {
  const bench = smallBench()
  putChart(bench, 'Heel', emptyChart, true)
  bench.lookAt('Heel')
  bench.apply('Words', (sheet) => setWords(sheet, 'Rnd 1: purl.'))
  expect(bench.piece.findings.map(({ rule }) => rule)).not.toContain('piece-words')
  bench.lookAt('Chart')
  const [finding] = bench.piece.findings.filter(({ rule }) => rule === 'piece-words')
  expect(finding?.place.step).toBe(2)
  expect(bench.piece.worstAt(2)).toBe('error')
})

test('new steps go after the chosen one, but before what ends the piece', () => {
  const bench = smallBench()
  expect(placeForStep(bench)).toBe(2)
  bench.piece.chosen = 0
  expect(placeForStep(bench)).toBe(1)
  bench.piece.chosen = 40
  expect(placeForStep(bench)).toBe(2)
  // The bind-off itself is chosen.
  bench.piece.chosen = 2
  expect(placeForStep(bench)).toBe(2)
})

test('a chart that comes on the bench is nothing to take back', () => {
  const bench = smallBench()
  putChart(bench, 'Heel', emptyChart, true)
  const steps = bench.history.past.length
  chooseStep(bench, 2)
  expect(bench.on).toBe('Heel')
  chooseStep(bench, 1)
  expect(bench.on).toBe('Chart')
  expect(bench.history.past).toHaveLength(steps)
})

test('a step is marked where its chart has errors, on the bench or off it', () => {
  const bench = smallBench()
  putChart(bench, 'Heel', emptyChart, true)
  const at = 2
  chooseStep(bench, at)
  bench.apply('Paint', (p) => paint(p, stitchOf('k2tog'), 0, 0))
  expect(bench.piece.errorsIn(at)).toBeGreaterThan(0)
  expect(bench.piece.worstAt(at)).toBe('error')
  chooseStep(bench, 1)
  expect(bench.piece.errorsIn(at)).toBe(0)
  expect(bench.piece.worstAt(at)).toBe('error')
  expect(bench.piece.findings.find(({ rule }) => rule === 'piece-chart')?.place.step).toBe(at)
})

test('steps are moved, copied and taken out, each as one edit; the first cannot go up', () => {
  const bench = smallBench()
  const commands = (at: number) =>
    Object.fromEntries(stepCommands(at).map((command) => [command.id, command]))
  expect(commands(0)['step-up']?.reason?.(bench)).toBe('It is the first step.')
  expect(commands(2)['step-down']?.reason?.(bench)).toBe('It is the last step.')
  commands(0)['step-down']?.run(bench)
  expect(kinds(bench)).toEqual(['chart', 'cast on', 'bind off'])
  expect(bench.piece.chosen).toBe(1)
  commands(1)['step-copy']?.run(bench)
  commands(0)['step-out']?.run(bench)
  expect(kinds(bench)).toEqual(['cast on', 'cast on', 'bind off'])
  expect(bench.history.past).toHaveLength(3)
  expect(bench.history.present.label).toBe('Remove step 1')
  undoAll(bench)
  expect(kinds(bench)).toEqual(['cast on', 'chart', 'bind off'])
})

test('steps are edited in place; a length begins as long as the rows were', async () => {
  const bench = smallBench()
  bench.apply('Add', (p) =>
    addStep(p, 2, { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 26 } }),
  )
  const { user } = show(StepsEditor, { bench })
  await user.selectOptions(screen.getByLabelText('Step 3: counted in'), 'cm')
  expect(bench.pattern.steps[2]).toMatchObject({ amount: { mm: 100 } })
  await user.selectOptions(screen.getByLabelText('Step 3: stitch'), 'purl')
  await user.selectOptions(screen.getByLabelText('Step 1: which pegs'), 'pegs')
  expect(bench.pattern.steps[0]).toMatchObject({ pegs: { from: 0, to: 5 } })
  const times = screen.getByLabelText(/^Step 2: times/)
  await user.clear(times)
  await user.type(times, '100')
  await user.tab()
  expect(screen.getByRole('alert')).toHaveTextContent('enter a whole number from 1 to 99.')
  expect(bench.pattern.steps[1]).toMatchObject({ times: 1 })
  await user.click(screen.getByRole('button', { name: 'Note' }))
  await user.type(screen.getByLabelText(/: note$/), 'Measure now.')
  await user.tab()
  expect(bench.pattern.steps).toContainEqual({ kind: 'note', text: 'Measure now.' })
  undoAll(bench)
  expect(kinds(bench)).toEqual(['cast on', 'chart', 'bind off'])
})

test('charts are renamed, copied and taken out; a name that is there already is refused', async () => {
  const bench = smallBench()
  const { user } = show(ChartList, { bench })
  await user.click(screen.getByRole('button', { name: 'Add an empty chart' }))
  expect(names(bench)).toEqual(['Chart', 'Chart 2'])
  const field = screen.getByLabelText('Name of the chart “Chart 2”')
  await user.clear(field)
  await user.type(field, 'Chart')
  await user.tab()
  expect(screen.getByRole('alert')).toHaveTextContent(
    'There is a chart called “Chart” already. It is still called “Chart 2”.',
  )
  expect(field).toHaveValue('Chart 2')
  await user.clear(field)
  await user.type(field, 'Thumb')
  await user.tab()
  expect(names(bench)).toEqual(['Chart', 'Thumb'])
  await user.click(screen.getByRole('button', { name: 'Copy the chart “Thumb”' }))
  expect(names(bench)).toEqual(['Chart', 'Thumb', 'Thumb 2'])
  await user.click(screen.getByRole('button', { name: 'Remove the chart “Chart”' }))
  expect(bench.said.text).toBe(
    '“Chart” is removed with the step that worked it. Undo brings it back.',
  )
  expect(kinds(bench)).toEqual(['cast on', 'bind off'])
  undoAll(bench)
  dropChart(bench, 'Chart')
  expect(bench.said.text).toBe('A piece keeps at least one chart.')
})

test('the form offers the usual heel of the loom, and says what cannot be worked', async () => {
  const bench = smallBench(setLoom(newPattern(40, 6), { pegs: 40 }))
  const { user } = show(ShortRowForm, { bench })
  // 40 pegs: 20 in the heel, 7 turned at each side (common practice), 6 never.
  const made = makeShortRows(bench.pattern.loom, usualHeel(bench.pattern.loom))
  if (!made.ok) throw new Error(made.message)
  const { rows } = made
  screen.getByText(
    `20 pegs: 7 turned at each side, 6 in the middle never turned. ${rows.length} rows.`,
  )
  await user.click(screen.getByRole('button', { name: 'Add to this chart' }))
  // The two rounds that follow take in what is left of the turns: the heel has none of its own.
  expect(bench.chart.rows).toHaveLength(6 + rows.length - 2)
  expect(bench.report.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  bench.undo()
  expect(bench.chart.rows).toHaveLength(6)

  const turned = screen.getByLabelText('Turned each side')
  await user.clear(turned)
  await user.type(turned, '12')
  await user.tab()
  screen.getByText(/12 turned pegs at each side/)
  screen.getByText('Turn at most 9 pegs at each side, or choose more pegs.')
  await user.click(screen.getByRole('button', { name: 'Add as a chart' }))
  expect(names(bench)).toEqual(['Chart'])
  await user.click(screen.getByRole('button', { name: 'Turn 7' }))
  await user.click(screen.getByRole('button', { name: 'Add as a chart' }))
  expect(names(bench)).toEqual(['Chart', 'Heel'])
})

test('a heel fits the columns of a chart with a repeat, and is refused where there is no room', () => {
  const pattern = newPattern(12, 6)
  const row = { ...blankRow(2, stitchOf('k')) }
  const bench = smallBench(
    withChart(pattern, { columns: 2, repeat: { from: 0, to: 1 }, bands: [], rows: [row, row] }),
  )
  const heel = usualHeel(bench.pattern.loom)
  const made = makeShortRows(bench.pattern.loom, heel, stitchOf('k'), 2)
  if (!made.ok) throw new Error(made.message)
  putShortRowsHere(bench, heel)
  expect(bench.chart.rows.every(({ cells }) => cells.length === 2)).toBe(true)
  expect(bench.spot.row).toBe(1)
  expect(bench.report.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  const there = bench.chart.rows.length
  expect(there).toBe(2 + made.rows.length - 1)
  bench.apply('Fill the chart', (p) => insertRows(p, there, 595 - there))
  putShortRowsHere(bench, heel)
  expect(bench.said.text).toContain('and can have 600')
  expect(bench.chart.rows).toHaveLength(595)
})

test('pace and weighed swatch hold when they are whole, and what does not fit is said', async () => {
  const bench = smallBench()
  const { user } = show(Estimates, { bench })
  await user.type(screen.getByLabelText(/^Pace/), '500')
  await user.tab()
  expect(screen.getByRole('alert')).toHaveTextContent('Pace: enter a number from 1 to 200')
  expect(bench.pattern.pace).toBeNull()
  await user.type(screen.getByLabelText(/^Pace/), '25')
  await user.tab()
  expect(bench.pattern.pace).toBe(25)
  await user.type(screen.getByLabelText('Stitches of the swatch'), '20')
  await user.type(screen.getByLabelText('Rows of the swatch'), '30')
  await user.tab()
  expect(bench.pattern.swatch).toBeNull()
  await user.type(screen.getByLabelText(/^Weight/), '3.5')
  await user.tab()
  expect(bench.pattern.swatch).toEqual({ stitches: 20, rows: 30, grams: 3.5 })
})

test('the line of steps lists them with their findings; arrows move between them', async () => {
  const bench = smallBench()
  bench.apply('Take out', (p) => ({
    ...p,
    steps: p.steps.slice(0, 2),
  }))
  const { user } = show(YarnLine, {
    bench,
    keeping: { state: 'unchanged' as const },
    saveFile: () => undefined,
  })
  const steps = within(screen.getByRole('list', { name: 'Steps' })).getAllByRole('button')
  expect(steps).toHaveLength(2)
  expect(steps[1]).toHaveTextContent('error')
  steps[0]?.focus()
  await user.keyboard('{ArrowRight}{Enter}')
  expect(bench.piece.chosen).toBe(1)
  expect(steps[1]).toHaveAttribute('aria-current', 'step')
})

test('what is wrong with the piece is listed, leads to its step, is mended and switched off', async () => {
  const bench = smallBench()
  bench.apply('Take out', (p) => ({
    ...p,
    steps: p.steps.slice(0, 2),
  }))
  const { user } = show(Findings, { bench })
  await user.click(screen.getByRole('button', { name: /Step 2 \(Chart\)/ }))
  expect(bench.piece.chosen).toBe(1)
  await user.click(screen.getByRole('button', { name: 'Bind off all loops at the end' }))
  expect(bench.piece.findings).toEqual([])
  bench.undo()
  expect(bench.piece.findings).toHaveLength(1)
  await tick()
  await pressMend(user, 'Set aside all of this kind')
  expect(bench.piece.findings).toEqual([])
  await user.click(screen.getByText(/^Set aside: 1/))
  screen.getByText('Loops are left on the loom (off)')
  await user.click(screen.getByRole('button', { name: 'Turn on' }))
  expect(bench.piece.findings).toHaveLength(1)
})

test('a wedge that turns first on the edge of a bar says how to turn before it', async () => {
  const pattern = newPattern(40, 4)
  const bench = smallBench({ ...pattern, loom: { ...pattern.loom, shape: 'bar' } })
  const { user } = show(ShortRowForm, { bench })
  await user.selectOptions(screen.getByLabelText('Make a'), 'wedge')
  await user.selectOptions(screen.getByLabelText('Turns at'), 'last')
  const enter = async (label: string | RegExp, value: string) => {
    const field = screen.getByLabelText(label)
    await user.clear(field)
    await user.type(field, value)
    await user.tab()
  }
  await enter('First peg', '1')
  await enter(/^Pegs between turns/, '5')
  expect(screen.queryByText(/first turn is on the edge peg/)).toBeNull()
  await enter('Last peg', '40')
  screen.getByText(/first turn is on the edge peg.* end on peg 35\./)
  await enter('Last peg', '35')
  expect(screen.queryByText(/first turn is on the edge peg/)).toBeNull()
})

test('steps and totals speak the words of the trade', () => {
  const pattern = newPattern(12, 4)
  const bench = smallBench({
    ...pattern,
    gauge: { stitches: 20, rows: 28 },
    steps: pattern.steps.toSpliced(1, 0, { kind: 'pegs', run: null, toAndFro: true }),
  })
  bench.ask('steps')
  const { container } = render(PieceDialog, { bench })
  const text = container.textContent
  expect(stepFacts(bench.piece.work, 1, 0)).toEqual(['all pegs', 'back and forth'])
  expect(text).toContain('back and forth')
  expect(text).not.toMatch(/to and fro|Take out|Throw|Delete|Duplicate|[Ss]ection|bar\b|Moves/)
})

test('a toe added before the bind-off is grafted, and undone in one go', async () => {
  const bench = smallBench(newPattern(24, 4))
  const { user } = show(ShortRowForm, { bench })
  await user.selectOptions(screen.getByLabelText('Make a'), 'toe')
  screen.getByText(
    'Graft it straight away: the double stitch left on peg 13 is grafted as one stitch.',
  )
  await user.click(screen.getByRole('button', { name: 'Add as a chart' }))
  expect(bench.said.text).toBe(
    'The chart “Toe” is added, worked in step 3. The bind-off after it is a graft now.',
  )
  expect(bench.pattern.steps.at(-1)).toMatchObject({ kind: 'bind off', how: 'graft' })
  expect(bench.piece.findings).toEqual([])
  bench.undo()
  expect(bench.pattern.steps.at(-1)).toMatchObject({ kind: 'bind off', how: 'basic' })
  expect(names(bench)).toEqual(['Chart'])
})

test('a heel is changed by its numbers until its rows are changed by hand', async () => {
  const bench = smallBench(newPattern(24, 4))
  bench.ask('steps')
  const { user } = show(PieceDialog, { bench })
  await user.click(screen.getByRole('button', { name: 'Add as a chart' }))
  const rows = () => findChart(bench.pattern, 'Heel')?.chart.rows.length ?? 0
  const usual = rows()
  await user.click(screen.getByRole('button', { name: 'Change the numbers of “Heel”' }))
  const form = within(screen.getByRole('region', { name: 'Numbers of “Heel”' }))
  expect(document.activeElement).toBe(form.getByLabelText('Make a'))
  expect(form.getByLabelText<HTMLInputElement>('Turned each side').value).toBe('4')
  await user.clear(form.getByLabelText('Turned each side'))
  await user.type(form.getByLabelText('Turned each side'), '3{Tab}')
  await user.selectOptions(form.getByLabelText('Turns'), 'wrap')
  await user.click(form.getByRole('button', { name: 'Make “Heel” anew' }))
  expect(bench.said.text).toBe('“Heel” is made anew, as a heel on 12 pegs, 3 turned at each side.')
  expect(rows()).toBe(usual - 4)
  expect(findChart(bench.pattern, 'Heel')?.chart.rows[0]?.end).toBe('wrap')
  expect(bench.piece.findings).toEqual([])
  bench.undo()
  await tick()
  expect(rows()).toBe(usual)
  // The form follows what is taken back.
  expect(form.getByLabelText<HTMLInputElement>('Turned each side').value).toBe('4')
  bench.close('steps')
  expect(bench.remaking).toBeNull()

  showChart(bench, 'Heel')
  show(ChartOnBench, { bench })
  screen.getByRole('button', { name: 'Change its numbers' })
  screen.getByText(/Made from numbers: a heel on 12 pegs, 4 turned at each side\./)
  bench.goTo({ row: 2, peg: 5 })
  paintHere(bench)
  await tick()
  expect(bench.said.text).toBe('“Heel” is now rows of your own: its numbers no longer make it.')
  expect(bench.canTakeBack).toBe(true)
  expect(screen.queryByRole('button', { name: 'Change its numbers' })).toBeNull()
  bench.undo()
  await screen.findByRole('button', { name: 'Change its numbers' })
})

test('what else is said of an edit is said with it', async () => {
  const bench = smallBench(newPattern(24, 4))
  addShortRows(bench, usualHeel(bench.pattern.loom))
  showChart(bench, 'Heel')
  putShortRowsHere(bench, usualHeel(bench.pattern.loom))
  expect(bench.said.text).toBe(
    'The heel is added after row 1. “Heel” is now rows of your own: its numbers no longer make it.',
  )
  await Promise.resolve()
  bench.say('Next.')
  expect(bench.said.text).toBe('Next.')
})

test('a new step works a chart that no step works yet; the place in each chart is remembered', () => {
  const bench = smallBench(newPattern(12, 4))
  putChart(bench, 'Cuff', emptyChart, false)
  putStep(bench, 'chart', 2)
  expect(bench.pattern.steps[2]).toEqual({ kind: 'chart', chart: 'Cuff', times: 1 })
  putStep(bench, 'chart', 3)
  expect(bench.pattern.steps[3]).toEqual({ kind: 'chart', chart: 'Chart', times: 1 })
  bench.goTo({ row: 2, peg: 7 })
  showChart(bench, 'Cuff')
  expect(bench.spot).toEqual({ row: 0, peg: 0 })
  bench.goTo({ row: 1, peg: 3 })
  showChart(bench, 'Chart')
  expect(bench.spot).toEqual({ row: 2, peg: 7 })
  showChart(bench, 'Cuff')
  expect(bench.spot).toEqual({ row: 1, peg: 3 })
})

test('the form says how the texture goes on, and which cross a heel would cut', async () => {
  const pattern = newPattern(24, 4)
  const roped = paint(paint(pattern, stitchOf('2/2 LC'), 1, 11), stitchOf('p'), 2, 20)
  const bench = smallBench(roped)
  show(ShortRowForm, { bench })
  screen.getByText(
    'As a chart: meanwhile the other pegs are worked as in rounds 1 and 2 of “Chart”. The next chart goes on from there: draw it to begin as round 3 of “Chart”.',
  )
  // The usual heel lies on pegs 2 to 13.
  screen.getByText(/^2\/2 LC on pegs 12 to 15 of “Chart” lies half on the heel\./)
  screen.getByText(/comes after round 1 of “Chart”: the other pegs go on with the next rounds\.$/)
  bench.goTo({ row: 3, peg: 0 })
  await screen.findByText(/comes after round 4 of “Chart”\.$/)
})

test('a piece in the round is counted in rounds, one with a heel in rows', async () => {
  const bench = smallBench(newPattern(24, 4))
  bench.ask('steps')
  render(PieceDialog, { bench })
  const user = userEvent.setup()
  expect(totalsInOneLine(bench.piece.totals.whole, bench.piece.work, null)).toMatch(/^4.rounds/)
  screen.getByRole('columnheader', { name: 'Rounds' })
  await user.click(screen.getByRole('button', { name: 'Add as a chart' }))
  expect(totalsInOneLine(bench.piece.totals.whole, bench.piece.work, null)).toMatch(/^\d+.rows/)
  screen.getByRole('columnheader', { name: 'Rows' })
})

test('a new cast-on after a bind-off proposes just the empty pegs', () => {
  const bench = smallBench()
  bench.apply('Thumb', (p) =>
    addStep(p, 2, { kind: 'bind off', how: 'basic', pegs: { from: 0, to: 4 } }),
  )
  expect(putStep(bench, 'cast on', 3)).toBe(true)
  expect(bench.pattern.steps[3]).toEqual({
    kind: 'cast on',
    how: 'e-wrap',
    pegs: { from: 0, to: 4 },
  })
})

test('undo and redo go to the chart and the place of the change', () => {
  const bench = smallBench(addChart(newPattern(12, 6), 'Crown', emptyChart))
  showChart(bench, 'Crown')
  bench.goTo({ row: 1, peg: 3 })
  bench.apply('Paint p', (p) => paint(p, stitchOf('p'), 1, 3))
  showChart(bench, 'Chart')
  bench.goTo({ row: 5, peg: 1 })
  bench.apply('Paint p', (p) => paint(p, stitchOf('p'), 5, 1))
  showChart(bench, 'Crown')
  bench.undo()
  expect([bench.on, bench.spot]).toEqual(['Chart', { row: 5, peg: 1 }])
  bench.undo()
  expect([bench.on, bench.spot]).toEqual(['Crown', { row: 1, peg: 3 }])
  expect(bench.said.text).toBe('Undone: paint p. The chart “Crown” is on the bench.')
  showChart(bench, 'Chart')
  bench.redo()
  expect([bench.on, bench.spot]).toEqual(['Crown', { row: 1, peg: 3 }])
  bench.redo()
  expect([bench.on, bench.spot]).toEqual(['Chart', { row: 5, peg: 1 }])
})

test('errors of another chart are told as long as they are there', () => {
  const two = addChart(
    newPattern(12, 2),
    'Thumb',
    chartOn(patternOf('k2tog k k k k k k k k k k k')),
  )
  const off = setRuleOff(two, 'piece-chart', true)
  const bench = smallBench(off)
  expect(bench.piece.findings.map(({ message }) => message)).toContainEqual(
    expect.stringMatching(/^In the chart “Thumb”: /),
  )
})
