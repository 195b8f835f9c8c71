import { screen } from '@testing-library/svelte'
import { expect, test } from 'vitest'
import { columnCommands, rowCommands } from '../../src/bench/commands/chart'
import Findings from '../../src/bench/parts/Findings.svelte'
import Here from '../../src/bench/parts/Here.svelte'
import { setRepeat } from '../../src/pattern/edits/columns'
import { paint } from '../../src/pattern/edits/paint'
import { setBand } from '../../src/pattern/edits/rows'
import { newPattern } from '../../src/pattern/pattern'
import { show, smallBench } from './render'

const straddling = () =>
  smallBench(setRepeat(paint(newPattern(12, 6), '2/2 LC', 2, 4), { from: 0, to: 5 }))

test('a finding is listed, leads to its place, and a fix takes it away', async () => {
  const { user, bench } = show(Findings, { bench: straddling() })
  await user.click(screen.getByRole('button', { name: /Round 3, pegs 5–8/ }))
  expect(bench.spot).toEqual({ row: 2, peg: 4 })
  const found = bench.report.findings.filter(({ severity }) => severity === 'error')
  expect(found.length).toBeGreaterThan(0)
  await user.click(screen.getByRole('button', { name: found[0]?.fixes[0]?.label ?? '' }))
  expect(bench.report.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  bench.undo()
  expect(bench.report.findings.map(({ id }) => id)).toContain(found[0]?.id)
})

test('a finding that is set aside can be taken up again', async () => {
  const { user, bench } = show(Findings, { bench: straddling() })
  const before = bench.report.findings.length
  await user.click(screen.getAllByText('Set aside')[0] as HTMLElement)
  await user.click(screen.getAllByRole('button', { name: 'Only this one' })[0] as HTMLElement)
  expect(bench.report.findings).toHaveLength(before - 1)
  await user.click(screen.getByText('Set aside: 1'))
  await user.click(screen.getByRole('button', { name: 'Bring back' }))
  expect(bench.report.findings).toHaveLength(before)
})

test('rows are worked several times, and turned', async () => {
  const { user, bench } = show(Here, { bench: smallBench() })
  const times = screen.getByLabelText(/Worked/)
  await user.clear(times)
  await user.type(times, '3')
  await user.tab()
  expect(bench.pattern.chart.bands).toEqual([{ from: 0, to: 0, times: 3 }])
  await user.click(screen.getByText(/^Worked: pegs 1/))
  await user.selectOptions(screen.getByLabelText('At the end'), 'German turn')
  expect(bench.pattern.chart.rows[0]?.end).toBe('German turn')
})

test('every command of rows and pegs has a button, the times of a row too', async () => {
  const { user, bench } = show(Here, { bench: smallBench() })
  const commands = [...rowCommands, ...columnCommands]
  const buttons = screen.getAllByRole('button')
  expect(buttons).toHaveLength(commands.length)
  const once = screen.getByRole('button', { name: 'Once' })
  expect(once).toHaveAttribute('title', 'This round is worked once already.')
  bench.apply('Band', (p) => setBand(p, 0, 2, 4))
  await screen.findByTitle('Work rounds 1 to 3 once')
  await user.click(once)
  expect(bench.pattern.chart.bands).toEqual([])
  expect(screen.getByLabelText(/Worked/)).toHaveValue(1)
})

test('a number outside its limits is refused with the limits, and what stood there stays', async () => {
  const { user, bench } = show(Here, { bench: smallBench() })
  const times = screen.getByLabelText(/Worked/)
  await user.clear(times)
  await user.type(times, '400')
  await user.tab()
  expect(screen.getByRole('alert')).toHaveTextContent(
    'Worked: enter a whole number from 1 to 99. It is still 1.',
  )
  expect(times).toHaveValue(1)
  expect(bench.pattern.chart.bands).toEqual([])
})
