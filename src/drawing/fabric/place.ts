import type { Trace, TracedLoop } from '../../loom/trace'
import type { StrandKind } from '../../loom/strand'
import type { Stitch } from '../../stitches/stitch'
import type { Across } from './across'
import type { Heights } from './heights'
import { besideSlits, type Slit } from './slits'

/** A place in the fabric: x in stitch widths from the middle, to the right; y in rows, upwards. */
export interface FabricPoint {
  readonly x: number
  readonly y: number
}

/** Where a loop comes out of one that it was drawn through. */
export interface Base extends FabricPoint {
  /** Rows by which the fabric is opened there; the loop below is that much lower. */
  readonly opened: number
  /** The loop below was only laid there. */
  readonly laid: boolean
}

export const depths = ['behind', 'plain', 'front'] as const
/** Which strand lies over which where strands cross. */
export type Depth = (typeof depths)[number]

/** One loop as it is to be drawn: y is measured from its row's own level. */
export interface PlacedLoop {
  readonly kind: StrandKind | 'bobble'
  /** Where its peg stands; the head leans from there. */
  readonly home: number
  readonly head: FabricPoint
  /** The loops it was drawn through; the first one shows in front. */
  readonly bases: readonly Base[]
  readonly depth: Depth
  /** It goes over others in this very row: a cross in front, or a decrease. */
  readonly over: boolean
  /** 0, or which of the followed strands it belongs to, from 1. */
  readonly tone: number
  /** Nothing is drawn through it. */
  readonly open: boolean
  /** It is bound off: the edge lies over its head. */
  readonly bound: boolean
}

/** A row's loops from left to right, and what it is drawn from besides. */
export interface PlacedRow {
  /** Rows from the cast-on up to the lowest loop of the row. */
  readonly level: number
  readonly loops: readonly PlacedLoop[]
  /** Yarn that passes in front of slipped loops. */
  readonly bars: readonly FabricPoint[]
}

export const tones = 4

/**
 * Strands bend gently: shares of the way a strand makes in one row that the loops beside it take
 * over, for the loop next to it and the one after that. In a cross the front strand bends most.
 */
const bends: Readonly<Record<Depth | 'gathered', readonly [near: number, far: number]>> = {
  front: [0.3, 0.1],
  plain: [0.16, 0],
  gathered: [0.36, 0.06],
  behind: [0.22, 0.05],
}
const mostBend = 1.2

/** Strands that lie over a loop and are worked with it: the loop is what shows. */
const liesOver: ReadonlySet<StrandKind> = new Set(['tuck', 'wrap', 'German turn'])

const stitchAt = ({ site }: TracedLoop): Stitch | null => site && (site.stitch as Stitch)

/** Place every loop of the trace. The first entry is the cast-on, then comes one for each row. */
export function placeLoops(
  { loops, floats }: Trace,
  heights: Heights,
  slits: ReadonlyMap<number, readonly Slit[]>,
  across: Across,
  follow: readonly number[],
): readonly PlacedRow[] {
  const loopOf = (id: number): TracedLoop => loops[id] as TracedLoop
  const isInner = ({ into, row }: TracedLoop): boolean => into >= 0 && loopOf(into).row === row
  const sources = (loop: TracedLoop): readonly TracedLoop[] =>
    loop.through.flatMap((id) => {
      const source = loopOf(id)
      return source.row === loop.row ? sources(source) : [source]
    })
  const xs = loops.map(({ peg }) => across.of(peg))
  const shown = loops.filter((loop) => !isInner(loop))
  const comesFrom = shown.map((loop) => {
    const all = [...new Set(sources(loop))]
    const drawn = all.filter(({ kind }) => !liesOver.has(kind))
    const [lowest, ...others] = drawn.length > 0 ? drawn : all
    // Which of the others was moved first depends on the way the loom is worked; it does not show.
    return lowest ? [lowest, ...others.sort((a, b) => across.way(b.peg, a.peg))] : []
  })
  const order = new Map(shown.map((loop, i) => [loop.id, i]))

  const role = (loop: TracedLoop, from: readonly TracedLoop[]): Depth | null => {
    const cross = stitchAt(loop)?.cross
    const [source] = from
    if (!cross || !source) return null
    const way = across.way(source.peg, loop.peg)
    return way < 0 === (cross.lean === 'left') ? 'front' : 'behind'
  }
  const roles = new Map(shown.map((loop, i) => [loop.id, role(loop, comesFrom[i] ?? [])]))
  /** Of loops gathered into one, the lowest shows in front. */
  const gatheredAs = ({ id, into }: TracedLoop): Depth | null => {
    const from = into < 0 ? [] : (comesFrom[order.get(into) ?? -1] ?? [])
    return from.length < 2 ? null : from[0]?.id === id ? 'front' : 'behind'
  }
  /** Strands that cross lie over one another two rows before and after too. */
  const depthOf = (loop: TracedLoop): Depth => {
    const before = (at: TracedLoop | undefined) => at && comesFrom[order.get(at.id) ?? -1]?.[0]
    const after = (at: TracedLoop | undefined) => (at && at.into >= 0 ? loopOf(at.into) : undefined)
    const near = [loop, after(loop), before(loop), after(after(loop)), before(before(loop))]
    const own = roles.get(loop.id) ?? gatheredAs(loop)
    for (const at of near) {
      const found = at === loop ? own : at && roles.get(at.id)
      if (found) return found
    }
    return 'plain'
  }
  const leans = lean(loops, shown, comesFrom, roles, across)
  /** A loop that is cast on over a slit belongs to the row over it. */
  const rowOf = ({ kind, row, into }: TracedLoop): number =>
    kind === 'cast-on' && into >= 0 ? loopOf(into).row : row
  const drawnAt = (y: number, loop: TracedLoop): number =>
    besideSlits(slits.get(loop.peg), y, rowOf(loop))
  const headHeight = ({ into, peg, kind, row, boundBefore }: TracedLoop): number => {
    if (kind === 'wrap') return heights.base[row]?.[peg] ?? 0
    if (boundBefore >= 0) return heights.reached[boundBefore]?.[peg] ?? 0
    return (into < 0 ? heights.end[peg] : heights.reached[loopOf(into).row]?.[peg]) ?? 0
  }

  const rows = Array.from({ length: heights.base.length + 1 }, (): TracedLoop[] => [])
  for (const loop of shown) rows[loop.row + 1]?.push(loop)
  const barsOf = barsByRow(floats, heights, across)

  return rows.map((list, index): PlacedRow => {
    const row = index - 1
    const base = heights.base[row]
    const level =
      row < 0 ? 0 : list.reduce((low, { peg }) => Math.min(low, base?.[peg] ?? 0), Infinity)
    const origin = Number.isFinite(level) ? level : 0
    const placed = list.map((loop): PlacedLoop => {
      const from = comesFrom[order.get(loop.id) ?? 0] ?? []
      const home = xs[loop.id] ?? 0
      const x = home + (leans[loop.id] ?? 0)
      const bases = from.map((source): Base => {
        const y = base?.[source.peg] ?? 0
        return {
          x: home + across.way(loop.peg, source.peg) + (leans[source.id] ?? 0),
          y: drawnAt(y, source) - origin,
          opened: y - (heights.reached[row]?.[source.peg] ?? 0),
          laid: source.kind === 'yarn over',
        }
      })
      // What is drawn through nothing older stands on its own peg.
      if (bases.length === 0)
        bases.push({ x, y: (base?.[loop.peg] ?? -1) - origin, opened: 0, laid: false })
      const wale = loop.wale < 0 ? -1 : follow.indexOf(loop.wale)
      return {
        kind: stitchAt(loop)?.look === 'bobble' ? 'bobble' : loop.kind,
        home,
        head: { x, y: drawnAt(headHeight(loop), loop) - origin },
        bases,
        depth: depthOf(loop),
        over: roles.get(loop.id) === 'front' || (from.length > 1 && loop.kind !== 'purl'),
        tone: wale < 0 ? 0 : (wale % tones) + 1,
        open: loop.into < 0 && loop.boundBefore < 0,
        bound: loop.boundBefore >= 0,
      }
    })
    placed.sort((a, b) => a.home - b.home || (a.kind < b.kind ? -1 : a.kind > b.kind ? 1 : 0))
    const bars = (barsOf[row] ?? []).map(({ x, y }) => ({ x, y: y - origin }))
    return { level: origin, loops: placed, bars }
  })
}

/** How far each loop leans from its peg towards the loops before and after it. */
function lean(
  loops: readonly TracedLoop[],
  shown: readonly TracedLoop[],
  comesFrom: readonly (readonly TracedLoop[])[],
  roles: ReadonlyMap<number, Depth | null>,
  across: Across,
): readonly number[] {
  const leans = loops.map(() => 0)
  const add = (id: number | undefined, way: number): void => {
    if (id !== undefined && id >= 0) leans[id] = (leans[id] ?? 0) + way
  }
  shown.forEach((loop, i) => {
    const from = comesFrom[i] ?? []
    const [near, far] = bends[roles.get(loop.id) ?? (from.length > 1 ? 'gathered' : 'plain')]
    for (const source of from) {
      const way = across.way(source.peg, loop.peg)
      if (way === 0) continue
      add(source.id, near * way)
      add(source.through[0], far * way)
      add(loop.id, (-near * way) / from.length)
      add(loop.into, (-far * way) / from.length)
    }
  })
  return leans.map((way) => Math.max(-mostBend, Math.min(mostBend, way)))
}

function barsByRow(
  floats: Trace['floats'],
  heights: Heights,
  across: Across,
): readonly FabricPoint[][] {
  const bars = heights.base.map((): FabricPoint[] => [])
  for (const { row, peg, side } of floats)
    if (side === 'outside') bars[row]?.push({ x: across.of(peg), y: heights.base[row]?.[peg] ?? 0 })
  for (const list of bars) list.sort((a, b) => a.x - b.x)
  return bars
}
