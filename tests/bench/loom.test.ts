import { cleanup, render, screen } from '@testing-library/svelte'
import userEvent from '@testing-library/user-event'
import { expect, test } from 'vitest'
import LoomDialog from '../../src/bench/dialogs/LoomDialog.svelte'
import { setLoom, setMaking, setText } from '../../src/pattern/edits/settings'
import { newPattern } from '../../src/pattern/pattern'
import { smallBench } from './render'

function open(title: string) {
  const bench = smallBench(setText(newPattern(12, 4), { title }))
  bench.ask('loom')
  render(LoomDialog, { props: { bench } })
  return { bench, tick: screen.getByRole('checkbox', { name: 'For a baby or child' }) }
}
const beside = () => document.querySelector('.baby')?.textContent

test('what tells of a baby is said beside the setting, and gives way to what the setting does', async () => {
  const { bench, tick } = open('Hat for a baby')
  expect(beside()).toMatch(/^The title says “baby”/)
  await userEvent.click(tick)
  expect(bench.pattern.making.forBaby).toBe(true)
  expect(beside()).toBe(
    'On this loom a float may pass no more than 1 peg, and cautions are printed.',
  )
  cleanup()
  open('Hat for a ferryman')
  expect(beside()).toBe('Tick this for stricter checks, and cautions in print.')
})

test('the usual yarn is named by its weight', () => {
  const bench = smallBench(newPattern(12, 4))
  bench.ask('loom')
  render(LoomDialog, { props: { bench } })
  expect(document.querySelector('.yarn')?.textContent.trim()).toBe(
    'Usual yarn: weight 4 (medium). Go by your swatch.',
  )
})

test.each([
  [16, 'On this loom no peg may be slipped, and cautions are printed.'],
  [5, 'On this loom a float may pass no more than 2 pegs, and cautions are printed.'],
])('at a pitch of %d mm it says what that loom allows a baby', (pitch, said) => {
  const plain = setMaking(newPattern(12, 4), { forBaby: true })
  const bench = smallBench(setLoom(plain, { pitch }))
  bench.ask('loom')
  render(LoomDialog, { props: { bench } })
  expect(beside()).toBe(said)
})
