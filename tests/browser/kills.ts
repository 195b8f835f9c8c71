// npm run kills -- [kills] [edits]: 200 kills over 600 edits, or as many as are asked for.

import { openBrowser } from './browser'
import { killOften, painted } from './killing'
import { serve } from './serve'

const [kills = 200, edits = 600] = process.argv.slice(2).map(Number)
const { url, stop } = await serve()
const browser = await openBrowser()
try {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  const { page, killed } = await killOften({ context, url, kills, edits, tell: console.log })
  const missing = killed.lost.filter((lost) => lost > 1)
  const underWay = killed.lost.filter((lost) => lost === 1).length
  console.log(
    `${kills} kills over ${killed.painted} edits: ${underWay} times the edit under way was missing, ${missing.length} times more than that.`,
  )
  // Undo is there, over all the times that the page was gone.
  await page.keyboard.press('Control+z')
  const undone = await painted(page)
  console.log(`Undo after all of it takes back ${killed.painted - undone} edit.`)
  if (missing.length > 0 || undone !== killed.painted - 1) process.exitCode = 1
} finally {
  await browser.close()
  await stop()
}
