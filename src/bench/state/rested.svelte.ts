import { onItsOwn } from './onItsOwn.svelte'

/** Milliseconds without a change after which the hand rests. */
const rest = 250

interface Rested<Value> {
  readonly value: Value
}

/**
 * A value that follows another at once, or, while `waits` says so, when that has not changed for
 * a while: for what is too slow to show at every stroke. Made while a component is set up, it ends with
 * it.
 */
export function rested<Value>(live: () => Value, waits: () => boolean): Rested<Value> {
  let late = $state.raw(live())
  $effect(() => {
    const now = live()
    if (!waits()) {
      late = now
      return
    }
    const clock = setTimeout(() => (late = now), rest)
    return () => clearTimeout(clock)
  })
  return {
    get value() {
      return waits() ? late : live()
    },
  }
}

/** The same for what lasts as long as the page. */
export const restedForGood = <Value>(live: () => Value, waits: () => boolean): Rested<Value> =>
  onItsOwn(() => rested(live, waits))
