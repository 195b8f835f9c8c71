import { render, screen } from '@testing-library/svelte'
import { tick } from 'svelte'
import { expect, test } from 'vitest'
import LoomDialog from '../../src/bench/dialogs/LoomDialog.svelte'
import { newPattern } from '../../src/pattern/pattern'
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
