import { expect, test, vi } from 'vitest'
import { Pressing } from '../../src/bench/panels/pressing'

/** A page that hands its presses to `Pressing`, as the bench does. */
function page(html: string) {
  document.body.innerHTML = html
  const pressing = new Pressing()
  const stop = new AbortController()
  window.addEventListener('click', (event) => pressing.clickBegins(event), {
    capture: true,
    signal: stop.signal,
  })
  window.addEventListener('pointerdown', (event) => pressing.pointerDown(event), {
    capture: true,
    signal: stop.signal,
  })
  /** The pointer goes down, `x` px from the left, at a time in ms. */
  const point = (element: Element | null, { time, x = 0 }: { time: number; x?: number }) => {
    const event = new PointerEvent('pointerdown', { bubbles: true, cancelable: true, clientX: x })
    Object.defineProperty(event, 'timeStamp', { value: time })
    element?.dispatchEvent(event)
  }
  const press = (element: Element | null, detail: number) =>
    element?.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true, detail }))
  const button = (name: string) =>
    [...document.querySelectorAll('button')].find(({ textContent }) => textContent === name) ?? null
  return { press, point, button, end: () => stop.abort() }
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

test('a double click begun on what has gone does nothing where its second press lands', () => {
  const { press, point, button, end } = page('<div><button>A starter</button></div><svg></svg>')
  const paint = vi.fn()
  const chart = document.querySelector('svg')
  chart?.addEventListener('pointerdown', paint)
  chart?.addEventListener('click', paint)
  point(button('A starter'), { time: 1000 })
  press(button('A starter'), 1)
  document.querySelector('div')?.remove()
  point(chart, { time: 1200, x: 2 })
  press(chart, 2)
  point(chart, { time: 1400, x: 3 })
  press(chart, 3)
  expect(paint).not.toHaveBeenCalled()
  // A press for itself, elsewhere or later, does what it does.
  point(chart, { time: 1500, x: 60 })
  press(chart, 1)
  expect(paint).toHaveBeenCalledTimes(2)
  end()
})

test('a double click on the chart, or on a button that stays, counts each press', () => {
  const { press, point, button, end } = page('<button>Larger</button><svg><path /></svg>')
  const done = vi.fn()
  for (const name of ['pointerdown', 'click']) document.body.addEventListener(name, done)
  const path = document.querySelector('path')
  point(path, { time: 1000 })
  press(path, 1)
  // What is drawn comes anew with each stitch.
  path?.remove()
  point(document.querySelector('svg'), { time: 1200 })
  press(document.querySelector('svg'), 2)
  point(button('Larger'), { time: 3000, x: 50 })
  press(button('Larger'), 1)
  point(button('Larger'), { time: 3200, x: 50 })
  press(button('Larger'), 2)
  expect(done).toHaveBeenCalledTimes(8)
  for (const name of ['pointerdown', 'click']) document.body.removeEventListener(name, done)
  end()
})
