import { describe, expect, it } from 'vitest'
import { setBand } from '../../../src/pattern/edits/rows'
import { applyChanges } from '../../../src/words/compare/compare'
import { compared, messages, piece, repaired } from './helpers'

const rib = piece(['k*8', 'k*2, p*2, k*2, p*2', 'p*8'])
const head = ['Rnd 1: *k2, p2; rep from * to end.', 'Rnd 2: Purl.']
const banded = (times: number) => setBand(piece(['k*2, p*2, k*2, p*2', 'p*8', 'k*8']), 0, 1, times)

/** What the repair of the words makes of the line of the repeat, and what is left to say. */
function mended(line: string, times: number, after = 'Rnd 11: Knit.') {
  const pattern = banded(times)
  const comparison = compared(pattern, [...head, line, after])
  const [difference] = comparison.differences
  const fix = difference?.fixes.find((one) => 'changes' in one)
  if (!fix || !('changes' in fix)) return null
  return {
    lines: applyChanges(comparison.reading.text, fix.changes).split('\n').slice(2),
    left: messages(repaired(comparison, fix)),
  }
}

describe('a repeat that works its rows another number of times', () => {
  it.each([
    ['Rep Rnds 1-2 three times more.', 'Rep Rnds 1-2 four times more.'],
    ['Rep Rnds 1-2 3 times more.', 'Rep Rnds 1-2 4 times more.'],
    ['Rep Rnds 1-2 three more times.', 'Rep Rnds 1-2 four more times.'],
    ['Rep Rnds 1-2 4 times in all.', 'Rep Rnds 1-2 5 times in all.'],
    [
      'Rep Rnds 1-2 three times more. (8 rnds in all)',
      'Rep Rnds 1-2 four times more. (10 rnds in all)',
    ],
    ['Rep Rnds 1-2 until 8 rnds are worked.', 'Rep Rnds 1-2 until 10 rnds are worked.'],
  ])('has its own number changed, and nothing is left beside it: %s', (line, wanted) => {
    expect(mended(line, 5)).toEqual({ lines: [wanted, 'Rnd 11: Knit.'], left: [] })
  })

  it.each([
    ['Rep Rnds 1-2 three times more.', 3, 'Rep Rnds 1-2 twice more.'],
    ['Rep Rnds 1-2 twice more. (6 rnds in all)', 2, 'Rep Rnds 1-2 once more. (4 rnds in all)'],
    ['Rep Rnds 1-2 until 8 rnds are worked.', 2, 'Rep Rnds 1-2 until 4 rnds are worked.'],
  ])('has a lower number where the chart has fewer: %s', (line, times, wanted) => {
    expect(mended(line, times, `Rnd ${2 * times + 1}: Knit.`)).toEqual({
      lines: [wanted, `Rnd ${2 * times + 1}: Knit.`],
      left: [],
    })
  })

  it('numbers on the rows after it', () => {
    expect(mended('Rep Rnds 1-2 three times more.', 5, 'Rnd 9: Knit.')).toEqual({
      lines: ['Rep Rnds 1-2 four times more.', 'Rnd 11: Knit.'],
      left: [],
    })
  })

  it('is added where there is none yet', () => {
    const pattern = setBand(rib, 1, 1, 3)
    const comparison = compared(pattern, [
      'Rnd 1: Knit.',
      'Rnd 2: *k2, p2; rep from * to end.',
      'Rnd 5: Purl.',
    ])
    const [fix] = comparison.differences[0]?.fixes ?? []
    if (!fix || !('changes' in fix)) throw new Error('There is no repair of the words.')
    expect(applyChanges(comparison.reading.text, fix.changes)).toContain('Rep Rnd 2 twice more.')
  })
})
