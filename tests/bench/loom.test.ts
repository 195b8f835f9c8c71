import { cleanup, render, screen } from '@testing-library/svelte'
import userEvent from '@testing-library/user-event'
import { expect, test } from 'vitest'
import LoomDialog from '../../src/bench/dialogs/LoomDialog.svelte'
import { setText } from '../../src/pattern/edits/settings'
import { newPattern } from '../../src/pattern/pattern'
import { smallBench } from './render'

function open(title: string) {
  const bench = smallBench(setText(newPattern(12, 4), { title }))
  render(LoomDialog, { props: { bench, open: true } })
  return { bench, tick: screen.getByRole('checkbox', { name: 'For a baby or child' }) }
}
const beside = () => document.querySelector('.baby')?.textContent

test('what tells of a baby is said beside the setting, and gives way to what the setting does', async () => {
  const { bench, tick } = open('Hat for a baby')
  expect(beside()).toMatch(/^The title says “baby”/)
  await userEvent.click(tick)
  expect(bench.pattern.making.forBaby).toBe(true)
  expect(beside()).toBe('Floats are held to 2 pegs and 10 mm, and cautions are printed.')
  cleanup()
  open('Hat for a ferryman')
  expect(beside()).toBe('Tick this for stricter checks, and cautions in print.')
})
