import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bindOffs, castOns } from '../../../src/loom/move'
import { mirror } from '../../../src/pattern/edits/mirror'
import type { Pattern } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { workPattern } from '../../../src/pattern/work'
import { secondOf } from '../../../src/pattern/pair'
import { workPiece } from '../../../src/pattern/workPiece'
import { onChart } from '../../../src/pattern/charts'
import { writeWords } from '../../../src/words/write'
import { pieceAbbreviations, pieceText } from '../../../src/words/piece/text'
import { writePiece, type PieceBlock } from '../../../src/words/piece/write'
import { arbitraryPattern } from '../../arbitraries'
import { starters } from '../compare/helpers'
import { band, chartOf, ferryMitt, keeperSock, withPiece, withSteps } from './pieces'
import { stitchOf } from '../../../src/stitches/vocabulary'

const blocksOf = (pattern: Pattern, terms: 'us' | 'uk' = 'us'): readonly PieceBlock[] =>
  writePiece(workPiece(pattern), terms).blocks
const textsOf = (blocks: readonly PieceBlock[]): string[] =>
  blocks.flatMap(({ lines }) => lines.map(({ text }) => text))
const headingsOf = (blocks: readonly PieceBlock[]): string[] => blocks.map(({ heading }) => heading)
/** What a piece of these steps says of them, how-tos apart. */
const say = (pattern: Pattern, steps: readonly Step[], terms: 'us' | 'uk' = 'us'): string[] =>
  blocksOf(withSteps(pattern, steps), terms).flatMap(({ lines }) =>
    lines.filter(({ kind }) => kind !== 'how').map(({ text }) => text),
  )

const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
const work = (times: number): Step => ({ kind: 'chart', chart: 'Band', times })
const plain = (rows: number, id = 'k'): Step => ({
  kind: 'plain',
  stitch: stitchOf(id),
  amount: { rows },
})

describe('the second of a mirrored pair', () => {
  const second = (pattern: Pattern): string | undefined =>
    textsOf(blocksOf(withPiece(pattern, { pair: 'mirrored' }))).at(-1)
  const sock = starters.find(({ title }) => title === 'Fog-watch socks')

  test('says which pegs are which', () => {
    expect(second(ferryMitt())).toContain('what is on peg 1 here is on peg 32 there, and so on.')
    expect(second(band(chartOf('k'), { shape: 'bar' }))).toContain(
      'It begins at the other end of the loom, and its pegs are numbered from there.',
    )
    if (!sock) throw new Error('no socks among the starters')
    expect(secondOf(sock).loom.direction).toBe('counterclockwise')
    expect(second(sock)).toContain(
      'It is worked counterclockwise round the loom, and its pegs are numbered that way.',
    )
    expect(second(sock)).not.toContain('the other half')
  })
})

describe('a mitt', () => {
  const blocks = blocksOf(ferryMitt())

  test('has a heading for each stretch', () => {
    expect(headingsOf(blocks)).toEqual([
      'Cast-on',
      'Cuff',
      'Plait',
      'Plain rows',
      'Plait',
      'Plain rounds',
      'Bind-off',
      'The second one',
    ])
  })

  test('writes a chart out where it first stands, as it is written by itself', () => {
    const [, cuff, plait] = blocks
    expect(cuff?.lines[0]?.text).toBe('Work Cuff, Rnds 1-2, 6 times:')
    const alone = writeWords(workPattern(onChart(ferryMitt(), 'Plait')), 'us').lines
    expect(plait?.lines.filter(({ kind }) => kind === 'row').map(({ text }) => text)).toEqual(
      alone.map(({ text }) => text),
    )
    expect(plait?.lines.at(-1)?.chart).toEqual({ section: 'Plait', rows: { from: 1, to: 3 } })
  })

  test('names it where it stands again', () => {
    expect(blocks[4]?.lines.map(({ text }) => text)).toEqual([
      'From here work in the round on all 32 pegs again.',
      'Work Plait again, Rnds 1-4.',
    ])
  })

  test('keeps notes letter by letter, before what they lead to', () => {
    expect(blocks[2]?.lines[0]).toMatchObject({
      kind: 'note',
      text: 'Now the hand.\n  Keep the plait at the back.',
      step: 2,
    })
  })

  test('says how pegs are worked, and lengths by the gauge', () => {
    expect(blocks[3]?.lines.map(({ text }) => text)).toEqual([
      'From here work back and forth on all 32 pegs, without closing the round.',
      'Knit 6 rows (about 2 cm).',
    ])
    // 20 mm at 30 rows to 100 mm.
    expect(blocks[5]?.lines[0]?.text).toBe('Purl 6 rnds (about 2 cm).')
  })

  test('says that the second has its own instructions; that one is the mirror image', () => {
    expect(blocks.at(-1)?.lines[0]?.text).toMatch(
      /^For the second one follow its own instructions: .*mirror image[^.]*\.$/,
    )
    const second = pieceText(workPiece(mirror(ferryMitt())))
    expect(pieceText(workPiece(ferryMitt()))).toMatch(/2\/2 LC/)
    expect(second).toMatch(/2\/2 RC/)
    expect(second).not.toMatch(/2\/2 LC/)
  })

  test('in UK terms is cast off', () => {
    const uk = blocksOf(ferryMitt(), 'uk')
    expect(headingsOf(uk)).toContain('Cast-off')
    expect(textsOf(uk).join('\n')).not.toMatch(/bind|2\/2 LC/i)
    expect(textsOf(uk).join('\n')).toMatch(/C4F/)
  })
})

describe('a sock', () => {
  const sock = workPiece(keeperSock())
  const texts = textsOf(writePiece(sock, 'us').blocks)

  test('goes from cast-on to gathered toe', () => {
    expect(texts[0]).toBe('Cast on 40 pegs by double e-wrap, in the round, from peg 1 on.')
    expect(texts).toContain('Work Leg, Rnd 1, 30 times:')
    // 120 mm at 35 rows to 100 mm.
    expect(texts).toContain('Knit 42 rnds (about 12 cm).')
    expect(texts).toContain('Bind off all 40 loops by gathering them.')
    expect(texts.at(-1)).toBe('Make a second one in the same way.')
  })

  test('writes the heel row by row', () => {
    expect(texts).toContain('Row 2: Pegs 20 to 2: k19; turn; DS on peg 2.')
    // One unit in a heel: the doubled pegs are worked as one up to its last row.
    const heel = writePiece(sock, 'us').blocks.find(({ heading }) => heading === 'Heel')
    const heads = heel?.lines.filter(({ kind }) => kind === 'row').map(({ label }) => label) ?? []
    expect(heel?.lines[0]?.text).toBe(`Work Heel, Rows 1-${heads.length}:`)
    expect(heads.filter((head) => !/^Row \d+:$/.test(head))).toEqual([])
  })

  test('explains each abbreviation of all its charts, once', () => {
    const names = pieceAbbreviations([sock], 'us').map(({ abbr }) => abbr)
    expect(names).toEqual(['k', 'p', 'DS', 'rnd(s)', 'rep', 'st(s)'])
  })

  test('is a text of its parts', () => {
    const text = pieceText(sock)
    expect(text.startsWith('Keeper’s sock\n\nHow it is worked\n')).toBe(true)
    for (const heading of ['Cast-on', 'Leg', 'Heel', 'Plain rounds', 'Bind-off', 'Finishing'])
      expect(text).toContain(`\n\n${heading}\n`)
    expect(text.endsWith('Weave in the ends.\n')).toBe(true)
  })
})

describe('steps', () => {
  const ring = band(chartOf('k, p'))
  const bar = band(chartOf('k*3, p'), { shape: 'bar', pegs: 20 })

  test('a cast-on says how, how many and where', () => {
    expect(say(bar, [castOn])).toEqual([
      'Cast on 20 pegs by e-wrap, flat, from peg 20 down to peg 1.',
    ])
    expect(say(ring, [{ kind: 'cast on', how: 'chain', pegs: { from: 2, to: 7 } }])).toEqual([
      'Cast on 6 pegs with the chain cast-on: pegs 3 to 8.',
    ])
    const drawstring: Step = { kind: 'cast on', how: 'drawstring', pegs: null }
    expect(say(bar, [drawstring])).toEqual([
      'Cast on 20 pegs with the drawstring cast-on, flat, from peg 1 to peg 20 and back.',
    ])
  })

  // Common practice.
  test('a drawstring is woven twice, and the last loop of a chain goes on the last peg', () => {
    const how = (pattern: Pattern, name: 'drawstring' | 'chain') =>
      blocksOf(withSteps(pattern, [{ kind: 'cast on', how: name, pegs: null }]))[0]?.lines[1]?.text
    expect(how(ring, 'drawstring')).toMatch(
      /^Weave the yarn in front of one peg and behind the next to the end; then weave a second round, in front of the pegs you went behind /,
    )
    expect(how(bar, 'drawstring')).toMatch(/; then turn and weave back, in front of the pegs /)
    expect(how(ring, 'chain')).toMatch(
      /each peg but the last .*; put the last loop of the chain, from the hook, on the last peg;/,
    )
  })

  test('for a baby no edge is left that can be drawn, as the cautions in print say', () => {
    const steps: readonly Step[] = [{ kind: 'cast on', how: 'drawstring', pegs: null }]
    const told = (forBaby: boolean) => {
      const pattern = withSteps(ring, steps)
      return blocksOf({ ...pattern, making: { ...pattern.making, forBaby } })[0]?.lines[1]?.text
    }
    expect(told(false)).toMatch(/, and the edge can be drawn tight later\.$/)
    expect(told(true)).toMatch(/with the yarn end and sew that end in firmly\.$/)
    expect(told(true)).not.toContain('later')
  })

  test('each way to cast on and bind off is told in a line below', () => {
    for (const terms of ['us', 'uk'] as const) {
      const ways = [...castOns, ...bindOffs].map((how) => {
        const edge = castOns.find((one) => one === how)
        const steps: readonly Step[] = edge
          ? [{ kind: 'cast on', how: edge, pegs: null }]
          : [castOn, { kind: 'bind off', how: how as (typeof bindOffs)[number], pegs: null }]
        const told = blocksOf(withSteps(ring, steps), terms).at(-1)?.lines.at(-1)
        expect(told?.kind).toBe('how')
        expect(told?.text).toMatch(/^[A-Z].*\.$/)
        if (terms === 'uk') expect(told?.text).not.toMatch(/bind/i)
        return `${edge ? 'on' : 'off'} ${told?.text}`
      })
      expect(new Set(ways).size).toBe(castOns.length + bindOffs.length)
    }
  })

  test('pegs are named in the order in which the first row comes to them', () => {
    const pegs: Step = { kind: 'pegs', run: { from: 0, to: 9 }, toAndFro: true }
    const pattern = withSteps(band(chartOf('k')), [castOn, plain(2), pegs, plain(4)])
    const last = pattern.loom.pegs
    const sentence = (piece: Pattern) =>
      textsOf(blocksOf(piece)).find((text) => text.startsWith('From here'))
    expect(sentence(pattern)).toMatch(/^From here work back and forth on pegs 1 to 10; /)
    // Mirrored, the yarn hangs beside the last peg.
    expect(sentence(mirror(pattern))).toMatch(
      new RegExp(`^From here work back and forth on pegs ${last} to ${last - 9}; `),
    )
  })

  test('part of the pegs: work goes to and fro, the others wait and are not counted', () => {
    const steps: readonly Step[] = [
      castOn,
      { kind: 'pegs', run: { from: 0, to: 9 }, toAndFro: true },
      work(2),
      plain(1, 'p'),
      { kind: 'bind off', how: 'basic', pegs: { from: 0, to: 9 } },
    ]
    // The chart's one row is worked from peg 1 to peg 10 and then back; after three rows the yarn is
    // at peg 10.
    expect(say(ring, steps).slice(1)).toEqual([
      'From here work back and forth on pegs 1 to 10; the other loops wait.',
      'Work Band, Row 1, twice:',
      'The 1st time:',
      'Row 1: Pegs 1 to 10: *k1, p1; rep from * to end. (10 sts)',
      'The 2nd time:',
      'Row 1: Pegs 10 to 1: *p1, k1; rep from * to end. (10 sts)',
      'Purl 1 row.',
      'Bind off the 10 loops on pegs 10 to 1 with the basic bind-off.',
    ])
  })

  test('a bind-off says where it begins, unless that is peg 1', () => {
    const off = (pattern: Pattern, ...steps: Step[]) =>
      say(pattern, [castOn, ...steps]).filter((text) => text.startsWith('Bind off'))
    const all: Step = { kind: 'bind off', how: 'basic', pegs: null }
    const graft: Step = { kind: 'bind off', how: 'graft', pegs: null }
    const open: Step = { kind: 'pegs', run: null, toAndFro: true }
    const closed: Step = { kind: 'pegs', run: null, toAndFro: false }
    const some = (from: number, to: number): Step => ({
      kind: 'pegs',
      run: { from, to },
      toAndFro: true,
    })
    const last = 'with the basic bind-off'
    expect(off(ring, plain(3), all)).toEqual([`Bind off all 24 loops ${last}.`])
    expect(off(bar, plain(2), all)).toEqual([`Bind off all 20 loops ${last}.`])
    expect(off(bar, plain(3), all)).toEqual([
      `Bind off all 20 loops ${last}, from peg 20 down to peg 1.`,
    ])
    expect(off(ring, open, plain(3), all)).toEqual([
      `Bind off all 24 loops ${last}, from peg 24 down to peg 1.`,
    ])
    expect(off(ring, some(0, 5), plain(1), closed, all)).toEqual([
      `Bind off all 24 loops ${last}, from peg 7 on and round to peg 6.`,
    ])
    const elsewhere = say(ring, [castOn, some(0, 5), plain(1), closed, graft])
    expect(elsewhere.at(-1)).toBe('Bind off all 24 loops by grafting them together.')
    expect(
      textsOf(blocksOf(withSteps(ring, [castOn, some(0, 5), plain(1), closed, graft]))).at(-1),
    ).toMatch(/use a new length/)
  })

  test('a graft names the tail, pairs the pegs and counts a double stitch as one (common practice)', () => {
    const grafts = starters.flatMap((pattern) => {
      const lines = textsOf(blocksOf(pattern))
      const at = lines.findIndex((text) => text.endsWith('by grafting them together.'))
      return at < 0 ? [] : [lines[at + 1]]
    })
    expect(grafts).toEqual([
      'Cut the yarn, leaving a tail three to four times as long as the edge. Pair the pegs: peg 2 with peg 1, peg 3 with peg 48, and so on to peg 25 with peg 26. With the tail in a sewing needle, follow the path of a knit row from side to side, twice through each loop, and take the loops off as you go. The two strands of the double stitch on peg 25 count as one loop.',
    ])
    const plainGraft: Step = { kind: 'bind off', how: 'graft', pegs: null }
    const even = textsOf(blocksOf(withSteps(ring, [castOn, plain(2), plainGraft])))
    expect(even.at(-1)).toMatch(/^Cut the yarn/)
    expect(even.at(-1)).not.toMatch(/double stitch/)
  })

  test('a row of some of the pegs has no count of all, whatever the loom holds', () => {
    const mitt = starters.flatMap((pattern) =>
      textsOf(blocksOf(pattern)).filter((text) => text.startsWith('Row 1: Pegs 1 to 26: k26.')),
    )
    expect(mitt).toEqual(['Row 1: Pegs 1 to 26: k26.', 'Row 1: Pegs 1 to 26: k26. (26 sts)'])
  })

  test('where other loops wait for the yarn, it is not cut, or joined again', () => {
    const how = (way: (typeof bindOffs)[number], most: number) =>
      textsOf(
        blocksOf(
          withSteps(ring, [castOn, { kind: 'bind off', how: way, pegs: { from: 0, to: most } }]),
        ),
      ).at(-1)
    expect(how('basic', 5)).toMatch(
      /pass the ball of yarn through it and pull it snug, without cutting the yarn/,
    )
    expect(how('basic', 23)).toMatch(/cut the yarn/)
    expect(how('gather', 5)).toMatch(/Join the yarn again where this edge ends, and go on\.$/)
    expect(how('gather', 23)).not.toMatch(/again/)
  })

  test('a cast-on in the middle of a piece goes from where the yarn is', () => {
    const thumb = (rows: number) =>
      say(ring, [
        castOn,
        { kind: 'pegs', run: { from: 0, to: 9 }, toAndFro: true },
        plain(rows),
        { kind: 'bind off', how: 'basic', pegs: { from: 10, to: 15 } },
        { kind: 'cast on', how: 'chain', pegs: { from: 10, to: 15 } },
      ]).slice(-2)
    expect(thumb(1)).toEqual([
      'Bind off the 6 loops on pegs 11 to 16 with the basic bind-off.',
      'Cast on 6 pegs with the chain cast-on: pegs 16 to 11.',
    ])
  })

  test('an odd number of rows on a bar reads differently every other time', () => {
    expect(say(bar, [castOn, work(3)]).slice(1)).toEqual([
      'Work Band, Row 1, 3 times:',
      'The 1st and 3rd time:',
      'Row 1: *k3, p1; rep from * to end. (20 sts)',
      'The 2nd time:',
      'Row 1: *p1, k3; rep from * to end. (20 sts)',
    ])
  })

  test('a chart that comes to other stitches the second time is written again', () => {
    const steps: readonly Step[] = [
      castOn,
      work(1),
      { kind: 'bind off', how: 'basic', pegs: { from: 20, to: 23 } },
      work(1),
    ]
    expect(say(ring, steps).filter((text) => text.startsWith('Work Band'))).toEqual([
      'Work Band, Rnd 1:',
      'Work Band, Rnd 1:',
    ])
  })

  test('plain rows of any stitch', () => {
    expect(say(ring, [castOn, plain(1), plain(4, 'ew'), plain(2, 'tuck')]).slice(1)).toEqual([
      'Knit 1 rnd.',
      'Work 4 rnds of ew (e-wrap knit).',
      'Work 2 rnds of tuck.',
    ])
    expect(say(bar, [castOn, plain(3, 'p')]).slice(1)).toEqual(['Purl 3 rows.'])
  })

  test('a length without a gauge is said as a length', () => {
    const foot: Step = { kind: 'plain', stitch: stitchOf('k'), amount: { mm: 45 } }
    expect(say(ring, [castOn, foot], 'uk')[1]).toBe(
      'Knit 4.5 cm, measured on your piece: no tension is given, so the rnds are not counted.',
    )
  })

  test('what is missing is said', () => {
    expect(say(ring, [{ kind: 'chart', chart: 'Fog bell', times: 1 }])).toEqual([
      'Work Fog bell: there is no chart of this name yet.',
    ])
    expect(say(ring, [{ kind: 'bind off', how: 'sewn', pegs: null }])).toEqual([
      'There are no loops to bind off here.',
    ])
  })

  test('rows beyond what a piece can have are named', () => {
    const long = Array.from({ length: 7 }, () => plain(1000))
    expect(say(band(chartOf('k'), { pegs: 3 }), [castOn, ...long]).at(-1)).toMatch(
      /^The last 1000 rows of this step are left out here: a piece can have 6000 rows/,
    )
  })
})

describe('any piece at all', () => {
  const arbitrary = arbitraryPattern({ rows: 3, columns: 8 }).map((pattern): Pattern => ({
    ...pattern,
    loom: { ...pattern.loom, pegs: 3 + (pattern.loom.pegs % 20) },
  }))

  test('every step that says something has its line, in order, under a heading', () => {
    fc.assert(
      fc.property(arbitrary, (pattern) => {
        const blocks = blocksOf(pattern)
        const steps = blocks.flatMap(({ lines }) => lines.flatMap(({ step }) => step ?? []))
        expect(steps).toEqual(steps.toSorted((a, b) => a - b))
        const speaking = pattern.steps.flatMap((step, index) =>
          step.kind === 'note' && !step.text.trim() ? [] : [index],
        )
        expect([...new Set(steps)]).toEqual(speaking)
        for (const { heading, lines } of blocks) {
          expect(heading).not.toBe('')
          expect(lines.length).toBeGreaterThan(0)
          for (const { text, label, kind } of lines) {
            expect(text.startsWith(label)).toBe(true)
            if (kind !== 'note') expect(text).not.toMatch(/undefined|NaN|\bnull\b/)
          }
        }
      }),
      { numRuns: 100 },
    )
  })

  test('the words do not depend on what is on the bench', () => {
    for (const pattern of [ferryMitt(), keeperSock()])
      for (const { name } of pattern.charts)
        expect(pieceText(workPiece(onChart(pattern, name)))).toBe(pieceText(workPiece(pattern)))
  })

  test('a piece without steps has no words', () => {
    expect(blocksOf(withPiece(band(chartOf('k')), { steps: [] }))).toEqual([])
  })
})
