import { render, screen } from '@testing-library/svelte'
import { afterEach, expect, test, vi } from 'vitest'
import Fixes from '../../src/bench/findings/Fixes.svelte'
import { fix, type Fix, type Repairs } from '../../src/pattern/finding'

afterEach(() => vi.restoreAllMocks())

const all = ['Knit it', 'Move it', 'Leave it out'].map((label) => fix(label, (sheet) => sheet))

/** Repairs each of which takes longer than there is time. */
function slow(): { offer: { fixes: Fix[]; repairs: Repairs }; tried: () => number } {
  let [now, tried] = [0, 0]
  vi.spyOn(performance, 'now').mockImplementation(() => now)
  return {
    tried: () => tried,
    offer: {
      fixes: all,
      repairs: {
        get soFar() {
          return all.slice(0, tried)
        },
        tryNext: () => {
          now += 100
          return ++tried < all.length
        },
      },
    },
  }
}

const labels = () => screen.getAllByRole('button').map(({ textContent }) => textContent.trim())

test('repairs that take long are tried one after the other, and shown as they are found', async () => {
  const { offer, tried } = slow()
  render(Fixes, { props: { offer, atOnce: true, mend: () => undefined } })
  expect(tried()).toBe(1)
  expect(labels()).toEqual(['Knit it'])
  screen.getByText('Looking for mends …')
  await screen.findByRole('button', { name: 'Leave it out' })
  expect(labels()).toEqual(['Knit it', 'Move it', 'Leave it out'])
  expect(screen.queryByText('Looking for mends …')).toBeNull()
})

test('nothing is tried any more once nobody looks', async () => {
  const { offer, tried } = slow()
  const { unmount } = render(Fixes, { props: { offer, atOnce: true, mend: () => undefined } })
  unmount()
  await new Promise((done) => setTimeout(done, 100))
  expect(tried()).toBe(1)
})
