import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { directions } from '../../../src/loom/direction'
import { knits } from '../../../src/loom/move'
import { setRepeat } from '../../../src/pattern/edits/columns'
import { setMaking } from '../../../src/pattern/edits/settings'
import { newPattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { termSets } from '../../../src/languages/terms'
import { applyChanges, compare } from '../../../src/words/compare/compare'
import { plainText } from '../../../src/words/text'
import { compared, messages, piece, readFor, repaired } from './helpers'

const rib = setRepeat(piece(['k*2, p*2', 'k*4'], { pegs: 8 }), { from: 0, to: 3 })
const rows = ['Rnd 1: *k2, p2; rep from * to end.', 'Rnd 2: Knit.']

/** The only difference, and the words after each of its repairs of the words. */
function stated(line: string, pattern = rib) {
  const comparison = compared(pattern, ['Ropewalk cuff', '', line, '', ...rows])
  const { text } = comparison.reading
  const [difference, ...others] = comparison.differences
  if (!difference) throw new Error(`"${line}" makes no difference`)
  expect(others).toEqual([])
  for (const fix of difference.fixes) expect(messages(repaired(comparison, fix))).toEqual([])
  const { range, fixes, rule } = difference
  const written = fixes.flatMap((fix) =>
    'changes' in fix ? [applyChanges(text, fix.changes).split('\n')[2]] : [],
  )
  return {
    rule,
    at: range && text.slice(range.from, range.to),
    labels: fixes.map(({ label }) => label),
    written,
  }
}

describe('what the words state for the whole piece', () => {
  it.each([
    ['k means e-wrap knit in this pattern.', 'k means u-wrap knit in this pattern.'],
    ['Knit is an e-wrap stitch here', 'Knit is a u-wrap stitch here'],
    ['Thin yarn. Use the flat stitch throughout.', 'Thin yarn. Use the u-wrap stitch throughout.'],
    ['k = reversed purl', 'k = u-wrap purl'],
  ])('another plain knit: %s', (line, written) => {
    const found = stated(line)
    expect(found.rule).toBe('knit-differs')
    expect(line).toContain(found.at)
    expect(found.written).toEqual([written])
    expect(found.labels).toEqual([
      'Write that knit means u-wrap',
      expect.stringMatching(/^Let knit mean (e-wrap|flat knit|true knit)$/),
    ])
  })

  it.each(knits)('%s is written so that it is read again', (knit) => {
    const other = knits.find((one) => one !== knit) ?? knit
    const pattern = setMaking(rib, { knit })
    for (const line of [`k means ${other} knit in this pattern.`, `k = ${other} knit`])
      expect(stated(line, pattern).labels).toHaveLength(2)
  })

  it.each([
    [
      'Worked counterclockwise round the loom: left to right as you face it.',
      'Worked clockwise round the loom: right to left as you face it.',
    ],
    ['Thin yarn. Anti-clockwise, always', 'Thin yarn. Clockwise, always'],
  ])('another direction: %s', (line, written) => {
    const found = stated(line)
    expect(found.rule).toBe('direction-differs')
    expect(line).toContain(found.at)
    expect(found.written).toEqual([written])
    expect(found.labels).toEqual(['Write clockwise', 'Work counterclockwise'])
  })

  it('another number of pegs, which the repeat can fill', () => {
    const found = stated('Cast on 12 sts, in the round.')
    expect(found).toEqual({
      rule: 'pegs-differ',
      at: 'Cast on 12',
      labels: ['Write 8', 'Fit the chart on 12 pegs'],
      written: ['Cast on 8 sts, in the round.'],
    })
  })

  it('another number of pegs of the size that is read', () => {
    const sized = { ...rib, readAs: { size: 1, needles: false } }
    expect(stated('Cast on 4 (12, 16) sts.', sized).written).toEqual(['Cast on 4 (8, 16) sts.'])
  })

  it('another number of pegs, which the chart cannot fill, is mended in the words alone', () => {
    const comparison = compared(piece(['k*8']), ['Cast on 12 sts.', 'Rnd 1: k8.'])
    const [difference] = comparison.differences
    expect(difference?.fixes.map(({ label }) => label)).toEqual(['Write 8'])
  })

  it('as the writer has it is mended from both sides, whatever it is', () => {
    fc.assert(
      fc.property(
        fc.record({
          knit: fc.constantFrom(...knits),
          direction: fc.constantFrom(...directions),
          terms: fc.constantFrom(...termSets),
        }),
        fc.record({ knit: fc.constantFrom(...knits), direction: fc.constantFrom(...directions) }),
        ({ knit, direction, terms }, other) => {
          const base = newPattern(8, 2)
          const style = { ...base.style, terms }
          const loom = { ...base.loom, direction }
          const pattern = { ...base, style, loom, making: { ...base.making, knit } }
          const text = plainText(workPattern(pattern))
          const changed = {
            ...pattern,
            loom: { ...loom, direction: other.direction },
            making: { ...pattern.making, knit: other.knit },
          }
          const comparison = compare(readFor(changed, text), workPattern(changed))
          const expected = [
            ...(knit === other.knit ? [] : ['knit-differs']),
            ...(direction === other.direction ? [] : ['direction-differs']),
          ]
          expect(comparison.differences.map(({ rule }) => rule)).toEqual(expected)
          for (const { range, fixes } of comparison.differences) {
            expect(range).not.toBe(null)
            expect(fixes).toHaveLength(2)
            for (const fix of fixes)
              expect(repaired(comparison, fix).differences).toHaveLength(expected.length - 1)
          }
        },
      ),
      { numRuns: 60 },
    )
  })
})
