import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inOrder } from '../../../src/loom/gather'
import { habitsOf } from '../../../src/pattern/habits'
import type { Pattern } from '../../../src/pattern/pattern'
import { secondOf } from '../../../src/pattern/pair'
import { momentsOf } from '../../../src/pattern/stretches'
import { workPiece } from '../../../src/pattern/workPiece'
import { alongPiece, bandOf, readStop, textOf, type Along } from '../../../src/words/along/along'
import {
  back,
  isDone,
  next,
  start,
  strides,
  toCopy,
  toStint,
  type Place,
} from '../../../src/words/along/place'
import { momentsOfStints } from '../../../src/words/along/stints'
import { textOfSpans } from '../../../src/words/spans'
import { arbitraryPattern } from '../../arbitraries'
import { band, chartOf, ferryMitt, keeperSock, withSteps } from '../piece/pieces'

const along = (pattern: Pattern): Along => alongPiece(workPiece(pattern))

const anyPiece = arbitraryPattern({ columns: 18, rows: 5, times: 4, cut: true }).map((pattern) => ({
  ...pattern,
  loom: { ...pattern.loom, pegs: 3 + (pattern.loom.pegs % 40) },
}))

const texts = (walk: Along): string[] => walk.stops.map((stop) => textOf(walk, stop))

describe('a whole piece, to be knitted along with', () => {
  test('has every stitch of every row once, in the order worked, on the pegs of the loom', () => {
    fc.assert(
      fc.property(anyPiece, (pattern) => {
        const walk = along(pattern)
        const { steps } = walk.piece
        const rows = walk.stops.flatMap(({ stretch }) =>
          stretch.kind === 'row' ? [stretch.run] : [],
        )
        expect(rows).toEqual(steps.flatMap((step) => step.rows?.rows ?? []))
        for (const stop of walk.stops) {
          const { stretch } = stop
          if (stretch.kind !== 'row') continue
          const { run } = stretch
          const { spans, stints } = readStop(walk, stop)
          const worked = inOrder(run.row, run.heading)
          expect(stints.flatMap(({ sites }) => sites)).toEqual(worked)
          expect(textOfSpans({ spans, order: [] })).toBe(textOf(walk, stop))
          for (const { span, sites, pegs } of stints) {
            expect(spans[span]?.kind).toBe('stitches')
            expect(pegs.from).toBe(Math.min(...sites.map(({ peg }) => peg)))
            expect(pegs.to).toBe(Math.max(...sites.map((site) => site.peg + site.stitch.width - 1)))
          }
        }
      }),
      { numRuns: 60 },
    )
  })

  test('has every move of the loom once, at the stint whose stitch it belongs to', () => {
    fc.assert(
      fc.property(anyPiece, (pattern) => {
        const walk = along(pattern)
        for (const stop of walk.stops) {
          const { stretch } = stop
          if (stretch.kind !== 'row') continue
          const moments = momentsOf(stretch, habitsOf(pattern))
          const { stints } = readStop(walk, stop)
          const runs = momentsOfStints(moments, stints)
          let done = 0
          runs.forEach(({ from, to }, index) => {
            expect(from).toBe(done)
            done = to
            for (const { site } of moments.slice(from + 1, to + 1)) {
              const whose = stints.findIndex(({ sites }) => site && sites.includes(site))
              expect(whose).toBeLessThanOrEqual(site ? index : -1)
            }
          })
          expect(done).toBe(stints.length === 0 ? 0 : moments.length - 1)
          // The last stitch of each stint is worked in it, where it is worked at all.
          runs.forEach(({ from, to }, index) => {
            const sites = new Set(moments.slice(from + 1, to + 1).map(({ site }) => site))
            const all = new Set(moments.map(({ site }) => site))
            for (const site of stints[index]?.sites ?? [])
              if (all.has(site)) expect(sites.has(site)).toBe(true)
          })
        }
      }),
      { numRuns: 40 },
    )
  })

  test('on by a stride and back by it is the same place', () => {
    fc.assert(
      fc.property(
        anyPiece,
        fc.nat(),
        fc.nat(),
        fc.constantFrom(...strides),
        (pattern, a, b, by) => {
          const walk = along(pattern)
          if (walk.stops.length === 0) return
          const stop = a % walk.stops.length
          const stints = readStop(walk, walk.stops[stop] as never).stints.length
          const place: Place = { stop, stint: b % Math.max(1, stints), left: 0 }
          const there = next(walk, place, by)
          expect(there).not.toEqual(place)
          const { stop: stopAgain, stint } = back(walk, there, by)
          expect([stopAgain, stint]).toEqual([place.stop, place.stint])
        },
      ),
      { numRuns: 100 },
    )
  })

  test('by stitches comes to each stint of each row, to the end', () => {
    const walk = along(ferryMitt())
    let place = start
    const seen: string[] = []
    while (!isDone(walk, place)) {
      seen.push(`${place.stop}/${place.stint}`)
      place = next(walk, place, 'stitch')
    }
    const all = walk.stops.flatMap((stop, index) =>
      readStop(walk, stop).stints.map((_, stint) => `${index}/${stint}`),
    )
    expect(seen).toEqual(all)
    expect(next(walk, place, 'row')).toBe(place)
    expect(back(walk, start, 'stitch')).toBe(start)
  })
})

describe('what is told', () => {
  test('from cast-on to bind-off, with notes and changes of pegs before what they lead to', () => {
    const walk = along(ferryMitt())
    expect(texts(walk)[0]).toMatch(
      /^Cast on 32 pegs by e-wrap, in the round, from peg 1 on\. Wind /,
    )
    expect(texts(walk).at(-1)).toMatch(/^Bind off all 32 loops with the elastic bind-off\./)
    expect(
      walk.stops.flatMap(({ told, stretch }) => told.map((text) => [stretch.step, text])),
    ).toEqual([
      [3, 'Now the hand.\n  Keep the plait at the back.'],
      [5, 'From here work back and forth on all 32 pegs, without closing the round.'],
      [7, 'From here work in the round on all 32 pegs again.'],
    ])
    expect(walk.after).toEqual([])
    const ended = withSteps(ferryMitt(), [
      ...ferryMitt().steps,
      { kind: 'note', text: 'Sew on the cord.' },
    ])
    expect(along(ended).after).toEqual(['Sew on the cord.'])
  })

  test('a heel goes to and fro, on its pegs', () => {
    const walk = along(keeperSock())
    const heel = walk.stops.filter(({ stretch }) => stretch.chart?.chart === 'Heel')
    const [first, second] = heel.map((stop) => readStop(walk, stop).stints.at(-1)?.pegs)
    expect(first?.to).not.toBe(second?.to)
    expect(texts(walk)).toContain(textOf(walk, heel[1] as never))
  })

  test('the words of a row and how far they are worked: copies of the repeat, times of the band', () => {
    const chart = chartOf('k*2, 2/2 RC, p', 'k*7')
    const walk = along(band({ ...chart, bands: [{ from: 0, to: 1, times: 3 }] }, { pegs: 21 }))
    const stop = walk.stops[3] as Along['stops'][number]
    expect(textOf(walk, stop)).toBe('*k2, 2/2 RC, p1; rep from * to end.')
    const { spans, stints } = readStop(walk, stop)
    expect(stints.map(({ span }) => spans[span]?.text)).toEqual(
      Array.from({ length: 3 }, () => ['k2', '2/2 RC', 'p1']).flat(),
    )
    expect(stints.map(({ copy }) => copy?.at)).toEqual([0, 0, 0, 1, 1, 1, 2, 2, 2])
    expect(stints[4]).toMatchObject({ pegs: { from: 9, to: 12 }, copy: { at: 1, of: 3 } })
    expect(bandOf(walk, stop)).toEqual({ at: 1, of: 3, rows: 2 })
    const place = { stop: 3, stint: 4, left: 0 }
    expect(toCopy(walk, place, 2)).toEqual(toStint(place, 6))
    expect(toCopy(walk, place, 3)).toBe(place)
  })

  test('the second of a mirrored pair is told as its own piece', () => {
    const first = { ...ferryMitt(), pair: 'mirrored' as const }
    const walk = along(secondOf(first))
    expect(texts(walk).some((text) => text.includes('2/2 RC'))).toBe(true)
    expect(texts(walk).some((text) => text.includes('2/2 LC'))).toBe(false)
    expect(along(first).stops.length).toBe(walk.stops.length)
  })
})
