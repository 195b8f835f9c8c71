import { screen } from '@testing-library/svelte'
import { expect, test, vi } from 'vitest'
import { keyed } from '../../src/bench/widgets/keyed'
import { setText } from '../../src/pattern/edits/settings'
import Failing from './Failing.svelte'
import { show, smallBench } from './render'

test('a part that fails says so, and comes back when the change is taken back', async () => {
  const complaints = vi.spyOn(console, 'error').mockImplementation(() => undefined)
  const bench = smallBench()
  const saveFile = vi.fn()
  const reading = () => {
    if (bench.pattern.title === 'Broken') throw new Error('two equal keys')
    return `Reads ${bench.pattern.title}`
  }
  const { user } = show(Failing, { bench, reading, saveFile })
  screen.getByText('Reads Untitled')
  bench.apply('Break', (pattern) => setText(pattern, { title: 'Broken' }))
  await screen.findByRole('heading', { name: 'The reading cannot be shown' })
  screen.getByText(/\(two equal keys\)/)
  expect(complaints).toHaveBeenCalled()
  await user.click(screen.getByRole('button', { name: 'Save as a file' }))
  expect(saveFile).toHaveBeenCalledOnce()
  await user.click(screen.getByRole('button', { name: 'Undo the last change' }))
  await screen.findByText('Reads Untitled')
  complaints.mockRestore()
})

test('every version is told of as it is made, whatever the screen does', () => {
  const bench = smallBench()
  const titles: string[] = []
  bench.onVersion = () => titles.push(bench.pattern.title)
  bench.apply('Name it', (pattern) => setText(pattern, { title: 'One' }))
  bench.undo()
  bench.redo()
  expect(titles).toEqual(['One', 'Untitled', 'One'])
})

test('entries of the same name have keys of their own, and keep them when another comes', () => {
  const keys = (names: string[]) => keyed(names, (name) => name).map(({ key }) => key)
  expect(new Set(keys(['a', 'b', 'a', 'a'])).size).toBe(4)
  expect(keys(['b', 'a'])).toEqual(keys(['a', 'b']).toReversed())
})
