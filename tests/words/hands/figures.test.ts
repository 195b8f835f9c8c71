import { describe, expect, test } from 'vitest'
import { directions, headings, type Direction } from '../../../src/loom/direction'
import { bindOffs, castOns, knits } from '../../../src/loom/move'
import { crossings } from '../../../src/loom/row'
import type { Stitch } from '../../../src/stitches/stitch'
import { crosses } from '../../../src/stitches/crosses'
import { stitchOf, standardVocabulary } from '../../../src/stitches/vocabulary'
import { handsContext } from '../../../src/words/hands/context'
import { stepFigures } from '../../../src/words/hands/figures'
import { sayMove } from '../../../src/words/hands/say'
import { sayStitch } from '../../../src/words/hands/say'
import type { Pattern } from '../../../src/pattern/pattern'
import { cellsOf } from '../../arbitraries'
import { crossOrders } from '../../published/data/standards'
import { rowOf } from '../helpers'
import { figures, pegsNamed, piece, walk, walkEdge } from './helpers'

/** The start of each figure's sentence: what is done, and on which pegs. */
const leads = (list: readonly { sentence: string }[]): string[] =>
  list.map(({ sentence }) => sentence.split(':')[0] ?? '')

describe('figures', () => {
  test('a run of plain stitches is one figure', () => {
    const [only, ...more] = figures(piece([rowOf('k*6')]))
    expect(more).toEqual([])
    expect(only).toMatchObject({ first: 1, last: 6, heading: 'U-wrap knit on pegs 1 to 6' })
    expect(only?.sentence).toMatch(/^Knit pegs 1 to 6, one after the other from right to left: /)
  })

  test('loops taken in a row onto the needle are one figure', () => {
    const list = figures(piece([rowOf('k*4, 3/3 RC, k*2')]))
    expect(list[1]).toEqual({
      first: 5,
      last: 7,
      heading: '3/3 right cross on pegs 5 to 10',
      sentence:
        'Take the loops of pegs 5 to 7 onto the spare needle, in this order, and let them wait inside the loom.',
      isAgain: false,
    })
  })

  test('a stitch is never drawn together with its neighbours', () => {
    expect(leads(figures(piece([rowOf('k*2, 1/1 LC, k*2')])))).toEqual([
      'Knit pegs 1 and 2, one after the other from right to left',
      'Take the loop off peg 4 onto the spare needle and let it wait inside the loom.',
      'Move the loop of peg 3 one peg to the left, to the empty peg 4, passing in front of the waiting loop.',
      'Put the waiting loop from the spare needle on peg 3, passing behind the moved loop.',
      'Knit pegs 3 and 4, one after the other',
      'Knit pegs 5 and 6, one after the other',
    ])
  })

  test('doubled loops stand out from a run', () => {
    const list = figures(piece([rowOf('k*3, tuck, k*3'), rowOf('k*7')]))
    expect(leads(list)).toEqual([
      'Knit pegs 1 to 3, one after the other from right to left',
      'Knit both strands on peg 4 as one',
      'Knit pegs 5 to 7, one after the other',
    ])
  })

  test('what repeats is drawn once', () => {
    expect(leads(figures(piece([rowOf('k*2, p*2, k*2, p*2, k*2, p*2')])))).toEqual([
      'Knit pegs 1 and 2, one after the other from right to left',
      'Purl pegs 3 and 4, one after the other',
      'Do the last two steps twice more, from peg 5 on to peg 12.',
    ])
  })

  test('a row back over the same pegs is not drawn together with the row before it', () => {
    const rows = [
      rowOf('k*6', { run: { from: 0, to: 3 } }),
      rowOf('k*6', { run: { from: 0, to: 3 }, heading: 'back' }),
    ]
    const pattern = piece(rows)
    const both = [...walk(pattern, 0), ...walk(pattern, 1)]
    for (const moments of [both, both.filter(({ move }, index) => index === 0 || move)])
      expect(leads(stepFigures(moments, handsContext(pattern)))).toEqual([
        'Knit pegs 1 to 4, one after the other from right to left',
        'Knit pegs 4 to 1, one after the other',
      ])
  })

  test.each([
    ['clockwise', 'from right to left', 'from left to right'],
    ['counterclockwise', 'from left to right', 'from right to left'],
  ] as const)('say which way the work goes, once and after a turn: %s', (direction, on, home) => {
    const rows = [
      rowOf('k*6'),
      rowOf('k*6', { run: { from: 0, to: 3 }, end: 'German turn' }),
      rowOf('k*6', { run: { from: 1, to: 2 }, heading: 'back' }),
    ]
    const pattern = piece(rows, direction)
    const moments = rows.flatMap((_, row) => walk(pattern, row))
    const list = stepFigures(moments, handsContext(pattern)).map(({ sentence }) => sentence)
    expect(list[0]).toMatch(new RegExp(`^Knit pegs 1 to 6, one after the other ${on}: `))
    expect(list[1]).toMatch(
      new RegExp(`^In the next round, knit pegs 1 to 4, one after the other ${on}: `),
    )
    expect(list[3]).toMatch(new RegExp(`^Turn back: from here, work ${home}`))
    expect(list[4]).toMatch(/^Knit pegs 3 and 2, one after the other: /)
    expect(list.filter((text) => text.startsWith('In the next round'))).toHaveLength(1)
  })

  test('moved loops stand under the stitch they are moved for', () => {
    const list = figures(piece([rowOf('k, yo, cdd, yo, k')]))
    expect(list.map(({ heading }) => heading)).toEqual([
      'U-wrap knit on peg 1',
      'Centered double decrease (s2kp) on peg 3',
      'Centered double decrease (s2kp) on peg 3',
      'Yarn over (yo) on peg 2',
      'Centered double decrease (s2kp) on peg 3',
      'Yarn over (yo) on peg 4',
      'U-wrap knit on peg 5',
    ])
  })

  test('a bind-off is told once and then repeated to the end', () => {
    const pattern = piece([rowOf('k*8')])
    const list = stepFigures(walkEdge(pattern, { bindOff: 'basic' }), handsContext(pattern))
    expect(leads(list)).toEqual([
      'Knit peg 1',
      'Knit peg 2',
      'Move the loop of peg 2 one peg to the right, to peg 1, on top of the loop there.',
      'Lift the lower loop on peg 1 over the top one and off the peg.',
      'Move the loop of peg 1 one peg to the left, to the empty peg 2.',
      'Do the last four steps six times more, from peg 3 on to peg 8.',
      'Cut the yarn, draw its end through the last loop, on peg 8, and take that loop off the peg.',
    ])
    expect(new Set(list.map(({ heading }) => heading))).toEqual(new Set(['Bind off']))
    const uk = stepFigures(walkEdge(pattern, { bindOff: 'basic' }), handsContext(pattern, 'uk'))
    expect(new Set(uk.map(({ heading }) => heading))).toEqual(new Set(['Cast off']))
  })
})

describe('the heading of a stitch', () => {
  const context = (terms: 'us' | 'uk' = 'us') => handsContext(piece([rowOf('k*9')]), terms)
  test.each([
    ['2/2 LC', 'us', '2/2 left cross on pegs 5 to 8'],
    ['2/2 LC', 'uk', 'Cable 4 front (C4F) on pegs 5 to 8'],
    ['2/1 RPC', 'us', '2/1 right purl cross on pegs 5 to 7'],
    ['k', 'us', 'U-wrap knit on peg 5'],
    ['kfb', 'us', 'Knit into front and back (kfb) on pegs 5 and 6'],
    ['mb', 'us', 'Make bobble on peg 5'],
  ] as const)('%s, %s', (id, terms, heading) => {
    expect(sayStitch({ stitch: stitchOf(id), peg: 4 }, 'forward', context(terms))).toBe(heading)
  })

  test('counts down on the way back', () => {
    expect(sayStitch({ stitch: stitchOf('2/2 LC'), peg: 4 }, 'back', context())).toBe(
      '2/2 left cross on pegs 8 to 5',
    )
  })
})

/** The stitch among others, so that its row comes out. */
function rowWith(stitch: Stitch): string[] {
  const short = stitch.width - stitch.takes
  const balance = Array.from({ length: Math.abs(short) }, () => (short > 0 ? 'k2tog' : 'yo'))
  return ['k', ...balance, ...cellsOf(stitch), 'k', 'k']
}

const everyWay: readonly (readonly [string, (cells: readonly string[]) => Pattern])[] =
  directions.flatMap((direction) =>
    headings.flatMap((heading) =>
      crossings.flatMap((crossing) =>
        knits.map(
          (knit) =>
            [
              `${direction}, ${heading}, ${crossing}, ${knit}`,
              (cells: readonly string[]) =>
                piece([rowOf(cells, { heading })], direction, { crossing, knit }),
            ] as const,
        ),
      ),
    ),
  )

/** A whole sentence, or a heading with a full stop put to it, that names only pegs of the loom. */
const isSound = (text: string, pegs: number): boolean =>
  /^[A-Z0-9].*\w.*\.$/.test(text) &&
  !/undefined|null|NaN| {2}|,,|\.\./.test(text) &&
  pegsNamed(text).every((peg) => peg >= 1 && peg <= pegs)

describe('every stitch of the vocabulary', () => {
  test.each(everyWay)('is told with pegs of the loom, %s', (_, patternOf) => {
    const wrong: string[] = []
    for (const stitch of standardVocabulary.stitches)
      // Alone among knits the row may miscount, and loops are dropped: that is told too.
      for (const cells of [rowWith(stitch), ['k', ...cellsOf(stitch), 'k', 'k']]) {
        const pattern = patternOf(cells)
        const context = handsContext(pattern)
        const moments = walk(pattern)
        const texts = [
          ...moments
            .slice(1)
            .map((moment, index) => sayMove(moment, moments[index] ?? moment, context)),
          ...stepFigures(moments, context).flatMap(({ heading, sentence }) => [
            `${heading}.`,
            sentence,
          ]),
        ]
        wrong.push(...texts.filter((text) => !isSound(text, cells.length)))
      }
    expect(wrong).toEqual([])
  })

  test.each(everyWay)('has each of its moves in one figure, in order, %s', (_, patternOf) => {
    for (const stitch of standardVocabulary.stitches) {
      const pattern = patternOf(rowWith(stitch))
      const moments = walk(pattern)
      const covered = stepFigures(moments, handsContext(pattern)).flatMap(({ first, last }) =>
        Array.from({ length: last - first + 1 }, (_unused, index) => first + index),
      )
      expect(covered, stitch.id).toEqual(moments.slice(1).map((_moment, index) => index + 1))
    }
  })
})

test.each([
  ...castOns.map((castOn) => [castOn, { castOn }] as const),
  ...bindOffs.map((bindOff) => [bindOff, { bindOff }] as const),
])('%s is told with pegs of the loom, and in few figures', (_, edge) => {
  const pattern = piece([rowOf(Array.from({ length: 40 }, () => 'k'))])
  const context = handsContext(pattern)
  const moments = walkEdge(pattern, edge)
  const list = stepFigures(moments, context)
  expect(list.length).toBeLessThanOrEqual(10)
  expect(list.at(-1)?.last).toBe(moments.length - 1)
  for (const { sentence } of list)
    for (const peg of pegsNamed(sentence)) expect(peg).toBeLessThanOrEqual(40)
})

// Common practice.
test('a drawstring is woven in front of one peg and behind the next, then the other way', () => {
  const pattern = piece([rowOf(['k', 'k', 'k', 'k', 'k', 'k', 'k', 'k'])])
  expect(
    stepFigures(walkEdge(pattern, { castOn: 'drawstring' }), handsContext(pattern)).map(
      ({ heading, sentence }) => `${heading}: ${sentence}`,
    ),
  ).toEqual([
    'Cast on: Lay the yarn across the front of peg 1 without winding it round; that strand is its first loop.',
    'Cast on: Carry the yarn behind peg 2, inside the loom.',
    'Cast on: Do the last two steps three times more, from peg 3 on to peg 8.',
    'Cast on: Leave the loop on peg 1 as it is and carry the yarn behind peg 1, inside the loom.',
    'Cast on: Lay the yarn across the front of peg 2 without winding it round; that strand is its first loop.',
    'Cast on: Do the last two steps three times more, from peg 3 on to peg 8.',
  ])
})

// Common practice.
test('the last loop of a chain cast-on goes on the last peg', () => {
  const pattern = piece([rowOf(['k', 'k', 'k', 'k', 'k', 'k'])])
  const said = stepFigures(walkEdge(pattern, { castOn: 'chain' }), handsContext(pattern))
  expect(said.map(({ sentence }) => sentence)).toEqual([
    expect.stringMatching(/^On pegs 1 to 5, one after the other: with the crochet hook /),
    'Put the last loop of the chain, from the hook, on peg 6; this is its first loop.',
  ])
})

/** Do what the sentences of the figures say with paper loops a, b, c, ... on the pegs. */
function follow(pattern: Pattern): string[] {
  const loops = 'abcdefghijkl'.slice(0, pattern.loom.pegs).split('')
  const needle: string[] = []
  const takeOff = (peg: number): string => {
    const loop = loops[peg - 1]
    if (!loop) throw new Error(`Peg ${peg} is empty.`)
    loops[peg - 1] = ''
    return loop
  }
  const putOn = (peg: number, loop = ''): void => {
    if (loops[peg - 1] || !loop) throw new Error(`Peg ${peg} cannot get “${loop}”.`)
    loops[peg - 1] = loop
  }
  for (const { sentence } of figures(pattern)) {
    if (/^Take the loops? (of|off) /.test(sentence))
      needle.push(...pegsNamed(sentence).map(takeOff))
    else if (/^Put the waiting loops? /.test(sentence))
      for (const peg of pegsNamed(sentence)) putOn(peg, needle.shift())
    else if (sentence.startsWith('Move ')) {
      const pegs = pegsNamed(sentence)
      const half = pegs.length / 2
      pegs.slice(0, half).forEach((from, index) => putOn(pegs[half + index] ?? 0, takeOff(from)))
    } else if (!/^(Knit|Purl|Take the yarn|Carry the yarn|Bring the yarn back) /.test(sentence))
      throw new Error(`What is “${sentence}”?`)
  }
  return loops
}

/** The sentences of a cross alone. */
const crossFigures = (id: string, direction: Direction, crossing: (typeof crossings)[number]) =>
  figures(piece([rowOf(['k', ...cellsOf(stitchOf(id)), 'k'])], direction, { crossing })).map(
    ({ sentence }) => sentence,
  )

// What waits inside the loom lies behind what goes past it outside (common practice).
test('of every cross it is said what passes in front and what behind', () => {
  for (const { id } of crosses)
    for (const direction of directions)
      for (const crossing of crossings) {
        const list = crossFigures(id, direction, crossing)
        const named = (start: RegExp) => list.filter((text) => start.test(text))
        expect(named(/^Take the loops? .* wait inside the loom\.$/), id).toHaveLength(1)
        for (const text of named(/^Move /)) expect(text).toMatch(/passing in front of the waiting/)
        for (const text of named(/^Put /)) expect(text).toMatch(/passing behind the moved loop/)
        expect(named(/^(Move|Put) /).length).toBeGreaterThan(1)
      }
})

test.each(directions)('knit then move: the yarn is brought back once, worked %s', (direction) => {
  for (const { id } of crosses) {
    const list = crossFigures(id, direction, 'knit then move')
    const back = list.filter((text) => text.startsWith('Bring the yarn back behind '))
    expect(back, id).toHaveLength(1)
    const [, ready] = /ready for peg (\d+)/.exec(back[0] ?? '') ?? []
    const next = /; then (?:knit|purl) (.*?)[,:]/.exec(back[0] ?? '')?.[1]
    // The pegs to be worked with it are named at once or in the next sentence.
    const worked = next ?? list[list.indexOf(back[0] ?? '') + 1] ?? ''
    expect(`${pegsNamed(worked)[0]}`, id).toBe(ready)
  }
})

describe('crosses worked with paper loops by the sentences alone', () => {
  const ends = (id: string, direction: Direction, crossing: (typeof crossings)[number]) =>
    follow(piece([rowOf(['k', ...cellsOf(stitchOf(id)), 'k'])], direction, { crossing }))

  test.each(crossOrders.values)('%s ends as published pages say', (id, order) => {
    const names = 'bcdefghi'
    const expected = ['a', ...order.map((loop) => names[loop - 1]), 'abcdefghij'[order.length + 1]]
    for (const crossing of crossings) {
      expect(ends(id, 'clockwise', crossing)).toEqual(expected)
      expect(ends(stitchOf(id).mirror, 'counterclockwise', crossing)).toEqual(expected)
    }
  })

  test('every cross ends where the loom has it', () => {
    for (const { id } of crosses)
      for (const direction of directions)
        for (const crossing of crossings) {
          const pattern = piece([rowOf(['k', ...cellsOf(stitchOf(id)), 'k'])], direction, {
            crossing,
          })
          const wales = walk(pattern)
            .at(-1)
            ?.stacks.map(([loop]) => 'abcdefghijkl'[loop?.wale ?? 0])
          expect(follow(pattern), id).toEqual(wales)
        }
  })
})
