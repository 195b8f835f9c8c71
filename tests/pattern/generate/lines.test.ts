/** The rows of heels, toes and wedges, one by one. */
import { describe, expect, test } from 'vitest'
import { chartOn } from '../../../src/pattern/charts'
import { putShortRows } from '../../../src/pattern/generate/putIn'
import { makeShortRows } from '../../../src/pattern/generate/shortRows'
import { setBand } from '../../../src/pattern/edits/rows'
import { newPattern, type Row, type ShortRowWish, type Sheet } from '../../../src/pattern/pattern'
import { idsIn } from '../../cells'
import { patternOf } from '../edits/chart-text'

const wish: ShortRowWish = {
  shape: 'heel',
  turn: 'German turn',
  run: { from: 2, to: 8 },
  turned: 2,
  step: 1,
  sides: 'both',
  closeCorners: false,
  beside: null,
}

const lineOf = ({ run, end }: Row): string =>
  `${run ? `${run.from + 1}-${run.to + 1}` : 'all'}${end === 'on' ? '' : ` ${end === 'wrap' ? 'w' : 'g'}`}`

const lines = (change: Partial<ShortRowWish>, shape: 'ring' | 'bar' = 'ring', pegs = 12) => {
  const made = makeShortRows({ pegs, shape }, { ...wish, ...change })
  return made.ok ? [made.rows.map(lineOf).join(', '), made.neverTurned] : made.message
}

describe('turned on', () => {
  test.each<
    [
      what: string,
      change: Partial<ShortRowWish>,
      shape: 'ring' | 'bar',
      is: ReturnType<typeof lines>,
    ]
  >([
    ['both sides', {}, 'ring', ['1-9 g, 3-8 g, 4-8 g, 4-7 g, 5-9 g, 3-8 g, 4-12, all', 3]],
    [
      'wrapped',
      { turn: 'wrap' },
      'ring',
      ['1-8 w, 4-8 w, 4-7 w, 5-7 w, 5-8 w, 4-8 w, 4-12, all', 3],
    ],
    [
      'with its corners closed',
      { closeCorners: true },
      'ring',
      ['1-9 g, 3-8 g, 4-8 g, 4-7 g, 5-9 g, 3-8 g, 4-10 g, 2-9 g, 3-12, all', 3],
    ],
    [
      'by every second peg',
      { step: 2 },
      'ring',
      ['1-9 g, 3-8 g, 4-7 g, 5-6 g, 6-9 g, 3-8 g, 4-12, all', 1],
    ],
    ['a toe', { shape: 'toe' }, 'ring', ['1-9 g, 3-8 g, 4-8 g, 4-7 g, 5-9 g, 3-8', 3]],
    [
      'a wrapped toe',
      { shape: 'toe', turn: 'wrap' },
      'ring',
      ['1-8 w, 4-8 w, 4-7 w, 5-7 w, 5-8 w, 3-8', 3],
    ],
    ['a wedge', { shape: 'wedge' }, 'ring', ['1-9 g, 3-8 g, 4-8 g, 4-7 g, 5-12, all', 3]],
    [
      'a wrapped wedge on a rake',
      { shape: 'wedge', turn: 'wrap' },
      'bar',
      ['1-8 w, 4-8 w, 4-7 w, 5-7 w, 5-12, all', 3],
    ],
    [
      'from peg 1 with a corner beyond the join',
      { run: { from: 0, to: 5 }, closeCorners: true },
      'ring',
      ['1-6 g, 1-5 g, 2-5 g, 2-4 g, 3-6 g, 1-5 g, 2-7 g, 1-6, 12-12 g, all, all', 2],
    ],
    [
      'to the last peg, wrapped, with a corner beyond',
      { run: { from: 6, to: 11 }, closeCorners: true, turn: 'wrap' },
      'ring',
      ['1-11 w, 8-11 w, 8-10 w, 9-10 w, 9-11 w, 8-11 w, 8-12 w, 7-12 w, 7-12, all', 2],
    ],
    [
      'the last peg only',
      { shape: 'wedge', sides: 'last', run: { from: 0, to: 8 } },
      'bar',
      ['1-9 g, 1-8, 1-8 g, 1-7, all, all', 7],
    ],
    [
      'the first peg only',
      { shape: 'wedge', sides: 'first', run: { from: 2, to: 11 } },
      'bar',
      ['all, 3-12 g, 4-12, 4-12 g, 5-12, all', 8],
    ],
    [
      'the last peg only, out again',
      { sides: 'last', run: { from: 0, to: 8 } },
      'bar',
      ['1-9 g, 1-8, 1-8 g, 1-7, 1-9 g, 1-8, all, all', 7],
    ],
    [
      'the first peg only, out again',
      { sides: 'first', run: { from: 2, to: 11 }, step: 3 },
      'bar',
      ['all, 3-12 g, 4-12, 6-12 g, 7-12, 3-12 g, 4-12, all', 6],
    ],
    [
      'a toe at its last peg',
      { shape: 'toe', sides: 'last', run: { from: 0, to: 8 } },
      'bar',
      ['1-9 g, 1-8, 1-8 g, 1-7, 1-9 g, 1-8', 7],
    ],
  ])('%s', (_, change, shape, is) => {
    expect(lines(change, shape)).toEqual(is)
  })
})

describe('put into a chart', () => {
  const told = (sheet: Sheet) =>
    chartOn(sheet).rows.map((row) => `${lineOf(row)}: ${idsIn(row.cells).join(' ')}`)
  const rib = patternOf('k p k p k p k p k p', 'p k p k p k p k p k', 'k k k k k k k k k k')
  const small: ShortRowWish = { ...wish, run: { from: 1, to: 5 }, turned: 1 }
  const put = (pattern: Sheet, at: number, change: Partial<ShortRowWish> = {}) => {
    const made = putShortRows(pattern, at, { ...small, ...change })
    return made.ok ? [made.rows, chartOn(made.pattern).bands, ...told(made.pattern)] : made.message
  }

  test.each<[what: string, made: ReturnType<typeof put>, is: ReturnType<typeof put>]>([
    [
      'before its first round',
      put(rib, 0),
      [
        2,
        [],
        '1-6 g: k k k k k k k k k k',
        '2-5 g: k k k k k k k k k k',
        '3-10: k k k p k p k p k p',
        'all: p k p k p k p k p k',
        'all: k k k k k k k k k k',
      ],
    ],
    [
      'before its last round',
      put(rib, 2),
      [
        3,
        [],
        'all: k p k p k p k p k p',
        'all: p k p k p k p k p k',
        '1-6 g: k k k k k k k k k k',
        '2-5 g: k k k k k k k k k k',
        '3-10: k k k k k k k k k k',
        'all: k p k p k p k p k p',
      ],
    ],
    [
      'after its last round',
      put(rib, 3),
      [
        4,
        [],
        'all: k p k p k p k p k p',
        'all: p k p k p k p k p k',
        'all: k k k k k k k k k k',
        '1-6 g: k k k k k k k k k k',
        '2-5 g: k k k k k k k k k k',
        '3-10: k k k p k p k p k p',
        'all: p k p k p k p k p k',
      ],
    ],
    [
      'a toe',
      put(rib, 3, { shape: 'toe' }),
      [
        2,
        [],
        'all: k p k p k p k p k p',
        'all: p k p k p k p k p k',
        'all: k k k k k k k k k k',
        '1-6 g: k k k k k k k k k k',
        '2-5: k k k k k k k k k k',
      ],
    ],
    [
      'where a band begins',
      put(setBand(rib, 1, 2, 3), 1),
      [
        4,
        [{ from: 5, to: 6, times: 2 }],
        'all: k p k p k p k p k p',
        '1-6 g: p k k k k k k k k k',
        '2-5 g: k k k k k k k k k k',
        '3-10: k k p k p k p k p k',
        'all: k k k k k k k k k k',
        'all: p k p k p k p k p k',
        'all: k k k k k k k k k k',
      ],
    ],
    [
      'where a band of two times begins',
      put(setBand(rib, 0, 1, 2), 0),
      [
        4,
        [],
        '1-6 g: k k k k k k k k k k',
        '2-5 g: k k k k k k k k k k',
        '3-10: k k k p k p k p k p',
        'all: p k p k p k p k p k',
        'all: k p k p k p k p k p',
        'all: p k p k p k p k p k',
        'all: k k k k k k k k k k',
      ],
    ],
    [
      'one that cannot be',
      put(rib, 0, { turned: 4 }),
      '4 turned pegs at each side, 1 peg apart, do not fit on 5 pegs: at least one peg in the middle must stay without a turn.',
    ],
    [
      'into a chart of one round',
      put(patternOf('k p k p k p k p k p'), 0),
      [
        3,
        [],
        '1-6 g: k k k k k k k k k k',
        '2-5 g: k k k k k k k k k k',
        '3-10: k k k p k p k p k p',
        'all: k p k p k p k p k p',
      ],
    ],
  ])('%s', (_, made, is) => {
    expect(made).toEqual(is)
  })

  test('there is no room for it in a full chart', () => {
    const full = newPattern(10, 598)
    const made = putShortRows(full, 0, small)
    expect(made).toMatchObject({ ok: true, rows: 0 })
    expect(made.ok && made.pattern).toBe(full)
  })
})
