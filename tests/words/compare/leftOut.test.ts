import { namedOn } from '../../../src/pattern/charts'
import { describe, expect, it } from 'vitest'
import { setBand } from '../../../src/pattern/edits/rows'
import { workPattern } from '../../../src/pattern/work'
import { applyChanges } from '../../../src/words/compare/compare'
import { compared, linesOf, messages, piece, repaired } from './helpers'

const rib = 'k*2, p*2, k*2, p*2'
const band = ['k*4, p*4', 'k*8', 'p*8', 'k*8', 'p*4, k*4', rib]
const pattern = setBand(piece(['k*8', rib, rib, rib, rib, ...band, 'k*8', 'p*8']), 5, 10, 3)
const lines = linesOf(workPattern(pattern))

const without = (number: number) =>
  compared(
    pattern,
    lines.filter((line) => !line.startsWith(`Rnd ${number}:`)),
  )

const wordsAfter = (
  comparison: ReturnType<typeof compared>,
  fix: (typeof comparison)['differences'][number]['fixes'][number],
): string =>
  'edit' in fix
    ? (namedOn(fix.edit(comparison.work.pattern)).words ?? '')
    : applyChanges(comparison.reading.text, fix.changes)

describe('one round left out of a band whose repeat names it', () => {
  it.each([6, 8, 11])('is the one round that differs: %i', (number) => {
    const comparison = without(number)
    expect(messages(comparison)).toEqual([`Your words leave out Rnd ${number}.`])
    expect(comparison.differences[0]?.rows).toEqual([number - 1])
    const notSame = comparison.agreement.flatMap((one, row) =>
      one === 'differs' || one === 'missing' ? [row] : [],
    )
    expect(notSame).toEqual([number - 1])
  })

  it.each([6, 8, 11])('is added to the words or removed from the chart: %i', (number) => {
    const comparison = without(number)
    const fixes = comparison.differences[0]?.fixes ?? []
    expect(fixes.map(({ label }) => label)).toEqual([
      `Add Rnd ${number} to the words`,
      `Remove Rnd ${number} from the chart, with new numbers in the words`,
    ])
    for (const fix of fixes) {
      const after = repaired(comparison, fix)
      expect(messages(after)).toEqual([])
      expect(after.reading.remarks).toEqual([])
      expect(new Set(after.agreement)).toEqual(new Set(['same']))
    }
  })

  it('is counted out of the repeat and of the numbers after it', () => {
    const comparison = without(11)
    const fix = comparison.differences[0]?.fixes.find((one) => 'edit' in one)
    if (!fix) throw new Error('There is no repair of the chart')
    expect(wordsAfter(comparison, fix).split('\n').slice(-4)).toEqual([
      'Rnd 10: p4, k4.',
      'Rep Rnds 6-10 twice more. (15 rnds in all)',
      'Rnd 21: Knit.',
      'Rnd 22: Purl.',
    ])
  })

  it('stays in the chart where the words go by other numbers, which its repeat would still name', () => {
    const others = lines
      .filter((line) => !line.startsWith('Rnd 11:'))
      .map((line) => line.replace('Rnd 24:', 'Rnd 30:').replace('Rnd 25:', 'Rnd 31:'))
    const { differences } = compared(pattern, others)
    const labels = differences.flatMap(({ fixes }) => fixes.map(({ label }) => label))
    expect(labels.filter((label) => label.startsWith('Remove'))).toEqual([])
  })
})

it('a repeat that nothing but its own line says wrongly leaves its rounds unread', () => {
  const wrong = lines.map((line) => line.replace('Rep Rnds 6-11', 'Rep Rnds 6-12'))
  const { differences, agreement, reading } = compared(pattern, wrong)
  expect(differences).toEqual([])
  expect(reading.remarks.map(({ message }) => message)).toEqual([
    "Rnd 12 is missing above this line, so Rnds 6-12 can't be repeated.",
  ])
  expect(agreement.slice(5, 11)).toEqual(new Array(6).fill('unread'))
})

it('a round that the words have beyond the chart, and that is not finished, is to be finished', () => {
  const ends = (last: string) => compared(pattern, [...lines, last]).differences.at(-1)
  const number = workPattern(pattern).passes.length + 1
  expect(ends(`Rnd ${number}: k3.`)).toMatchObject({
    rule: 'row-missing-in-chart',
    advice: 'It works only 3 of 8 stitches. Finish it, or remove it.',
    lacking: null,
  })
  expect(ends(`Rnd ${number}: k8.`)?.advice).toBe('Add it, or remove it from the words.')
})

describe('one round of several that say the same, worked more often in the chart', () => {
  const several = setBand(piece([rib, rib, rib, 'k*8']), 0, 0, 4)
  const ribbing = '*k2, p2; rep from * around.'
  const said = [1, 2, 3].map((number) => `Rnd ${number}: ${ribbing}`).concat('Rnd 4: Knit.')
  const comparison = compared(several, said)

  it('is the one round that differs', () => {
    expect(messages(comparison)).toEqual(['The chart works Rnd 1 4 times, the words once.'])
    expect(comparison.differences[0]?.rows).toEqual([0])
    expect(comparison.agreement).toEqual(['differs', 'same', 'same', 'same'])
  })

  it('is mended in the words and in the chart', () => {
    const [difference] = comparison.differences
    const fixes = difference?.fixes ?? []
    expect(difference?.lacking).toBeNull()
    expect(new Set(fixes.map((fix) => 'edit' in fix))).toEqual(new Set([true, false]))
    for (const fix of fixes) {
      const after = repaired(comparison, fix)
      expect(messages(after)).toEqual([])
      expect(after.reading.remarks).toEqual([])
    }
  })
})
