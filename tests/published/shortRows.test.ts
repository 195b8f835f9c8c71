import { describe, expect, test } from 'vitest'
import { opposite, type Heading } from '../../src/loom/direction'
import { castOn } from '../../src/loom/state'
import { simulate } from '../../src/loom/simulate'
import { loomRow, type LoomRow, type RowEnd } from '../../src/loom/row'
import { workRow } from '../../src/loom/work'
import { stitchOf } from '../../src/stitches/vocabulary'
import { shapings, shortRows } from './data/short-rows'
import { heelOf56, wrappedHeels } from './data/standards'
import { columnsOf, expand } from './notation'
import { habits, loomWith, loopsOn, rowOn, unworkedAhead, workFromYarn } from './onLoom'

describe.each(shortRows.map((piece) => [piece.id, piece] as const))('%s', (_, piece) => {
  let state = castOn(piece.castOn)
  state = { ...state, yarn: { ...state.yarn, gap: piece.startsAfter ?? 0 } }
  let heading: Heading = 'forward'
  const worked = piece.rows.map((row) => {
    const run = workFromYarn(state, expand(row, unworkedAhead(state, heading)), heading)
    state = run.after
    const unworked = unworkedAhead(state, heading)
    heading = opposite(heading)
    return { run, unworked, loops: loopsOn(state) }
  })

  test('no row miscounts, and each starts where the yarn is', () => {
    expect(worked.map(({ run }) => run.miscount).filter(Boolean)).toEqual([])
    const kinds = worked.flatMap(({ run }) => run.faults.map(({ kind }) => kind))
    expect(kinds.filter((kind) => kind !== 'stretch' && kind !== 'float')).toEqual([])
  })

  test('row by row, as many loops are left unworked as the source says', () => {
    expect(worked.map(({ unworked }) => unworked)).toEqual(piece.unworked)
  })

  test('row by row, as many loops are on the loom as the source says', () => {
    expect(worked.map(({ loops }) => loops)).toEqual(
      piece.loops ?? piece.rows.map(() => piece.castOn),
    )
  })
})

describe.each(shapings.map((piece) => [piece.id, piece] as const))('%s', (_, piece) => {
  test('has the loops that the source states', () => {
    const most = 2 * piece.castOn
    let state = loomWith(piece.castOn, most)
    const counts = piece.rows.map((row) => {
      const stitches = expand(row, loopsOn(state))
      expect(columnsOf(stitches)).toBeLessThanOrEqual(most)
      const run = workRow(state, rowOn(stitches, 0, most - 1, 'forward'), habits)
      expect(run.miscount).toBeNull()
      state = run.after
      return loopsOn(state)
    })
    expect(piece.stated.map(([row]) => [row, counts[row - 1]])).toEqual(piece.stated)
  })
})

/** A heel on pegs 1 to `heel` of a ring, as rows of plain knits with their turns. */
const heelRow = (from: number, to: number, end: RowEnd): LoomRow => {
  const sites = Array.from({ length: to - from + 1 }, (_, at) => ({
    stitch: stitchOf('k'),
    peg: from - 1 + at,
  }))
  return loomRow(sites, from - 1, to - 1, null, end)
}

/**
 * Out: the turning peg is one further in each time. Back: on to the nearest wrapped peg, and the
 * next one out is wrapped again. Common practice.
 */
function wrappedHeel(heel: number, turned: number): { out: LoomRow[]; back: LoomRow[] } {
  const out: LoomRow[] = []
  const back: LoomRow[] = []
  for (let i = 1; i <= turned; i++)
    out.push(heelRow(i, heel - i, 'wrap'), heelRow(i + 1, heel - i, 'wrap'))
  for (let i = turned; i > 1; i--)
    back.push(heelRow(i + 1, heel + 1 - i, 'wrap'), heelRow(i, heel + 1 - i, 'wrap'))
  return { out, back }
}

/** On from the last turn to the end of the round, and a round over all pegs. */
const close = (loom: number): LoomRow[] => [heelRow(2, loom, 'on'), heelRow(1, loom, 'on')]

describe('heels', () => {
  const wrappedAfter = (rows: readonly LoomRow[], loom: number): number[] =>
    simulate(rows, castOn(loom), habits).end.stacks.flatMap(({ length }, peg) =>
      length > 1 ? [peg + 1] : [],
    )

  test('a third of the heel pegs is turned at each side: 56 pegs, 9 + 10 + 9', () => {
    const { loom, heel, thirds } = heelOf56.values
    const [right, middle, left] = thirds
    const wrapped = wrappedAfter(wrappedHeel(heel, right).out, loom)
    const plain = Array.from({ length: heel }, (_, peg) => peg + 1).filter(
      (peg) => !wrapped.includes(peg),
    )
    expect([loom / 2, Math.round(heel / 3)]).toEqual([heel, right])
    expect(wrapped.filter((peg) => peg < (plain[0] ?? 0)).length).toBe(right)
    expect(plain.length).toBe(middle)
    expect(wrapped.filter((peg) => peg > (plain[0] ?? 0)).length).toBe(left)
  })

  test.each(wrappedHeels.values)('a loom of %i pegs turns %i a side', (loom, turned) => {
    const heel = loom / 2
    expect(Math.round(heel / 3)).toBe(turned)
    const { out, back } = wrappedHeel(heel, turned)
    expect([out.length, back.length]).toEqual([2 * turned, 2 * turned - 2])
    const side = Array.from({ length: turned }, (_, index) => index + 1)
    expect(wrappedAfter(out, loom)).toEqual([...side, ...side.map((peg) => heel - turned + peg)])

    const whole = simulate([...out, ...back, ...close(loom)], castOn(loom), habits)
    expect(whole.rows.flatMap(({ faults }) => faults)).toEqual([])
    // Both outermost pegs carry two wraps and a loop before the round that closes the heel.
    const last = whole.rows.at(-2)?.before.stacks
    expect([last?.[0]?.length, last?.[heel - 1]?.length]).toEqual([3, 3])
    expect(whole.end.stacks.every(({ length }) => length === 1)).toBe(true)
  })
})
