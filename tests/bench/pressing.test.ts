import { expect, test, vi } from 'vitest'
import { Pressing } from '../../src/bench/parts/pressing'

/** A page that hands its presses to `Pressing`, as the bench does. */
function page(html: string) {
  document.body.innerHTML = html
  const pressing = new Pressing()
  const stop = new AbortController()
  window.addEventListener('click', (event) => pressing.clickBegins(event), {
    capture: true,
    signal: stop.signal,
  })
  const press = (element: Element | null, detail: number) =>
    element?.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail }))
  const button = (name: string) =>
    [...document.querySelectorAll('button')].find(({ textContent }) => textContent === name) ?? null
  return { press, button, end: () => stop.abort() }
}

test('a double click presses no button that came to stand there, nor one that does something else now', () => {
  const { press, button, end } = page('<button>Make them mine</button><button>Other</button>')
  const run = vi.fn<(name: string | null) => void>()
  const first = button('Make them mine')
  first?.addEventListener('click', () => {
    run(first.textContent)
    first.textContent = 'Write from the chart'
  })
  button('Other')?.addEventListener('click', () => run('Other'))
  press(first, 1)
  press(first, 2)
  press(button('Other'), 3)
  expect(run.mock.calls).toEqual([['Make them mine']])
  // Pressed for itself it does what it says.
  press(first, 1)
  expect(run).toHaveBeenLastCalledWith('Write from the chart')
  // By keyboard there is no double click.
  press(button('Other'), 0)
  expect(run).toHaveBeenLastCalledWith('Other')
  end()
})

test('a button that stays what it is counts each press', () => {
  const { press, button, end } = page('<button>Larger</button>')
  const run = vi.fn()
  button('Larger')?.addEventListener('click', run)
  for (const detail of [1, 2, 3]) press(button('Larger'), detail)
  expect(run).toHaveBeenCalledTimes(3)
  end()
})
