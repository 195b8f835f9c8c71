import type { Zoom } from './zoom.svelte'

interface Finger {
  readonly x: number
  readonly y: number
}

/**
 * Two fingers on a drawing pan and zoom it, whatever is in the hand: what lay between them stays
 * between them. Each answers whether the finger is one of such two, also when the other has left.
 */
export function twoFingers(zoom: Zoom) {
  const fingers = new Map<number, Finger>()
  let goOn: ((zoom: number, to: Finger) => void) | null = null
  let begun = { apart: 1, zoom: 1 }
  /** There were two: until all have left none of them works on the drawing. */
  let isPair = false

  const middle = (): { at: Finger; apart: number } => {
    const [a, b] = [...fingers.values()]
    if (!a || !b) throw new Error('Fewer than two fingers have no middle')
    const apart = Math.max(1, Math.hypot(a.x - b.x, a.y - b.y))
    return { at: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, apart }
  }

  return {
    down({ pointerType, pointerId, clientX: x, clientY: y }: PointerEvent): boolean {
      if (pointerType !== 'touch') return false
      fingers.set(pointerId, { x, y })
      if (fingers.size === 2) {
        isPair = true
        const { at, apart } = middle()
        begun = { apart, zoom: zoom.value }
        goOn = zoom.hold(at)
      }
      return isPair
    },
    move({ pointerId, clientX: x, clientY: y }: PointerEvent): boolean {
      if (!fingers.has(pointerId)) return false
      fingers.set(pointerId, { x, y })
      if (goOn && fingers.size === 2) {
        const { at, apart } = middle()
        goOn((begun.zoom * apart) / begun.apart, at)
      }
      return isPair
    },
    up({ pointerId }: PointerEvent): boolean {
      if (!fingers.delete(pointerId)) return false
      const was = isPair
      goOn = null
      if (fingers.size === 0) isPair = false
      return was
    },
  }
}
