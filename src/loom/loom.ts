import { opposite, type Heading } from './direction'
import type { BindOff, CastOn, How, Knit, Move } from './move'
import type { LoomState, Side } from './state'
import {
  emptyStack,
  noWale,
  onTop,
  single,
  stackOf,
  strand,
  waleOf,
  type Stack,
  type StrandKind,
} from './strand'

/** What the hands would notice while working; checks turn these into findings. Pegs are 0-based. */
export type Fault =
  | { readonly kind: 'empty peg'; readonly peg: number }
  | { readonly kind: 'peg in use'; readonly peg: number }
  | { readonly kind: 'too many loops'; readonly peg: number; readonly loops: number }
  | { readonly kind: 'stretch'; readonly peg: number; readonly to: number; readonly pegs: number }
  /** Passed so many pegs on this side, and then caught on `peg`. */
  | {
      readonly kind: 'float'
      readonly side: Side
      readonly peg: number
      readonly pegs: number
    }
  | { readonly kind: 'turned twice'; readonly peg: number }
  | { readonly kind: 'no peg to wrap'; readonly peg: number }
  | { readonly kind: 'start'; readonly peg: number; readonly yarnGap: number }

/** By habit the most that can be lifted at once (common practice). */
export const mostLoopsOnPeg = 3

export const strandOf: Readonly<Record<How, StrandKind>> = {
  'e-wrap': 'twisted knit',
  'u-wrap': 'knit',
  flat: 'knit',
  true: 'knit',
  purl: 'purl',
  'twisted purl': 'twisted purl',
}

/** A loom being worked: the primitive moves, with what goes wrong noted in `faults`. */
export class Loom {
  readonly stacks: Stack[]
  readonly faults: Fault[] = []
  readonly #needle: { readonly stack: Stack; readonly side: Side }[] = []
  gap: number
  side: Side
  heading: Heading
  float: number
  inFront: number
  /** Wales that begin in this row get a provisional number below noWale until `settle`. */
  #born = 0

  constructor(
    before: LoomState,
    readonly knit: Knit,
    private readonly record?: (move: Move, loom: Loom) => void,
  ) {
    this.stacks = before.stacks.slice()
    this.gap = before.yarn.gap
    this.side = before.yarn.side
    this.heading = before.heading
    this.float = before.float
    this.inFront = before.inFront
  }

  get pegs(): number {
    return this.stacks.length
  }

  get needle(): readonly { readonly stack: Stack; readonly side: Side }[] {
    return this.#needle
  }

  stack(peg: number): Stack {
    return this.stacks[peg] ?? emptyStack
  }

  /** Knit in the pattern's own way unless `how` says another. */
  work(peg: number, how: How = this.knit): void {
    const stack = this.stack(peg)
    if (stack.length === 0) this.faults.push({ kind: 'empty peg', peg })
    if (stack.length > mostLoopsOnPeg)
      this.faults.push({ kind: 'too many loops', peg, loops: stack.length })
    const first = stack[0]
    const wale = stack.length === 1 && first ? first.wale : waleOf(stack)
    this.stacks[peg] = single(strand(strandOf[how], wale === noWale ? this.#newWale() : wale))
    this.#catchYarn(peg)
    this.record?.({ do: 'work', peg, how }, this)
  }

  lay(peg: number, as: 'yarn over' | 'tuck' | 'wrap' | 'German turn'): void {
    const stack = this.stack(peg)
    if (as === 'yarn over') {
      if (stack.length > 0) this.faults.push({ kind: 'peg in use', peg })
      this.stacks[peg] = onTop(stack, strand(as, this.#newWale()))
    } else if (as === 'wrap') {
      this.stacks[peg] = stackOf([strand(as, noWale), ...stack])
    } else {
      if (stack.length === 0) this.faults.push({ kind: 'empty peg', peg })
      this.stacks[peg] = onTop(stack, strand(as, noWale))
    }
    this.#catchYarn(peg)
    // A turn's strand brings the yarn back to the side it came from.
    if (as === 'wrap' || as === 'German turn') this.gap = this.heading === 'forward' ? peg : peg + 1
    this.record?.({ do: 'lay', peg, as }, this)
  }

  pass(peg: number, yarn: Side): void {
    this.#endFloat(peg, yarn === 'inside' ? 'outside' : 'inside')
    if (yarn === 'inside') this.float++
    else this.inFront++
    this.#leave(peg)
    this.record?.({ do: 'pass', peg, yarn }, this)
  }

  /**
   * Carry the yarn behind the pegs within a cross. It is no float: when the loops have changed
   * places, the two ends of this strand lie side by side.
   */
  carry(gap: number): void {
    if (gap === this.gap) return
    this.gap = gap
    this.record?.({ do: 'carry', gap }, this)
  }

  /** The work goes on past a peg, where nothing more is caught; it is no float over it. */
  goPast(peg: number): void {
    this.#leave(peg)
  }

  take(peg: number, to: Side): void {
    const stack = this.stack(peg)
    if (stack.length === 0) this.faults.push({ kind: 'empty peg', peg })
    this.#needle.push({ stack, side: to })
    this.stacks[peg] = emptyStack
    this.record?.({ do: 'take', peg, to }, this)
  }

  put(peg: number): void {
    const held = this.#needle.shift()
    if (held) this.stacks[peg] = stackOf([...this.stack(peg), ...held.stack])
    this.record?.({ do: 'put', peg }, this)
  }

  move(from: number, to: number, under = false): void {
    const moved = this.stack(from)
    const there = this.stack(to)
    this.stacks[from] = emptyStack
    this.stacks[to] =
      there.length === 0 ? moved : stackOf(under ? [...moved, ...there] : [...there, ...moved])
    this.record?.({ do: 'move', from, to, under: under && there.length > 0 }, this)
  }

  draw(from: number, to: number): void {
    if (this.stack(from).length === 0) this.faults.push({ kind: 'empty peg', peg: from })
    if (this.stack(to).length > 0) this.faults.push({ kind: 'peg in use', peg: to })
    this.stacks[to] = onTop(this.stack(to), strand('knit', this.#newWale()))
    this.record?.({ do: 'draw', from, to }, this)
  }

  bar(peg: number): void {
    if (this.stack(peg).length > 0) this.faults.push({ kind: 'peg in use', peg })
    this.stacks[peg] = onTop(this.stack(peg), strand('bar', this.#newWale()))
    this.record?.({ do: 'bar', peg }, this)
  }

  base(peg: number): void {
    this.stacks[peg] = stackOf([strand('bar', noWale), ...this.stack(peg)])
    this.record?.({ do: 'base', peg }, this)
  }

  turn(): void {
    this.heading = opposite(this.heading)
    this.record?.({ do: 'turn' }, this)
  }

  /** Take loops away unworked; only what a wrong count makes necessary. */
  drop(peg: number): void {
    if (this.stack(peg).length === 0) return
    this.stacks[peg] = emptyStack
    this.record?.({ do: 'drop', peg }, this)
  }

  /** On an empty loom a loop begins the wale of its own peg. `last`: the last one of its edge. */
  castOn(peg: number, how: CastOn, last = false): void {
    if (this.stack(peg).length > 0) this.faults.push({ kind: 'peg in use', peg })
    const taken = this.stacks.some((stack) => stack.some(({ wale }) => wale === peg))
    this.stacks[peg] = onTop(this.stack(peg), strand('cast-on', taken ? this.#newWale() : peg))
    this.#catchYarn(peg)
    this.record?.({ do: 'cast on', peg, how, last }, this)
  }

  /** Lift the lower loops over the top one and off the peg. */
  lift(peg: number): void {
    const top = this.stack(peg).at(-1)
    if (!top) this.faults.push({ kind: 'empty peg', peg })
    else this.stacks[peg] = single(top)
    this.record?.({ do: 'lift', peg }, this)
  }

  /** The loops leave the peg, kept by the yarn end. */
  letGo(peg: number, how: BindOff): void {
    if (this.stack(peg).length === 0) this.faults.push({ kind: 'empty peg', peg })
    this.stacks[peg] = emptyStack
    this.#leave(peg)
    this.record?.({ do: 'let go', peg, how }, this)
  }

  /** Give each wale that began in this row a lasting number: that of its peg's old wale if free. */
  settle(before: LoomState): LoomState {
    if (this.#born > 0) this.#numberWales(before)
    return {
      stacks: this.stacks,
      yarn: { gap: this.gap, side: this.side },
      heading: this.heading,
      float: this.float,
      inFront: this.inFront,
    }
  }

  #numberWales(before: LoomState): void {
    const used = new Set<number>()
    for (const stack of this.stacks) for (const { wale } of stack) used.add(wale)
    const claim = (wished: number): number => {
      let wale = wished > noWale && !used.has(wished) ? wished : 0
      while (used.has(wale)) wale++
      used.add(wale)
      return wale
    }
    this.stacks.forEach((stack, peg) => {
      if (!stack.some(({ wale }) => wale < noWale)) return
      const wished = waleOf(before.stacks[peg] ?? emptyStack)
      this.stacks[peg] = stackOf(
        stack.map((item) => (item.wale < noWale ? strand(item.kind, claim(wished)) : item)),
      )
    })
  }

  #newWale(): number {
    return noWale - ++this.#born
  }

  #catchYarn(peg: number): void {
    this.#endFloat(peg, 'inside')
    this.#endFloat(peg, 'outside')
    this.#leave(peg)
  }

  #endFloat(peg: number, side: Side): void {
    const pegs = side === 'inside' ? this.float : this.inFront
    if (pegs === 0) return
    this.faults.push({ kind: 'float', side, peg, pegs })
    if (side === 'inside') this.float = 0
    else this.inFront = 0
  }

  #leave(peg: number): void {
    this.gap = this.heading === 'forward' ? peg + 1 : peg
  }
}
