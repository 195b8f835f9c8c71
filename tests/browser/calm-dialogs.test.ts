import type { Locator } from 'playwright-core'
import { describe, expect, test } from 'vitest'
import { pieceLimits } from '../../src/pattern/piece'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

// Nothing that is pressed moves under the pointer: whatever is chosen, ticked or entered in a
// dialog, the dialog keeps its size and place, and every button in it stands where it stood.

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

const sizes = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
]
/** The one that lies above the others. */
const dialog = () => bench.page.locator('dialog[open]').last()
const press = async (name: string | RegExp, within?: Locator): Promise<void> => {
  await bench.button(name, within).first().click()
}
const menu = (name: string) => () => bench.choose(name)
async function openStarter(name: RegExp): Promise<void> {
  await bench.choose('Start')
  await press(name, dialog())
  await dialog().waitFor({ state: 'hidden' })
}
/** The words of a chart of other pegs and another direction, with a slip to mend. */
const words = 'Worked counterclockwise on 12 pegs.\nRnd 1: k12.\nRnd 2: k6, p5.\nRnd 3: prul.'

/** Every dialog in which something can be changed, how it is opened, and how much there is at least. */
const dialogs: readonly (readonly [string, () => Promise<void>, number])[] = [
  ['Start', menu('Start'), 3],
  ['Loom and swatch', menu('Loom and swatch'), 15],
  ['Booklet', menu('Booklet'), 5],
  [
    'Booklet of a pair and of own words that differ',
    async () => {
      await openStarter(/Fog.watch/i)
      await bench.choose('Loom and swatch')
      await dialog().getByLabel('Made').selectOption('mirrored')
      await bench.page.keyboard.press('Escape')
      await bench.show('Words')
      await bench.text.click()
      await bench.paste('Rnd 1: k.')
      await bench.standing.filter({ hasText: 'differ' }).waitFor()
      await bench.choose('Booklet')
    },
    6,
  ],
  [
    'Steps',
    async () => {
      await openStarter(/Fog.watch/i)
      await bench.choose('Steps')
    },
    15,
  ],
  [
    'Steps of a rake',
    async () => {
      await openStarter(/Drift-net/i)
      await bench.choose('Steps')
    },
    10,
  ],
  [
    'Chart from words',
    async () => {
      await bench.show('Words')
      await press('Chart from words')
      await dialog().getByLabel('Paste or write').fill(words)
      await dialog().getByRole('status').filter({ hasText: 'read' }).waitFor()
    },
    4,
  ],
  ['Make a cross', () => press('Make a cross'), 4],
]

/** The open dialog or what has popped up. */
const shown = () => bench.page.locator('dialog[open], [popover]:popover-open').last()

interface Control {
  readonly field: Locator
  readonly name: string
  readonly type: string
}

/**
 * Name each button once, so that it is known again; gives where each of them stands, and the edges.
 * What is found in a line of a list makes it grow: the other lines, and they only, make room.
 * What is found in words that are read is told anew each time, in a part of its own.
 */
const standing = ({ field }: Control, what = 'button'): Promise<Record<string, string>> =>
  field.evaluate((control, what) => {
    const box = control.closest('dialog, [popover]') ?? document.body
    const line = control.closest('li')
    const isOtherLine = (other: Element | null) =>
      line !== null && other !== line && other?.parentElement === line.parentElement
    const where = (element: Element) => {
      const { x, y, width, height } = element.getBoundingClientRect()
      return [x, y, width, height].map(Math.round).join(' ')
    }
    const found: Record<string, string> = { 'the dialog': where(box) }
    for (const button of box.querySelectorAll<HTMLElement>(what)) {
      if (button.offsetParent === null || isOtherLine(button.closest('li'))) continue
      if (button.closest('.result')) continue
      const count = Number(document.body.dataset.count ?? 0)
      if (!button.dataset.known) document.body.dataset.count = `${count + 1}`
      button.dataset.known ??= `${count}`
      found[`${button.dataset.known} ${button.getAttribute('aria-label') ?? button.innerText}`] =
        where(button)
    }
    return found
  }, what)

/** Buttons that stand somewhere else than before, by more than a pixel; those that came or went do not count. */
const moved = (before: Record<string, string>, now: Record<string, string>): string[] =>
  Object.entries(before).flatMap(([name, was]) => {
    const is = now[name]?.split(' ').map(Number)
    const far = was.split(' ').some((at, index) => Math.abs(Number(at) - (is?.[index] ?? NaN)) > 1)
    return far ? [`${name}: ${was} -> ${is?.join(' ')}`] : []
  })

async function controls(): Promise<Control[]> {
  const found = shown()
    .locator('select, input[type=checkbox], input[type=radio], input[inputmode]')
    .filter({ visible: true })
  const all: Control[] = []
  for (const field of await found.all()) {
    const [name, type] = await field.evaluate((element) => {
      const input = element as HTMLInputElement
      input.dataset.field ??= `${document.querySelectorAll('[data-field]').length}`
      const type = input.matches('[role=spinbutton]') ? 'number' : input.type
      return [input.ariaLabel ?? input.labels?.[0]?.innerText ?? '', type] as const
    })
    if (await field.isDisabled()) continue
    const known = await field.getAttribute('data-field')
    all.push({
      field: shown().locator(`[data-field="${known}"]`),
      name: name.split('\n')[0] ?? '',
      type,
    })
  }
  return all
}

/**
 * The steps of a list have the same controls, named with the number of the step: of these the first
 * and the last are gone through.
 */
function oneOfEachKind(all: readonly Control[]): Control[] {
  const kindOf = ({ name, type }: Control) => `${name.replace(/\d+/g, '')} ${type}`
  const kinds = all.map(kindOf)
  return all.filter((_, at) => {
    const kind = kinds[at] ?? ''
    return kinds.indexOf(kind) === at || kinds.lastIndexOf(kind) === at
  })
}

/** Have the field take what stands in it. In a form Enter does what the form is for. */
async function take(field: Locator): Promise<void> {
  const isInForm = await field.evaluate((element) => (element as HTMLInputElement).form !== null)
  await field.press(isInForm ? 'Tab' : 'Enter')
}

/** All that a control can be changed to, one after the other, back to what it was at the end. */
async function* changes({ field, type }: Control): AsyncGenerator<string> {
  if (type === 'checkbox') {
    await field.click()
    yield 'pressed'
    await field.click()
    yield 'pressed again'
  } else if (type === 'radio') {
    await field.check()
    yield 'chosen'
  } else if (type === 'number') {
    const was = await field.inputValue()
    const most = Number(await field.getAttribute('aria-valuemax'))
    const to = String(Number(was) < most ? Number(was) + 1 : Number(was) - 1)
    // A number beyond the limits is refused, with a message.
    for (const value of [to, was, String(most + 1), was]) {
      await field.fill(value)
      await take(field)
      yield value
    }
  } else if (type === 'text') {
    const was = await field.inputValue()
    for (const value of ['99999', was]) {
      await field.fill(value)
      await take(field)
      yield value
    }
  } else {
    const [was, all] = await field.evaluate((element) => {
      const { value, options } = element as HTMLSelectElement
      return [value, [...options].filter((one) => !one.disabled).map((one) => one.value)] as const
    })
    for (const value of [...all.filter((one) => one !== was), was]) {
      await field.selectOption(value)
      yield value
    }
  }
}

describe.each(sizes)('at $width x $height', (size) => {
  test.each(dialogs)(
    '%s keeps its size and its buttons',
    { timeout: 120_000 },
    async (_name, open, least) => {
      await bench.page.setViewportSize(size)
      await open()
      await shown().waitFor()
      const all = await controls()
      expect(all.length).toBeGreaterThanOrEqual(least)
      const wandered: string[] = []
      for (const control of oneOfEachKind(all)) {
        if ((await control.field.count()) === 0) continue
        // As it has when a hand is at it.
        await control.field.focus()
        await control.field.scrollIntoViewIfNeeded()
        let before = await standing(control)
        for await (const change of changes(control)) {
          await bench.page.evaluate(() => new Promise(requestAnimationFrame))
          const now = await standing(control)
          for (const one of moved(before, now)) wandered.push(`${control.name} ${change}: ${one}`)
          before = now
        }
      }
      expect(wandered).toEqual([])
    },
  )
})

/** What a dialog's own line says of a refusal. */
const refused = () =>
  dialog()
    .getByRole('alert')
    .filter({ hasText: /enter|needs a name|can have/ })

test.each([
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
])(
  'at $width x $height a refused name, note or number moves nothing and is seen whole',
  async (size) => {
    const { page } = bench
    await page.setViewportSize({ width: 1440, height: 900 })
    await bench.choose('Steps')
    await press('Note', dialog())
    await page.setViewportSize(size)
    const fields = [
      [
        dialog()
          .getByLabel(/^Name of the chart/)
          .first(),
        '',
      ],
      [dialog().getByLabel(/: note$/), 'x'.repeat(pieceLimits.note.most + 1)],
      [dialog().getByLabel('Pegs between turns'), '99'],
      [dialog().getByLabel('Pace, plain stitches a minute'), '9999'],
    ] as const
    for (const [field, value] of fields) {
      const control = { field, name: '', type: '' }
      await field.fill(value)
      const before = await standing(control, 'button, input, select, textarea')
      await field.blur()
      await refused().waitFor()
      expect(moved(before, await standing(control, 'button, input, select, textarea'))).toEqual([])
      const isSeen = await refused().evaluate((line) => {
        const { x, y, right, bottom } = line.getBoundingClientRect()
        const isWhole = line.scrollHeight <= line.clientHeight + 1
        return isWhole && x >= 0 && y >= 0 && right <= innerWidth && bottom <= innerHeight
      })
      expect(isSeen).toBe(true)
    }
  },
)
