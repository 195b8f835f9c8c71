import { screen } from '@testing-library/svelte'
import { afterEach, expect, test, vi } from 'vitest'
import Findings from '../../../src/bench/findings/Findings.svelte'
import { setWords } from '../../../src/pattern/edits/words'
import { newPattern } from '../../../src/pattern/pattern'
import type * as readers from '../../../src/bench/words/reader.svelte'
import { show, smallBench } from '../render'

// A reader that fails at one word, as a mistake in it would.
vi.mock('../../../src/bench/words/reader.svelte', async (original) => {
  const real = await original<typeof readers>()
  const parts = real.reader()
  if (!parts) throw new Error('The reader is not loaded')
  const read: typeof parts.read = (...args) => {
    if (args[0].includes('Boom')) throw new Error('a list ran out')
    return parts.read(...args)
  }
  return { ...real, reader: () => ({ ...parts, read }) }
})
afterEach(() => vi.restoreAllMocks())

test('a mistake of the program at the words is said; they stay and are read again after it', async () => {
  const bench = smallBench(setWords(newPattern(12, 2), 'Rnds 1-2: Knit.'))
  show(Findings, { bench })
  bench.wording.type('Boom', 0)
  expect(bench.wording.standing).toEqual({ kind: 'unknown' })
  await screen.findByText(/could not be read.*\(a list ran out\)/)
  expect(bench.work.words).toBe('Boom')
  bench.wording.type('Rnds 1-2: Purl.', 5000)
  expect(bench.wording.standing).toMatchObject({ kind: 'differ' })
  bench.undo()
  expect(bench.wording.standing).toEqual({ kind: 'unknown' })
  bench.undo()
  expect(bench.wording.standing).toEqual({ kind: 'agree' })
})

test.each(['Rnd 1: Knit the knits.', 'Rnd 3: Prul.'])(
  'words with a slip near "knit" or "purl" are listed: %s',
  async (line) => {
    const { bench } = show(Findings, {
      bench: smallBench(setWords(newPattern(12, 2), line)),
    })
    expect(bench.wording.fault).toBe(null)
    expect(await screen.findAllByRole('listitem')).not.toHaveLength(0)
  },
)
