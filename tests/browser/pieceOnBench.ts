import type { Locator } from 'playwright-core'
import type { BenchPage } from './bench'

/** The whole piece on the bench: the line of its steps, and the dialog of its steps. Steps count from 1. */
export class PieceOnBench {
  constructor(readonly bench: BenchPage) {}

  get dialog(): Locator {
    return this.bench.page.getByRole('dialog', { name: 'Steps' })
  }

  get panel(): Locator {
    return this.bench.page.getByRole('region', { name: 'Steps of the piece' })
  }

  async gauge(stitches: number, rows: number): Promise<void> {
    await this.bench.choose('Loom and swatch')
    const dialog = this.bench.page.getByRole('dialog', { name: 'Loom and swatch' })
    await dialog.getByLabel('Stitches in 10 cm').fill(String(stitches))
    await dialog.getByLabel('Rows in 10 cm').fill(String(rows))
    await dialog.getByLabel('Rows in 10 cm').press('Tab')
    await this.bench.button('Close', dialog).click()
    await dialog.waitFor({ state: 'hidden' })
  }

  async open(): Promise<void> {
    await this.bench.choose('Steps')
    await this.dialog.waitFor()
  }

  async close(): Promise<void> {
    await this.bench.button('Done', this.dialog).click()
    await this.dialog.waitFor({ state: 'hidden' })
  }

  /** "Step 1: Cast on", as the groups of the steps are called. */
  async steps(): Promise<(string | null)[]> {
    const groups = await this.dialog.getByRole('group', { name: /^Step \d/ }).all()
    return Promise.all(groups.map((group) => group.getAttribute('aria-label')))
  }

  panelStep(step: number): Locator {
    return this.panel
      .getByRole('list', { name: 'Steps' })
      .getByRole('button')
      .nth(step - 1)
  }

  async panelSteps(): Promise<string[]> {
    const buttons = this.panel.getByRole('list', { name: 'Steps' }).getByRole('button')
    const texts = await buttons.allInnerTexts()
    return texts.map((text) => text.replace(/\s+/g, ' ').trim())
  }

  field(step: number, name: string): Locator {
    return this.dialog.getByLabel(`Step ${step}: ${name}`)
  }

  async set(step: number, name: string, value: string): Promise<void> {
    await this.field(step, name).fill(value)
    await this.field(step, name).press('Tab')
  }

  /** Look at a step: new ones go after it. */
  async at(step: number): Promise<void> {
    await this.dialog
      .getByRole('group', { name: new RegExp(`^Step ${step}:`) })
      .locator('select, input, textarea')
      .first()
      .focus()
  }

  async add(kind: string, after: number): Promise<void> {
    await this.at(after)
    const add = this.dialog.getByRole('group', { name: 'Add a step' })
    await this.bench.button(kind, add).click()
  }

  async inCentimetres(step: number, length: string): Promise<void> {
    await this.field(step, 'counted in').selectOption('cm')
    await this.set(step, 'length in cm', length)
  }

  async rename(from: string, to: string): Promise<void> {
    const field = this.dialog.getByLabel(`Name of the chart “${from}”`)
    await field.fill(to)
    await field.press('Tab')
  }

  /** What stands in the table of totals beside the row that begins with this. */
  async total(row: string): Promise<string[]> {
    return this.dialog
      .getByRole('row')
      .filter({ hasText: row })
      .first()
      .getByRole('cell')
      .allInnerTexts()
  }
}
