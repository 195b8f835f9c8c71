/** Numbers that look random and are the same for the same seed: every case can be had again. */
export class Chance {
  #state: number

  /** The case of this number in the run of this seed. */
  constructor(seed: number, index: number) {
    this.#state = (Math.imul(seed | 0, 0x9e3779b1) ^ Math.imul(index + 1, 0x85ebca6b)) | 0
  }

  /** From 0 to below 1 (mulberry32, public domain). */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }

  /** A whole number from 0 to below `most`. */
  below(most: number): number {
    return Math.floor(this.next() * most)
  }

  of<T>(list: readonly T[]): T {
    return list[this.below(list.length)] as T
  }

  /** True in so many cases of a hundred. */
  percent(share: number): boolean {
    return this.below(100) < share
  }
}
