/**
 * `npm run shots`: the pictures of README.md, made by the app itself, and the bench at three sizes
 * in light and dark for a look (these stay in .build/shots).
 */
import { mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { BenchPage } from './bench'
import { openBrowser } from './browser'
import { ownStore } from './pageStore'
import { serve } from './serve'

const pictures = fileURLToPath(new URL('shots/', import.meta.url))
const looks = fileURLToPath(new URL('../../.build/shots/', import.meta.url))
mkdirSync(pictures, { recursive: true })
mkdirSync(looks, { recursive: true })

const { url, stop } = await serve()
const browser = await openBrowser()
try {
  const sizes = { wide: [1440, 900], middle: [1024, 768], phone: [390, 844] } as const
  for (const [name, [width, height]] of Object.entries(sizes))
    for (const colorScheme of ['light', 'dark'] as const) {
      const bench = await BenchPage.open(await ownStore(browser, url), url)
      await bench.page.setViewportSize({ width, height })
      await bench.page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
      await bench.page.waitForTimeout(300)
      await bench.page.screenshot({ path: `${looks}${name}-${colorScheme}.png` })
      if (name === 'wide' && colorScheme === 'light')
        await bench.page.screenshot({ path: `${pictures}bench.png` })
      await bench.close()
    }
  const bench = await BenchPage.open(await ownStore(browser, url), url)
  await bench.choose('Start')
  await bench.page.waitForTimeout(300)
  await bench.page.screenshot({ path: `${looks}start.png` })
  await bench.button(/^Hawser band/).click()
  await bench.page.waitForTimeout(600)
  await bench.page.screenshot({ path: `${looks}plait.png` })
  await bench.choose('Booklet')
  const page = bench.page.getByRole('img', { name: 'Page 1 of' })
  await page.waitFor()
  await bench.page.waitForTimeout(300)
  await bench.page.screenshot({ path: `${looks}print.png` })
  await bench.page.screenshot({
    path: `${pictures}print.png`,
    clip: (await bench.page.locator('dialog[open]').boundingBox()) ?? {
      x: 0,
      y: 0,
      width: 1440,
      height: 900,
    },
  })
  await bench.page.keyboard.press('Escape')
  const panes = bench.page.getByRole('group', { name: /pane$/ })
  await bench.button('Pegs', panes).click()
  await bench.button('Fabric', panes).click()
  const fabric = bench.page.getByRole('region', { name: 'Fabric', exact: true })
  await bench.page.getByRole('application', { name: /^Fabric/ }).focus()
  // To a cross of the plait in the middle, whose strands are followed.
  const there = [
    'Home',
    'ArrowUp',
    'ArrowUp',
    'ArrowUp',
    ...new Array<string>(21).fill('ArrowLeft'),
  ]
  for (const key of [...there, 'Shift+F']) await bench.page.keyboard.press(key)
  for (let i = 0; i < 5; i++) await bench.button('Larger', fabric).click()
  await bench.page.getByRole('application', { name: /^Fabric/ }).focus()
  for (const key of ['ArrowUp', 'ArrowUp', 'ArrowUp']) await bench.page.keyboard.press(key)
  await bench.page.waitForTimeout(6000)
  await fabric.screenshot({ path: `${pictures}fabric.png` })

  await bench.choose('Start')
  await bench.button(/^Fog-watch socks/).click()
  await bench.page.waitForTimeout(6000)
  await bench.page.screenshot({ path: `${pictures}piece.png` })
  await bench.choose('Steps')
  await bench.page.waitForTimeout(300)
  await bench.page.screenshot({ path: `${looks}steps.png` })

  const phone = await BenchPage.open(await ownStore(browser, url), url, (page) =>
    page.setViewportSize({ width: 390, height: 844 }),
  )
  await phone.choose('Start')
  await phone.button(/^Hawser band/).click()
  await phone.page.getByRole('dialog', { name: 'Start' }).waitFor({ state: 'hidden' })
  await phone.button(/^Knit$/).click()
  const knitting = phone.page.getByRole('dialog', { name: /^Knit along/ })
  await knitting.getByRole('heading', { name: 'Cast on' }).waitFor()
  for (let row = 0; row < 5; row++) await phone.page.keyboard.press('PageDown')
  await phone.button(/^2\/2 RC/, knitting).click()
  await phone.page.waitForTimeout(300)
  await phone.page.screenshot({ path: `${pictures}knit.png` })
  await phone.close()
} finally {
  await browser.close()
  await stop()
}
