import { strandOf } from './loom'
import type { How, Move } from './move'
import type { Site } from './row'
import type { Side } from './state'
import { emptyStack, type Stack, type StrandKind } from './strand'
import { workRow, type Habits, type RowRun } from './work'

/**
 * One loop of the fabric. `id` is its place in the list; rows and pegs are 0-based. Loops that are
 * only laid on a peg (yarn over, tuck, wrap, German turn) go through nothing.
 */
export interface TracedLoop {
  readonly id: number
  readonly kind: StrandKind
  readonly how: How | null
  /** Row of the list in which it was made; -1 for the cast-on. */
  readonly row: number
  /** The peg it stands on when its row is done. */
  peg: number
  /** The stitch it belongs to; null for the cast-on and for turns. */
  readonly site: Site | null
  /** The loops it was drawn through, lowest first: the lowest shows on the right side. */
  readonly through: readonly number[]
  /** The loop that it was later drawn into, or -1 while it is on the loom. */
  into: number
  /** The row before which it was bound off, or -1. */
  boundBefore: number
  /** The column of the cast-on it continues; -1 for what is only laid. */
  wale: number
}

/** The yarn passing a peg without being caught there. */
export interface Float {
  readonly row: number
  readonly peg: number
  readonly side: Side
}

/** All loops of some rows worked one after the other, and how they hang together. */
export interface Trace {
  readonly loops: readonly TracedLoop[]
  readonly floats: readonly Float[]
  /** Loops on each peg at the end, lowest first. */
  readonly onPegs: readonly (readonly number[])[]
  /** `before[row][peg]`: the loops on the peg when the row begins. */
  readonly before: readonly (readonly (readonly number[])[])[]
}

/** Were loops cast on here between two rows, be it on a peg that was emptied just before? */
export const isCastAnew = (before: Stack, now: Stack): boolean =>
  now !== before && now.length > 0 && now.every(({ kind }) => kind === 'cast-on')

/**
 * Follow every strand through rows that were worked one after the other. The moves are those of
 * the simulator; only which loop is which is kept here beside it.
 */
export function trace(rows: readonly RowRun[], habits: Habits): Trace {
  const tracer = new Tracer(rows[0]?.before.stacks.map(({ length }) => length) ?? [])
  rows.forEach((run, row) => {
    const last = rows[row - 1]
    if (last && last.after !== run.before) tracer.takeEdges(row, last, run)
    tracer.beginRow(row)
    workRow(run.before, run.row, habits, (move, _loom, site) => tracer.take(move, site))
    tracer.endRow(run)
  })
  return tracer.done()
}

class Tracer {
  readonly #loops: TracedLoop[] = []
  readonly #floats: Float[] = []
  readonly #before: (readonly (readonly number[])[])[] = []
  readonly #needle: number[][] = []
  #pegs: number[][]
  #row = -1
  #made: number[] = []

  constructor(start: readonly number[]) {
    this.#pegs = start.map((count, peg) =>
      Array.from({ length: count }, () => this.#make('cast-on', peg, null, [], null)),
    )
  }

  beginRow(row: number): void {
    this.#row = row
    this.#made = []
    this.#before.push(this.#pegs.slice())
  }

  /** What edges did between two rows: loops bound off are gone, others are cast on. */
  takeEdges(row: number, { after }: RowRun, { before }: RowRun): void {
    this.#pegs.forEach((stack, peg) => {
      const now = before.stacks[peg] ?? emptyStack
      const isNew = isCastAnew(after.stacks[peg] ?? emptyStack, now)
      if (stack.length > 0 && (now.length === 0 || isNew)) {
        for (const id of stack) (this.#loops[id] as TracedLoop).boundBefore = row
        this.#pegs[peg] = []
      }
      if (isNew)
        this.#pegs[peg] = now.map(({ wale }) => {
          const id = this.#make('cast-on', peg, null, [], null)
          ;(this.#loops[id] as TracedLoop).wale = wale
          return id
        })
    })
  }

  endRow(run: RowRun): void {
    this.#pegs.forEach((stack, peg) => {
      stack.forEach((id, level) => {
        const loop = this.#loops[id] as TracedLoop
        if (loop.row === this.#row) loop.peg = peg
        loop.wale = run.after.stacks[peg]?.[level]?.wale ?? loop.wale
      })
    })
    // A loop made and used up in the same row (a bobble's) lies where the one it went into lies.
    for (const id of this.#made.toReversed()) {
      const loop = this.#loops[id] as TracedLoop
      if (loop.into >= 0) {
        const next = this.#loops[loop.into] as TracedLoop
        if (next.row === this.#row) {
          loop.peg = next.peg
          if (loop.wale < 0) loop.wale = next.wale
        }
      }
    }
  }

  take(move: Move, site: Site | null): void {
    const pegs = this.#pegs
    const on = (peg: number): number[] => pegs[peg] ?? []
    switch (move.do) {
      case 'work': {
        const { peg, how } = move
        pegs[peg] = [this.#make(strandOf[how], peg, how, on(peg), site)]
        break
      }
      case 'lay': {
        const laid = this.#make(move.as, move.peg, null, [], site)
        pegs[move.peg] = move.as === 'wrap' ? [laid, ...on(move.peg)] : [...on(move.peg), laid]
        break
      }
      case 'pass':
        this.#floats.push({ row: this.#row, peg: move.peg, side: move.yarn })
        break
      case 'take':
        this.#needle.push(on(move.peg))
        pegs[move.peg] = []
        break
      case 'put':
        pegs[move.peg] = [...on(move.peg), ...(this.#needle.shift() ?? [])]
        break
      case 'move': {
        const moved = on(move.from)
        pegs[move.from] = []
        pegs[move.to] = move.under ? [...moved, ...on(move.to)] : [...on(move.to), ...moved]
        break
      }
      case 'draw':
        pegs[move.to] = [
          ...on(move.to),
          this.#make('knit', move.to, null, on(move.from), site, false),
        ]
        break
      case 'bar':
        pegs[move.peg] = [...on(move.peg), this.#make('bar', move.peg, null, [], site)]
        break
      case 'base':
        pegs[move.peg] = [this.#make('bar', move.peg, null, [], site), ...on(move.peg)]
        break
      case 'cast on':
        pegs[move.peg] = [...on(move.peg), this.#make('cast-on', move.peg, null, [], site)]
        break
      case 'lift':
        pegs[move.peg] = on(move.peg).slice(-1)
        break
      case 'let go':
      case 'drop':
        pegs[move.peg] = []
        break
      case 'carry':
      case 'turn':
        break
    }
  }

  done(): Trace {
    return {
      loops: this.#loops,
      floats: this.#floats,
      onPegs: this.#pegs,
      before: this.#before,
    }
  }

  #make(
    kind: StrandKind,
    peg: number,
    how: How | null,
    through: readonly number[],
    site: Site | null,
    usesUp = true,
  ): number {
    const id = this.#loops.length
    this.#loops.push({
      id,
      kind,
      how,
      row: this.#row,
      peg,
      site,
      through,
      into: -1,
      boundBefore: -1,
      wale: this.#row < 0 ? peg : -1,
    })
    if (usesUp) for (const used of through) (this.#loops[used] as TracedLoop).into = id
    this.#made.push(id)
    return id
  }
}
