import type { Locator } from 'playwright-core'
import { expect } from 'vitest'
import type { BenchPage } from './bench'

/** All that is written or chosen in by keys; also what lies behind a shadow root. */
const fields = [
  'input:not([type=radio], [type=checkbox], [type=file], [type=hidden])',
  'select',
  'textarea',
  '[contenteditable=true]',
].join(', ')

interface Field {
  readonly name: string
  readonly kind: 'text' | 'number' | 'range' | 'select' | 'editor'
}

/** How a field is called, and what kind it is. */
const look = (field: Locator): Promise<Field> =>
  field.evaluate((element) => {
    const input = element as HTMLInputElement
    const named = element.getAttribute('aria-label') ?? [...(input.labels ?? [])].at(0)?.innerText
    const kind = element.matches('[contenteditable=true]')
      ? 'editor'
      : element.matches('select')
        ? 'select'
        : input.type === 'range'
          ? 'range'
          : element.matches('[role=spinbutton]')
            ? 'number'
            : 'text'
    return { name: (named ?? '').trim().split('\n')[0] ?? '', kind }
  })

const hasFocus = (field: Locator): Promise<boolean> =>
  field.evaluate((element) => (element.getRootNode() as Document).activeElement === element)

/** What commands of the bench would change: the stitch in hand, and what could be taken back. */
async function handAndDeeds({
  page,
}: BenchPage): Promise<Readonly<Record<string, string | undefined>>> {
  return page.evaluate(() => ({
    hand: document.querySelector('.in-hand')?.textContent,
    rows: document.querySelector('.rows svg.chart')?.innerHTML,
    place: document.querySelector('.here h2')?.textContent,
  }))
}

/** Click on it with the mouse, where it is seen. */
async function clickIn({ page }: BenchPage, field: Locator, name: string): Promise<void> {
  await field.scrollIntoViewIfNeeded()
  const seen = await field.evaluate((element) => {
    const { x, y, width, height } = element.getBoundingClientRect()
    const root = element.getRootNode() as Document | ShadowRoot
    for (let down = 1; down < 20; down++) {
      const at = [x + Math.min(20, width / 3), y + (height * down) / 20] as const
      if (element.contains(root.elementFromPoint(...at))) return at
    }
    return null
  })
  if (!seen) throw new Error(`No part of ${name} can be clicked`)
  await page.mouse.click(...seen)
}

/** Type into it as people do; gives what must stand there then. */
async function typeIn({ page }: BenchPage, field: Locator, kind: Field['kind']): Promise<string> {
  const valueOf = () => field.evaluate((element) => (element as HTMLInputElement).value)
  if (kind === 'select') {
    const [now, all] = await field.evaluate((element) => {
      const { value, options } = element as HTMLSelectElement
      return [value, [...options].filter((one) => !one.disabled).map((one) => one.value)] as const
    })
    const at = all.indexOf(now)
    const to = at + 1 < all.length ? at + 1 : at - 1
    if (to >= 0) await page.keyboard.press(to > at ? 'ArrowDown' : 'ArrowUp')
    await page.keyboard.press('Enter')
    return all[Math.max(to, 0)] ?? now
  }
  if (kind === 'range') {
    const before = Number(await valueOf())
    const most = Number(await field.getAttribute('max'))
    const to = before < most ? before + 1 : before - 1
    await page.keyboard.press(to > before ? 'ArrowRight' : 'ArrowLeft')
    return String(to)
  }
  if (kind === 'number') {
    const before = Number(await valueOf())
    const most = Number(await field.getAttribute('aria-valuemax'))
    const to = String(before < most ? before + 1 : before - 1)
    // The click selected the number: what is typed takes its place.
    await page.keyboard.type(to)
    return to
  }
  if (kind === 'editor') {
    await page.keyboard.press('Control+End')
    await page.keyboard.type('5 p y')
    return '5 p y'
  }
  const numeric = (await field.getAttribute('inputmode')) !== null
  // No two charts may have one name.
  const text = numeric ? '25' : `5 p y ${await valueOf()}`
  if (!numeric) await page.keyboard.press('Control+a')
  await page.keyboard.type(text)
  return text
}

/**
 * The law of fields, for every field in `scope`: a click gives it the focus, what is typed stands
 * in it and nowhere else, and the focus stays until the hand goes on. Gives their names.
 */
export async function walkFields(bench: BenchPage, scope: Locator): Promise<string[]> {
  const walked: string[] = []
  const shown = () => scope.locator(fields).filter({ visible: true })
  for (let at = 0; at < (await shown().count()); at++) {
    const field = shown().nth(at)
    if (await field.isDisabled()) continue
    const { name, kind } = await look(field)
    const before = await handAndDeeds(bench)
    await clickIn(bench, field, name)
    expect(await hasFocus(field), `${name} has the focus after a click`).toBe(true)
    const typed = await typeIn(bench, field, kind)
    const standing = () =>
      field.evaluate((element) =>
        'value' in element ? String(element.value) : (element.textContent ?? ''),
      )
    if (kind === 'editor') expect(await standing(), name).toContain(typed)
    else expect(await standing(), name).toBe(typed)
    expect(await hasFocus(field), `${name} has the focus while it is written in`).toBe(true)
    // A number or text is not taken before Enter; a choice or an editor may change the chart itself.
    const after = await handAndDeeds(bench)
    expect(after.hand, `${name}: typing takes no stitch in hand`).toBe(before.hand)
    if (kind === 'number' || kind === 'text')
      expect(after, `${name}: typing changes nothing else`).toEqual(before)
    // In a form Enter does what the form is for.
    const takesEnter = await field.evaluate(
      (element) => !element.matches('textarea') && !(element as HTMLInputElement).form,
    )
    if ((kind === 'number' || kind === 'text') && takesEnter) {
      await bench.page.keyboard.press('Enter')
      expect(await standing(), `${name}, after Enter`).toBe(typed)
      expect(await hasFocus(field), `${name} has the focus after Enter`).toBe(true)
    }
    walked.push(name)
  }
  return walked
}
