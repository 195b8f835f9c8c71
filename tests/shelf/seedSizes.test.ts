/**
 * The starters are what their titles say. Lengths and widths come from each one's own gauge, pegs and
 * rounds as the loom works them; what they are held against is named beside it.
 */
import { describe, expect, test } from 'vitest'
import { checkPiece } from '../../src/checks/piece/check'
import { footLength } from '../../src/drawing/piece/foot'
import { profileOf } from '../../src/drawing/piece/profile'
import { feetOfSock } from '../../src/booklet/feet'
import { mirror } from '../../src/pattern/edits/mirror'
import { reverseDirection } from '../../src/pattern/edits/turn-round'
import { textureBefore } from '../../src/pattern/generate/before'
import { shortRowChart } from '../../src/pattern/generate/shortRows'
import { usualHeel } from '../../src/pattern/generate/wish'
import type { Pattern } from '../../src/pattern/pattern'
import type { Step } from '../../src/pattern/piece'
import type { PatternRow } from '../../src/pattern/row'
import { findChart } from '../../src/pattern/charts'
import { centimetres, inCentimetres } from '../../src/pattern/size'
import { workPiece, type PieceWork } from '../../src/pattern/workPiece'
import { starterCharts } from '../../src/shelf/seeds'
import { allText, layOut } from '../booklet/read'

function starter(id: string): Pattern {
  const found = starterCharts.find((chart) => chart.id === id)
  if (!found) throw new Error(`no starter chart ${id}`)
  return found.pattern()
}

const rowsOf = ({ steps }: PieceWork): PatternRow[] =>
  steps.flatMap(({ rows }) => rows?.rows.map(({ row }) => row) ?? [])

const unwrap = (made: ReturnType<typeof shortRowChart>) => (made.ok ? made.chart : made.message)

/** The rounds or rows that the loops of one peg have gone through, row by row. */
const rowsOnPeg = (rows: readonly PatternRow[], peg: number): number =>
  rows.filter(({ from, to }) => peg >= from && peg <= to).length

/** cm, before the fabric stretches. */
const roundOf = ({ loom, gauge }: Pattern): number => (loom.pegs / (gauge?.stitches ?? NaN)) * 10
const lengthOf = (pattern: Pattern, rows: number): number =>
  (rows / (pattern.gauge?.rows ?? NaN)) * 10

/** Length over peg 1 from cast-on to bind-off, cm. */
const lengthOfPiece = (pattern: Pattern): number =>
  lengthOf(pattern, rowsOnPeg(rowsOf(workPiece(pattern)), 0))

test.each(starterCharts.map((chart) => [chart.id, chart.pattern()] as const))(
  '%s: its gauge is one that its loom can give',
  (_, { loom, gauge }) => {
    // Extra fine looms of 4.8 mm give stitches of 0.66 of the pitch, small ones of 9.5 mm and large
    // ones of 17.5 mm 0.48 (common practice); flat knits are the tightest.
    const width = 100 / (gauge?.stitches ?? NaN)
    expect(width / loom.pitch).toBeGreaterThan(0.4)
    expect(width / loom.pitch).toBeLessThan(0.7)
    // Stitches are wider than high, by a third to a half (common practice).
    expect((gauge?.rows ?? 0) / (gauge?.stitches ?? 1)).toBeGreaterThan(1.3)
    expect((gauge?.rows ?? 0) / (gauge?.stitches ?? 1)).toBeLessThan(1.6)
  },
)

test('the cuff fits a wrist', () => {
  const cuff = starter('lamp-room-cuff')
  // Women's bracelets of 7 to 8.5 in less 0.75 to 1 in (big-bead-little-bead.blogspot.com, 2012;
  // jewelrywirewrapped.com): wrists of 15 to 20 cm. Rib gives by a fifth (common practice).
  expect(roundOf(cuff)).toBeGreaterThan(15)
  expect(roundOf(cuff)).toBeLessThan(18)
  expect(lengthOfPiece(cuff)).toBeGreaterThan(10)
  expect(lengthOfPiece(cuff)).toBeLessThan(18)
  expect(cuff.notes).toContain(`${centimetres(10 * roundOf(cuff))} round`)
})

test('the headband is 8 to 12 cm deep and fits a head', () => {
  const band = starter('hawser-band')
  // Depth: common practice. Heads of 20 to 22.5 in (calicojoy.com, size-guides.com), 51 to 57 cm, less
  // the 10 to 15 % by which hats are made smaller (a loom page): 46 to 50 cm.
  expect(lengthOfPiece(band)).toBeGreaterThanOrEqual(8)
  expect(lengthOfPiece(band)).toBeLessThanOrEqual(12)
  expect(roundOf(band)).toBeGreaterThan(45)
  expect(roundOf(band)).toBeLessThan(51)
  expect(band.notes).toContain(`${centimetres(10 * lengthOfPiece(band))} deep`)
  expect(band.notes).toContain(`${centimetres(10 * roundOf(band))} round`)
})

test('the panel is as large as its notes say, and that is a small cushion', () => {
  const panel = starter('drift-net-panel')
  const size = [roundOf(panel), lengthOfPiece(panel)].map((cm) => inCentimetres(10 * cm))
  expect(panel.notes).toContain(`${size.join(' by ')} cm`)
  // Common practice.
  for (const cm of size) expect(cm).toBeGreaterThanOrEqual(24)
})

test('the boot topper fits a calf', () => {
  const topper = starter('spindrift-topper')
  // Calves of 33 to 36 cm, and a topper a tenth to a sixth smaller (common practice).
  expect(roundOf(topper)).toBeGreaterThan(36 * 0.83)
  expect(roundOf(topper)).toBeLessThan(33 * 0.95)
  expect(topper.notes).toContain(`${centimetres(10 * roundOf(topper))} round`)
  expect(topper.notes).toContain('each repeat more adds 5 cm')
  expect(8 / ((topper.gauge?.stitches ?? 0) / 10)).toBe(5)
})

test('the heel is one of a sock for a grown-up', () => {
  const heel = starter('hundred-steps-heel')
  // Women's feet of 21.6 cm and more (a published shoe table); round the foot 95 % of its length
  // (Knitty sizing guidelines), less 5 to 10 % (common practice).
  expect(roundOf(heel)).toBeGreaterThan(21.6 * 0.95 * 0.9)
  expect(roundOf(heel)).toBeLessThan(24 * 0.95 * 0.95)
  expect(heel.notes).toContain(`${centimetres(10 * roundOf(heel))} round`)
})

describe('the mitt', () => {
  const mitt = starter('shingle-mitt')
  const { steps } = workPiece(mitt)
  const rowsBefore = (end: number, peg: number) =>
    rowsOnPeg(
      steps.slice(0, end).flatMap(({ rows }) => rows?.rows.map(({ row }) => row) ?? []),
      peg,
    )
  const opens = steps.findIndex(({ step }) => step.kind === 'bind off' && step.pegs !== null)
  const closes = steps.findIndex(
    ({ step }, index) => index > opens && step.kind === 'cast on' && step.pegs !== null,
  )
  const pegsOf = (step?: Step) => (step && 'pegs' in step ? step.pegs : null)

  test('is 15 to 19 cm long and fits a hand', () => {
    // Length: common practice. Hand of 178 mm round, size 7 (EN 420:2003), less about a tenth.
    expect(lengthOfPiece(mitt)).toBeGreaterThanOrEqual(15)
    expect(lengthOfPiece(mitt)).toBeLessThanOrEqual(19)
    expect(roundOf(mitt)).toBeGreaterThan(17.8 * 0.85)
    expect(roundOf(mitt)).toBeLessThan(17.8 * 0.95)
  })

  test('has a thumb 7 to 9 cm from the cuff: bound off in one round, cast on again in the next', () => {
    // Common practice, as is the width of the opening.
    const pegs = pegsOf(steps[opens]?.step)
    expect(pegs).not.toBeNull()
    expect(pegsOf(steps[closes]?.step)).toEqual(pegs)
    const { from, to } = pegs ?? { from: 0, to: 0 }
    const cuff = lengthOf(mitt, rowsBefore(opens, from))
    expect(cuff).toBeGreaterThanOrEqual(7)
    expect(cuff).toBeLessThanOrEqual(9)
    const width = ((to - from + 1) / (mitt.gauge?.stitches ?? NaN)) * 10
    expect(width).toBeGreaterThanOrEqual(2.5)
    expect(width).toBeLessThanOrEqual(4)
    const beside = from === 0 ? to + 1 : 0
    expect(rowsBefore(closes, beside) - rowsBefore(opens, beside)).toBe(1)
  })
})

describe('the socks', () => {
  const socks = starter('fog-watch-socks')
  const work = workPiece(socks)
  const rows = rowsOf(work)
  const isTurned = ({ end }: PatternRow) => end !== 'on'

  test('fit a foot', () => {
    const foot = (footLength(profileOf(work)) ?? NaN) / 10
    // The foot of a sock is 5 to 10 % shorter than the foot in it, and is 5 to 15 % narrower than the
    // 95 % of its length that a foot is round (Knitty sizing guidelines; the rest common practice).
    const { least, most } = feetOfSock(foot)
    for (const length of [least, most]) {
      expect(roundOf(socks)).toBeGreaterThan(length * 0.95 * 0.85)
      expect(roundOf(socks)).toBeLessThan(length * 0.95 * 0.95)
    }
    expect(socks.notes).toContain(`${centimetres(10 * foot)} long`)
    const feet = [least, most].map((cm) => inCentimetres(10 * cm))
    expect(socks.notes).toContain(`for feet of ${feet.join(' to ')} cm`)
    expect(allText(layOut(socks))).toContain(`Fits feet of about ${feet.join(' to ')} cm`)
    const leg = work.steps.slice(0, 3).flatMap((step) => step.rows?.rows ?? [])
    // A usual leg: 6 to 8 in, 15 to 20 cm (Knitty sizing guidelines).
    expect(lengthOf(socks, leg.length)).toBeGreaterThan(15)
    expect(lengthOf(socks, leg.length)).toBeLessThan(20)
  })

  test('their ropes go on over the heel: on every peg the same number of rounds lies between crosses', () => {
    const crossed = new Map<number, number[]>()
    rows.forEach((row, index) => {
      for (const { stitch, peg } of row.sites.filter((site) => site.stitch.cross))
        crossed.set(peg, [
          ...(crossed.get(peg) ?? []),
          rowsOnPeg(rows.slice(0, index), peg + stitch.width - 1),
        ])
    })
    expect(crossed.size).toBe(6)
    const apart = [...crossed.values()].map((at) =>
      at.slice(1).map((round, index) => round - (at[index] ?? 0)),
    )
    expect(new Set(apart.flat())).toEqual(new Set([8]))
    // Three of the ropes go on over the instep, past the heel.
    const heel = work.steps.findIndex((step) => step.rows?.rows.some(({ row }) => isTurned(row)))
    const onFoot = work.steps.slice(heel).flatMap((step) => step.rows?.rows ?? [])
    const pegs = onFoot.flatMap(({ row }) =>
      row.sites.filter((site) => site.stitch.cross).map(({ peg }) => peg),
    )
    expect(new Set(pegs)).toEqual(new Set([29, 35, 41]))
  })

  test('heel and toe are those the maker of heels and toes makes for them', () => {
    const heel = usualHeel(socks.loom)
    const at = (name: string) =>
      socks.steps.findIndex((step) => step.kind === 'chart' && step.chart === name)
    for (const [name, wish] of [
      ['Heel', heel],
      ['Toe', { ...heel, shape: 'toe' }],
    ] as const)
      expect(findChart(socks, name)?.chart).toEqual(
        unwrap(
          shortRowChart(socks.loom, {
            ...wish,
            beside: textureBefore(socks, at(name))?.beside ?? null,
          }),
        ),
      )
  })

  test('the other one of the pair, and the same sock worked the other way, can be worked as well', () => {
    for (const other of [mirror(socks), reverseDirection(socks)]) {
      expect(other).not.toBe(socks)
      expect(checkPiece(workPiece(other))).toEqual([])
    }
  })

  test('no rope is cut by the heel’s corner', () => {
    const turned = rows.filter(isTurned)
    const heel = {
      from: Math.min(...turned.map(({ from }) => from)) + 1,
      to: Math.max(...turned.map(({ to }) => to)) - 1,
    }
    expect([heel.from + 1, heel.to + 1]).toEqual([2, 25])
    const isCut = (peg: number, width: number) =>
      [heel.from, heel.to + 1].some((edge) => peg < edge && peg + width > edge)
    const cut = rows.flatMap(({ sites }) =>
      sites.filter(({ stitch, peg }) => stitch.cross && isCut(peg, stitch.width)),
    )
    expect(cut).toEqual([])
  })
})
