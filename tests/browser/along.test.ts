import type { BrowserContext, Locator, Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, inject, test } from 'vitest'
import { withChart } from '../../src/pattern/edits/chart'
import { newPattern } from '../../src/pattern/pattern'
import { fileOf } from '../../src/shelf/file'
import { stitchOf } from '../../src/stitches/vocabulary'
import { workerBrowser } from './browser'
import { violations } from './violations'

// Knit along on a phone, by touch: the place is there after each interruption.

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true }
const complaints: string[] = []
let context: BrowserContext
let page: Page

async function openPage(): Promise<void> {
  page = await context.newPage()
  page.on('pageerror', ({ message }) => complaints.push(message))
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text())
  })
  await page.goto(inject('url'))
}

const rows = () => page.getByRole('application', { name: /^Rows\./ })
const knitting = () => page.getByRole('dialog', { name: /^Knit along/ })
const heading = (name: string) => knitting().getByRole('heading', { name, exact: true })
const done = () => knitting().getByRole('button', { name: /^(Done|Round done|Row done)$/ })
const returned = () => knitting().getByRole('listitem')
/** The head of a phone has its buttons behind one. */
async function choose(name: string): Promise<void> {
  await page.getByRole('button', { name: 'Menu', exact: true }).tap()
  await page
    .getByRole('navigation', { name: 'Menu' })
    .getByRole('button', { name, exact: true })
    .tap()
}
const row = async () => (await knitting().locator('.text').innerText()).replaceAll('\n', '')
const leave = () => knitting().getByRole('button', { name: 'Leave Knit along' }).tap()

async function begin(): Promise<void> {
  await page.getByRole('button', { name: 'Knit', exact: true }).tap()
  await knitting().waitFor()
}

/** Rounds done one after the other, as a person does: each is seen before the next. */
async function knit(from: number, to: number): Promise<void> {
  for (let round = from; round < to; round++) {
    await heading(`Round ${round}`).waitFor()
    await done().tap()
  }
  await heading(`Round ${to}`).waitFor()
}

async function castOn(): Promise<void> {
  await heading('Cast on').waitFor()
  await done().tap()
  await heading('Round 1').waitFor()
  // The button has another name now: a second tap right away would be one of the first round.
  await page.waitForTimeout(600)
}

const tapIn = async (within: Locator, name: string | RegExp) =>
  within.getByRole('button', { name }).first().tap()

beforeEach(async () => {
  complaints.length = 0
  context = await (await workerBrowser()).newContext(phone)
  await openPage()
  await rows().waitFor()
})
afterEach(async () => {
  await context.close()
  expect(complaints).toEqual([])
})

describe('on a phone', () => {
  test('twenty rounds with three interruptions: a reload, another piece, a page that dies', async () => {
    await begin()
    await castOn()
    await knit(1, 6)

    await page.reload()
    await heading('Round 6').waitFor()
    expect(await returned().allInnerTexts()).toEqual([
      expect.stringMatching(/^Round 6, where you left it, today \d/),
    ])
    await knit(6, 11)

    await leave()
    await choose('Start')
    await page
      .getByRole('dialog', { name: 'Start' })
      .getByRole('button', { name: /^Hawser band/ })
      .tap()
    await begin()
    await castOn()
    await knit(1, 3)
    await leave()
    await choose('My pieces')
    const pieces = page.getByRole('dialog', { name: 'My pieces' })
    await pieces.getByRole('button', { name: /^Lamp-room cuff / }).tap()
    await pieces
      .getByRole('region', { name: 'Lamp-room cuff' })
      .getByRole('button', { name: 'Open', exact: true })
      .tap()
    await pieces.waitFor({ state: 'hidden' })
    await begin()
    await heading('Round 11').waitFor()
    expect(await returned().allInnerTexts()).toEqual([
      expect.stringMatching(/^Round 11, where you left it, today \d/),
    ])
    await tapIn(knitting(), /^2\/2 RC/)
    await knitting().getByText('Take the loops of pegs 12 and 13').waitFor()

    const session = await context.newCDPSession(page)
    const crashed = page.waitForEvent('crash')
    void session.send('Page.crash').catch(() => undefined)
    await crashed
    await page.close()
    await openPage()
    await heading('Round 11').waitFor()
    await knitting().getByText('Take the loops of pegs 12 and 13').waitFor()
    expect(await knitting().locator('[aria-current=step]').innerText()).toBe('2/2 RC')
    await knit(11, 21)
  })

  test('what is changed in the chart meanwhile is said, and the place goes with its round', async () => {
    await begin()
    await castOn()
    await knit(1, 10)
    await leave()
    await rows().focus()
    // A round more before the place: a purl in it, so that it reads as no other.
    await page.keyboard.press('Shift+Insert')
    await page.keyboard.press('Enter')
    await begin()
    await heading('Round 11').waitFor()
    const said = await returned().allInnerTexts()
    expect(said[0]).toMatch(/^Round 10, where you left it, today .*, is round 11 now\./)
    expect(said[1]).toMatch(/^Changed or new before it: round 1/)
    await done().tap()
    await heading('Round 12').waitFor()
    expect(await returned().count()).toBe(0)
  })

  test('the second of a mirrored pair has words and a place of its own', async () => {
    await begin()
    await castOn()
    await knit(1, 11)
    const first = await row()
    await leave()
    await choose('Loom and swatch')
    const loom = page.getByRole('dialog', { name: 'Loom and swatch' })
    await loom.getByLabel('Made').selectOption('mirrored')
    await loom.getByRole('button', { name: 'Close' }).tap()
    await page.getByRole('region', { name: 'Pair' }).getByRole('button', { name: 'Second' }).tap()
    await begin()
    await castOn()
    await knit(1, 11)
    expect(await row()).not.toBe(first)
    expect(await row()).toContain('2/2 LC')
    await knit(11, 13)
    await page.reload()
    await heading('Round 13').waitFor()
    await leave()
    await page.getByRole('region', { name: 'Pair' }).getByRole('button', { name: 'First' }).tap()
    await begin()
    await heading('Round 11').waitFor()
    expect(await row()).toBe(first)
  })

  test('counters go on at a press, open at a long one, and are kept', async () => {
    await begin()
    await castOn()
    const count = knitting().getByRole('button', { name: /^My count/ })
    await count.tap()
    await count.tap()
    await expect.poll(() => count.innerText()).toContain('2')
    const box = (await count.boundingBox()) ?? { x: 0, y: 0 }
    const session = await context.newCDPSession(page)
    const touchPoints = [{ x: box.x + 20, y: box.y + 20 }]
    await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints })
    const set = knitting().getByRole('group', { name: 'Set My count' })
    await set.waitFor()
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
    await set.getByRole('button', { name: 'One less' }).tap()
    await expect.poll(() => count.innerText()).toContain('1')
    await set.getByRole('spinbutton').fill('40')
    await set.getByRole('button', { name: 'OK' }).tap()
    await expect.poll(() => count.innerText()).toContain('40')
    const repeat = knitting().getByRole('button', { name: /^Repeat/ })
    await repeat.tap()
    await expect.poll(() => repeat.innerText()).toContain('2 of 4')
    await page.reload()
    await heading('Round 1').waitFor()
    expect(await count.innerText()).toContain('40')
    expect(await repeat.innerText()).toContain('2 of 4')
  })

  test('the name of the row leads to any other row of the piece', async () => {
    await begin()
    await castOn()
    await knitting().getByRole('button', { name: 'Round 1', exact: true }).tap()
    const there = knitting().getByRole('group', { name: 'Go to' })
    await there.getByRole('spinbutton', { name: 'Round' }).fill('30')
    await there.getByRole('button', { name: 'OK' }).tap()
    await heading('Round 30').waitFor()
    expect(await there.count()).toBe(0)
    await knitting().getByRole('button', { name: 'Round 30', exact: true }).tap()
    await there.getByLabel('Step').selectOption({ label: '3. Bind off: basic' })
    await heading('Bind off').waitFor()
    await page.keyboard.press('Escape')
    expect(await there.count()).toBe(0)
    await page.reload()
    await heading('Bind off').waitFor()
    await done().tap()
    await heading('All is worked').waitFor()
    await knitting()
      .getByText(/^Weave in/)
      .waitFor()
    await knitting().getByRole('button', { name: 'Back', exact: true }).tap()
    await heading('Bind off').waitFor()
    await page.waitForTimeout(600)
    await done().tap()
    // The second press of a double one does not close it.
    await page.waitForTimeout(600)
    await knitting().getByRole('button', { name: 'Close', exact: true }).tap()
    await knitting().waitFor({ state: 'hidden' })
  })

  test('a tap on a stitch sets the mark there, and says which it is', async () => {
    await begin()
    await castOn()
    await tapIn(knitting(), /^p2/)
    const status = () => knitting().getByRole('status').first().innerText()
    await expect.poll(status).toBe('purl 2, pegs 4 to 5')
    await done().tap()
    await expect.poll(status).toMatch(/^Round 2: /)
    await knitting().getByRole('button', { name: 'Back', exact: true }).tap()
    await expect
      .poll(() => knitting().locator('[aria-current=step]').getAttribute('aria-label'))
      .toBe('p2: purl 2, pegs 4 to 5')
  })

  test('by stitch, a tap goes on by one stitch of the words, and back by one', async () => {
    await begin()
    await castOn()
    await knitting().getByRole('button', { name: 'By stitch' }).tap()
    const next = knitting().getByRole('button', { name: 'Next', exact: true })
    const now = knitting().locator('[aria-current=step]')
    expect(await now.getAttribute('aria-label')).toBe('k1: knit, peg 1')
    await next.tap()
    await expect.poll(() => now.getAttribute('aria-label')).toBe('p1: purl, peg 2')
    await expect.poll(() => knitting().getByRole('status').first().innerText()).toBe('purl, peg 2')
    await knitting().getByRole('button', { name: 'Back', exact: true }).tap()
    await expect.poll(() => now.getAttribute('aria-label')).toBe('k1: knit, peg 1')
  })

  test('what is pressed is at least 44 px, and the large buttons stand where they stood', async () => {
    await begin()
    await castOn()
    const where = () => done().boundingBox()
    const before = await where()
    expect(before?.height).toBe(88)
    const small = await knitting().evaluate((dialog) =>
      [...dialog.querySelectorAll('button')]
        .filter((button) => !button.closest('.text'))
        .map((button) => ({ name: button.textContent, box: button.getBoundingClientRect() }))
        .filter(({ box }) => Math.min(box.width, box.height) < 44)
        .map(({ name }) => name),
    )
    expect(small).toEqual([])
    await knit(1, 12)
    expect(await where()).toEqual(before)
  })

  test.each([
    [844, true, true],
    [667, true, false],
    [568, false, false],
  ])('%i px high, the words stay, the pegs go first', async (height, chart, pegs) => {
    await begin()
    await castOn()
    await page.setViewportSize({ width: 390, height })
    expect(
      await knitting()
        .getByRole('img', { name: /^The row in the chart/ })
        .isVisible(),
    ).toBe(chart)
    expect(await knitting().locator('.pegs svg').isVisible()).toBe(pegs)
    const button = await done().boundingBox()
    expect((button?.y ?? 0) + (button?.height ?? 0)).toBeLessThanOrEqual(height)
    const text = (await knitting().locator('.text').boundingBox()) ?? { y: 0, height: 0 }
    const foot = (await knitting().locator('footer').boundingBox()) ?? { y: 0 }
    expect(text.y + text.height).toBeLessThanOrEqual(foot.y)
  })
})

describe('with keys', () => {
  test('Space and Page Down go on, Page Up back, arrows by stitches', async () => {
    await page.setViewportSize({ width: 1280, height: 800 })
    await page.getByRole('button', { name: 'Knit along' }).click()
    await heading('Cast on').waitFor()
    await page.keyboard.press('Space')
    await heading('Round 1').waitFor()
    await page.keyboard.press('PageDown')
    await heading('Round 2').waitFor()
    await expect
      .poll(() => knitting().getByRole('status').first().innerText())
      .toMatch(/^Round 2: \*k1, p1/)
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('ArrowRight')
    const now = knitting().locator('[aria-current=step]')
    await expect.poll(() => now.getAttribute('aria-label')).toBe('k1: knit, peg 3')
    await page.keyboard.press('PageDown')
    await heading('Round 3').waitFor()
    await page.keyboard.press('PageUp')
    await heading('Round 2').waitFor()
    await expect.poll(() => now.getAttribute('aria-label')).toBe('k1: knit, peg 3')
    await page.keyboard.press('ArrowLeft')
    await expect.poll(() => now.getAttribute('aria-label')).toMatch(/^p1: purl, peg 2/)
    await page.keyboard.press('Escape')
    await knitting().waitFor({ state: 'hidden' })
  })

  test.each([
    [390, 844],
    [1280, 800],
  ])('axe finds nothing at %i x %i', async (width, height) => {
    await page.setViewportSize({ width, height })
    await page
      .getByRole('button', { name: width < 760 ? 'Knit' : 'Knit along', exact: true })
      .click()
    await castOn()
    await knit(1, 11)
    expect(await violations({ page })).toEqual([])
    await page.reload()
    await returned().waitFor()
    await knitting().getByRole('button', { name: 'Round 11', exact: true }).click()
    expect(await violations({ page })).toEqual([])
    await knitting()
      .getByRole('button', { name: /^My count/ })
      .click({ button: 'right' })
    await knitting().getByRole('group', { name: 'Set My count' }).waitFor()
    expect(await violations({ page })).toEqual([])
  })
})

describe('at its limits', () => {
  test('a store that takes nothing is told of, and the place stays as long as the page', async () => {
    await page.addInitScript(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('', 'QuotaExceededError')
      }
    })
    await page.reload()
    await rows().waitFor()
    await begin()
    await castOn()
    await knitting().getByText('no room left').waitFor()
    await knit(1, 3)
    await leave()
    await begin()
    await heading('Round 3').waitFor()
  })

  test('a long row is written smaller, and scrolls to its stitch', async () => {
    // Runs of odd lengths, so that nothing of the row is told as a repeat.
    const lengths = [1, 2, 1, 3, 2, 2, 3, 1, 4, 1, 1, 2, 5, 1, 3, 3, 1, 2, 4, 2, 1, 1, 5, 2, 3]
    const cells = [...lengths, ...lengths.toReversed(), 7]
      .flatMap((length, at) => Array.from({ length }, () => (at % 2 ? 'p' : 'k')))
      .map(stitchOf)
    const rowOfCells = { cells, run: null, heading: null, end: 'on' as const }
    const pattern = withChart(newPattern(cells.length, 1), {
      columns: cells.length,
      rows: [rowOfCells],
    })
    const { name, text: json } = fileOf({ ...pattern, title: 'Long' })
    const file = { name, mimeType: 'application/json', buffer: Buffer.from(json) }
    await page.locator('input[type=file]').setInputFiles(file)
    await page.getByText('Long is on the bench').waitFor()
    await begin()
    await castOn()
    const text = knitting().locator('.text')
    expect(await text.evaluate((element) => getComputedStyle(element).fontSize)).toBe('24px')
    for (let stint = 0; stint < 40; stint++) await page.keyboard.press('ArrowRight')
    const box = (await text.boundingBox()) ?? { y: 0, height: 0 }
    const now = (await knitting().locator('[aria-current=step]').boundingBox()) ?? {
      y: 0,
      height: 0,
    }
    expect(now.y).toBeGreaterThan(box.y)
    expect(now.y + now.height).toBeLessThan(box.y + box.height)
    expect(await text.evaluate((element) => element.scrollTop)).toBeGreaterThan(0)
  })
})

/** What the browser can do, as the page finds it. */
interface Stubbed {
  locks: EventTarget[]
  spoken: string[]
}
const stubbed = (key: keyof Stubbed) =>
  page.evaluate((name) => {
    const { locks, spoken } = globalThis as unknown as Stubbed
    return name === 'locks' ? locks.length : spoken
  }, key)

describe('what the browser can do', () => {
  test('the screen stays awake, and it is said when the browser ends that', async () => {
    await page.addInitScript(() => {
      const locks: EventTarget[] = []
      Object.assign(globalThis, { locks })
      class Lock extends EventTarget {
        release() {
          this.dispatchEvent(new Event('release'))
          return Promise.resolve()
        }
      }
      Object.defineProperty(navigator, 'wakeLock', {
        value: {
          request() {
            const lock = new Lock()
            locks.push(lock)
            return Promise.resolve(lock)
          },
        },
      })
    })
    await page.reload()
    await rows().waitFor()
    await begin()
    const awake = knitting().getByRole('button', { name: 'Awake' })
    await expect.poll(() => awake.getAttribute('aria-pressed')).toBe('true')
    await page.evaluate(() => {
      const { locks } = globalThis as unknown as Stubbed
      locks[0]?.dispatchEvent(new Event('release'))
    })
    await knitting().getByText('does not keep the screen awake').waitFor()
    expect(await awake.getAttribute('aria-pressed')).toBe('false')
    await awake.tap()
    await expect.poll(() => awake.getAttribute('aria-pressed')).toBe('true')
    expect(await knitting().getByText('does not keep the screen awake').count()).toBe(0)
    expect(await stubbed('locks')).toBe(2)
    await awake.tap()
    await expect.poll(() => awake.getAttribute('aria-pressed')).toBe('false')
    expect(await knitting().getByText('does not keep the screen awake').count()).toBe(0)
  })

  test.each([
    [true, 1],
    [false, 0],
  ])(
    'it is read aloud by a voice of the device only (local: %s)',
    async (localService, offered) => {
      await page.addInitScript((local) => {
        const spoken: string[] = []
        Object.assign(globalThis, { spoken })
        const voice = {
          localService: local,
          lang: 'en-GB',
          name: 'Any',
          default: true,
          voiceURI: 'any',
        }
        Object.assign(globalThis, {
          SpeechSynthesisUtterance: class {
            voice: unknown = null
            lang = ''
            constructor(readonly text: string) {}
          },
        })
        Object.defineProperty(globalThis, 'speechSynthesis', {
          value: Object.assign(new EventTarget(), {
            getVoices: () => [voice],
            cancel: () => undefined,
            speak: ({ text }: { text: string }) => spoken.push(text),
          }),
        })
      }, localService)
      await page.reload()
      await rows().waitFor()
      await begin()
      await castOn()
      const read = knitting().getByRole('button', { name: 'Read', exact: true })
      expect(await read.count()).toBe(offered)
      if (offered === 0) return
      await read.tap()
      await done().tap()
      await heading('Round 2').waitFor()
      expect(await stubbed('spoken')).toEqual([
        expect.stringMatching(/^Round 1\. +knit 1, purl 1, knit 1, purl 2/),
        expect.stringMatching(/^Round 2\. /),
      ])
    },
  )
})
