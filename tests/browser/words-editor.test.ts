import { expect, test } from 'vitest'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

const sections = [
  'RIB',
  'Rnds 1-3: *k2, p2; rep from * to end. (36 sts)',
  'Rnd 4: knit.',
  '',
  'TWIST',
  'Rnds 5-8: *2/2 LC, k2, p3; rep from * to end.',
]
const fold = () => bench.words.locator('.cm-foldPlaceholder')

test('sections are folded and unfolded by keyboard, and folding changes no word', async () => {
  const { keyboard } = bench.page
  await bench.text.click()
  await bench.paste(sections.join('\n'))
  await bench.says('differ from the chart')
  await keyboard.press('Control+Home')
  await keyboard.press('Control+Shift+BracketLeft')
  await fold().waitFor()
  expect(await bench.wordLines()).toEqual(['RIB…', '', ...sections.slice(4)])
  await keyboard.press('Control+Alt+BracketLeft')
  await expect.poll(() => fold().count()).toBe(2)
  await keyboard.press('Control+Alt+BracketRight')
  await expect.poll(() => fold().count()).toBe(0)
  expect(await bench.wordLines()).toEqual(sections)
})

test('sections are folded and unfolded by pointer, and a finding unfolds its section', async () => {
  await bench.text.click()
  await bench.paste(sections.join('\n').replace('(36 sts)', '(35 sts)'))
  await bench.says('differ from the chart')
  const marks = bench.words.getByTitle('Fold line').filter({ visible: true })
  await expect.poll(() => marks.count()).toBe(2)
  await marks.last().click()
  await fold().waitFor()
  expect((await bench.wordLines()).at(-1)).toBe('TWIST…')
  await fold().click()
  await expect.poll(() => fold().count()).toBe(0)
  await marks.first().click()
  await fold().waitFor()
  await bench.page.keyboard.press('Control+Home')
  await bench.page.keyboard.press('F8')
  await bench.text.getByText('35 sts').waitFor()
})

test('each kind of word has its look, and an unknown one more than a colour', async () => {
  await bench.text.click()
  await bench.paste(
    [
      'RIB',
      'BC = slip 2 to the cable needle, k2, k2 from it.',
      'Rnd 1: *k2, kwool; rep from * to end. (36 sts)',
      'Rnd 2: As Rnd 1.',
      'Row 3: k5, turn.',
    ].join('\n'),
  )
  const kind = (name: string, text: string) =>
    bench.text.locator(`.token-${name}`, { hasText: text }).first().waitFor()
  await kind('heading', 'RIB')
  await kind('definition', 'BC')
  await kind('head', 'Rnd 1:')
  await kind('stitch', 'k')
  await kind('unknown', 'kwool')
  await kind('repeat', 'rep')
  await kind('count', '36')
  await kind('reference', 'As')
  await kind('turn', 'turn')
  const look = (name: string) =>
    bench.text
      .locator(`.token-${name}`)
      .first()
      .evaluate((element) => {
        const { fontWeight, textDecorationLine } = getComputedStyle(element)
        return `${fontWeight} ${textDecorationLine}`
      })
  expect(await look('head')).toBe('700 none')
  expect(await look('stitch')).toBe('400 none')
  const isUnderlined = () =>
    bench.text
      .locator('.cm-line', { hasText: 'kwool' })
      .evaluate((line) =>
        [...line.querySelectorAll('span')].some(
          (span) =>
            span.textContent.includes('kwool') &&
            getComputedStyle(span).textDecorationLine === 'underline',
        ),
      )
  await expect.poll(isUnderlined).toBe(true)
  await bench.finding('kwool')
  await bench.mend('Set aside')
  await expect.poll(isUnderlined).toBe(false)
})

test('heads and stitches are completed by keyboard, and Escape leaves what was typed', async () => {
  const { keyboard } = bench.page
  const option = (name: RegExp) => bench.page.getByRole('option', { name })
  const chosen = bench.page.locator('.cm-tooltip [aria-selected]')
  await bench.text.click()
  await bench.paste('Rnds 1-4: knit.\n')
  await keyboard.press('Control+Space')
  await option(/^Rnd 5:/).waitFor()
  await keyboard.press('ArrowDown')
  await chosen.waitFor()
  await keyboard.press('Enter')
  await expect.poll(() => bench.wordLines()).toEqual(['Rnds 1-4: knit.', 'Rnd 5: '])
  await keyboard.type('p2t')
  await option(/^p2tog/).waitFor()
  await keyboard.press('ArrowDown')
  await chosen.waitFor()
  await keyboard.press('Enter')
  await expect.poll(() => bench.wordLines()).toEqual(['Rnds 1-4: knit.', 'Rnd 5: p2tog'])
  await keyboard.type(', k2t')
  await option(/^k2tog/).waitFor()
  await keyboard.press('Escape')
  await expect.poll(() => option(/^k2tog/).count()).toBe(0)
  expect((await bench.wordLines())[1]).toBe('Rnd 5: p2tog, k2t')
})

test('each move of the caret moves the place once, and each move of the place lights its round', async () => {
  const places = () =>
    bench.rows.evaluate(
      (chart) => (chart as unknown as { told?: (string | null)[] }).told?.splice(0) ?? [],
    )
  await bench.rows.evaluate((chart) => {
    const told: (string | null)[] = []
    Object.assign(chart, { told })
    new MutationObserver(() => told.push(chart.getAttribute('aria-label'))).observe(chart, {
      attributeFilter: ['aria-label'],
    })
  })
  const caretLine = () =>
    bench.text.evaluate((content) => {
      const root = content.getRootNode() as ShadowRoot & { getSelection?: () => Selection | null }
      const node = (root.getSelection?.() ?? getSelection())?.anchorNode
      const element = node instanceof Element ? node : node?.parentElement
      return element?.closest('.cm-line')?.textContent ?? ''
    })
  /** Longer than the bench waits for hands at rest: what chases itself would have moved again. */
  const settle = () => bench.page.waitForTimeout(600)

  // Wide, no line is wrapped, so that one key goes to the next round.
  await bench.widenWords()
  await bench.text
    .locator('.cm-line', { hasText: 'Rnd 11' })
    .locator('.token-stitch')
    .nth(2)
    .click()
  await expect.poll(() => bench.place()).toMatch(/^round 11, peg 3:/)
  await settle()
  expect(await places()).toHaveLength(1)
  expect(await caretLine()).toMatch(/^Rnd 11/)

  await bench.page.keyboard.press('ArrowDown')
  await expect.poll(() => bench.place()).toMatch(/^round 12, /)
  await settle()
  expect(await places()).toHaveLength(1)
  expect(await caretLine()).toMatch(/^Rnds 12-14/)

  await bench.press('ArrowUp', 'ArrowUp', 'ArrowUp')
  await bench.text.locator('.lit', { hasText: 'Rnd 15' }).waitFor()
  await settle()
  expect(await places()).toHaveLength(3)
  expect(await bench.place()).toMatch(/^round 15, /)
})

const wrongCounts = [
  'Rnds 1-8: *k1, p1; rep from * to end. (35 sts)',
  'Rnd 9: Knit. (37 sts)',
  'Rnd 10: Knit. (38 sts)',
  'Rnds 11-42: Knit.',
]
/** The line of the words that the caret is on. */
const lineOfCaret = () =>
  bench.page.evaluate(() => {
    let at = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    const selection = (
      at?.getRootNode() as ShadowRoot & { getSelection?: () => Selection | null }
    ).getSelection?.()
    const node = selection?.anchorNode ?? null
    const element = node instanceof Element ? node : node?.parentElement
    return element?.closest('.cm-line')?.textContent ?? ''
  })

test('after a mend, wherever it was pressed, F8 goes on to what is wrong next', async () => {
  await bench.text.click()
  await bench.paste(wrongCounts.join('\n'))
  await bench.says('My own words')
  // By keys at the caret.
  await bench.page.keyboard.press('Control+Home')
  await bench.page.keyboard.press('F8')
  await bench.page.keyboard.press('Alt+Enter')
  await bench.page.keyboard.press('Enter')
  await bench.text.getByText('(35 sts)').waitFor({ state: 'detached' })
  await bench.page.keyboard.press('F8')
  await expect.poll(lineOfCaret).toContain('(37 sts)')
  // By mouse, in the list of findings.
  await bench.finding('37')
  await bench.mend('Write 36 sts')
  await bench.text.getByText('(37 sts)').waitFor({ state: 'detached' })
  await bench.page.keyboard.press('F8')
  await expect.poll(lineOfCaret).toContain('(38 sts)')
})

test('what stands at the caret is told in the findings, not over the text too, and lines are left to read', async () => {
  await bench.startEmpty(24, 4)
  await bench.text.click()
  await bench.paste('Rnd 1: k2, p2, k5 (24 sts)\nRnd 2: purl.\nRnd 3: knit.\nRnd 4: knit.\n')
  await bench.page.keyboard.press('Control+Home')
  await bench.findings.getByText('Rnd 1 works 9 of 24 stitches').waitFor()
  const wrong = bench.words.locator('.cm-lintRange-error')
  await wrong.nth(1).hover()
  const over = bench.page.locator('.cm-tooltip-lint')
  await over.getByText('Rnd 2').first().waitFor()
  await bench.page.mouse.move(0, 0)
  await over.waitFor({ state: 'hidden' })
  await wrong.first().hover()
  // As long as it takes to come up over another line.
  await bench.page.waitForTimeout(700)
  expect(await over.isVisible()).toBe(false)
  await bench.wholeScreen('Words')
  await bench.words.getByText('How it is worked').click()
  const { height } = (await bench.words.locator('.host').boundingBox()) ?? { height: 0 }
  expect(height).toBeGreaterThanOrEqual(5 * 24)
})
