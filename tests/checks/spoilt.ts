/** Generated short-row sections, and the ways to spoil one of them. */
import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import { mostTurns, usualTurns } from '../../src/pattern/generate/wish'
import { type ShortRowWish } from '../../src/pattern/pattern'
import { blankRow, type Pattern, type Row } from '../../src/pattern/pattern'
import type { Work } from '../../src/pattern/work'
import { turnKinds, turnsOf, workSection, type TurnIn } from '../pattern/generate/sections'
import { stitchOf } from '../../src/stitches/vocabulary'

/** A toe has the turns of a heel without its corners. */
const spoiltShapes = ['heel', 'wedge'] as const

const places = [
  { shape: 'ring', sides: 'both', closeCorners: true },
  { shape: 'bar', sides: 'both', closeCorners: true },
  { shape: 'bar', sides: 'first', closeCorners: false },
  { shape: 'ring', sides: 'both', closeCorners: false },
  { shape: 'bar', sides: 'last', closeCorners: false },
] as const

export interface Section {
  readonly wish: ShortRowWish
  readonly place: (typeof places)[number]
  readonly work: Work
  readonly turns: readonly Turn[]
}

/** A turn of the section, and the ones beside it on its side. */
export interface Turn extends TurnIn {
  readonly kind: (typeof turnKinds)[number]
  /** +1 or -1: from one peg to the next as the row goes. */
  readonly way: number
  readonly phase: 'in' | 'out'
  readonly before: TurnIn | undefined
  readonly after: TurnIn | undefined
}

export const sections = [7, 10, 14, 21, 30, 44, 61].flatMap((length, a) =>
  [1, 2, 3, 5].flatMap((step, b) =>
    turnKinds.flatMap((turn, c) =>
      spoiltShapes.map((shape, d): Section => {
        const at = a + b + 2 * c + d
        const place = places[(a + 2 * b + 3 * c + 4 * d) % places.length] as Section['place']
        const { sides, closeCorners } = place
        const before = sides === 'last' ? 0 : 1 + (at % 3)
        const after = sides === 'first' ? 0 : 1 + ((at + length) % 4)
        const run = { from: before, to: before + length - 1 }
        const fits = mostTurns(run, step, sides)
        const turned = Math.min(fits, at % 2 === 0 ? usualTurns(run, step) + 1 : 7)
        const wish = { shape, turn, run, step, turned, sides, closeCorners, beside: null }
        const pegs = before + length + after
        const direction = at % 2 === 0 ? 'clockwise' : 'counterclockwise'
        const work = workSection(wish, { pegs, shape: place.shape, direction })
        const all = turnsOf(work)
        const inward = turned * (sides === 'both' ? 2 : 1)
        const turns = all.map((one, i): Turn => {
          const side = (other: TurnIn) => other.heading === one.heading
          return {
            ...one,
            kind: turn,
            way: one.heading === 'forward' ? 1 : -1,
            phase: i < inward ? 'in' : 'out',
            before: all.slice(0, i).findLast(side),
            after: all.slice(i + 1).find(side),
          }
        })
        return { wish, place, work, turns }
      }),
    ),
  ),
)

const withRows = ({ pattern }: Work, rows: readonly Row[]): Pattern => withChart(pattern, { rows })

/**
 * The same section with one turn on another peg; all rows after it begin where the yarn then is.
 * null where a row would have no pegs.
 */
export function turnedOn({ work }: Section, turn: TurnIn, peg: number): Pattern | null {
  const { chart } = work
  const { loom } = work.pattern
  const inRound = (at: number) => (loom.shape === 'ring' ? (at + loom.pegs) % loom.pegs : at)
  let next = 0
  const rows: Row[] = []
  for (const [index, { row, heading }] of work.run.rows.entries()) {
    const way = heading === 'forward' ? 1 : -1
    const beyond = row.end === 'wrap' ? way : 0
    const ended = way > 0 ? row.to : row.from
    const last = index === turn.index ? peg - beyond : ended
    const run = way > 0 ? { from: next, to: last } : { from: last, to: next }
    if (run.from < 0 || run.to >= loom.pegs || run.from > run.to) return null
    const whole = run.from === 0 && run.to === loom.pegs - 1
    rows.push({ ...(chart.rows[index] as Row), run: whole ? null : run })
    const turnsBack = loom.shape === 'bar' && row.end === 'on'
    next =
      row.end === 'on' ? (turnsBack ? last : inRound(last + way)) : inRound(last + beyond - way)
  }
  return withRows(work, rows)
}

export interface Spoilt {
  readonly pattern: Pattern
  /** One of these; more than one where the chart can be read either way. */
  readonly rules: readonly string[]
  /** 0-based rows, and a peg if it is one, where it has to be found. */
  readonly rows: readonly number[]
  readonly peg?: number
}

const german = ({ kind }: Turn): boolean => kind === 'German turn'

/** What is spoilt with a turn; null where that turn cannot be spoilt so. */
type Spoil = (section: Section, turn: Turn) => Spoilt | null

const onPeg = (
  section: Section,
  turn: Turn,
  peg: number,
  rule: string,
  more: Partial<Spoilt> = {},
): Spoilt | null => {
  const pattern = turnedOn(section, turn, peg)
  return pattern && { pattern, rules: [rule], rows: [turn.index], ...more }
}

/**
 * Whether rows go in or out is read from the turns beside them. With fewer than two that are in
 * order, the same pegs can be read as a slip on the way in or on the way out: either is right.
 */
const eitherWay = ({ turns }: Section, turn: Turn): Partial<Spoilt> => {
  const at = turns.indexOf(turn)
  const alike = (one: Turn | undefined) => one?.phase === turn.phase
  const next = [turns[at + 1], turns[at + 2]].every(alike)
  const past = turn.phase === 'out' && [turns[at - 1], turns[at - 2]].every(alike)
  if (next || past) return {}
  const beside = [turn.before, turn, turn.after].flatMap((one) => one?.index ?? [])
  return { rules: ['turn-inside', 'turn-nearest', 'turn-twice'], rows: beside }
}

/** A turn among those that step inward, before the last one on its side: from there work goes out. */
const isAmongInner = ({ phase, before, after }: Turn, { turns }: Section): boolean =>
  phase === 'in' &&
  before !== undefined &&
  turns.some((one) => one.index === after?.index && one.phase === 'in')

export const variations: Readonly<Record<string, Spoil>> = {
  // A German turn works its peg first, so there it is a turn that does not step on.
  'a turn repeated on the peg of the last one on its side, going in': (section, turn) =>
    isAmongInner(turn, section) && turn.before
      ? onPeg(section, turn, turn.before.peg, german(turn) ? 'turn-inside' : 'turn-twice')
      : null,
  'a turn repeated on the peg of the last one on its side, going out': (section, turn) => {
    if (turn.phase !== 'out' || !turn.before) return null
    const rule = german(turn) ? 'turn-nearest' : 'turn-twice'
    return onPeg(section, turn, turn.before.peg, rule, eitherWay(section, turn))
  },
  'a turn outside the last one on its side': (section, turn) =>
    isAmongInner(turn, section) && turn.before
      ? onPeg(section, turn, turn.before.peg + turn.way, 'turn-inside', eitherWay(section, turn))
      : null,
  'a turn short of the nearest turned peg': (section, turn) => {
    if (turn.phase !== 'out' || !turn.before || !turn.after) return null
    // The first one only steps in once more; the next one on its side has then two turned pegs.
    const rows = [turn.index, turn.after.index]
    return onPeg(section, turn, turn.before.peg - turn.way, 'turn-nearest', { rows })
  },
  'a turned peg skipped on the way out': (section, turn) =>
    turn.phase === 'out' && turn.after
      ? onPeg(section, turn, turn.after.peg, 'turn-nearest', eitherWay(section, turn))
      : null,
  'a turn skipped: work goes on where it should go back': ({ work }, { index }) => {
    const { rows } = work.chart
    const on = { ...(rows[index] as Row), end: 'on' as const }
    return {
      pattern: withRows(work, rows.with(index, on)),
      rules: ['turn-start'],
      rows: [index + 1],
    }
  },
  'a row with its turn left out': ({ work }, { index }) => ({
    pattern: withRows(work, work.chart.rows.toSpliced(index, 1)),
    rules: ['turn-start'],
    // The row that follows may begin there too, from the other side; then it is the one after it.
    rows: [index, index + 1],
  }),
  'a row with its turn worked twice': ({ work, place }, { index, kind }) => {
    const { rows } = work.chart
    const twice = rows.toSpliced(index, 0, rows[index] as Row)
    // At one side of a bar the second one goes back to the edge, and wraps beyond it.
    const rules = [kind === 'wrap' && place.sides !== 'both' ? 'turn-edge' : 'turn-start']
    return { pattern: withRows(work, twice), rules, rows: [index + 1, index + 2] }
  },
  'a turn of the other kind, so that the next row begins beside another peg': (
    { work },
    { index, kind },
  ) => {
    const { rows } = work.chart
    const end = turnKinds.find((other) => other !== kind) ?? kind
    const other = { ...(rows[index] as Row), end }
    return {
      pattern: withRows(work, rows.with(index, other)),
      rules: ['turn-start'],
      rows: [index + 1],
    }
  },
  'the last turn left out, so that the rounds go the other way': ({ work, place, turns }, turn) => {
    if (place.shape !== 'ring' || turn !== turns.at(-1)) return null
    const { pattern, run } = work
    const ended = run.rows[turn.index]?.row
    if (!ended) return null
    const whole = blankRow(pattern.loom.pegs, stitchOf('k'))
    const kept = chartOn(pattern).rows.slice(0, turn.index)
    const back = { ...whole, run: { from: 0, to: ended.to } }
    return {
      pattern: withRows(work, [...kept, back, whole]),
      rules: ['turn-way'],
      rows: [turn.index + 1],
    }
  },
  'a wrap past the edge of a bar': ({ work, place }, { index, kind, heading }) => {
    const { rows } = work.chart
    const row = rows[index] as Row
    if (place.shape !== 'bar' || kind !== 'wrap' || !row.run) return null
    const last = work.pattern.loom.pegs - 1
    const run = heading === 'forward' ? { ...row.run, to: last } : { ...row.run, from: 0 }
    return {
      pattern: withRows(work, rows.with(index, { ...row, run })),
      rules: ['turn-edge'],
      rows: [index],
    }
  },
  'strands that are never worked off, since the chart ends': ({ work }, turn) => ({
    // Up to this row, so that its strand at least is there.
    pattern: withRows(work, work.chart.rows.slice(0, turn.index + 1)),
    rules: ['turn-left'],
    rows: [turn.index],
    peg: turn.peg,
  }),
  'a turned peg that is slipped for good': ({ work }, { index, peg }) => {
    const { chart } = work
    const { loom } = work.pattern
    const column = (peg + loom.pegs) % loom.pegs
    const slipped = (chart.rows[0] as Row).cells.with(column, stitchOf('sl'))
    const rows = chart.rows.map((row, at) => (at <= index ? row : { ...row, cells: slipped }))
    // The section ends with the first row over all the pegs.
    const end = rows.findIndex(({ run }, at) => at > index && run === null)
    return { pattern: withRows(work, rows), rules: ['turn-left'], rows: [end], peg: column }
  },
}
