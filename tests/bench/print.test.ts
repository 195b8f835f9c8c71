import { render, screen } from '@testing-library/svelte'
import userEvent from '@testing-library/user-event'
import { expect, test } from 'vitest'
import PrintDialog from '../../src/bench/dialogs/PrintDialog.svelte'
import { paint } from '../../src/pattern/edits/paint'
import { setWords } from '../../src/pattern/edits/words'
import { newPattern } from '../../src/pattern/pattern'
import { smallBench } from './render'

const open = (words: string | null) => {
  const bench = smallBench(setWords(newPattern(12, 4), words))
  render(PrintDialog, { props: { bench, open: true } })
  return { bench, user: userEvent.setup() }
}
const choice = () => screen.queryByRole<HTMLSelectElement>('combobox', { name: 'Words' })
const printed = (text: string) => document.body.textContent.includes(text)

test('words that the chart writes leave nothing to choose', () => {
  open(null)
  expect(choice()).toBe(null)
})

test('own words that agree are printed unless the others are chosen', async () => {
  const { user } = open('Rnds 1-4: knit every peg')
  expect(choice()?.value).toBe('own')
  expect(printed('they differ')).toBe(false)
  expect(printed('knit every peg')).toBe(true)
  await user.selectOptions(choice() as HTMLElement, 'as the chart writes them')
  expect(printed('knit every peg')).toBe(false)
  expect(printed('Rnds 1-4:')).toBe(true)
})

test('of own words that differ it is told in how many rounds, as their head tells it, and they are printed only when chosen', async () => {
  const { user, bench } = open('Rnds 1-2: knit every peg\nRnd 3: k4, p1, k7\nRnd 4: p12')
  expect(choice()?.value).toBe('chart')
  screen.getByText(/My own words: they differ in 2 rounds\..*The words that the chart/s)
  await user.selectOptions(choice() as HTMLElement, 'my own words')
  screen.getByText(/they differ in 2 rounds\..*They are printed as they are/s)
  expect(printed('knit every peg')).toBe(true)
  bench.apply('Purl', (pattern) => paint(pattern, 'p', 2, 4))
  await screen.findByText(/they differ in 1 round\./)
  expect(choice()?.value).toBe('own')
})

test('the choice holds for one piece', async () => {
  const { user, bench } = open('Rnds 1-4: knit every peg')
  await user.selectOptions(choice() as HTMLElement, 'as the chart writes them')
  bench.open(setWords(newPattern(12, 3), 'Rnds 1-3: knit all the pegs'), 'Open')
  await expect.poll(() => choice()?.value).toBe('own')
})
