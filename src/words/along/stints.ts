import { inOrder } from '../../loom/gather'
import type { Site } from '../../loom/row'
import type { Moment } from '../../loom/walk'
import type { Habits } from '../../loom/work'
import type { Run } from '../../pattern/pattern'
import type { PatternRun } from '../../pattern/work'
import type { Terms } from '../../languages/terms'
import { spanRow } from '../sentence'
import type { Span, SpanOrder } from '../spans'

/** Which copy of what is repeated in a row, from 0, and how many there are. */
export interface Copy {
  readonly at: number
  readonly of: number
}

/** Stitches that the words tell as one ("k6"): so many are worked between two looks at the words. */
export interface Stint {
  /** The span of the row's text that tells it. */
  readonly span: number
  /** In working order. */
  readonly sites: readonly Site[]
  /** From the lowest peg to the highest, 0-based. */
  readonly pegs: Run
  /** Of the outermost repeat that it stands in; null: of none. */
  readonly copy: Copy | null
}

/** A row's text, and its stitches as this tells them. */
export interface RowStints {
  readonly spans: readonly Span[]
  /** In working order; each stitch of the row stands in one of them. Empty for a row without stitches. */
  readonly stints: readonly Stint[]
}

export function stintsOf(run: PatternRun, shape: Habits['shape'], terms: Terms): RowStints {
  const { spans, order } = spanRow(run, shape, terms)
  const sites = inOrder(run.row, run.heading)
  const stints: Stint[] = []
  let next = 0
  const take = (span: number, count: number, copy: Copy | null): void => {
    const taken = sites.slice(next, next + count)
    next += count
    stints.push({ span, sites: taken, pegs: pegsUnder(taken), copy })
  }
  const unroll = (parts: readonly SpanOrder[], copy: Copy | null): void => {
    for (const part of parts) {
      const of = 'span' in part ? (part.each ? part.count : 1) : part.times
      for (let at = 0; at < of; at++) {
        const here = copy ?? (of > 1 ? { at, of } : null)
        if ('span' in part) take(part.span, part.each ? 1 : part.count, here)
        else unroll(part.parts, here)
      }
    }
  }
  if (sites.length > 0) unroll(order, null)
  return { spans, stints }
}

function pegsUnder(sites: readonly Site[]): Run {
  const firsts = sites.map(({ peg }) => peg)
  const lasts = sites.map(({ peg, stitch }) => peg + stitch.width - 1)
  return { from: Math.min(...firsts), to: Math.max(...lasts) }
}

/**
 * The moments of each stint of a row, by index: `from` the one before its first move, `to` the one after
 * its last; both the same where nothing is moved. What the row does at its end belongs to the last one.
 */
export function momentsOfStints(
  moments: readonly Moment[],
  stints: readonly Stint[],
): readonly Run[] {
  const stintOf = new Map(
    stints.flatMap((stint, index) => stint.sites.map((site) => [site, index])),
  )
  const ends = stints.map(() => 0)
  let last = 0
  moments.forEach(({ site }, index) => {
    const own = site ? stintOf.get(site) : index > 0 ? stints.length - 1 : undefined
    // Loops that are moved on for several stitches belong to the first of them.
    last = own ?? last
    if (index > 0) ends[last] = index
  })
  let from = 0
  return ends.map((end) => {
    const run = { from, to: Math.max(from, end) }
    from = run.to
    return run
  })
}
