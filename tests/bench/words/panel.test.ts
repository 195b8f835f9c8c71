import { screen, waitFor, within } from '@testing-library/svelte'
import { expect, test } from 'vitest'
import Findings from '../../../src/bench/findings/Findings.svelte'
import WordsPanel from '../../../src/bench/words/WordsPanel.svelte'
import { paint } from '../../../src/pattern/edits/paint'
import { setWords } from '../../../src/pattern/edits/words'
import { newPattern } from '../../../src/pattern/pattern'
import { pressMend, show, smallBench } from '../render'
import { stitchOf } from '../../../src/stitches/vocabulary'

/** The lines of the editor, once it has come. */
const lines = () => {
  const host = document.querySelector('.host')
  return [...(host?.shadowRoot?.querySelectorAll('.cm-line') ?? [])].map((line) => ({
    text: line.textContent,
    lit: line.classList.contains('lit'),
  }))
}

test('the words follow every edit and the current row is lit', async () => {
  const { bench } = show(WordsPanel, { bench: smallBench() })
  await waitFor(() => expect(lines()).toEqual([{ text: 'Rnds 1-6: Knit. (12 sts)', lit: true }]))
  bench.apply('Purl', (pattern) => paint(pattern, stitchOf('p'), 3, 0))
  await waitFor(() => expect(lines()[1]).toEqual({ text: 'Rnd 4: p1, k11.', lit: false }))
  bench.goTo({ row: 3, peg: 0 })
  await waitFor(() => expect(lines()[1]?.lit).toBe(true))
})

test('the head says whose words they are, and its command changes that', async () => {
  const { user, bench } = show(WordsPanel, { bench: smallBench() })
  screen.getByText('Written from the chart')
  await user.click(screen.getByRole('button', { name: 'Make them mine' }))
  await screen.findByText('My own words agree with the chart')
  bench.apply('Purl', (pattern) => paint(pattern, stitchOf('p'), 0, 0))
  await screen.findByText('My own words differ from the chart in 1 round, this one')
  bench.goTo({ row: 4, peg: 0 })
  await screen.findByText('My own words differ from the chart in 1 round')
  await user.click(screen.getByRole('button', { name: 'Write from the chart' }))
  expect(bench.dialogs).toEqual(['write again'])
  expect(bench.wording.isOwn).toBe(true)
})

test('words that agree but have an error in them are not shown as right', async () => {
  const pattern = setWords(newPattern(12, 6), 'Rnds 1-6: Knit. (13 sts)')
  const { bench } = show(WordsPanel, { bench: smallBench(pattern) })
  const head = screen.getByText('My own words agree with the chart; 1 count in them is wrong')
  expect(head.closest('p')?.classList.contains('agree')).toBe(false)
  bench.apply('Mend', (p) => setWords(p, 'Rnds 1-6: Knit. (12 sts)'))
  const right = await screen.findByText('My own words agree with the chart')
  expect(right.closest('p')?.classList.contains('agree')).toBe(true)
})

test('a size to read is asked for where the words state sizes', async () => {
  const asked = () => screen.queryByLabelText(/Size to read/)
  const { user, bench } = show(WordsPanel, {
    bench: smallBench(setWords(newPattern(12, 6), 'Rnds 1-6: Knit. (12 sts)')),
  })
  await user.click(screen.getByText('How it is worked'))
  expect(asked()).toBe(null)
  bench.apply('Write', (p) => setWords(p, 'Rnds 1-6: k12 (14, 16).'))
  await waitFor(() => expect(asked()).not.toBe(null))
})

test('findings of the words are listed with the others, and their fixes mend them', async () => {
  const words = 'Rnds 1-5: Knit.\nRnd 6: k4, p1, k7.'
  const { user, bench } = show(Findings, {
    bench: smallBench(setWords(newPattern(12, 6), words)),
  })
  const item = screen.getByRole('button', { name: /Words, round 6/ }).closest('li')
  if (!item) throw new Error('The finding is in no list')
  await user.click(within(item).getByRole('button', { name: /Words, round 6/ }))
  expect(bench.spot).toEqual({ row: 5, peg: 4 })
  await user.click(
    within(item).getByRole('button', { name: 'Change the chart to match the words (Rnd 6)' }),
  )
  expect(bench.chart.rows[5]?.cells[4]?.id).toBe('p')
  await screen.findByText('Every round can be worked and all counts are right.')
})

test('a finding of the words that is set aside leaves list and margin, and can be taken up again', async () => {
  const words = 'Rnds 1-5: Knit.\nRnd 6: k4, p1, k7.'
  const { user, bench } = show(Findings, {
    bench: smallBench(setWords(newPattern(12, 6), words)),
  })
  await pressMend(user, 'Set aside')
  expect(bench.wording.findings).toEqual([])
  expect(screen.queryByRole('button', { name: /Words, round 6/ })).toBe(null)
  await user.click(screen.getByText('Set aside: 1'))
  screen.getByText(/^Words, round 6: Rnd 6: the words purl peg 5/)
  await user.click(screen.getByRole('button', { name: 'Bring back' }))
  screen.getByRole('button', { name: /Words, round 6/ })
  expect(bench.work.aside).toEqual([])
})

test('the worst is listed first, and the finding at the caret is marked', async () => {
  const words = 'Rnds 1-4: Knit. (11 sts)\nRnd 5: k11.\nRnd 6: k4, p1, k7.'
  const { user, bench } = show(Findings, {
    bench: smallBench(setWords(newPattern(12, 6), words)),
  })
  const severities = bench.wording.findings.map(({ severity }) => severity)
  const shown: (string | undefined)[] = []
  for (let at = 1; at <= severities.length; at++) {
    const item = screen.getByRole('listitem')
    expect(item).toHaveAttribute('aria-posinset', String(at))
    shown.push(/^(error|warning|hint)/.exec(item.textContent.trim())?.[1])
    await user.click(screen.getByRole('button', { name: 'The next finding' }))
  }
  const rank = ['error', 'warning', 'hint']
  expect(shown).toEqual(severities.toSorted((a, b) => rank.indexOf(a) - rank.indexOf(b)).concat())
  const last = bench.wording.findings.at(-1)
  bench.wording.moveCaret({ from: words.length - 2, to: words.length - 2 }, false)
  await waitFor(() =>
    expect(document.querySelector('[aria-current]')?.textContent).toContain(last?.message),
  )
})
