import { never, num } from './measure'

/** One part of a row: a run of like stitches (`how` 0), a group, or the repeat from the asterisk. */
export interface PathStep {
  readonly from: number
  readonly to: number
  /** 0: a run. Otherwise the stitches in one copy of the group; negative for the asterisk. */
  readonly how: number
}

/**
 * The cheapest ways to write the end of a row, from each of its stitches on, filled from the last
 * stitch back. For each stitch there are two: any way, and the one that begins with a group, which
 * alone may follow when a run of like stitches is broken off.
 */
export class Path {
  readonly #from: number
  readonly #size: number
  readonly #cost: Int32Array
  readonly #next: Int32Array
  readonly #how: Int32Array

  /** `last`: what it costs to write nothing after the last stitch. */
  constructor(from: number, to: number, last: number) {
    this.#from = from
    this.#size = to - from + 1
    this.#cost = new Int32Array(this.#size * 2).fill(never)
    this.#next = new Int32Array(this.#size * 2)
    this.#how = new Int32Array(this.#size * 2)
    this.#cost[this.#size - 1] = last
  }

  cost(at: number): number {
    return num(this.#cost, at - this.#from)
  }

  costWithGroup(at: number): number {
    return num(this.#cost, at - this.#from + this.#size)
  }

  /** Offer a run, after all groups of that stitch; of two that cost the same, the run is taken. */
  offerRun(at: number, to: number, cost: number): void {
    const slot = at - this.#from
    if (cost <= num(this.#cost, slot)) this.#set(slot, to, cost, 0)
  }

  offerGroup(at: number, to: number, cost: number, how: number): void {
    const slot = at - this.#from
    if (cost < num(this.#cost, slot)) this.#set(slot, to, cost, how)
    const withGroup = slot + this.#size
    if (cost < num(this.#cost, withGroup)) this.#set(withGroup, to, cost, how)
  }

  /** The parts in order, up to `to` or up to and with the asterisk. */
  steps(from: number, to: number, stitches: Int32Array): PathStep[] {
    const steps: PathStep[] = []
    let broken = false
    for (let at = from; at < to;) {
      const slot: number = at - this.#from + (broken ? this.#size : 0)
      const step: PathStep = { from: at, to: num(this.#next, slot), how: num(this.#how, slot) }
      steps.push(step)
      if (step.how < 0) break
      broken = step.how === 0 && step.to < to && stitches[step.to] === stitches[at]
      at = step.to
    }
    return steps
  }

  #set(slot: number, to: number, cost: number, how: number): void {
    this.#cost[slot] = cost
    this.#next[slot] = to
    this.#how[slot] = how
  }
}
