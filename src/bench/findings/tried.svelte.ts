import type { Repairs } from '../../pattern/finding'
import { whenIdle } from '../widgets/whenIdle'

interface Labelled {
  readonly label: string
}

/** Something found, whose repairs are tried out when they are asked for. */
export interface Offer {
  readonly fixes: readonly Labelled[]
  /** The same, one after the other, where trying all may take long. */
  readonly repairs?: Repairs | undefined
}

/** Milliseconds for trying repairs at once; the others are tried while nothing else is to be done. */
const atOnce = 8

interface Tried {
  readonly fixes: readonly Labelled[]
  readonly isAll: boolean
}

const nothingTried: Tried = { fixes: [], isAll: false }

/**
 * The repairs of what is offered, as far as they have been tried: on a small piece all of them at once, on a large
 * one after the other without keeping the hand waiting. Null: nobody asks. Made while a component is set up.
 */
export function triedOf(offer: () => Offer | null): { readonly value: Tried } {
  let value = $state.raw<Tried>(nothingTried)
  $effect.pre(() => {
    const now = offer()
    const first = now ? tried(now) : nothingTried
    value = first
    if (!now?.repairs || first.isAll) return
    const { repairs } = now
    let callOff: () => void
    const goOn = () => {
      const isAll = !repairs.tryNext()
      value = { fixes: repairs.soFar, isAll }
      if (!isAll) callOff = whenIdle(goOn)
    }
    callOff = whenIdle(goOn)
    return () => callOff()
  })
  return {
    get value() {
      return value
    },
  }
}

function tried({ fixes, repairs }: Offer): Tried {
  if (!repairs) return { fixes, isAll: true }
  const end = performance.now() + atOnce
  let more = true
  while (more && performance.now() < end) more = repairs.tryNext()
  return { fixes: repairs.soFar, isAll: !more }
}
