import type { Moment } from '../../loom/walk'
import type { Habits } from '../../loom/work'
import { momentsOf, type Stretch } from '../../pattern/stretches'

/** Rows whose moments are kept: each moment of a row holds all pegs of the loom. */
const most = 12

/** The moments of the rows that were asked for last, by the row as it was worked. */
export class KeptMoments {
  readonly #kept = new Map<Stretch['run'], readonly Moment[]>()

  of(stretch: Stretch, habits: Habits): readonly Moment[] {
    const { run } = stretch
    const moments = this.#kept.get(run) ?? momentsOf(stretch, habits)
    this.#kept.delete(run)
    this.#kept.set(run, moments)
    for (const oldest of this.#kept.keys()) {
      if (this.#kept.size <= most) break
      this.#kept.delete(oldest)
    }
    return moments
  }
}
