import { emptyStack, type Stack } from '../../../loom/strand'
import { workRow } from '../../../loom/work'
import type { Memory } from '../memory'
import type { ReadRow } from '../reading'
import type { LoomThen } from './place'
import { laidOf } from './work'

/** The loops as they look after the rows told: they are worked for it, and only where words ask. */
export class Looks {
  #stacks: readonly Stack[] = []
  #rows = 0

  constructor(private readonly memory: Memory) {}

  /** The loom with its loops as they look. Loops that no row has worked since the cast-on look knit. */
  after(told: readonly ReadRow[], place: LoomThen): LoomThen {
    for (; this.#rows < told.length; this.#rows++) {
      const worked = this.memory.rows.get(told[this.#rows] as ReadRow)?.stretch
      if (!worked) continue
      const seen = this.#on(worked.before)
      const row = laidOf(worked)
      this.#stacks = row ? workRow(seen, row, this.memory.places.habits).after.stacks : seen.stacks
    }
    return this.#on(place)
  }

  #on(place: LoomThen): LoomThen {
    const stacks = place.stacks.map((stack, peg) => {
      const loops = this.#stacks[peg] ?? emptyStack
      return stack === emptyStack || loops === emptyStack ? stack : loops
    })
    return { ...place, stacks }
  }
}
