/** Milliseconds without a change after which the hand rests. */
const rest = 250

/**
 * A value that follows another at once, or, while `waits` says so, when that has not changed for
 * a while: for what is too slow to show at every stroke. It lasts as long as the page.
 */
export function rested<Value>(live: () => Value, waits: () => boolean): { readonly value: Value } {
  let late = $state.raw(live())
  $effect.root(() => {
    $effect(() => {
      const now = live()
      if (!waits()) {
        late = now
        return
      }
      const clock = setTimeout(() => (late = now), rest)
      return () => clearTimeout(clock)
    })
  })
  return {
    get value() {
      return waits() ? late : live()
    },
  }
}
