import { withChart } from '../../../src/pattern/edits/chart'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flatGeometry } from '../../../src/drawing/flat'
import { loomFromAbove } from '../../../src/drawing/pegs/above/above'
import type { PegLayer } from '../../../src/drawing/pegs/pegLayers'
import { stepPicture } from '../../../src/drawing/pegs/figures/step'
import { stripFromFront, type StripDrawing } from '../../../src/drawing/pegs/strip/strip'
import type { Item, Scene } from '../../../src/drawing/scene'
import { directions, headings, runsRightToLeft } from '../../../src/loom/direction'
import { bindOffs, castOns } from '../../../src/loom/move'
import { crossings } from '../../../src/loom/row'
import type { Moment } from '../../../src/loom/walk'
import { newPattern, type LoomSetup, type Pattern, type Row } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { standardVocabulary } from '../../../src/stitches/vocabulary'
import { arbitraryOneChart, cellsOf } from '../../arbitraries'
import { withDirection } from '../pieces'
import { bindOffWalk, castOnWalk, lastWalk, walksOf } from './walks'
import { cellsFrom } from '../../cells'

const itemsOf = ({ layers }: Scene): readonly Item[] => layers.flatMap(({ items }) => items)

/** Every number in a scene's paths and texts is one, and no two layers have the same key. */
function expectSound(scene: Scene): void {
  expect(new Set(scene.layers.map(({ key }) => key)).size).toBe(scene.layers.length)
  const written = itemsOf(scene).map((item) =>
    item.kind === 'path' ? item.d : `M${item.x} ${item.y} ${item.size}`,
  )
  expect(written.filter((text) => /NaN|Infinity|undefined|^[^M]|^$/.test(text))).toEqual([])
}

const kindsOn = (moment: Moment, peg: number) => moment.stacks[peg]?.map(({ kind }) => kind) ?? []

/** What is in one list of items is all in the other, and is something. */
const drawnIn = (items: readonly Item[], all: ReadonlySet<Item>): boolean =>
  items.length > 0 && items.every((item) => all.has(item))

interface Drawn {
  readonly pegs: readonly PegLayer<{ readonly kind: string }>[]
  readonly needle: readonly {
    readonly side: string
    readonly strands: readonly (readonly Item[])[]
  }[]
}

/** One band for each strand on a peg, in order; one for each on the needle; all of them in the scene. */
function expectLoops(
  moment: Moment,
  kinds: (peg: number) => readonly string[],
  { pegs, needle }: Drawn,
  scene: Scene,
  bandItems: readonly (readonly Item[])[],
): void {
  expectSound(scene)
  expect(pegs.map(({ bands }) => bands.map(({ kind }) => kind))).toEqual(
    pegs.map(({ peg }) => kinds(peg)),
  )
  expect(needle.map(({ side, strands }) => [side, strands.length])).toEqual(
    moment.needle.map(({ side, stack }) => [side, stack.length]),
  )
  const all = new Set(itemsOf(scene))
  const strands = [...bandItems, ...needle.flatMap((held) => held.strands)]
  expect(strands.every((items) => drawnIn(items, all))).toBe(true)
  const layers = new Set(scene.layers)
  expect(pegs.every(({ layer }) => layers.has(layer))).toBe(true)
}

function expectStrip(
  moment: Moment,
  { scene, drawn, geometry }: StripDrawing,
  kinds = (peg: number): readonly string[] => kindsOn(moment, peg),
): void {
  const bands = drawn.pegs.flatMap((peg) => peg.bands.map(({ before }) => before))
  expectLoops(moment, kinds, drawn, scene, bands)
  expect(drawn.pegs.map(({ layer }) => layer.x)).toEqual(
    drawn.pegs.map(({ peg }) => geometry.x(peg)),
  )
}

/**
 * What lies on a peg of a step picture. While it is worked it has its old loops still, with the new
 * strand above them, or below them for a purl (common practice); loops lifted over one are there.
 */
function kindsWhile(before: Moment, after: Moment, peg: number): readonly string[] {
  const { move } = after
  const old = kindsOn(before, peg)
  if (move?.do === 'lift' && move.peg === peg) return old.length > 1 ? old : kindsOn(after, peg)
  if (move?.do !== 'work' || move.peg !== peg || old.length === 0) return kindsOn(after, peg)
  const isPurl = move.how === 'purl' || move.how === 'twisted purl'
  const made = move.how === 'e-wrap' ? 'twisted knit' : 'knit'
  return isPurl ? ['knit', ...old] : [...old, made]
}

/** The yarn hangs between the pegs that the simulator says, as far as they are shown. */
function expectYarn(moment: Moment, { drawn, geometry }: StripDrawing, { pegs }: LoomSetup): void {
  const at = [geometry.x(moment.gap - 1), geometry.x(moment.gap)]
  const [before, after] = at
  if (moment.gap > 0 && moment.gap < pegs && before !== undefined && after !== undefined)
    expect(drawn.yarn).toBeCloseTo((before + after) / 2, 6)
}

function expectAbove(moment: Moment, loom: LoomSetup, trail: readonly Moment[]): void {
  const { scene, drawn, geometry } = loomFromAbove(moment, loom, { trail })
  const bands = drawn.pegs.flatMap((peg) => peg.bands.map(({ items }) => items))
  expectLoops(moment, (peg) => kindsOn(moment, peg), drawn, scene, bands)
  expect(drawn.pegs.map(({ layer }) => geometry.pegAt(layer.x, layer.y))).toEqual(
    moment.stacks.map((_, peg) => peg),
  )
  expect(drawn.yarn).toEqual(geometry.at(moment.gap - 0.5, 0))
}

function expectWalk(moments: readonly Moment[], loom: LoomSetup): void {
  moments.forEach((moment, index) => {
    const trail = moments.slice(Math.max(0, index - 4), index)
    const before = trail.at(-1)
    const aim = Math.min(loom.pegs - 1, moment.gap)
    const strip = stripFromFront(moment, loom, { centre: aim, count: 11 }, { trail })
    expectStrip(moment, strip)
    expectYarn(moment, strip, loom)
    if (before) {
      const step = stepPicture(before, moment, loom, { trail: trail.slice(0, -1), number: index })
      expectStrip(moment, step, (peg) => kindsWhile(before, moment, peg))
      expect(step.scene.width).toBeLessThanOrEqual(66)
    }
    expectAbove(moment, loom, trail)
  })
}

const rowOf = (cells: readonly string[], rest: Partial<Row> = {}): Row => ({
  cells: cellsFrom(cells),
  run: null,
  heading: null,
  end: 'on',
  ...rest,
})

const plain = (count: number): string[] => Array.from({ length: count }, () => 'k')

function pieceOf(rows: readonly Row[], loom: Partial<LoomSetup> = {}): Pattern {
  const pegs = rows[0]?.cells.length ?? 3
  const pattern = newPattern(pegs)
  return withChart(
    { ...pattern, loom: { ...pattern.loom, ...loom, pegs } },
    { columns: pegs, repeat: null, bands: [], rows },
  )
}

describe('what is drawn is the state of the loom', () => {
  it('at every move of any chart at all', () => {
    fc.assert(
      fc.property(
        arbitraryOneChart({ rows: 2, columns: 12 }).map((pattern) => ({
          ...pattern,
          loom: { ...pattern.loom, pegs: 3 + (pattern.loom.pegs % 14) },
        })),
        (pattern) => {
          for (const moments of walksOf(pattern)) expectWalk(moments, pattern.loom)
        },
      ),
      { numRuns: 25 },
    )
  })

  it.each(standardVocabulary.stitches.map((stitch) => [stitch.id, stitch] as const))(
    'at every move of %s, in both directions and headings, each by both habits',
    (_, stitch) => {
      // As many loops as it takes, for the row to add up.
      const filler = Math.max(0, stitch.takes - stitch.makes)
      const extra = Math.max(0, stitch.makes - stitch.takes)
      const cells = [
        'k',
        ...cellsOf(stitch),
        ...Array.from({ length: filler }, () => 'yo'),
        ...Array.from({ length: extra }, () => 'k2tog'),
        'p',
      ]
      // Any two of direction, heading and habit meet.
      directions.forEach((direction, one) =>
        headings.forEach((heading, other) => {
          const crossing = crossings[(one + other) % crossings.length] ?? 'knit then move'
          const pattern = pieceOf([rowOf(cells, { heading })], { direction })
          const walk = lastWalk({ ...pattern, making: { ...pattern.making, crossing } })
          expect(walk.length).toBeGreaterThan(1)
          expectWalk(walk, pattern.loom)
        }),
      )
    },
  )

  it.each(['German turn', 'wrap'] as const)('at every move to and after a %s', (end) => {
    for (const direction of directions) {
      const turned = (from: number, to: number) => rowOf(plain(9), { run: { from, to }, end })
      const pattern = pieceOf([rowOf(plain(9)), turned(0, 6), turned(2, 5), rowOf(plain(9))], {
        direction,
      })
      for (const walk of walksOf(pattern)) expectWalk(walk, pattern.loom)
    }
  })

  it.each(bindOffs)('at every move of the bind-off %s', (how) => {
    for (const shape of ['ring', 'bar'] as const) {
      const pattern = pieceOf([rowOf(plain(7))], { shape })
      const walk = bindOffWalk(pattern, how)
      expectWalk(walk, pattern.loom)
      expect(walk.at(-1)?.stacks.every((stack) => stack.length === 0)).toBe(true)
    }
  })

  it.each(castOns)('at every move of the cast-on %s', (how) => {
    for (const shape of ['ring', 'bar'] as const) {
      const pattern = pieceOf([rowOf(plain(6))], { shape })
      expectWalk(castOnWalk(pattern, how), pattern.loom)
    }
  })
})

describe('which way round', () => {
  const piece = pieceOf([rowOf(plain(16))])
  const looms = directions.map((direction) => withDirection(piece, direction))

  it('the strip has the pegs in the order of the flat chart’s slots', () => {
    for (const pattern of looms) {
      const flat = flatGeometry(workPattern(pattern), { columns: 'loom' })
      const byX = (x: (peg: number) => number) =>
        Array.from({ length: 9 }, (_, peg) => peg + 3).toSorted((a, b) => x(a) - x(b))
      const moment = lastWalk(pattern)[0] as Moment
      const { geometry, drawn } = stripFromFront(moment, pattern.loom, { from: 3, to: 11 })
      const inFlat = byX((peg) => flat.centre(0, peg)?.[0] ?? 0)
      expect(byX((peg) => geometry.x(peg) ?? 0)).toEqual(inFlat)
      expect(drawn.pegs.map(({ peg }) => peg)).toEqual(inFlat)
    }
  })

  // Common practice: seen from above, a clockwise loom passes the knitter from right to left.
  it('the ring runs clockwise exactly when the loom does, and shows the knitter the strip’s order', () => {
    for (const pattern of looms) {
      const { direction } = pattern.loom
      const { geometry } = loomFromAbove(lastWalk(pattern)[0] as Moment, pattern.loom)
      const [cx, cy] = geometry.centre
      for (let peg = 0; peg < 16; peg++) {
        const [ax, ay] = geometry.peg(peg)
        const [bx, by] = geometry.peg((peg + 1) % 16)
        // Positive: clockwise on a page whose y runs down.
        const turn = (ax - cx) * (by - cy) - (ay - cy) * (bx - cx)
        expect(turn > 0).toBe(direction === 'clockwise')
      }
      const [first, second] = [geometry.peg(0), geometry.peg(1)]
      expect(second[0] < first[0]).toBe(runsRightToLeft(direction, 'forward'))
      expect(first[1]).toBeCloseTo(Math.max(...plain(16).map((_, peg) => geometry.peg(peg)[1])))
    }
  })

  it('the bar lies as its strip does', () => {
    for (const pattern of looms) {
      const loom: LoomSetup = { ...pattern.loom, shape: 'bar' }
      const moment = lastWalk(pattern)[0] as Moment
      const above = loomFromAbove(moment, loom).geometry
      const strip = stripFromFront(moment, loom, { from: 0, to: 15 }).geometry
      const sign = (x: (peg: number) => number) => Math.sign(x(1) - x(0))
      expect(sign((peg) => above.peg(peg)[0])).toBe(sign((peg) => strip.x(peg) ?? 0))
    }
  })
})

describe('from one move to the next', () => {
  it('the layers of pegs that stay as they are stay the same objects', () => {
    const pattern = pieceOf([rowOf(plain(12))])
    const [first, second] = lastWalk(pattern) as [Moment, Moment]
    const [a, b] = [first, second].map((moment) => loomFromAbove(moment, pattern.loom))
    const same = a?.scene.layers.filter((layer) => b?.scene.layers.includes(layer))
    // All pegs but the one that was worked, and the loom itself.
    expect(same?.map(({ key }) => key)).toHaveLength(12)
    const part = { from: 0, to: 8 }
    const [c, d] = [first, second].map((moment) => stripFromFront(moment, pattern.loom, part))
    expect(c?.scene.layers.filter((layer) => d?.scene.layers.includes(layer))).toHaveLength(9)
  })

  it('a strip on a ring goes on over the join; on a bar it ends at the edge', () => {
    const pattern = pieceOf([rowOf(plain(12))])
    const moment = lastWalk(pattern)[0] as Moment
    const round = stripFromFront(moment, pattern.loom, { centre: 0, count: 5 })
    expect(round.drawn.pegs.map(({ peg }) => peg)).toEqual([2, 1, 0, 11, 10])
    const loom: LoomSetup = { ...pattern.loom, shape: 'bar' }
    const flat = stripFromFront(moment, loom, { centre: 0, count: 5 })
    expect(flat.drawn.pegs.map(({ peg }) => peg)).toEqual([4, 3, 2, 1, 0])
  })
})
