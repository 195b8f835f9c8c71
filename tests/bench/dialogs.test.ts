import { render, screen } from '@testing-library/svelte'
import { tick } from 'svelte'
import { expect, test } from 'vitest'
import userEvent from '@testing-library/user-event'
import LoomDialog from '../../src/bench/dialogs/LoomDialog.svelte'
import StartDialog from '../../src/bench/dialogs/StartDialog.svelte'
import type { Keeper } from '../../src/bench/state/keeper.svelte'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { smallBench } from './render'

test('a dialog that is opened again before its closing is told stays open', async () => {
  const bench = smallBench(newPattern(12, 4))
  bench.ask('loom')
  render(LoomDialog, { props: { bench } })
  const dialog = screen.getByRole<HTMLDialogElement>('dialog')
  // What a browser does for Escape; it tells of the closing a moment later.
  dialog.dispatchEvent(new Event('cancel', { cancelable: true }))
  await tick()
  expect(bench.dialogs).toEqual([])
  expect(dialog.open).toBe(false)
  bench.ask('loom')
  await tick()
  dialog.dispatchEvent(new Event('close'))
  await tick()
  expect(bench.dialogs).toEqual(['loom'])
  expect(dialog.open).toBe(true)
})

test('a press on the deed of a dialog does nothing but refuse what was just typed', async () => {
  const bench = smallBench(newPattern(12, 4))
  const opened: Pattern[] = []
  const keeper = {
    open: (pattern: Pattern) => Promise.resolve(opened.push(pattern)),
  } as unknown as Keeper
  bench.ask('start')
  render(StartDialog, { props: { bench, keeper } })
  const user = userEvent.setup()
  const start = screen.getByRole('button', { name: 'Start' })
  const field = screen.getByLabelText('Pegs')
  await user.clear(field)
  await user.type(field, '500')
  await user.click(start)
  expect(bench.dialogs).toEqual(['start'])
  expect(opened).toEqual([])
  screen.getByText('Pegs: enter a whole number from 3 to 400. It is still 36.')
  await user.click(start)
  expect(bench.dialogs).toEqual([])
  expect(opened.map(({ loom }) => loom.pegs)).toEqual([36])
})
