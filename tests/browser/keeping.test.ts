import type { Page } from 'playwright-core'
import { afterEach, expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { openBench } from './suite'

// A browser that keeps nothing, or not all, or does not answer: what is said, what is asked when
// the page is left, and what is there again.

let bench: BenchPage
/** Questions of the browser when the page was left; all are answered "leave". */
let asked: string[]
afterEach(async () => {
  expect(bench.complaints).toEqual([])
  await bench.close()
})

/** Open the bench in a browser with this fault, which is a script of the page. */
async function open(fault: (() => void) | null, size?: { width: number; height: number }) {
  const before = async (page: Page) => {
    if (fault) await page.addInitScript(fault)
  }
  bench = await openBench(size, {}, before)
  asked = []
  bench.page.on('dialog', (dialog) => {
    asked.push(dialog.type())
    void dialog.accept()
  })
}
const alert = () => bench.page.locator('.yarn-line').getByRole('alert')
const keptLine = () => bench.page.getByText(/^Kept in this browser at/)

/** Paint purls with the mouse along the middle of the chart. */
async function paint(): Promise<void> {
  await bench.press('p')
  const box = await bench.rows.boundingBox()
  if (!box) throw new Error('The chart is not drawn')
  await bench.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2)
}
const lines = async () => (await bench.wordLines()).join('\n')
async function reload(): Promise<void> {
  await bench.page.reload()
  await bench.rows.waitFor()
}

const faults = {
  'localStorage that may not be asked for': () => {
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('Access is denied', 'SecurityError')
      },
    })
  },
  'localStorage that is full': () => {
    Storage.prototype.setItem = () => {
      throw new DOMException('It is full', 'QuotaExceededError')
    }
  },
  'no indexedDB': () => {
    Object.defineProperty(window, 'indexedDB', { value: undefined })
  },
  'indexedDB that may not be asked for': () => {
    Object.defineProperty(window, 'indexedDB', {
      get() {
        throw new DOMException('Access is denied', 'SecurityError')
      },
    })
  },
  'indexedDB that refuses': () => {
    IDBFactory.prototype.open = () => {
      const request = { error: new DOMException('Refused', 'InvalidStateError') } as Partial<
        Record<'onerror', () => void>
      >
      setTimeout(() => request.onerror?.())
      return request as unknown as IDBOpenDBRequest
    }
  },
  'indexedDB that never answers': () => {
    IDBFactory.prototype.open = () => ({}) as IDBOpenDBRequest
  },
  'indexedDB that is full': () => {
    const put = Reflect.get(IDBObjectStore.prototype, 'put')
    IDBObjectStore.prototype.put = function (...entry) {
      if ((window as { hasRoom?: boolean }).hasRoom) return put.apply(this, entry)
      throw new DOMException('It is full', 'QuotaExceededError')
    }
  },
}

test.each(['localStorage that may not be asked for', 'localStorage that is full'] as const)(
  'with %s the piece is kept all the same, and is there after a reload',
  async (fault) => {
    await open(faults[fault])
    const before = await lines()
    await paint()
    await keptLine().waitFor()
    const painted = await lines()
    expect(painted).not.toBe(before)
    await reload()
    await expect.poll(lines).toBe(painted)
    expect(asked).toEqual([])
    expect(await alert().innerText()).toBe('')
  },
)

const unanswered: [keyof typeof faults, RegExp][] = [
  ['no indexedDB', /this browser won’t allow it/],
  ['indexedDB that may not be asked for', /this browser won’t allow it/],
  ['indexedDB that refuses', /this browser won’t allow it/],
  ['indexedDB that never answers', /the browser doesn’t answer/],
]
test.each(unanswered)(
  'with %s it is said aloud, and leaving asks once something would be lost',
  async (fault, reason) => {
    await open(faults[fault])
    await alert().getByText(reason).waitFor({ timeout: 15_000 })
    expect(await alert().innerText()).toMatch(
      /^Your work isn’t being saved: .*Save your piece as a file/s,
    )
    await reload()
    expect(asked).toEqual([])

    await alert().getByText(reason).waitFor({ timeout: 15_000 })
    await paint()
    const painted = await lines()
    const saved = await bench.download(() => bench.button('Save as a file', alert()).click())
    expect(new TextDecoder().decode(saved.bytes)).toContain('"pegwright"')
    expect(await keptLine().count()).toBe(0)
    await reload()
    expect(asked).toEqual(['beforeunload'])
    // The small store had room for it.
    await expect.poll(lines, { timeout: 15_000 }).toBe(painted)
  },
)

test('a full store is said, and said no more once there is room', async () => {
  await open(faults['indexedDB that is full'])
  await bench.rows.waitFor()
  expect(await alert().innerText()).toBe('')
  await paint()
  await alert()
    .getByText(/no room left/)
    .waitFor()
  await bench.page.evaluate(() => Object.assign(window, { hasRoom: true }))
  await bench.press('y', 'Enter')
  await keptLine().waitFor()
  expect(await alert().innerText()).toBe('')
  await reload()
  expect(asked).toEqual([])
})

test('a fault of the program claims nothing of keeping that is not known', async () => {
  await open(faults['no indexedDB'])
  await alert().getByText('Your work isn’t being saved:').waitFor()
  await paint()
  await bench.page.evaluate(() => void Promise.reject(new Error('a fault')))
  const said = bench.page.locator('.said').getByText(/a fault/)
  await said.waitFor()
  expect(await said.innerText()).toContain('Your piece is not kept: save it as a file.')
  bench.complaints.length = 0
})

test('leaving right after a change loses nothing and asks nothing', async () => {
  await open(null)
  await paint()
  const painted = await lines()
  await reload()
  await expect.poll(lines).toBe(painted)
  await bench.page.getByText('Back where you left it').waitFor()
  await reload()
  expect(asked).toEqual([])
  await expect.poll(lines).toBe(painted)
  // A change, and back to what was taken up: both are kept, and it is said.
  await paint()
  await bench.press('y', 'Enter', 'Control+z')
  await keptLine().waitFor()
})

test('a clock that is set back loses nothing', async () => {
  await open(null)
  const blank = await lines()
  await paint()
  await keptLine().waitFor()
  // From now on the page believes that it is two days earlier.
  await bench.page.addInitScript(() => {
    const twoDays = 2 * 24 * 3_600_000
    const now = Date.now.bind(Date)
    Date.now = () => now() - twoDays
    window.Date = new Proxy(Date, {
      construct: (made, given) =>
        Reflect.construct(made, given.length > 0 ? given : [now() - twoDays]) as Date,
    })
  })
  const painted = await lines()
  await reload()
  await expect.poll(lines).toBe(painted)
  await bench.press('y', 'Enter')
  await keptLine().waitFor()
  const more = await lines()
  expect(more).not.toBe(painted)
  await reload()
  await expect.poll(lines).toBe(more)
  await bench.press('Control+z')
  await expect.poll(lines).toBe(painted)
  await bench.press('Control+z')
  await expect.poll(lines).toBe(blank)
  expect(asked).toEqual([])
})

/** Where the parts of the bench stand. */
const parts = () =>
  bench.page.evaluate(() =>
    [
      ...document.querySelectorAll('header .title, nav, .yarn-line button, .panes > div, .tray'),
    ].map((part) => {
      const { x, y, width, height } = part.getBoundingClientRect()
      return [part.className || part.tagName, ...[x, y, width, height].map(Math.round)].join(' ')
    }),
  )

test.each([
  [1440, 900],
  [1024, 768],
])('at %i x %i it moves no part of the bench', async (width, height) => {
  await open(faults['indexedDB that is full'], { width, height })
  const standing = async () =>
    (await parts()).filter(
      (part) => !part.startsWith('facts-of-piece') && !part.startsWith('outlined'),
    )
  const before = await standing()
  await paint()
  await alert().getByText('Your work isn’t being saved:').waitFor()
  expect(await standing()).toEqual(before)
  expect(await bench.button('Save as a file', alert()).innerText()).toBe('Save as a file')
  const over = await alert().evaluate((bar) => {
    const { top, bottom, left } = bar.getBoundingClientRect()
    const line = bar.closest('.yarn-line')?.getBoundingClientRect() ?? new DOMRect()
    const add = document.querySelector('.yarn-line .add')?.getBoundingClientRect()
    return {
      inside: top >= line.top && bottom <= line.bottom,
      beside: (add?.right ?? Infinity) <= left,
    }
  })
  expect(over).toEqual({ inside: true, beside: true })
})

test('on a phone it takes two lines at most, over the tray, and lies over no button', async () => {
  await open(faults['no indexedDB'], { width: 390, height: 844 })
  const bar = bench.page.locator('.bench > .not-kept').getByRole('alert')
  await bar.getByText('Your work isn’t being saved:').waitFor()
  const head = await bench.page
    .locator('header nav button')
    .filter({ visible: true })
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().right <= innerWidth))
  expect(head.length).toBeGreaterThan(2)
  expect(head).not.toContain(false)
  for (const reading of ['Rows', 'Words', 'Findings', 'Pegs']) {
    await bench.show(reading)
    const seen = await bar.evaluate((element) => {
      const text = element.querySelector('p')
      const size = text ? getComputedStyle(text) : null
      const box = element.getBoundingClientRect()
      const under = [...document.querySelectorAll('button, select, input, summary')].filter(
        (one) => {
          const { top, bottom, width } = one.getBoundingClientRect()
          const seen = one.checkVisibility() && width > 1
          return (
            seen &&
            !element.contains(one) &&
            top < box.bottom &&
            bottom > box.top &&
            !one.closest('.desk')
          )
        },
      )
      const desk = document.querySelector('.desk')?.getBoundingClientRect()
      return {
        letters: parseFloat(size?.fontSize ?? '0'),
        lines: Math.round((text?.offsetHeight ?? 0) / parseFloat(size?.lineHeight ?? '1')),
        over: element.scrollWidth - element.clientWidth,
        under: under.length,
        belowTheDesk: box.top >= (desk?.bottom ?? Infinity),
        inside: box.bottom <= innerHeight,
      }
    })
    expect(seen.letters).toBeGreaterThanOrEqual(15)
    expect(seen.lines).toBeLessThanOrEqual(2)
    expect(seen).toMatchObject({ over: 0, under: 0, belowTheDesk: true, inside: true })
  }
  await bench.download(() => bench.button('Save as a file', bar).click())
})
