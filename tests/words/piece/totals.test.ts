import { describe, expect, test } from 'vitest'
import { yarnOf } from '../../../src/loom/length'
import type { How } from '../../../src/loom/move'
import type { Pattern } from '../../../src/pattern/pattern'
import { totalsOf, type Totals } from '../../../src/pattern/totals'
import { workPiece } from '../../../src/pattern/workPiece'
import { sayTotals, type TotalsLineKind } from '../../../src/words/piece/totals'
import { band, chartOf, keeperSock, withPiece } from './pieces'

const say = (pattern: Pattern, kind: TotalsLineKind, terms: 'us' | 'uk' = 'us'): string[] =>
  sayTotals(totalsOf(workPiece(pattern)).whole, pattern, terms).flatMap((line) =>
    line.kind === kind ? [line.text] : [],
  )

const known: Totals = {
  rows: 102,
  stitches: new Map([
    ['k', 2752],
    ['2/2 LC', 30],
    ['none', 7],
  ]),
  moves: 3460,
  yarn: 50_400,
  grams: 8.26,
  minutes: 115,
}

describe('totals in words', () => {
  test('rows, stitches by kind, moves, yarn and time', () => {
    const pattern = withPiece(keeperSock(), {
      pair: 'none',
      pace: 30,
      swatch: { stitches: 40, rows: 42, grams: 12.5 },
    })
    const lines = sayTotals(known, pattern, 'us')
    expect(lines.filter(({ kind }) => kind !== 'assumption').map(({ text }) => text)).toEqual([
      '102 rounds and rows.',
      '2782 stitches: k 2752, 2/2 LC 30.',
      '3460 moves of the hands.',
      'About 50 m of yarn, 8.3 g.',
      'About 1 h 55 min, at 30 stitches a minute.',
    ])
    const rests = lines.filter(({ kind }) => kind === 'assumption').map(({ text }) => text)
    expect(rests).toHaveLength(3)
    expect(rests[1]).toBe(
      'The weight goes by the weighed swatch of 40 stitches and 42 rows, 12.5 g.',
    )
    expect(sayTotals(known, pattern, 'uk')[1]?.text).toBe('2782 stitches: k 2752, C4F 30.')
  })

  test('what is not known says what is missing', () => {
    const bare = band(chartOf('k'))
    expect(say(bare, 'yarn')[0]).toMatch(/no gauge yet/)
    expect(say(bare, 'yarn', 'uk')[0]).toMatch(/no tension yet/)
    expect(say(bare, 'time')[0]).toMatch(/no pace is set/)
    expect(say(bare, 'assumption')).toEqual([])
    expect(say(keeperSock(), 'yarn')[0]).toMatch(/^About \d+ m of yarn; its weight is not known/)
  })

  test('a pair says that the numbers are for one', () => {
    expect(say(keeperSock(), 'assumption').at(-1)).toMatch(/for one; the pair takes twice as much/)
  })

  test('the assumption says what the reckoning does', () => {
    const [text] = say(keeperSock(), 'assumption')
    const of = (how: How, width: number, height: number) =>
      yarnOf({ do: 'work', peg: 0, how }, { width, height })
    expect(text).toMatch(
      /flat knit, a true knit and a purl .* two stitch widths and two row heights/,
    )
    for (const how of ['flat', 'true', 'purl'] as const)
      expect(of(how, 5, 3)).toBeCloseTo(2 * 5 + 2 * 3)
    expect(text).toMatch(/u-wrap as a quarter width more/)
    expect(of('u-wrap', 5, 3) - of('flat', 5, 3)).toBeCloseTo(5 / 4)
    expect(text).toMatch(/e-wrap.* as one width more: it takes the most/)
    expect(of('e-wrap', 5, 3) - of('flat', 5, 3)).toBeCloseTo(5)
    expect(text).toMatch(/moved to another peg, as in a cross, takes as much more as its legs lean/)
  })

  test.each([
    [0.2, 'About 1 min'],
    [59.6, 'About 1 h'],
    [125, 'About 2 h 5 min'],
  ])('%d minutes: %s', (minutes, words) => {
    const pattern = withPiece(keeperSock(), { pace: 1 })
    const text = sayTotals({ ...known, minutes }, pattern).find(({ kind }) => kind === 'time')?.text
    expect(text).toBe(`${words}, at 1 stitch a minute.`)
  })
})
