import { describe, expect, test } from 'vitest'
import type { Pattern } from '../../../src/pattern/pattern'
import { totalsOf, type Totals } from '../../../src/pattern/totals'
import { workPiece } from '../../../src/pattern/workPiece'
import { sayTotals, type TotalsLineKind } from '../../../src/words/piece/totals'
import { band, chartOf, keeperSock, withPiece } from './pieces'
import { stitchOf } from '../../../src/stitches/vocabulary'

const say = (pattern: Pattern, kind: TotalsLineKind): string[] =>
  sayTotals(totalsOf(workPiece(pattern)).whole, workPiece(pattern), 'us').flatMap((line) =>
    line.kind === kind ? [line.text] : [],
  )

const known: Totals = {
  rows: 102,
  stitches: new Map([
    [stitchOf('k'), 2752],
    [stitchOf('2/2 LC'), 30],
    [stitchOf('none'), 7],
  ]),
  loops: new Map([
    [stitchOf('k'), 2752],
    [stitchOf('2/2 LC'), 120],
    [stitchOf('none'), 0],
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
    const lines = sayTotals(known, workPiece(pattern), 'us')
    expect(lines.filter(({ kind }) => kind !== 'assumption').map(({ text }) => text)).toEqual([
      '102 rows.',
      '2872 stitches: k 2752, 2/2 LC 120 (30 times).',
      'About 50 m of yarn, 8.3 g.',
      'About 1 h 55 min, at 30 stitches a minute.',
    ])
    const rests = lines.filter(({ kind }) => kind === 'assumption').map(({ text }) => text)
    expect(rests).toEqual(['The yarn is estimated from the gauge: allow a little extra.'])
    expect(sayTotals(known, workPiece(pattern), 'uk')[1]?.text).toBe(
      '2872 stitches: k 2752, C4F 120 (30 times).',
    )
  })

  test('what is not known is left out', () => {
    const bare = band(chartOf('k'))
    expect(
      sayTotals(totalsOf(workPiece(bare)).whole, workPiece(bare)).map(({ kind }) => kind),
    ).toEqual(['rows', 'stitches'])
    const one = withPiece(keeperSock(), { pair: 'none' })
    expect(say(one, 'yarn')[0]).toMatch(/^About \d+ m of yarn\.$/)
  })

  test('a pair says that the numbers are for one, once', () => {
    for (const pair of ['alike', 'mirrored'] as const) {
      const sock = withPiece(keeperSock(), { pair, pace: 30 })
      expect(say(sock, 'yarn')[0]).toMatch(/^About \d+ m of yarn, for one: double it for a pair\.$/)
      expect(say(sock, 'time')[0]).toMatch(/^About .* min for one, at 30 stitches a minute\.$/)
      expect(say(sock, 'assumption').join()).not.toMatch(/double/)
      const bare = withPiece(band(chartOf('k')), { pair })
      expect(say(bare, 'assumption')).toEqual([
        'These numbers are for one; double them for a pair.',
      ])
    }
  })

  test('stitches are the loops of all rows, whatever they are worked as', () => {
    const rows = ['2/2 LC, p*4', 'k2tog, yo, k*2, 2/2 RC', 'k*8']
    const step = { kind: 'chart', chart: 'Band', times: 1 } as const
    const castOn = { kind: 'cast on', how: 'e-wrap', pegs: null } as const
    const piece = withPiece(band(chartOf(...rows)), { steps: [castOn, step] })
    expect(say(piece, 'stitches')[0]).toMatch(/^72 stitches: k 30, .*2\/2 LC 12 \(3 times\)/)
    const chart = { ...chartOf('2/2 LC, p*4'), repeat: { from: 0, to: 2 } }
    const cut = withPiece(band(chart, { pegs: 23 }), { steps: [castOn, step] })
    expect(say(cut, 'stitches')[0]).toMatch(/^23 stitches: /)
  })

  test('rounds and rows do not mix in one line', () => {
    expect(say(band(chartOf('k', 'k')), 'rows')[0]).toBe('2 rounds.')
    expect(say(keeperSock(), 'rows')[0]).toMatch(/^\d+ rows\.$/)
  })

  test.each([
    [0.2, 'About 1 min'],
    [59.6, 'About 1 h'],
    [125, 'About 2 h 5 min'],
  ])('%d minutes: %s', (minutes, words) => {
    const pattern = withPiece(keeperSock(), { pace: 1 })
    const text = sayTotals({ ...known, minutes }, workPiece(pattern)).find(
      ({ kind }) => kind === 'time',
    )?.text
    expect(text).toBe(`${words} for one, at 1 stitch a minute.`)
  })
})
