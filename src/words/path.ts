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
  #from = 0
  #size = 0
  #cells = new Int32Array(0)

  /** Begin stitches from..to anew. `last`: what it costs to write nothing after the last stitch. */
  begin(from: number, to: number, last: number): void {
    this.#from = from
    this.#size = to - from + 1
    if (this.#cells.length < this.#size * 6) this.#cells = new Int32Array(this.#size * 6)
    this.#cells.fill(never, 0, this.#size * 2)
    this.#cells[this.#size - 1] = last
  }

  cost(at: number): number {
    return num(this.#cells, at - this.#from)
  }

  costWithGroup(at: number): number {
    return num(this.#cells, at - this.#from + this.#size)
  }

  /** Offer a run, before all groups of that stitch; of two that cost the same, the last is taken. */
  offerRun(at: number, to: number, cost: number): void {
    const slot = at - this.#from
    if (cost <= num(this.#cells, slot)) this.#set(slot, to, cost, 0)
  }

  /** Of a run and a group that cost the same the run is taken, of two groups the first. */
  offerGroup(at: number, to: number, cost: number, how: number): void {
    const slot = at - this.#from
    if (cost < num(this.#cells, slot)) this.#set(slot, to, cost, how)
    const withGroup = slot + this.#size
    if (cost < num(this.#cells, withGroup)) this.#set(withGroup, to, cost, how)
  }

  /** The parts in order, up to `to` or up to and with the asterisk. */
  steps(from: number, to: number, stitches: Int32Array): PathStep[] {
    const steps: PathStep[] = []
    let broken = false
    for (let at = from; at < to;) {
      const slot: number = at - this.#from + (broken ? this.#size : 0)
      const step: PathStep = {
        from: at,
        to: num(this.#cells, slot + this.#size * 2),
        how: num(this.#cells, slot + this.#size * 4),
      }
      steps.push(step)
      if (step.how < 0) break
      broken = step.how === 0 && step.to < to && stitches[step.to] === stitches[at]
      at = step.to
    }
    return steps
  }

  #set(slot: number, to: number, cost: number, how: number): void {
    this.#cells[slot] = cost
    this.#cells[slot + this.#size * 2] = to
    this.#cells[slot + this.#size * 4] = how
  }
}
