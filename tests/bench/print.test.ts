import { cleanup, render, screen } from '@testing-library/svelte'
import userEvent from '@testing-library/user-event'
import { flushSync } from 'svelte'
import { expect, test } from 'vitest'
import PrintDialog from '../../src/bench/dialogs/PrintDialog.svelte'
import { paint } from '../../src/pattern/edits/paint'
import { setWords } from '../../src/pattern/edits/words'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { onChart } from '../../src/pattern/charts'
import { ferryMitt, withPiece } from '../words/piece/pieces'
import { smallBench } from './render'
import { stitchOf } from '../../src/stitches/vocabulary'

const open = (words: string | null) => openPiece(setWords(newPattern(12, 4), words))
const openPiece = (pattern: Pattern) => {
  const bench = smallBench(pattern)
  bench.ask('booklet')
  render(PrintDialog, { props: { bench } })
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
  expect(printed('differ from')).toBe(false)
  expect(printed('knit every peg')).toBe(true)
  await user.selectOptions(choice() as HTMLElement, 'written from the chart')
  expect(printed('knit every peg')).toBe(false)
  expect(printed('Rnds 1-4:')).toBe(true)
})

test('of own words that differ it is told in how many rounds, as their head tells it, and they are printed only when chosen', async () => {
  const { user, bench } = open('Rnds 1-2: knit every peg\nRnd 3: k4, p1, k7\nRnd 4: p12')
  expect(choice()?.value).toBe('chart')
  screen.getByText(
    /My own words differ from the chart in 2 rounds\..*Words written from the chart/s,
  )
  await user.selectOptions(choice() as HTMLElement, 'my own words')
  screen.getByText(/differ from the chart in 2 rounds\..*They are printed as they are/s)
  expect(printed('knit every peg')).toBe(true)
  bench.apply('Purl', (pattern) => paint(pattern, stitchOf('p'), 2, 4))
  await screen.findByText(/differ from the chart in 1 round\./)
  expect(choice()?.value).toBe('own')
})

test('own words that agree but have an error in them are called neither right nor different', async () => {
  const { user } = open('Rnds 1-4: knit every peg (13 sts)')
  screen.getByText(
    /My own words agree with the chart; 1 count in them is wrong\..*They are printed as they are\./s,
  )
  await user.selectOptions(choice() as HTMLElement, 'written from the chart')
  screen.getByText(/Words written from the chart are printed instead/)
})

test('the choice holds for one piece', async () => {
  const { user, bench } = open('Rnds 1-4: knit every peg')
  await user.selectOptions(choice() as HTMLElement, 'written from the chart')
  bench.open(setWords(newPattern(12, 3), 'Rnds 1-3: knit all the pegs'), 'Open')
  await expect.poll(() => choice()?.value).toBe('own')
})

const tick = (name: string) => screen.queryByRole<HTMLInputElement>('checkbox', { name })

test('step pictures and the second of a pair can be left out where there are some', async () => {
  open(null)
  expect(tick('Step pictures')).toBe(null)
  expect(tick('Second of the pair')).toBe(null)
  cleanup()
  const { user } = openPiece(
    withPiece(ferryMitt(), { pictures: [{ chart: 'Plait', row: 0, from: 2, to: 9 }] }),
  )
  expect(tick('Step pictures')?.checked).toBe(true)
  expect(printed('How it is worked: 2/2 left cross')).toBe(true)
  await user.click(tick('Step pictures') as HTMLElement)
  expect(printed('How it is worked: 2/2 left cross')).toBe(false)
  expect(printed('2/2 RC')).toBe(true)
  await user.click(tick('Second of the pair') as HTMLElement)
  expect(printed('2/2 RC')).toBe(false)
  screen.getByText(/The second of the pair is the mirror image, and it is not written out\./)
})

test('without charts there is nothing to choose about them', async () => {
  const { user } = openPiece(ferryMitt())
  screen.getByRole('combobox', { name: 'Charts as' })
  await user.click(tick('Charts') as HTMLElement)
  expect(screen.queryByRole('combobox', { name: 'Charts as' })).toBe(null)
})

test('own words of a section off the bench are offered, and where they differ is told', () => {
  const words = setWords(onChart(ferryMitt(), 'Plait'), 'Rnds 1-4: purl')
  openPiece(onChart(words, 'Cuff'))
  expect(choice()?.value).toBe('chart')
  screen.getByText(/Your own words of “Plait” differ from its chart in \d+ places?\./)
})

test('a pair is printed from its first, whichever of the two is looked at', () => {
  const { bench } = openPiece(setWords(ferryMitt(), 'Rnds 1-2: k2, p2 all round'))
  bench.look('second')
  flushSync()
  expect(choice()).not.toBe(null)
  const text = document.body.textContent
  expect(text.indexOf('2/2 LC, k2')).toBeLessThan(text.lastIndexOf('Second of the pair'))
  expect(text.indexOf('2/2 RC, k2')).toBeGreaterThan(text.lastIndexOf('Second of the pair'))
})
