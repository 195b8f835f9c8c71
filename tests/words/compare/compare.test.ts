import { chartOn } from '../../../src/pattern/charts'
import { describe, expect, it } from 'vitest'
import { setBand } from '../../../src/pattern/edits/rows'
import { setMaking } from '../../../src/pattern/edits/settings'
import { setEnd, setRun } from '../../../src/pattern/edits/turning'
import { setRepeat } from '../../../src/pattern/edits/columns'
import { workPattern } from '../../../src/pattern/work'
import { applyChanges, compare } from '../../../src/words/compare/compare'
import { compared, linesOf, messages, piece, readFor, repaired, starters } from './helpers'
import { idsIn } from '../../cells'

const rib = piece(['k*8', 'k*2, p*2, k*2, p*2', 'p*2, k*2, p*2, k*2', 'p*8'])
const ribWords = [
  'Rnd 1: Knit.',
  'Rnd 2: *k2, p2; rep from * to end.',
  'Rnd 3: *p2, k2; rep from * to end.',
  'Rnd 4: Purl.',
]

describe('words that say the same', () => {
  it.each([
    ['as they are written', ribWords],
    [
      'with other repeats',
      ['Rnd 1: k8.', 'Rnd 2: (k2, p2) twice', 'Rnd 3: p2, k2, p2, k2', 'Rnd 4: purl to end'],
    ],
    [
      'by reference',
      [
        'Rnd 1: Knit.',
        'Rnd 2: k2, p2, k2, p2.',
        'Rnd 3: p2, *k2, p2; rep from * to last 2 sts, k2.',
        'Rnd 4: p8 (8 sts)',
      ],
    ],
    [
      'with the plain knit named',
      ['Rnd 1: uw8.', 'Rnd 2: *uw2, p2; rep from * to end.', ...ribWords.slice(2)],
    ],
  ])('are no difference: %s', (_, lines) => {
    const comparison = compared(rib, lines)
    expect(messages(comparison)).toEqual([])
    expect(comparison.agreement).toEqual(['same', 'same', 'same', 'same'])
  })

  it.each(starters.map((pattern) => [pattern.title, pattern] as const))(
    'are no difference: those written from %s',
    (_, pattern) => {
      expect(messages(compared(pattern, linesOf(workPattern(pattern))))).toEqual([])
    },
  )
})

describe('a stitch that differs', () => {
  it('is named with its pegs, what the words do and what the chart does', () => {
    const lines = ribWords.with(1, 'Rnd 2: k4, p4.')
    const { differences, agreement, reading } = compared(rib, lines)
    const [difference] = differences
    expect(differences.map(({ message }) => message)).toEqual([
      'Rnd 2: the words have k2, p2 on pegs 3-6, the chart has p2, k2.',
    ])
    expect(difference?.pegs).toEqual({ from: 2, to: 5 })
    expect(agreement).toEqual(['same', 'differs', 'same', 'same'])
    expect(reading.text.slice(difference?.range?.from, difference?.range?.to)).toBe('k4, p4')
  })

  it('can be taken from the chart or from the words', () => {
    const comparison = compared(rib, ribWords.with(3, 'Rnd 4: p3, k1, p4.'))
    expect(messages(comparison)).toEqual(['Rnd 4: the words knit peg 4, the chart purls it.'])
    const [difference] = comparison.differences
    const fixes = difference?.fixes ?? []
    expect(fixes.map(({ label }) => label)).toEqual([
      'Rewrite Rnd 4 from the chart',
      'Change the chart to match the words (Rnd 4)',
    ])
    for (const fix of fixes) expect(messages(repaired(comparison, fix))).toEqual([])
    const edit = fixes.find((fix) => 'edit' in fix)
    expect(edit && 'edit' in edit && idsIn(chartOn(edit.edit(rib)).rows[3]?.cells).join('')).toBe(
      'pppkpppp',
    )
  })

  it('in a line for several rounds is one difference', () => {
    const comparison = compared(piece(['k*6', 'k*6', 'k*6']), ['Rnds 1-3: k5, p1.'])
    expect(messages(comparison)).toEqual(['Rnds 1-3: the words purl peg 6, the chart knits it.'])
    for (const fix of comparison.differences[0]?.fixes ?? [])
      expect(messages(repaired(comparison, fix))).toEqual([])
  })

  it('in a band is one difference, and its line alone is rewritten', () => {
    const pattern = setBand(piece(['k*6', 'p*6', 'k*6']), 0, 1, 3)
    const lines = ['Rnd 1: k5, p1.', 'Rnd 2: Purl.', 'Rep Rnds 1-2 twice more.', 'Rnd 7: Knit.']
    const comparison = compared(pattern, lines)
    expect(messages(comparison)).toEqual(['Rnd 1: the words purl peg 6, the chart knits it.'])
    const words = comparison.differences[0]?.fixes.find((fix) => 'changes' in fix)
    expect(words && 'changes' in words && words.changes.length).toBe(1)
    for (const fix of comparison.differences[0]?.fixes ?? [])
      expect(messages(repaired(comparison, fix))).toEqual([])
  })

  it('in a row that another refers to leaves that other row as it is', () => {
    const pattern = piece(['k*6', 'p*6', 'k*5, p'])
    const lines = ['Rnd 1: k5, p1.', 'Rnd 2: Purl.', 'Rnd 3: As Rnd 1.']
    const comparison = compared(pattern, lines)
    expect(messages(comparison)).toEqual(['Rnd 1: the words purl peg 6, the chart knits it.'])
    const fix = comparison.differences[0]?.fixes.find((one) => 'changes' in one)
    expect(fix && messages(repaired(comparison, fix))).toEqual([])
  })

  it('in one copy of a repeat alone is not charted, and the reason is given', () => {
    const pattern = setRepeat(piece(['k, p', 'k*2'], { pegs: 8 }), { from: 0, to: 1 })
    const comparison = compared(pattern, ['Rnd 1: k1, p1, k2, (k1, p1) twice.', 'Rnd 2: Knit.'])
    expect(messages(comparison)).toEqual(['Rnd 1: the words knit peg 4, the chart purls it.'])
    const [difference] = comparison.differences
    expect(difference?.advice).toContain('4 copies of the repeat')
    expect(difference?.fixes.map(({ label }) => label)).toEqual(['Rewrite Rnd 1 from the chart'])
  })

  it('in every copy of a repeat is one difference, charted in every copy', () => {
    const pattern = setRepeat(piece(['k, p', 'k*2'], { pegs: 8 }), { from: 0, to: 1 })
    const comparison = compared(pattern, ['Rnd 1: Knit.', 'Rnd 2: Knit.'])
    expect(messages(comparison)).toEqual([
      'Rnd 1: the words knit pegs 2, 4, 6 and 8, the chart purls them.',
    ])
    for (const fix of comparison.differences[0]?.fixes ?? [])
      expect(messages(repaired(comparison, fix))).toEqual([])
  })

  it('that is left out moves no other', () => {
    const comparison = compared(rib, ribWords.with(1, 'Rnd 2: k1, p2, k2, p2.'))
    expect(comparison.differences).toHaveLength(1)
    expect(comparison.differences[0]?.message).toMatch(
      /^Rnd 2: the chart knits peg \d, the words do not\.$/,
    )
  })
})

describe('a row that does not add up', () => {
  const wide = piece(['k*2, p*2, '.repeat(7).replace(/, $/, ''), 'k*28'])

  it('is one difference: the counts, and the first peg where they differ', () => {
    const { differences } = compared(wide, ['Rnd 1: *k2, p3; rep from * to end.', 'Rnd 2: Knit.'])
    expect(differences.map(({ message }) => message)).toEqual([
      'Rnd 1: your words cover 25 pegs; the chart has 28. They first differ at peg 5: the words purl it, the chart knits it.',
    ])
    expect(differences[0]?.places).toEqual([{ from: 4, to: 4 }])
  })

  it('is told by its one stitch too many, and of no peg it is said that the chart has none', () => {
    const comparison = compared(rib, ribWords.with(1, 'Rnd 2: k2, p3, k2, p2.'))
    expect(messages(comparison)).toEqual([
      expect.stringMatching(/^Rnd 2: the words have p1 more than the chart, at peg [345]\.$/),
    ])
  })
})

describe('rows that are missing', () => {
  it.each([0, 1, 2, 3])('one line of the words, number %i, is one difference', (at) => {
    const comparison = compared(rib, ribWords.toSpliced(at, 1))
    expect(messages(comparison)).toEqual([`Your words leave out Rnd ${at + 1}.`])
    expect(comparison.agreement[at]).toBe('missing')
    const fixes = comparison.differences[0]?.fixes ?? []
    expect(fixes).toHaveLength(2)
    for (const fix of fixes) expect(messages(repaired(comparison, fix))).toEqual([])
  })

  it.each([0, 1, 2, 3])('and so it is when the lines are numbered anew: %i', (at) => {
    const lines = ribWords
      .toSpliced(at, 1)
      .map((line, index) => line.replace(/^Rnd \d/, `Rnd ${index + 1}`))
    expect(messages(compared(rib, lines))).toEqual([`Your words leave out Rnd ${at + 1}.`])
  })

  it('one line too many is one difference', () => {
    const lines = [
      ...ribWords.slice(0, 2),
      'Rnd 3: k1, p7.',
      'Rnd 4: *p2, k2; rep from * to end.',
      'Rnd 5: Purl.',
    ]
    const comparison = compared(rib, lines)
    expect(messages(comparison)).toEqual(['The chart leaves out Rnd 3 of your words (k1, p7).'])
    const fixes = comparison.differences[0]?.fixes ?? []
    expect(fixes).toHaveLength(2)
    for (const fix of fixes) expect(messages(repaired(comparison, fix))).toEqual([])
  })

  it('a band worked another number of times is one difference', () => {
    const pattern = setBand(rib, 1, 2, 4)
    const lines = [...ribWords.slice(0, 3), 'Rep Rnds 2-3 once more.', 'Rnd 6: Purl.']
    const comparison = compared(pattern, lines)
    expect(messages(comparison)).toEqual(['The chart works Rnds 2-3 4 times, the words twice.'])
    const fixes = comparison.differences[0]?.fixes ?? []
    expect(fixes).toHaveLength(2)
    for (const fix of fixes) expect(messages(repaired(comparison, fix))).toEqual([])
  })
})

describe('turns and pegs', () => {
  const partly = setRun(piece(['k*8', 'k*8', 'k*8']), 1, { from: 0, to: 5 })
  const pattern = setRun(setEnd(partly, 1, 'German turn'), 2, { from: 0, to: 5 })
  const words = (second: string) => ['Rnd 1: Knit.', second, 'Row 3: Pegs 6 to 1: knit.']

  it.each(['German turn on peg 6', 'turn; DS on peg 6'])(
    'are compared however told: %s',
    (turn) => {
      expect(messages(compared(pattern, words(`Row 2: Pegs 1 to 6: knit; ${turn}.`)))).toEqual([])
    },
  )

  it.each([
    ['Row 2: Pegs 1 to 5: knit; German turn on peg 5.', 'pegs 1 to 5'],
    ['Row 2: Pegs 1 to 5: knit; turn; DS on peg 5.', 'pegs 1 to 5'],
    ['Row 2: Pegs 1 to 6: knit.', 'no turn'],
    ['Row 2: Pegs 1 to 6: knit; wrap peg 7 and turn.', 'a wrap and turn'],
  ])('%s is one difference', (second, said) => {
    const comparison = compared(pattern, words(second))
    expect(comparison.differences.map(({ rule }) => rule)).toEqual(['turn-differs'])
    expect(messages(comparison)[0]).toContain(said)
    const fixes = comparison.differences[0]?.fixes ?? []
    expect(fixes.length).toBeGreaterThan(0)
    for (const fix of fixes) expect(messages(repaired(comparison, fix))).toEqual([])
  })
})

describe('what holds for the whole piece', () => {
  it('another plain knit is one difference', () => {
    const reading = readFor(rib, ribWords.join('\n'))
    const told = { ...reading, stated: { knit: 'e-wrap', direction: 'counterclockwise' } as const }
    const comparison = compare(told, workPattern(rib))
    expect(comparison.differences.map(({ rule }) => rule)).toEqual([
      'knit-differs',
      'direction-differs',
    ])
    const after = compare(told, workPattern(setMaking(rib, { knit: 'e-wrap' })))
    expect(after.differences.map(({ rule }) => rule)).toEqual(['direction-differs'])
  })
})

describe('a comparison', () => {
  it('of the same words and chart is the same object', () => {
    const first = compared(rib, ribWords)
    expect(compare(first.reading, first.work, first)).toBe(first)
  })
})

describe('a line that is written as in the chart', () => {
  const wordsAfter = (pattern: Parameters<typeof compared>[0], lines: readonly string[]) => {
    const comparison = compared(pattern, lines)
    const [difference] = comparison.differences
    const fix = difference?.fixes.find((one) => 'changes' in one)
    if (!fix || !('changes' in fix)) throw new Error('There is no repair of the words')
    expect(repaired(comparison, fix).differences.length).toBeLessThan(comparison.differences.length)
    return { label: fix.label, text: applyChanges(comparison.reading.text, fix.changes) }
  }
  const gusset = 'p*2, k*4, p*2, k, sl, p*2'
  const sized = piece([[gusset, gusset, gusset].join(', '), 'k*36'])

  it.each([
    ['k1, sl 1, k2', 'k1, sl 1, p2'],
    ['k1, sl 1, k1, p1', 'k1, sl 1, p2'],
    ['p1, sl 1, p2', 'k1, sl 1, p2'],
  ])('keeps brackets, sizes and all that is right: %s', (said, then) => {
    const line = (end: string) => `Rnd 1: [P2, k4, p2, ${end}] 3 (4, 5) times. (36 sts)`
    expect(wordsAfter(sized, [line(said), 'Rnd 2: Knit.'])).toEqual({
      label: 'Rewrite Rnd 1 from the chart',
      text: `${line(then)}\nRnd 2: Knit.`,
    })
  })

  it('keeps the letters of all that agrees, however a stitch is spelt', () => {
    const chart = piece(['k*2, p*2, k*4, p, k*3', 'k*12'])
    const line = (end: string) => `Rnd 1: Knit 2, P2, k 4,  p1, ${end}.   (12 sts)`
    const others = ['', 'Rnd 2:  KNIT  all pegs']
    expect(wordsAfter(chart, [line('purl 1, k2'), ...others]).text).toBe(
      [line('k 3'), ...others].join('\n'),
    )
  })

  const key = [
    'C4L = slip next 2 sts to cable needle and hold in front, k2, k2 from cable needle.',
    'tw2R = right twist, 1 over 1',
    '',
  ]
  const repeated = (cells: string, times: number) => Array(times).fill(cells).join(', ')

  it('names crosses as the words explain them', () => {
    const pattern = piece([repeated('k*2, 2/2 LC, p*2', 3), repeated('1/1 RC, p*2', 6)])
    const right = [
      'Rnd 1: *K2, C4L, p2; rep from * to end.',
      'Rnd 2: *tw2R, p2; rep from * to end.',
    ]
    const other = 'Rnd 1: *K2, k4, p2; rep from * to end.'
    expect(wordsAfter(pattern, [...key, other, ...right.slice(1)]).text).toBe(
      [...key, ...right].join('\n'),
    )
    const plain = 'Rnd 2: *k1, k1, p2; rep from * to end.'
    expect(wordsAfter(pattern, [...key, ...right.slice(0, 1), plain]).text).toBe(
      [...key, ...right].join('\n'),
    )
  })

  it('says when it is written anew, and then too with the names of the words', () => {
    const pattern = piece(['k*2, 2/2 LC, p*2, k*8', 'p*16'])
    expect(wordsAfter(pattern, [...key, 'Rnd 1: Purl.', 'Rnd 2: Purl.'])).toEqual({
      label: 'Rewrite Rnd 1 from the chart',
      text: [...key, 'Rnd 1: k2, C4L, p2, k8.', 'Rnd 2: Purl.'].join('\n'),
    })
  })

  it('keeps a plain knit the word that the words have for it', () => {
    const chart = piece(['uw*4, p*4', 'uw*8'])
    const lines = ['k = u-wrap knit', '', 'Rnd 1: k4, k4.', 'Rnd 2: Knit.']
    expect(wordsAfter(chart, lines).text).toBe(lines.with(2, 'Rnd 1: k4, p4.').join('\n'))
    const other = ['k = u-wrap knit', '', 'Rnd 1: Purl.', 'Rnd 2: k8.']
    expect(wordsAfter(chart, other).text).toBe(other.with(2, 'Rnd 1: k4, p4.').join('\n'))
  })
})
