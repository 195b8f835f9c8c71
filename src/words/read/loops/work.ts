import type { LoomRow } from '../../../loom/row'
import type { Run } from '../../../pattern/pattern'
import type { Stitch } from '../../../stitches/stitch'
import { Expander } from './expand'
import { options, type NeedleSide, type RowTold, type Taken } from './stretch'
import { layStitches } from './lay'
import { deepest } from './sizes'
import { readLimits } from '../limits'
import type { Ambiguity, Body, Item } from '../nodes'
import { fromYarn, pegsOf, type LoomThen, type Places } from './place'
import type { ReadSettings } from '../reading'

/** One real row of a body, on the loom. */
export interface Worked extends RowTold {
  readonly before: LoomThen
  readonly after: LoomThen
  /** Pegs that it covers; null when they cannot be told. */
  readonly covers: Run | null
}

/** What the words of a body come to at one place. */
export interface Resolved {
  readonly rows: readonly Worked[]
  readonly after: LoomThen
  readonly trouble: boolean
  /** Ambiguous words that the counts do not settle. */
  readonly asks: readonly Ambiguity[]
  readonly side: NeedleSide
}

export interface WorkSettings {
  readonly settings: ReadSettings
  readonly places: Places
  /** A round, which starts at peg 1 wherever the yarn is. */
  readonly whole: boolean
  readonly wrong: boolean
  /** Which row of its fabric's cycle is worked, from 0. */
  readonly row: number
  /** There are German turns, so "ds" is the stitch that one left doubled. */
  readonly german: boolean
}

/** Words that can be taken in several ways, settled where only one way agrees with the counts. */
export function workBody(body: Body, place: LoomThen, how: WorkSettings): Resolved {
  const rules = [...ambiguitiesIn(body.items)]
  const tries = waysOf(rules).map((taken) => workOnce(body, place, how, taken))
  const first = tries[0] as Tried
  const fitting = tries.filter((one) => fits(one, body, place))
  const kept = fitting.filter((one) => one.after.loops === place.loops)
  // A yarn over that is one keeps the count together with the decrease beside it.
  const best = fitting.length > 1 && kept.length === 1 && !hasTotal(body) ? kept : fitting
  const chosen = best[0] ?? first
  const asks = rules.filter(
    (rule) =>
      (rule !== 'ask-ds' || !how.german) &&
      (best.length === 0 || unsettled.has(rule) || differ(best, rule)),
  )
  return { ...chosen, asks }
}

/** No count tells these apart. */
const unsettled = new Set<Ambiguity>(['ask-ds', 'ask-k1b'])

const differ = (list: readonly { taken: Taken }[], rule: Ambiguity): boolean =>
  new Set(list.map(({ taken }) => taken[rule])).size > 1

const hasTotal = ({ said }: Body): boolean => said.some(({ kind }) => kind !== 'rows')

function fits({ trouble, after }: Tried, body: Body, place: LoomThen): boolean {
  if (trouble) return false
  return body.said.every(({ kind, count }) => {
    if (kind === 'total') return count === after.loops
    return kind !== 'change' || count === after.loops - place.loops
  })
}

function ambiguitiesIn(items: readonly Item[], found = new Set<Ambiguity>(), depth = 0) {
  if (depth > deepest) return found
  for (const item of items) {
    if (item.do === 'choice') found.add(item.rule)
    if (item.do !== 'group') continue
    if (item.copies.kind === 'bare') found.add('ask-times')
    ambiguitiesIn(item.items, found, depth + 1)
  }
  return found
}

/** All ways to take the ambiguous words, each rule the same everywhere in the row. */
function waysOf(rules: readonly Ambiguity[]): Taken[] {
  let ways: Taken[] = [{}]
  for (const rule of rules) {
    const count = rule === 'ask-times' ? 2 : options[rule].length
    ways = ways.flatMap((way) =>
      Array.from({ length: count }, (_, option) => ({ ...way, [rule]: option })),
    )
  }
  return ways
}

/** The words, with the ambiguous ones taken one way. */
type Tried = Omit<Resolved, 'asks'> & { readonly taken: Taken }

function workOnce(body: Body, start: LoomThen, how: WorkSettings, taken: Taken): Tried {
  const { settings, places, whole, wrong, row } = how
  const { shape } = settings
  const rows: Worked[] = []
  const side: NeedleSide = { wrong, needles: settings.needles, row, unknown: new Set() }
  const advance = (stretch: RowTold, before: LoomThen): LoomThen => {
    const stitches = wrong && shape === 'ring' ? stretch.stitches.toReversed() : stretch.stitches
    const covers = coversOf(stretch, before)
    const after = afterRow(places, before, covers, { ...stretch, stitches })
    rows.push({ ...stretch, stitches, before, after, covers })
    return after
  }
  new Expander(start, taken, whole, advance, shape, side).run(body.items)
  return {
    taken,
    rows,
    after: rows.at(-1)?.after ?? start,
    trouble: rows.some(({ trouble, tooLong }) => trouble !== null || tooLong),
    side,
  }
}

/** Pegs that a row covers: those it names, all, or those from the yarn on. */
function coversOf(
  { run, goes, takes, loops, end, turn, trouble }: RowTold,
  before: LoomThen,
): Run | null {
  if (trouble?.kind === 'join') return null
  const pegs = pegsOf(before)
  if (run) return run.to < pegs ? run : null
  if (!turn && end === 'on' && loops === before.loops) return { from: 0, to: pegs - 1 }
  if (!turn) {
    const { gap } = before.yarn
    return goes === 'forward' ? { from: gap, to: pegs - 1 } : { from: 0, to: Math.max(0, gap - 1) }
  }
  return fromYarn(before, goes, takes)
}

function afterRow(places: Places, before: LoomThen, covers: Run | null, told: RowTold): LoomThen {
  const { goes, end, takes, makes, trouble, turn, tooLong } = told
  if (trouble?.kind === 'join')
    return places.overJoin(before, goes, end, trouble.over, turn !== null)
  const all: Run = covers ?? { from: 0, to: pegsOf(before) - 1 }
  const lost = trouble !== null || tooLong
  const left = before.loops - takes + makes
  const loops = lost || left < 0 || left > readLimits.stitches ? before.loops : left
  // A row in which every loop stays on its peg need not be worked.
  const row = covers && isSteady(told, covers) ? null : laidOf({ ...told, before, covers })
  const after = row ? places.after(before, row) : places.afterUnlaid(before, all, goes, end, loops)
  return turn && end === 'on' ? places.turned(after, goes, all) : after
}

const isSteady = ({ stitches, end, makes: left }: RowTold, { from, to }: Run): boolean =>
  end !== 'wrap' &&
  left === to - from + 1 &&
  stitches.every(({ stitch: { takes, makes, width } }) => takes === width && makes === width)

/**
 * The row as it is laid on the loom; null: it cannot be. After a row that does not come out, work goes on
 * from the loops that were there before it; words that are not known may have worked the pegs that
 * the others leave.
 */
export function laidOf({
  stitches,
  goes,
  end,
  trouble,
  gaps,
  tooLong,
  before,
  covers,
}: Omit<Worked, 'after'>): LoomRow<Stitch> | null {
  if (trouble || tooLong || gaps > 0 || stitches.length === 0 || !covers) return null
  const list = stitches.map(({ stitch }) => stitch)
  return layStitches(before, covers, goes, end, list)
}
