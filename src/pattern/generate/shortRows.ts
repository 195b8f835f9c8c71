import type { Heading } from '../../loom/direction'
import type { RowEnd } from '../../loom/row'
import type { Chart, LoomSetup, Row, Run, Cell, ShortRowWish } from '../pattern'
import { refuse, type Refusal } from './refuse'
import { besides, roundOfCells } from './round'
import { standardVocabulary } from '../../stitches/vocabulary'

const plainKnit = standardVocabulary.withRole('knit')

export type ShortRows =
  | { readonly ok: true; readonly rows: readonly Row[]; readonly neverTurned: number }
  | ({ readonly ok: false } & Refusal)

interface Line {
  readonly from: number
  readonly to: number
  readonly end: RowEnd
}

/**
 * The rows of a heel, toe or wedge: ordinary rows of one stitch, `columns` wide. The yarn stands at peg 1 when it
 * begins. A heel or wedge ends there too, with no strand of a turn left; a toe ends at its first peg, where its
 * graft begins, with the strand of its last turn on its last peg, grafted with the loop there (common practice,
 * as is the order of the turns: shared out between two rows, in towards the middle, then out again).
 *
 * Where each column is a peg, the other pegs go on with what the wish says of them.
 */
export function makeShortRows(
  loom: Pick<LoomSetup, 'pegs' | 'shape'>,
  wish: ShortRowWish,
  stitch = plainKnit,
  columns = loom.pegs,
): ShortRows {
  const refusal = refuse(loom, wish)
  if (refusal) return { ok: false, ...refusal }
  const lines = wish.sides === 'both' ? bothSides(loom.pegs, wish) : oneSide(loom.pegs, wish)
  const plain = Array.from({ length: columns }, () => stitch)
  const whole = ({ from, to }: Line) => from === 0 && to === loom.pegs - 1
  const rounds = columns === loom.pegs ? wish.beside?.map(roundOfCells) : undefined
  const cellsOf = (line: Line, at: number): readonly Cell[] => {
    const isLast = at === lines.length - 1 && wish.shape !== 'toe'
    const round = rounds?.[isLast ? 1 : 0]
    return round ? besides(round, loom.pegs, wish.run, line, stitch) : plain
  }
  const rows = lines.map((line, at) => ({
    cells: cellsOf(line, at),
    run: whole(line) ? null : { from: line.from, to: line.to },
    heading: null,
    end: line.end,
  }))
  const reach = (wish.turned - 1) * wish.step + 1
  const sides = wish.sides === 'both' ? 2 : 1
  return { ok: true, rows, neverTurned: wish.run.to - wish.run.from + 1 - sides * reach }
}

/** The same as a chart of its own. */
export function shortRowChart(
  loom: Pick<LoomSetup, 'pegs' | 'shape'>,
  wish: ShortRowWish,
  stitch = plainKnit,
): { readonly ok: true; readonly chart: Chart } | ({ readonly ok: false } & Refusal) {
  const made = makeShortRows(loom, wish, stitch)
  if (!made.ok) return made
  return {
    ok: true,
    chart: { columns: loom.pegs, repeat: null, bands: [], rows: made.rows },
  }
}

/** Lines that each begin beside where the one before turned. */
class Lines {
  readonly list: Line[] = []
  /** The next peg to be worked. */
  #next = 0

  constructor(
    private readonly turn: ShortRowWish['turn'],
    private readonly pegs: number,
  ) {}

  /** Go on to the peg before a wrap, or to the peg of a German turn, and turn there. */
  turnAt(peg: number, heading: Heading): void {
    const step = heading === 'forward' ? 1 : -1
    const last = this.turn === 'wrap' ? peg - step : peg
    if (last < 0 || last >= this.pegs) {
      // Over the join of the round: on to its end, then a row of the one peg beyond.
      this.goOn(last < 0 ? 0 : this.pegs - 1, (last + this.pegs) % this.pegs)
      this.#add(this.#next, this.turn)
    } else this.#add(last, this.turn)
    // A wrapped peg was not worked: the row back begins on the peg before it, as after a German turn.
    this.#next = peg - step
  }

  /** Go on to a peg without turning there; `next` is where the row after it begins. */
  goOn(peg: number, next: number): void {
    this.#add(peg, 'on')
    this.#next = next
  }

  #add(last: number, end: RowEnd): void {
    this.list.push({ from: Math.min(this.#next, last), to: Math.max(this.#next, last), end })
  }
}

/** How many turns in from each end: in, and for a heel or toe out again. */
function* turnsOf({ shape, turned, step }: ShortRowWish): Generator<number> {
  for (let turn = 0; turn < turned; turn++) yield turn * step
  if (shape !== 'wedge') for (let turn = turned - 2; turn >= 0; turn--) yield turn * step
}

function bothSides(pegs: number, wish: ShortRowWish): readonly Line[] {
  const { from, to }: Run = wish.run
  const lines = new Lines(wish.turn, pegs)
  const turns = [...turnsOf(wish)]
  turns.forEach((inward, at) => {
    lines.turnAt(to - inward, 'forward')
    if (wish.shape === 'toe' && at === turns.length - 1) lines.goOn(from, from)
    else lines.turnAt(from + inward, 'back')
  })
  if (wish.shape === 'toe') return lines.list
  if (wish.shape === 'heel' && wish.closeCorners) {
    lines.turnAt(to + 1, 'forward')
    lines.turnAt(from - 1, 'back')
  }
  // Out to the end of the round, then once over all pegs: what was turned at the start is taken in.
  lines.goOn(pegs - 1, 0)
  lines.goOn(pegs - 1, 0)
  return lines.list
}

function oneSide(pegs: number, wish: ShortRowWish): readonly Line[] {
  const lines = new Lines(wish.turn, pegs)
  const { from, to } = wish.run
  if (wish.sides === 'first') lines.goOn(pegs - 1, pegs - 1)
  for (const inward of turnsOf(wish)) {
    if (wish.sides === 'last') {
      lines.turnAt(to - inward, 'forward')
      lines.goOn(0, 0)
    } else {
      lines.turnAt(from + inward, 'back')
      lines.goOn(pegs - 1, pegs - 1)
    }
  }
  if (wish.shape === 'toe') return lines.list
  if (wish.sides === 'last') lines.goOn(pegs - 1, pegs - 1)
  lines.goOn(0, 0)
  return lines.list
}
