import { screen } from '@testing-library/svelte'
import { describe, expect, test } from 'vitest'
import { columnCommands, rowCommands } from '../../src/bench/commands/chart'
import { workTimes } from '../../src/bench/commands/times'
import Findings from '../../src/bench/findings/Findings.svelte'
import PlaceMenu from '../../src/bench/place/PlaceMenu.svelte'
import { setRepeat } from '../../src/pattern/edits/columns'
import { paint } from '../../src/pattern/edits/paint'
import { setBand } from '../../src/pattern/edits/rows'
import { newPattern } from '../../src/pattern/pattern'
import type { Bench } from '../../src/bench/state/bench.svelte'
import { pressMend, show, smallBench } from './render'
import { stitchOf } from '../../src/stitches/vocabulary'

const straddling = () =>
  smallBench(setRepeat(paint(newPattern(12, 6), stitchOf('2/2 LC'), 2, 4), { from: 0, to: 5 }))

test('a finding is listed, leads to its place, and a fix takes it away', async () => {
  const { user, bench } = show(Findings, { bench: straddling() })
  await user.click(screen.getByRole('button', { name: /Round 3, pegs 5-8/ }))
  expect(bench.spot).toEqual({ row: 2, peg: 4 })
  const found = bench.report.findings.filter(({ severity }) => severity === 'error')
  expect(found.length).toBeGreaterThan(0)
  await pressMend(user, found[0]?.fixes[0]?.label ?? '')
  expect(bench.report.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  bench.undo()
  expect(bench.report.findings.map(({ id }) => id)).toContain(found[0]?.id)
})

test('a finding that is set aside can be taken up again', async () => {
  const { user, bench } = show(Findings, { bench: straddling() })
  const before = bench.report.findings.length
  await pressMend(user, 'Set aside')
  expect(bench.report.findings).toHaveLength(before - 1)
  await user.click(screen.getByText('Set aside: 1'))
  await user.click(screen.getByRole('button', { name: 'Bring back' }))
  expect(bench.report.findings).toHaveLength(before)
})

test('rows are worked several times, and turned', async () => {
  const { user, bench } = show(PlaceMenu, { bench: smallBench() })
  const times = screen.getByLabelText(/Worked/)
  await user.clear(times)
  await user.type(times, '3')
  await user.tab()
  expect(bench.chart.bands).toEqual([{ from: 0, to: 0, times: 3 }])
  await user.click(screen.getByText(/^Worked: pegs 1/))
  await user.selectOptions(screen.getByLabelText('At the end'), 'German turn')
  expect(bench.chart.rows[0]?.end).toBe('German turn')
})

test('every command of rows and pegs has a button, the times of a row too', async () => {
  const { user, bench } = show(PlaceMenu, { bench: smallBench() })
  const commands = [...rowCommands, ...columnCommands]
  const buttons = screen.getAllByRole('button')
  expect(buttons).toHaveLength(commands.length)
  const once = screen.getByRole('button', { name: 'Once' })
  expect(once).toHaveAttribute('title', 'This round is worked once already.')
  bench.apply('Band', (p) => setBand(p, 0, 2, 4))
  await screen.findByTitle('Work rounds 1 to 3 once')
  await user.click(once)
  expect(bench.chart.bands).toEqual([])
  expect(screen.getByLabelText(/Worked/)).toHaveValue('1')
})

test('a number outside its limits is refused with the limits, and what stood there stays', async () => {
  const { user, bench } = show(PlaceMenu, { bench: smallBench() })
  const times = screen.getByLabelText(/Worked/)
  await user.clear(times)
  await user.type(times, '400')
  await user.tab()
  expect(bench.said.text).toBe('Worked: enter a whole number from 1 to 99. It is still 1.')
  expect(times).toHaveAccessibleDescription(bench.said.text)
  // No words of its own move what stands beside it.
  expect(screen.queryByRole('alert')).toBe(null)
  expect(times).toHaveValue('1')
  expect(bench.chart.bands).toEqual([])
})

describe('how often marked rounds are worked', () => {
  /** The cuff: two rounds six times, one three times, one six times, two once. */
  const cuff = () => {
    let pattern = newPattern(12, 6)
    for (const [from, to, times] of [
      [0, 1, 6],
      [2, 2, 3],
      [3, 3, 6],
    ] as const)
      pattern = setBand(pattern, from, to, times)
    return smallBench(pattern)
  }
  const mark = (bench: Bench, from: number, to: number) =>
    bench.goTo({ row: to, peg: 0 }, { row: from, peg: 0 })
  const enter = async (user: ReturnType<typeof show>['user'], times: string) => {
    const field = screen.getByLabelText(/Worked/)
    await user.clear(field)
    await user.type(field, times)
    await user.tab()
    return field
  }

  test('takes no other count away: it is said which stand there', async () => {
    const { user, bench } = show(PlaceMenu, { bench: cuff() })
    const before = bench.pattern
    mark(bench, 0, 3)
    const field = await enter(user, '2')
    expect(bench.pattern).toBe(before)
    expect(field).toHaveValue('1')
    expect(bench.said.text).toBe(
      'Rounds 1 to 2 are worked 6 times, round 13 is worked 3 times and round 16 is worked 6 times. A count can’t hold another count. Set those to once first, or press “Copy above”.',
    )
    // Part of a count is no better.
    mark(bench, 0, 0)
    bench.goTo({ row: 1, peg: 0 }, { row: 4, peg: 0 })
    for (const times of ['2', '1']) await enter(user, times)
    expect(bench.pattern).toBe(before)
  })

  test('once is what it says, with a way back', async () => {
    const { user, bench } = show(PlaceMenu, { bench: cuff() })
    bench.goTo({ row: 0, peg: 0 }, { row: 3, peg: 0 })
    await enter(user, '2')
    await enter(user, '1')
    // It stood at 1 already: nothing was asked for.
    expect(bench.chart.bands).toHaveLength(3)
    workTimes(bench, { from: 2, to: 3 }, 1)
    expect(bench.chart.bands).toEqual([{ from: 0, to: 1, times: 6 }])
    expect(bench.said).toMatchObject({
      text: 'Now worked once. Before, round 13 was worked 3 times and round 16 was worked 6 times.',
      undo: true,
    })
  })

  test('the count of just these rounds is changed', async () => {
    const { user, bench } = show(PlaceMenu, { bench: cuff() })
    mark(bench, 0, 1)
    await enter(user, '4')
    expect(bench.chart.bands[0]).toEqual({ from: 0, to: 1, times: 4 })
    expect(bench.chart.bands).toHaveLength(3)
  })
})
