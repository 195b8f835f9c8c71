import { num } from './measure'

/** Where groups may start in a stretch of a row: for each stitch a list, as places in one table. */
export class Starts {
  #from = 0
  #first = new Int32Array(0)
  readonly #next: number[] = []
  /** Of each entry: which repetition it starts a group of, and where that one ends. */
  readonly repetition: number[] = []
  readonly to: number[] = []
  #count = 0

  begin(from: number, to: number): void {
    this.#from = from
    this.#count = 0
    if (this.#first.length < to - from) this.#first = new Int32Array(to - from)
    this.#first.fill(-1, 0, to - from)
  }

  /** Put an entry before those that its stitch has. */
  add(at: number, repetition: number, to: number): void {
    const entry = this.#count++
    this.repetition[entry] = repetition
    this.to[entry] = to
    this.#next[entry] = num(this.#first, at - this.#from)
    this.#first[at - this.#from] = entry
  }

  /** The first entry of a stitch, -1 for none. */
  at(at: number): number {
    return num(this.#first, at - this.#from)
  }

  after(entry: number): number {
    return this.#next[entry] as number
  }
}
