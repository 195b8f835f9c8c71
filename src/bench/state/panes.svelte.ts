import { MediaQuery } from 'svelte/reactivity'

/** What the right sheet can show, the first one first. */
export const rightReadings = ['Fabric', 'Pegs', 'Ring', 'Words'] as const
export type RightReading = (typeof rightReadings)[number]
/** All that a phone shows, one at a time, and that can have the whole screen. */
export const readings = ['Rows', 'Fabric', 'Words', 'Findings', 'Pegs', 'Ring'] as const
export type ReadingName = (typeof readings)[number]

const isRight = (name: ReadingName): name is RightReading =>
  (rightReadings as readonly string[]).includes(name)

/** How the room of the bench is shared out, and what its sheets show. */
export class Panes {
  #right: RightReading = $state('Fabric')
  #reading: ReadingName = $state('Rows')
  /** The reading that has the whole screen; null: none. */
  whole: ReadingName | null = $state(null)
  /** Px that Rows and the right column are wide, as they were dragged; null: as they are at first. */
  rows: number | null = $state(null)
  column: number | null = $state(null)
  /** Do Rows stand at the right? */
  swapped = $state(false)
  /** Findings and words have no column of their own: Words stand in the right sheet. */
  readonly #narrow = new MediaQuery('(width < 1200px)')
  /** One reading at a time. */
  readonly #phone = new MediaQuery('(width < 760px), (height < 500px)')
  readonly #hasRing: () => boolean
  /** What the right sheet can show: a rake has no ring. */
  readonly rights: readonly RightReading[] = $derived.by(() =>
    rightReadings.filter(
      (name) =>
        (name !== 'Ring' || this.#hasRing()) &&
        (name !== 'Words' || (this.#narrow.current && !this.#phone.current)),
    ),
  )
  /** Those that a phone offers; what the right sheet shows is chosen over it. */
  readonly readings: readonly ReadingName[] = $derived.by(() => [
    'Rows',
    this.right === 'Words' ? 'Fabric' : this.right,
    'Words',
    'Findings',
  ])

  constructor(hasRing: () => boolean) {
    this.#hasRing = hasRing
  }

  get isPhone(): boolean {
    return this.#phone.current
  }
  /** Do Words stand in the right sheet, as one of its readings? */
  get wordsAtRight(): boolean {
    return this.rights.includes('Words')
  }

  get right(): RightReading {
    return this.rights.includes(this.#right) ? this.#right : 'Fabric'
  }
  set right(name: RightReading) {
    this.#right = name
  }

  /** On a phone, the one reading that is shown. */
  get reading(): ReadingName {
    const name = this.#reading
    return isRight(name) && name !== 'Words' ? this.right : name
  }
  set reading(name: ReadingName) {
    this.#reading = name
  }

  /** Is it in sight? */
  shows(name: ReadingName): boolean {
    if (this.whole !== null) return name === this.whole
    if (this.isPhone) return name === this.reading
    return !isRight(name) || name === this.right || (name === 'Words' && !this.wordsAtRight)
  }

  /** Bring it into sight. */
  show(name: ReadingName): void {
    this.reading = name
    if (isRight(name) && (name !== 'Words' || this.wordsAtRight)) this.right = name
    if (this.whole !== null) this.whole = name
  }

  /** Give a reading the whole screen, or give that back. */
  toggleWhole(name: ReadingName): void {
    this.whole = this.whole === null ? name : null
  }
}
