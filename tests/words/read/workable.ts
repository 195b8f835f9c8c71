/** Charts for the law of writing and reading: rows that take the loops there are, and plain ones. */
import { withChart } from '../../../src/pattern/edits/chart'
import { chartOn } from '../../../src/pattern/charts'
import fc, { type Arbitrary } from 'fast-check'
import { directions, type Heading } from '../../../src/loom/direction'
import { rowEnds, type RowEnd } from '../../../src/loom/row'
import { castOn, type LoomState } from '../../../src/loom/state'
import { workRow } from '../../../src/loom/work'
import { newPattern, type Pattern, type Row } from '../../../src/pattern/pattern'
import { layoutOf } from '../../../src/pattern/layout'
import { onPegs } from '../../../src/pattern/row'
import { habitsOf } from '../../../src/pattern/habits'
import { workPattern } from '../../../src/pattern/work'
import { termSets } from '../../../src/languages/terms'
import type { Stitch } from '../../../src/stitches/stitch'
import { stitchOf, standardVocabulary } from '../../../src/stitches/vocabulary'
import { cellsOf } from '../../arbitraries'
import { cellsFrom } from '../../cells'

const plain = ['k', 'p', 'ew', 'sl', 'yo', 'k2tog', 'none'].map(stitchOf)

/** Choices as numbers from 0 to 1, so that a chart is a plain list that can be made smaller. */
type Dice = () => number

/** Stitches for `width` pegs that hold `loops` loops; at most three loops can go to one peg. */
function fillRow(width: number, loops: number, dice: Dice): Stitch[] {
  const list: Stitch[] = []
  let pegs = width
  let left = loops
  const fits = ({ takes, width: wide }: Stitch) => {
    const after = left - takes
    const room = pegs - wide
    return after >= 0 && room >= 0 && after <= 3 * room
  }
  while (pegs > 0) {
    const few = list.slice(-Math.ceil(dice() * 5))
    const pool =
      dice() < 0.5 ? plain : dice() < 0.5 ? [few[0] ?? stitchOf('k')] : standardVocabulary.stitches
    const last = list.at(-1)
    const wish = dice() < 0.4 && last ? last : pool[Math.floor(dice() * pool.length)]
    const need = left > pegs ? 'k2tog' : left < pegs && dice() < 0.5 ? 'none' : 'k'
    const stitch = [wish, stitchOf(need), stitchOf('k3tog'), stitchOf('none')].find(
      (one) => one && fits(one),
    )
    if (!stitch) throw new Error(`No stitch fits ${left} loops on ${pegs} pegs.`)
    list.push(stitch)
    pegs -= stitch.width
    left -= stitch.takes
  }
  return list
}

const loopsOn = ({ stacks }: LoomState, from: number, to: number): number =>
  stacks.slice(from, to + 1).filter((stack) => stack.length > 0).length

function makeRow(pattern: Pattern, state: LoomState, dice: Dice, last: Row | undefined): Row {
  const { pegs, shape } = pattern.loom
  const { gap } = state.yarn
  const atEdge = gap === 0 || gap === pegs
  if (last && dice() < 0.3) return { ...last, cells: last.cells }
  const whole = dice() < 0.6 && (shape === 'ring' || atEdge || dice() < 0.5)
  const ends = [Math.floor(dice() * pegs), Math.floor(dice() * pegs)].sort((a, b) => a - b)
  const [from = 0, to = 0] = whole ? [0, pegs - 1] : ends
  const heading: Heading | null = whole ? null : dice() < 0.5 ? 'forward' : 'back'
  const end: RowEnd = whole ? 'on' : (rowEnds[Math.floor(dice() * 3)] ?? 'on')
  const stitches = fillRow(to - from + 1, loopsOn(state, from, to), dice)
  const cells = Array.from({ length: pegs }, () => 'k')
  const goes = heading ?? state.heading
  let peg = from
  for (const stitch of goes === 'forward' ? stitches : stitches.toReversed()) {
    cells.splice(peg, stitch.width, ...cellsOf(stitch))
    peg += stitch.width
  }
  return { cells: cellsFrom(cells), run: whole ? null : { from, to }, heading, end }
}

interface Wish {
  readonly shape: 'ring' | 'bar'
  readonly pegs: number
  readonly rows: number
  /** May rows of nothing but knit or purl take more loops than there are? */
  readonly overfull: boolean
}

/** A row of all pegs in one plain stitch, whatever loops there are. */
function makePlain({ loom }: Pattern, dice: Dice): Row {
  const stitch = stitchOf(dice() < 0.5 ? 'k' : 'p')
  const cells = Array.from({ length: loom.pegs }, () => stitch)
  return { cells, run: null, heading: null, end: 'on' }
}

function makePattern({ shape, pegs, rows: rowCount, overfull }: Wish, dice: Dice): Pattern {
  const base = newPattern(pegs, 1)
  const pattern: Pattern = {
    ...base,
    loom: { ...base.loom, shape, direction: directions[Math.floor(dice() * 2)] ?? 'clockwise' },
    style: { ...base.style, terms: termSets[Math.floor(dice() * 2)] ?? 'us' },
  }
  const rows: Row[] = []
  let state = castOn(pegs)
  while (rows.length < rowCount) {
    const plain = overfull && dice() < 0.4
    let row = plain ? makePlain(pattern, dice) : makeRow(pattern, state, dice, rows.at(-1))
    let run = workRow(
      state,
      onPegs(row, layoutOf(withChart(pattern, { columns: pegs }))),
      habitsOf(pattern),
    )
    if (run.miscount) {
      row = overfull ? makePlain(pattern, dice) : makeRow(pattern, state, dice, undefined)
      run = workRow(
        state,
        onPegs(row, layoutOf(withChart(pattern, { columns: pegs }))),
        habitsOf(pattern),
      )
    }
    if (!run.miscount || overfull) {
      rows.push(row)
      state = run.after
    }
  }
  const chart = { columns: pegs, repeat: null, bands: [], rows }
  return withBand(withChart(pattern, chart), dice)
}

function withBand(pattern: Pattern, dice: Dice): Pattern {
  const { rows } = chartOn(pattern)
  const a = Math.floor(dice() * rows.length)
  const b = Math.floor(dice() * rows.length)
  const band = { from: Math.min(a, b), to: Math.max(a, b), times: 2 + Math.floor(dice() * 3) }
  const banded = withChart(pattern, { bands: [band] })
  const { run } = workPattern(banded)
  return run.rows.every(({ miscount }) => !miscount) ? banded : pattern
}

const pieces = (overfull: boolean): Arbitrary<Pattern> =>
  fc
    .tuple(
      fc.constantFrom('ring' as const, 'bar' as const),
      fc.integer({ min: 3, max: 20 }),
      fc.integer({ min: 1, max: 6 }),
      // Doubles would not do: nearly all there are between 0 and 1 lie next to 0.
      fc.infiniteStream(fc.nat(999_999).map((n) => n / 1_000_000)),
    )
    .map(([shape, pegs, rows, stream]) =>
      makePattern({ shape, pegs, rows, overfull }, () => stream.next().value as number),
    )

/** Rings and bars, both directions, both sets of terms, every stitch, runs, turns and bands. */
export const workable = pieces(false)

/** The same with plain rows of all pegs, some of which take more loops than there are. */
export const overfull = pieces(true)
