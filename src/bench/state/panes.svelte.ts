/** What the two large panes can show, the first one first. */
export const leftReadings = ['Rows', 'Fabric'] as const
export const rightReadings = ['Ring', 'Pegs'] as const
export type LeftReading = (typeof leftReadings)[number]
export type RightReading = (typeof rightReadings)[number]
const beside = ['Words', 'Findings', 'Here'] as const
/** All that a phone shows, one at a time. */
export const readings = [...leftReadings, ...rightReadings, ...beside] as const
export type ReadingName = (typeof readings)[number]

/** What the panes of the bench show. */
export class Panes {
  left: LeftReading = $state('Rows')
  #right: RightReading = $state('Ring')
  #reading: ReadingName = $state('Rows')
  /** What the right pane can show: a rake has no ring. */
  readonly rights: readonly RightReading[] = $derived.by(() =>
    this.#hasRing() ? rightReadings : ['Pegs'],
  )
  /** Those that a phone offers; what a pane shows is chosen over it. */
  readonly readings: readonly ReadingName[] = $derived.by(() => [this.left, this.right, ...beside])
  readonly #hasRing: () => boolean

  constructor(hasRing: () => boolean) {
    this.#hasRing = hasRing
  }

  get right(): RightReading {
    return this.rights.includes(this.#right) ? this.#right : 'Pegs'
  }
  set right(name: RightReading) {
    this.#right = name
  }

  /** On a phone, the one reading that is shown. */
  get reading(): ReadingName {
    return this.#reading === 'Ring' ? this.right : this.#reading
  }
  set reading(name: ReadingName) {
    this.#reading = name
  }

  show(name: ReadingName): void {
    this.reading = name
    if (name === 'Rows' || name === 'Fabric') this.left = name
    else if (name === 'Ring' || name === 'Pegs') this.right = name
  }
}
