import { withChart, eachChart } from '../../../src/pattern/edits/chart'
import { chartOn } from '../../../src/pattern/charts'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { withoutQuietPegs } from '../../../src/booklet/chart/quietPegs'
import { mirror } from '../../../src/pattern/edits/mirror'
import { paint } from '../../../src/pattern/edits/paint'
import { makeShortRows, shortRowChart } from '../../../src/pattern/generate/shortRows'
import { usualHeel, usualTurns } from '../../../src/pattern/generate/wish'
import { newPattern, type Chart, type Pattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { starterCharts } from '../../../src/shelf/seeds'
import { layOut, pageText } from '../read'
import { stitchOf } from '../../../src/stitches/vocabulary'

/** A loom of so many pegs with a heel on a run of them, in a chart of its own. */
function heel(pegs: number, from: number, length: number): Pattern {
  const pattern = newPattern(pegs, 1)
  const run = { from, to: from + length - 1 }
  const wish = { ...usualHeel(pattern.loom), run, closeCorners: false }
  const made = makeShortRows(pattern.loom, { ...wish, turned: usualTurns(run, wish.step) })
  if (!made.ok) throw new Error(made.message)
  return withChart(pattern, { columns: pegs, repeat: null, bands: [], rows: made.rows })
}

const arbitraryHeel = fc
  .integer({ min: 24, max: 96 })
  .chain((pegs) => fc.tuple(fc.constant(pegs), fc.integer({ min: 6, max: pegs - 8 }), fc.boolean()))
  .chain(([pegs, length, mirrored]) =>
    fc
      .integer({ min: 1, max: pegs - length - 1 })
      .map((from) => (mirrored ? mirror(heel(pegs, from, length)) : heel(pegs, from, length))),
  )

test('what is not drawn of a heel is told: each peg is drawn or named, and does what is said', () => {
  let left = 0
  fc.assert(
    fc.property(arbitraryHeel, (pattern) => {
      const work = workPattern(pattern)
      const drawn = withoutQuietPegs(work)
      if (!drawn) return
      left++
      const told = Array.from({ length: pattern.loom.pegs }, (_, peg) =>
        peg >= drawn.from && peg <= drawn.to
          ? 1
          : drawn.quiet.filter(({ from, to }) => peg >= from && peg <= to).length,
      )
      expect(new Set(told)).toEqual(new Set([1]))
      for (const { from, to, rests, worked } of drawn.quiet)
        work.firstRuns.forEach(({ row, heading }, index) => {
          const within = (run: { from: number; to: number }) => index >= run.from && index <= run.to
          const isWorked = row.from <= from && row.to >= to
          expect(rests.filter(within).length).toBe(isWorked ? 0 : 1)
          expect(worked.filter(within).length).toBe(isWorked ? 1 : 0)
          expect(isWorked || row.to < from || row.from > to).toBe(true)
          const end = heading === 'forward' ? row.to : row.from
          if (row.end !== 'on') expect(end < from || end > to).toBe(true)
        })
    }),
  )
  expect(left).toBeGreaterThan(20)
})

test('a stitch beside the heel that is not plain is drawn', () => {
  const plain = heel(40, 1, 20)
  expect(withoutQuietPegs(workPattern(plain))).toMatchObject({ from: 0, to: 21 })
  const last = chartOn(plain).rows.length - 1
  const dotted = paint(plain, stitchOf('p'), last, 35)
  expect(withoutQuietPegs(workPattern(dotted))).toBeNull()
  // All pegs do the same: nothing is gained.
  expect(withoutQuietPegs(workPattern(newPattern(40, 8)))).toBeNull()
})

function unwrap(made: ReturnType<typeof shortRowChart>): Chart {
  if (!made.ok) throw new Error(made.message)
  return made.chart
}

/** The starter sock with two heels, the other pegs of which are knitted plain. */
function plainHeeled(): Pattern {
  const sock = starterCharts.find(({ id }) => id.startsWith('fog'))?.pattern()
  if (!sock) throw new Error('no sock among the starter charts')
  const charts = eachChart(sock.charts, (one) =>
    one.name === 'Heel' || one.name === 'Toe'
      ? { ...one, chart: unwrap(shortRowChart(sock.loom, usualHeel(sock.loom))) }
      : one,
  )
  return { ...sock, charts }
}

test('the heels of a pair of socks stand on one sheet each, with a line about the other pegs', () => {
  const sock = plainHeeled()
  const text = pageText(layOut(sock, { second: true })).join(' ')
  expect(text).toContain('Pegs 28-48 are not shown: not worked in rows 1-32, k in rows 33-34.')
  expect(text).toContain('Pegs 1-21 are not shown: not worked in rows 2-33, k in rows 1 and 34.')
  expect(text).not.toContain('Heel, sheet')
  // The foot needs two sheets; both find room on one page.
  const feet = pageText(layOut(sock, { second: false })).filter((page) =>
    page.includes('Foot, sheet'),
  )
  expect(feet.map((page) => page.split('Foot, sheet').length - 1)).toEqual([2])
})
