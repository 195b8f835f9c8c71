import { render, screen } from '@testing-library/svelte'
import userEvent from '@testing-library/user-event'
import { expect, test } from 'vitest'
import PlaceMenu from '../../src/bench/place/PlaceMenu.svelte'
import { setRun } from '../../src/pattern/edits/turning'
import { newPattern } from '../../src/pattern/pattern'
import { smallBench } from './render'

/** Round 1 works pegs 5 to 8 of 12. */
function partly() {
  const bench = smallBench(setRun(newPattern(12, 4), 0, { from: 4, to: 7 }))
  render(PlaceMenu, { props: { bench } })
  return bench
}

test('a peg that the row does not work is said to be so', () => {
  partly()
  expect(screen.getByRole('heading', { level: 2 })).toHaveTextContent(
    /peg 1 not worked in this round$/,
  )
})

test('the first peg cannot come after the last: it is refused, and the last stays', async () => {
  const bench = partly()
  const user = userEvent.setup()
  await user.click(screen.getByText(/^Worked: pegs 5 to 8/))
  const from = screen.getByLabelText('Pegs from')
  await user.clear(from)
  await user.type(from, '10{Enter}')
  expect(bench.chart.rows[0]?.run).toEqual({ from: 4, to: 7 })
  expect(bench.said.text).toBe('Pegs from: enter a whole number from 1 to 8. It is still 5.')
  await user.clear(from)
  await user.type(from, '6{Enter}')
  expect(bench.chart.rows[0]?.run).toEqual({ from: 5, to: 7 })
})

test('the first round goes on as the yarn comes', async () => {
  partly()
  await userEvent.click(screen.getByText(/^Worked: pegs 5 to 8/))
  screen.getByText(/^as the yarn comes/)
})
