import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { keptFrom, keptNow, type KeptAlong } from '../../src/bench/along/kept'
import {
  asBefore,
  listStops,
  rowOfStep,
  stepName,
  stopName,
  toldBetween,
} from '../../src/bench/along/names'
import { goBack } from '../../src/bench/along/returning'
import { rowParts } from '../../src/bench/along/rowParts'
import { habitsOf } from '../../src/pattern/habits'
import type { Pattern } from '../../src/pattern/pattern'
import { momentsOf } from '../../src/pattern/stretches'
import { workPiece } from '../../src/pattern/workPiece'
import { alongPiece, readStop, type Along, type Stop } from '../../src/words/along/along'
import { momentsOfStints } from '../../src/words/along/stints'
import { handsContext } from '../../src/words/hands/context'
import { band, chartOf, ferryMitt, keeperSock } from '../words/piece/pieces'

const along = (pattern: Pattern): Along => alongPiece(workPiece(pattern))
const stopOf = (walk: Along, index: number) => walk.stops[index] as Stop
const rows = ['k*5, p', 'k*4, p*2', 'k*3, p*3', 'k*2, p*4', 'k, p*5', 'p, k*5']
const piece = (...list: readonly string[]) => along(band(chartOf(...list), { pegs: 24 }))
const now = new Date(2026, 4, 12, 9, 30)

/** Somebody stopped there the evening before. */
const kept = (walk: Along, stop: number, stint = 0): KeptAlong => ({
  ...keptNow(walk, { stop, stint, left: 0 }, { count: 3, stride: 'row', awake: true }),
  date: new Date(2026, 4, 11, 21, 40).toISOString(),
})
const said = (was: Along, is: Along, stop: number) =>
  goBack(is, kept(was, stop), now).said.map((sentence) => sentence.replace(/9:40\sPM/u, '21:40'))

describe('what is said to somebody who comes back', () => {
  const was = piece(...rows)

  test('nothing was changed', () => {
    expect(said(was, piece(...rows), 3)).toEqual(['Round 3, where you left it, yesterday 21:40.'])
  })

  test('a round more before it, and one that is changed after it', () => {
    expect(said(was, piece('p*6', ...rows.with(5, 'k, p, k, p*3')), 3)).toEqual([
      'Round 3, where you left it, yesterday 21:40, is round 4 now. You are at the same stitch in it.',
      'Changed or new before it: round 1. Look whether what you knitted still fits.',
      'Changed, and still to come: round 7.',
    ])
  })

  test('its round reads differently, or is gone', () => {
    expect(said(was, piece(...rows.with(2, 'p*6')), 3)).toEqual([
      'Round 3, where you left it, yesterday 21:40, reads differently now. It begins at its first stitch.',
    ])
    expect(said(was, piece(...rows.toSpliced(2, 1)), 3)).toEqual([
      'Round 3, where you left it, yesterday 21:40, is no longer there. You are at round 3, the next that is left.',
    ])
  })

  test('all is worked', () => {
    expect(said(was, was, was.stops.length)).toEqual([
      'All is worked, where you left it, yesterday 21:40.',
    ])
  })

  test('what is kept is read again; what cannot be understood is nothing', () => {
    const record = kept(was, 2, 1)
    expect(keptFrom(structuredClone(record))).toEqual(record)
    expect(keptFrom({ stop: 2, stint: 1 })).toMatchObject({
      stop: 2,
      stint: 1,
      count: 0,
      stride: 'row',
    })
    for (const strange of [null, 7, {}, { stop: -1, stint: 0 }, { stop: 'a', stint: 1 }])
      expect(keptFrom(strange)).toBeNull()
  })
})

describe('what things are called', () => {
  test('rows of one step by their numbers, of several with their step', () => {
    const walk = piece(...rows)
    expect(listStops(walk, [1, 2, 3, 5])).toBe('rounds 1 to 3 and 5')
    const mitt = along(ferryMitt())
    const plait = mitt.stops.findIndex(({ stretch }) => stretch.chart?.chart === 'Plait')
    expect(listStops(mitt, [1, plait])).toBe('round 1 of Cuff and round 1 of Plait')
    expect(listStops(mitt, [0])).toBe('cast on')
    expect(listStops(walk, [1, 2, 3, 4, 5], 2)).toBe('rounds 1 and 2 and 3 more rows')
  })

  test('a row of a band that was worked before names it', () => {
    const chart = { ...chartOf('k*5, p', 'k*6', 'p*6'), bands: [{ from: 0, to: 1, times: 3 }] }
    const walk = along(band(chart, { pegs: 24 }))
    expect(walk.stops.slice(1, 8).map((stop) => asBefore(walk, stop))).toEqual([
      '',
      '',
      'as round 1, 2nd time of 3',
      'as round 2, 2nd time of 3',
      'as round 1, 3rd time of 3',
      'as round 2, 3rd time of 3',
      '',
    ])
    expect(stopName(walk, stopOf(walk, 4))).toBe('Round 4')
    expect(rowOfStep(walk, stopOf(walk, 4))).toEqual({ at: 4, of: 7 })
    expect(stepName(walk, stopOf(walk, 4))).toBe('2 Band')
    expect(stopName(walk, null)).toBe('The end')
  })

  test('plain rows and times of a chart are counted in their step', () => {
    const sock = along(keeperSock())
    const plain = sock.stops.findIndex(({ stretch }) => stretch.kind === 'row' && !stretch.chart)
    expect(rowOfStep(sock, stopOf(sock, plain + 4))).toEqual({ at: 5, of: 42 })
    expect(rowOfStep(sock, stopOf(sock, 3))).toEqual({ at: 1, of: 1 })
    expect(rowOfStep(sock, stopOf(sock, 0))).toBeNull()
  })
})

test('plain stitches are told in few words, a cross move by move', () => {
  const pattern = band(chartOf('k*2, 2/2 RC, p'), { pegs: 21 })
  const walk = along(pattern)
  const { stretch } = stopOf(walk, 1)
  const moments = momentsOf(stretch, habitsOf(pattern))
  const runs = momentsOfStints(moments, readStop(walk, stopOf(walk, 1)).stints)
  const told = runs
    .slice(0, 3)
    .map(({ from, to }) => toldBetween(moments, from, to, handsContext(pattern), false))
  expect(told.map((list) => list.map(({ sentence }) => sentence.split(',')[0]))).toEqual([
    ['Knit pegs 1 and 2.'],
    [
      'Take the loops of pegs 3 and 4 onto the spare needle',
      'Move the loops of pegs 5 and 6',
      'Put the waiting loops from the spare needle on pegs 5 and 6',
      'Knit pegs 3 to 6.',
    ],
    ['Purl peg 7.'],
  ])
  const all = told.flat()
  expect(all[0]?.first).toBe(1)
  for (const [index, { first }] of all.entries())
    if (index > 0) expect(first).toBe((all[index - 1]?.last ?? 0) + 1)
})

test('a row is laid in parts that are all its text, with its signs beside their stitch', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom('k', 'p', '2/2 RC', 'k2tog, yo', 'ssk, yo'), {
        minLength: 1,
        maxLength: 9,
      }),
      (cells) => {
        const walk = along(band(chartOf(cells.join(', ')), { pegs: 36 }))
        const { spans } = readStop(walk, stopOf(walk, 1))
        const parts = rowParts(spans)
        expect(parts.map(({ before, text, after }) => before + text + after).join('')).toBe(
          spans.map(({ text }) => text).join(''),
        )
        for (const { kind, after } of parts) if (kind === 'stitches') expect(after).not.toBe('')
      },
    ),
    { numRuns: 60 },
  )
  const walk = along(band(chartOf('k*2, 2/2 RC, p'), { pegs: 21 }))
  expect(rowParts(readStop(walk, stopOf(walk, 1)).spans).slice(0, 4)).toEqual([
    { span: 0, kind: 'between', text: '', before: '', after: '' },
    { span: 1, kind: 'stitches', text: 'k2', before: '*', after: ',' },
    { span: 2, kind: 'between', text: ' ', before: '', after: '' },
    { span: 3, kind: 'stitches', text: '2/2 RC', before: '', after: ',' },
  ])
})
