import { describe, expect, test } from 'vitest'
import { paint } from '../../src/pattern/edits/paint'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { habitsOf } from '../../src/pattern/habits'
import { workPattern } from '../../src/pattern/work'
import { readFile, writeFile } from '../../src/shelf/format'
import { walkRow } from '../../src/loom/walk'
import { handsContext } from '../../src/words/hands/context'
import { stepFigures } from '../../src/words/hands/figures'
import type { BenchPage } from './bench'
import { eachTestWithBench } from './suite'
import { violations } from './violations'
import { stitchOf } from '../../src/stitches/vocabulary'

let bench: BenchPage
eachTestWithBench((opened) => {
  bench = opened
})

const pegs = () => bench.page.getByRole('region', { name: 'Pegs', exact: true })
const sentence = () => pegs().getByRole('status')
const slider = () => pegs().getByRole('slider', { name: 'Move' })
const count = () => pegs().getByText(/^Move \d+ of \d+/)
const loom = () => pegs().getByRole('application')

async function showPegs(): Promise<void> {
  const narrow = (bench.page.viewportSize()?.width ?? 0) < 760
  if (narrow) await bench.show('Pegs')
  else await bench.button('Pegs', bench.page.getByRole('group', { name: 'Right pane' })).click()
  await pegs().waitFor()
}

async function open(pattern: Pattern): Promise<void> {
  const [chooser] = await Promise.all([
    bench.page.waitForEvent('filechooser'),
    bench.page.getByRole('button', { name: 'Open', exact: true }).click(),
  ])
  const buffer = Buffer.from(writeFile(pattern))
  await chooser.setFiles({ name: 'piece.json', mimeType: 'application/json', buffer })
  await bench.page.waitForFunction((title) => document.title.startsWith(title), pattern.title)
}

/** A ring of 12 pegs with a 2/2 left cross on pegs 5 to 8 of its third round. */
function withCross(direction: Pattern['loom']['direction']): Pattern {
  const plain = { ...newPattern(12, 4), title: `Cross ${direction}` }
  return paint({ ...plain, loom: { ...plain.loom, direction } }, stitchOf('2/2 LC'), 2, 4)
}

/** Sentence and place after each press of a key. */
async function walk(key: string, times: number): Promise<{ said: string; place: string }[]> {
  const steps: { said: string; place: string }[] = []
  for (let time = 0; time < times; time++) {
    const before = await count().innerText()
    await bench.page.keyboard.press(key)
    await expect.poll(() => count().innerText()).not.toBe(before)
    steps.push({ said: await sentence().innerText(), place: await bench.place() })
  }
  return steps
}

/**
 * Move loops first, then knit (a setting). Worked clockwise, that is right to left, the front pair
 * of a left cross is the first one worked; counterclockwise the last one (common practice).
 */
const crossMoves = {
  clockwise: [
    /^Take the loop off peg 7 onto the spare needle.*inside/,
    /^Take the loop off peg 8 onto the spare needle.*inside/,
    /^Move the loop of peg 6 two pegs to the left, to the empty peg 8/,
    /^Move the loop of peg 5 two pegs to the left, to the empty peg 7/,
    /put the one that was taken (off )?first on peg 5/,
    /^Put the waiting loop from the spare needle on peg 6/,
    /^Knit peg 5:/,
    /^Knit peg 6:/,
    /^Knit peg 7:/,
    /^Knit peg 8:/,
  ],
  counterclockwise: [
    /^Take the loop off peg 5 onto the spare needle.*inside/,
    /^Take the loop off peg 6 onto the spare needle.*inside/,
    /^Move the loop of peg 7 two pegs to the left, to the empty peg 5/,
    /^Move the loop of peg 8 two pegs to the left, to the empty peg 6/,
    /put the one that was taken (off )?first on peg 7/,
    /^Put the waiting loop from the spare needle on peg 8/,
    /^Knit peg 5:/,
    /^Knit peg 6:/,
    /^Knit peg 7:/,
    /^Knit peg 8:/,
  ],
} as const

test.each(['clockwise', 'counterclockwise'] as const)(
  'a 2/2 left cross is walked forward and back by keys, and the place goes with it: %s',
  async (direction) => {
    await open(withCross(direction))
    await showPegs()
    const on = direction === 'clockwise' ? 'ArrowLeft' : 'ArrowRight'
    await bench.press('Home', 'ArrowUp', 'ArrowUp', on, on, on)
    await count().filter({ hasText: 'Move 4 of' }).waitFor()
    await loom().focus()
    const there = await walk('ArrowRight', crossMoves[direction].length)
    there.forEach(({ said, place }, index) => {
      expect(said).toMatch(crossMoves[direction][index] ?? /never/)
      expect(place).toMatch(/^round 3, peg [5-8]:/)
    })
    expect(await pegs().getByRole('heading', { level: 3 }).innerText()).toBe(
      '2/2 left cross on pegs 5 to 8',
    )
    const back = await walk('ArrowLeft', there.length - 1)
    expect(back).toEqual(there.slice(0, -1).toReversed())
  },
)

test('comma and full stop walk while the chart has the focus', async () => {
  await showPegs()
  await bench.press('Home', '.', '.', ',')
  await count().filter({ hasText: 'Move 2 of 36 · Round 1' }).waitFor()
  expect(await bench.place()).toMatch(/^round 1, peg 2:/)
})

test('a German heel is walked over a turn: the other way, and on in the next row', async () => {
  await bench.choose('Start')
  await bench
    .button(/^Hundred-steps heel|Heel in German short rows/)
    .first()
    .click()
  await showPegs()
  const rows = bench.page.getByRole('region', { name: 'Pegs', exact: true })
  for (let row = 0; row < 60; row++) {
    await loom().focus()
    await bench.page.keyboard.press('End')
    if (/^Turn back/.test(await sentence().innerText())) break
    await bench.page.keyboard.press('PageUp')
  }
  expect(await sentence().innerText()).toMatch(/^Turn back: from here, work from left to right/)
  const row = Number(/Row (\d+)/.exec(await count().innerText())?.[1])
  const turned = await walk('ArrowLeft', 1)
  expect(turned[0]?.said).toMatch(/the yarn .*peg \d+.*\(a German turn\)/)
  const peg = Number(/of peg (\d+)/.exec(turned[0]?.said ?? '')?.[1])
  const on = await walk('ArrowRight', 2)
  expect(on[1]?.said).toMatch(new RegExp(`^Knit peg ${peg - 1}:`))
  expect(await count().innerText()).toContain(`Row ${row + 1}`)
  expect(on[1]?.place).toContain(`peg ${peg - 1}:`)
  await rows.getByRole('img', { name: /^The loom from above/ }).waitFor()
})

test('the slider goes to any move and says what is done there', async () => {
  await showPegs()
  await bench.press('Home')
  await slider().fill('5')
  expect(await sentence().innerText()).toBe(await slider().getAttribute('aria-valuetext'))
  expect(await bench.place()).toMatch(/^round 1, peg 5:/)
  await slider().press('ArrowRight')
  await count().filter({ hasText: 'Move 6 of 36' }).waitFor()
  await slider().press('End')
  await count().filter({ hasText: 'Move 36 of 36' }).waitFor()
  await slider().press('ArrowRight')
  await count().filter({ hasText: 'Move 1 of 36 · Round 2' }).waitFor()
})

test('it plays at the pace chosen, until it is paused', async () => {
  await showPegs()
  await bench.press('Home')
  const pace = pegs().getByRole('spinbutton', { name: 'Pace' })
  await pace.fill('600')
  await pace.blur()
  await bench.button('Play', pegs()).click()
  await count()
    .filter({ hasText: /Move ([4-9]|\d\d) of/ })
    .waitFor()
  await loom().focus()
  await bench.page.keyboard.press('Space')
  await bench.button('Play', pegs()).waitFor()
  const stopped = await count().innerText()
  await bench.page.waitForTimeout(400)
  expect(await count().innerText()).toBe(stopped)
})

test('pressing a peg in either drawing goes to its stitch', async () => {
  await open(withCross('clockwise'))
  await showPegs()
  await bench.press('Home', 'ArrowUp', 'ArrowUp')
  const numberOf = async (drawing: RegExp, text: string) => {
    const label = pegs()
      .getByRole('img', { name: drawing })
      .locator('text')
      .getByText(text, { exact: true })
    const box = await label.first().boundingBox()
    if (!box) throw new Error(`No peg ${text} in sight`)
    return { x: box.x + box.width / 2, y: box.y }
  }
  // In the strip a peg stands right above its number.
  const front = await numberOf(/^Pegs \d+ to \d+ seen/, '2')
  await bench.page.mouse.click(front.x, front.y - 12)
  await count().filter({ hasText: 'Move 2 of' }).waitFor()
  expect(await bench.place()).toMatch(/^round 3, peg 2:/)
  // On the ring the pegs stand just inside their numbers.
  const ring = await pegs()
    .getByRole('img', { name: /^The loom from above/ })
    .boundingBox()
  const six = await numberOf(/^The loom from above/, '6')
  if (!ring) throw new Error('No ring')
  const centre = { x: ring.x + ring.width / 2, y: ring.y + ring.height / 2 }
  const at = { x: six.x + (centre.x - six.x) * 0.2, y: six.y + (centre.y - six.y) * 0.2 }
  await bench.page.mouse.click(at.x, at.y)
  await pegs().getByRole('heading', { name: '2/2 left cross on pegs 5 to 8' }).waitFor()
  expect(await count().innerText()).toMatch(/^Move 5 of/)
})

test('the whole piece is walked from the cast-on to the bind-off', async () => {
  await open(withCross('clockwise'))
  await showPegs()
  const chooser = pegs().getByRole('combobox', { name: 'Walk through' })
  await chooser.focus()
  await chooser.selectOption({ label: '1. Cast on: e-wrap' })
  expect(await sentence().innerText()).toMatch(/makes its first loop/)
  await slider().press('End')
  await slider().press('ArrowRight')
  await count().filter({ hasText: 'Move 1 of 12 · Round 1 of Chart' }).waitFor()
  expect(await bench.place()).toMatch(/^round 1, peg 1:/)
  await chooser.selectOption({ label: '3. Bind off: basic' })
  await slider().press('End')
  expect(await sentence().innerText()).toMatch(/^Cut the yarn/)
  await chooser.selectOption({ label: 'This chart' })
  await count()
    .filter({ hasText: / · Round 1$/ })
    .waitFor()
})

describe('step pictures', () => {
  const dialog = () => bench.page.getByRole('dialog', { name: 'Step pictures' })

  test('of a cross are saved as SVG: numbered figures with the sentences of its moves', async () => {
    const pattern = withCross('clockwise')
    await open(pattern)
    await showPegs()
    await bench.press('Home', 'ArrowUp', 'ArrowUp', ...new Array<string>(4).fill('ArrowLeft'))
    await bench.button('Step pictures', pegs()).click()
    const file = await bench.download(() => bench.button('Save as SVG', dialog()).click())
    expect(file.name).toMatch(/-steps\.svg$/)

    const run = workPattern(pattern).run.rows[2]
    const moments = run ? walkRow(run, habitsOf(pattern)) : []
    const first = moments.findIndex(({ site }) => site?.peg === 4)
    const last = moments.findLastIndex(({ site }) => site?.peg === 4)
    const figures = stepFigures(moments.slice(first - 1, last + 1), handsContext(pattern))
    const { words, numbers, wellFormed } = await bench.page.evaluate((text) => {
      const page = new DOMParser().parseFromString(text, 'image/svg+xml')
      const all = [...page.querySelectorAll('text')]
      return {
        wellFormed: page.querySelector('parsererror') === null,
        words: all
          .map(({ textContent }) => textContent)
          .join(' ')
          .replace(/\s+/g, ' '),
        // Numbers of arrows stand in the middle of their place, those of figures in the corner.
        numbers: all
          .filter(
            (item) =>
              item.getAttribute('font-weight') === 'bold' &&
              item.getAttribute('text-anchor') === 'start' &&
              /^\d+$/.test(item.textContent),
          )
          .map(({ textContent }) => textContent),
      }
    }, Buffer.from(file.bytes).toString())
    expect(wellFormed).toBe(true)
    // The number of a figure stands once, before its sentence.
    expect(numbers).toEqual([])
    figures.forEach(({ sentence: told }, index) => {
      expect(words).toContain(`${index + 1}. ${told}`)
    })
    expect(words).toContain('2/2 left cross on pegs 5 to 8')
  })

  test('of a marked stretch go into the booklet as one step, are kept in the file, and come out', async () => {
    await open(withCross('clockwise'))
    await showPegs()
    await bench.press('Home', 'ArrowUp', 'ArrowUp')
    await bench.button('From here', pegs()).click()
    await loom().focus()
    await walk('ArrowRight', 6)
    await bench.button('Step pictures', pegs()).click()
    await bench.button('Add to the booklet', dialog()).click()
    await dialog().getByText('Chart, round 3, moves 1 to 7').waitFor()
    expect(await bench.button('Add to the booklet', dialog()).isDisabled()).toBe(true)
    await bench.button('Close', dialog()).click()
    const file = await bench.download(() =>
      bench.page.getByRole('button', { name: 'Save', exact: true }).click(),
    )
    const saved = readFile(Buffer.from(file.bytes).toString())
    expect(saved.ok && saved.pattern.pictures).toEqual([{ chart: 'Chart', row: 2, from: 0, to: 6 }])

    await bench.press('End')
    await bench.button('Step pictures', pegs()).click()
    await bench.button(/^Go to Chart, round 3/, dialog()).click()
    await count().filter({ hasText: 'Move 1 of' }).waitFor()
    await bench.button('Step pictures', pegs()).click()
    await bench.button(/^Remove Chart, round 3/, dialog()).click()
    await dialog().getByText('Chart, round 3, moves').waitFor({ state: 'detached' })
    await bench.button('Close', dialog()).click()
    await bench.press('Control+z')
    await bench.button('Step pictures', pegs()).click()
    await dialog().getByText('Chart, round 3, moves 1 to 7').waitFor()
  })
})

describe.each([
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
])('$width x $height', (size) => {
  test('the pegs and their pictures meet WCAG 2.2 AA, with nothing cut off', async () => {
    await bench.page.setViewportSize(size)
    await showPegs()
    expect(await violations(bench)).toEqual([])
    const cut = await pegs().evaluate((pane) => {
      const box = pane.getBoundingClientRect()
      return [...pane.querySelectorAll('button, input, select, svg, [role=status]')]
        .map((element) => ({ element, inner: element.getBoundingClientRect() }))
        .filter(
          ({ element, inner }) =>
            !element.closest('dialog') &&
            // What a button shows is as small as it likes; on a phone some buttons are not there.
            !(element.matches('svg') && element.closest('button')) &&
            element.checkVisibility() &&
            (inner.height < 20 ||
              inner.left < box.left ||
              inner.right > box.right ||
              inner.bottom > box.bottom),
        )
        .map(({ element }) => element.outerHTML.slice(0, 90))
    })
    expect(cut).toEqual([])
    await bench.button('Step pictures', pegs()).click()
    await bench.page.getByRole('img', { name: 'Figure 1' }).waitFor()
    expect(await violations(bench)).toEqual([])
  })
})
