import type { Page } from 'playwright-core'
import { afterEach, expect, test } from 'vitest'
import { newPattern } from '../../src/pattern/pattern'
import { writeFile } from '../../src/shelf/format'
import type { BenchPage } from './bench'
import { openBench } from './suite'

// Files that are dropped, pasted and saved back in their place, and a piece in the address.

let bench: BenchPage
afterEach(async () => {
  await bench.close()
  expect(bench.complaints).toEqual([])
})

const title = () => bench.page.title()
const text = (name: string) => writeFile({ ...newPattern(12, 4), title: name })

/** A drop or a paste as the page hears of it. */
const bring = (how: 'drop' | 'paste', content: string, asFile: boolean) =>
  bench.page.evaluate(
    ({ how, content, asFile }) => {
      const data = new DataTransfer()
      if (asFile) data.items.add(new File([content], 'net.json', { type: 'application/json' }))
      else data.setData('text/plain', content)
      const more = { bubbles: true, cancelable: true }
      const event =
        how === 'drop'
          ? new DragEvent('drop', { ...more, dataTransfer: data })
          : new ClipboardEvent('paste', { ...more, clipboardData: data })
      document.body.dispatchEvent(event)
    },
    { how, content, asFile },
  )

test('a file that is dropped or pasted is opened, and so is the text of one', async () => {
  bench = await openBench()
  await bring('drop', text('Dropped net'), true)
  await expect.poll(title).toBe('Dropped net – Pegwright')
  await bring('paste', text('Pasted net'), true)
  await expect.poll(title).toBe('Pasted net – Pegwright')
  await bring('paste', text('Told net'), false)
  await expect.poll(title).toBe('Told net – Pegwright')
  await bring('drop', 'no piece', true)
  await bench.page
    .getByRole('dialog', { name: 'Not opened' })
    .getByText(/net.json/)
    .waitFor()
  expect(await title()).toBe('Told net – Pegwright')
})

/** A browser that lets a file be written where it lies; what was written is kept in the page. */
const withFile = async (page: Page): Promise<void> => {
  await page.addInitScript((content) => {
    const file = { kind: 'file', name: 'net.json', written: '' }
    const handle = Object.assign(file, {
      getFile: () => Promise.resolve(new File([content], 'net.json')),
      createWritable: () =>
        Promise.resolve(
          new WritableStream<Uint8Array>({
            start: () => void (file.written = ''),
            write: (part) => void (file.written += new TextDecoder().decode(part)),
          }),
        ),
    })
    Object.assign(window, { chosen: file, showOpenFilePicker: () => Promise.resolve([handle]) })
  }, text('Net of my own'))
}

test('a file is saved back in its place, and never in that of another piece', async () => {
  bench = await openBench(undefined, undefined, withFile)
  const written = () =>
    bench.page.evaluate(() => (window as unknown as { chosen: { written: string } }).chosen.written)
  await bench.choose('Open')
  await expect.poll(title).toBe('Net of my own – Pegwright')
  await bench.press('p', 'Enter', 'Control+s')
  await bench.page.getByText('Saved in net.json.').first().waitFor()
  const first = await written()
  expect(JSON.parse(first)).toMatchObject({ title: 'Net of my own' })
  // Undo as far as the piece before it: that one is saved as a file of its own.
  await bench.press('Control+z', 'Control+z')
  await expect.poll(title).toBe('Lamp-room cuff – Pegwright')
  const { name } = await bench.download(() => bench.choose('Save'))
  expect(name).toBe('lamp-room-cuff.pegwright.json')
  expect(await written()).toBe(first)
})

test('a link carries the piece, and opens as a copy', async () => {
  bench = await openBench(undefined, {})
  await bench.press('p', 'Enter')
  await bench.page
    .getByText(/^Kept in this browser/)
    .first()
    .waitFor()
  const words = await bench.wordLines()
  await bench.choose('My pieces')
  await bench.button('Copy a link for review').click()
  await bench.page.getByText('The link is copied.').waitFor()
  const link = await bench.page.evaluate(() => navigator.clipboard.readText())
  expect(link).toContain('#piece=')
  const page = await bench.page.context().newPage()
  await page.goto(link)
  await page
    .getByText(/Lamp-room cuff is on the bench/)
    .first()
    .waitFor()
  expect(page.url()).not.toContain('#')
  const lines = page.getByRole('region', { name: 'Words' }).locator('.cm-line')
  await expect.poll(async () => (await lines.allInnerTexts()).length).toBe(words.length)
  await page.goto(`${link.slice(0, -9)}`)
  await page
    .getByRole('dialog', { name: 'Not opened' })
    .getByText(/not whole/)
    .waitFor()
})
