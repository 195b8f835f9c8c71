import { screen, within } from '@testing-library/svelte'
import { expect, test } from 'vitest'
import Tray from '../../src/bench/panels/Tray.svelte'
import { trayItems } from '../../src/bench/state/tray'
import { standardVocabulary, stitchOf } from '../../src/stitches/vocabulary'
import { show, smallBench } from './render'
import { findStitches, termOf } from '../../src/languages/languages'

test('a stitch is taken into the hand by its button', async () => {
  const { user, bench } = show(Tray, { bench: smallBench() })
  await user.click(screen.getByRole('button', { name: /^yo\s*, yarn over/ }))
  expect(bench.stitch.id).toBe('yo')
  expect(bench.said.text).toBe('In hand: yarn over.')
  expect(screen.getByRole('button', { name: /^yo\s*, yarn over/ })).toHaveAttribute(
    'aria-pressed',
    'true',
  )
})

test('the search finds by name, abbreviation and other spelling', async () => {
  const { user } = show(Tray, { bench: smallBench() })
  await user.type(screen.getByRole('searchbox'), 'skp')
  const list = screen.getByRole('group', { name: 'Stitches' })
  expect(within(list).getAllByRole('button')).toHaveLength(1)
  expect(
    within(list).getByRole('button', { name: /^ssk\s*, slip, slip, knit/ }),
  ).toBeInTheDocument()
})

test('a search without a find says so and suggests a word', async () => {
  const { user } = show(Tray, { bench: smallBench() })
  await user.type(screen.getByRole('searchbox'), 'zigzag')
  expect(screen.getByText(/No stitch is called “zigzag”/)).toBeInTheDocument()
})

test('a cross is made from its groups, lean and textures', async () => {
  const { user, bench } = show(Tray, { bench: smallBench() })
  await user.selectOptions(screen.getByLabelText('In front'), '3')
  await user.selectOptions(screen.getByLabelText('Behind'), '1')
  await user.selectOptions(screen.getByLabelText('Leans'), 'right')
  await user.selectOptions(screen.getByLabelText('Worked'), 'knit over purl')
  await user.click(screen.getByText('Use this stitch'))
  expect(bench.stitch.id).toBe('3/1 RPC')
})

test('every stitch can be found, and no key is given twice', () => {
  for (const stitch of standardVocabulary.stitches)
    expect(findStitches(termOf(stitch, 'us').name)).toContain(stitch)
  const keys = trayItems(smallBench().pattern, stitchOf('p')).flatMap(({ key }) => key ?? [])
  expect(new Set(keys).size).toBe(keys.length)
})

test('when a stitch is taken the search is done, and the whole tray is there again', async () => {
  const { user, bench } = show(Tray, { bench: smallBench() })
  const all = within(screen.getByRole('group', { name: 'Stitches' })).getAllByRole('button').length
  await user.type(screen.getByRole('searchbox'), '3/1 RPC')
  screen.getByRole('button', { name: /^3\/1 RPC/ }).focus()
  await user.keyboard('{Enter}')
  expect(bench.stitch.id).toBe('3/1 RPC')
  expect(screen.getByRole('searchbox')).toHaveValue('')
  expect(
    within(screen.getByRole('group', { name: 'Stitches' })).getAllByRole('button'),
  ).toHaveLength(all + 1)
  expect(screen.getByRole('button', { name: /^3\/1 RPC/ })).toHaveFocus()
})
