import type { Download, Locator, Page } from 'playwright-core'
import type { PageStore } from './pageStore'

/** The bench in a real browser, with what the tests do on it over and over. */
export class BenchPage {
  readonly complaints: string[] = []

  private constructor(
    readonly page: Page,
    readonly close: () => Promise<void>,
  ) {
    page.on('console', (message) => {
      const isOfTests = message.text().includes('blocked by Playwright')
      if (!isOfTests && ['error', 'warning'].includes(message.type()))
        this.complaints.push(message.text())
    })
    page.on('pageerror', (error) => this.complaints.push(error.message))
  }

  /** Open the app on a page where nothing is kept; `before` is done to the page while it is empty. */
  static async open(
    store: PageStore,
    url: string,
    before: (page: Page) => Promise<void> = () => Promise.resolve(),
  ) {
    const page = await store.newPage()
    const bench = new BenchPage(page, () => store.close(page))
    // Files are chosen in a field, which tests can fill, not in a window of the system.
    await page.addInitScript(() => Reflect.deleteProperty(window, 'showOpenFilePicker'))
    await before(page)
    await page.goto(url)
    await bench.rows.waitFor()
    return bench
  }

  get rows(): Locator {
    return this.page.getByRole('application', { name: /^Rows\./ })
  }

  get ring(): Locator {
    return this.page.getByRole('application', { name: /^Ring\./ })
  }

  get findings(): Locator {
    return this.page.getByRole('region', { name: /^Findings/ })
  }

  get words(): Locator {
    return this.page.getByRole('region', { name: 'Words' })
  }

  /** The editor of the words. */
  get text(): Locator {
    return this.page.getByRole('textbox', { name: 'Words', exact: true })
  }

  /** Whose the words are, as their head says. */
  get standing(): Locator {
    return this.words
      .getByRole('paragraph')
      .filter({ hasText: /Written from the chart|My own words/ })
  }

  button(name: string | RegExp, within: Page | Locator = this.page): Locator {
    return within.getByRole('button', { name })
  }

  /** A button of the head. */
  menu(name: string): Locator {
    return this.page
      .getByRole('navigation', { name: 'Menu' })
      .getByRole('button', { name, exact: true })
  }

  /** Press a button of the head, wherever it stands on a screen of this size. */
  async choose(name: string): Promise<void> {
    const phone = this.page.getByRole('button', { name: 'Menu', exact: true })
    const inShelf = name === 'Start' || name === 'Open'
    if (await phone.isVisible()) {
      if (!(await this.menu(name).isVisible())) await phone.click()
      await this.menu(name).click()
    } else if (inShelf && !(await this.menu(name).isVisible())) {
      await this.menu('My pieces').click()
      await this.button(name === 'Open' ? 'Open a file' : 'Start a piece').click()
      if (name === 'Start') await this.page.getByRole('dialog', { name, exact: true }).waitFor()
    } else await this.menu(name).click()
  }

  /** What the chart says of the current place. */
  async place(): Promise<string> {
    const label = await this.rows.getAttribute('aria-label')
    return /Now at (.*)\.$/.exec(label ?? '')?.[1] ?? ''
  }

  async press(...keys: string[]): Promise<void> {
    await this.rows.focus()
    for (const key of keys) await this.page.keyboard.press(key)
  }

  async wordLines(): Promise<string[]> {
    const lines = this.words.locator('.cm-line')
    await lines.first().waitFor()
    const texts = await lines.allInnerTexts()
    return texts.map((text) => text.replace(/\n$/, ''))
  }

  /** Put a text in place of all words, as people do; the words must have the focus. */
  async paste(text: string): Promise<void> {
    await this.page.evaluate((all) => navigator.clipboard.writeText(all), text)
    await this.page.keyboard.press('Control+a')
    await this.page.keyboard.press('Control+v')
  }

  /** Wait until the head of the words says this. */
  async says(text: string): Promise<void> {
    await this.standing.filter({ hasText: text }).waitFor()
  }

  /** Bring a reading into sight: on a phone one is shown at a time, else some are chosen in the right sheet. */
  async show(reading: string): Promise<void> {
    const { width, height } = this.page.viewportSize() ?? { width: 1440, height: 900 }
    const isPhone = width < 760 || height < 500
    const always = ['Rows', 'Findings', ...(width < 1200 ? [] : ['Words'])]
    if (isPhone) {
      const nav = this.page.getByRole('navigation', { name: 'Readings' })
      const button = this.button(new RegExp(`^${reading}`), nav)
      if (await button.isVisible()) return button.click()
      await this.button(/^(Fabric|Pegs|Ring)/, nav).click()
      await this.button(reading, this.page.getByRole('group', { name: 'Right pane' })).click()
    } else if (!always.includes(reading))
      await this.button(reading, this.page.getByRole('group', { name: 'Right pane' })).click()
  }

  /** Make Words as wide as they can be beside the others, by the dividers. */
  async widenWords(): Promise<void> {
    for (const name of ['Width of Rows', 'Width of the right sheet']) {
      await this.page.getByRole('separator', { name }).focus()
      for (let step = 0; step < 24; step++) await this.page.keyboard.press('ArrowLeft')
    }
  }

  /** The finding that tells this, brought in front of the others. */
  async finding(text: string): Promise<Locator> {
    const finding = this.findings.getByRole('listitem').filter({ hasText: text })
    const next = this.button('The next finding', this.findings)
    await this.findings.getByRole('listitem').first().waitFor()
    for (let tried = 0; tried < 20 && !(await finding.isVisible()); tried++)
      if (await next.isVisible()) await next.click()
      else await this.page.waitForTimeout(50)
    await finding.waitFor()
    return finding
  }

  /** Press a mend of the finding that is shown, also where it has no room beside the others. */
  async mend(name: string | RegExp): Promise<void> {
    const mends = this.findings.getByRole('group', { name: 'Mends' })
    const all = this.button('All mends', mends)
    const mend = this.button(name, mends)
    await mends.getByRole('button').first().waitFor()
    const look = this.button('Find a mend', mends)
    if (await look.isVisible()) await look.click()
    if (!(await mend.first().isVisible()) && (await all.isVisible())) await all.click()
    await mend.first().click()
  }

  /** Give a reading the whole screen, or give it back. */
  async wholeScreen(reading: string): Promise<void> {
    await this.button(`Whole screen: ${reading}`).click()
  }

  /** Open all that can be done with the place. */
  async openPlace(): Promise<Locator> {
    const all = this.page.getByRole('dialog', { name: 'More for this place' })
    if (!(await all.isVisible())) await this.button('More for this place').click()
    return all
  }

  async startEmpty(pegs: number, rounds: number): Promise<void> {
    await this.choose('Start')
    const dialog = this.page.getByRole('dialog', { name: 'Start' })
    await dialog.getByLabel('Pegs').fill(String(pegs))
    await dialog.getByLabel('Pegs').blur()
    await dialog.getByLabel('Rounds').fill(String(rounds))
    await dialog.getByLabel('Rounds').blur()
    await this.button('Start', dialog).last().click()
    await dialog.waitFor({ state: 'hidden' })
  }

  async download(start: () => Promise<void>): Promise<{ name: string; bytes: Uint8Array }> {
    const [download] = await Promise.all([this.page.waitForEvent('download'), start()])
    return { name: download.suggestedFilename(), bytes: await bytesOf(download) }
  }
}

async function bytesOf(download: Download): Promise<Uint8Array> {
  const chunks: Buffer[] = []
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer)
  return Uint8Array.from(Buffer.concat(chunks))
}
