import { pointUnder } from '../charts/pressed'
import type { Zoom } from '../charts/zoom.svelte'
import type { FabricState } from '../state/fabric.svelte'
import type { FabricGeometry } from '../../drawing/fabric/fabric'

/** So far a press may slip, px, and still be no drag. */
const slip = 5

interface Drag {
  readonly pointer: number
  x: number
  y: number
  moved: boolean
}

/**
 * The pointer on the fabric: a press goes to a place, a drag turns the tube or moves what is in
 * view. A finger scrolls by itself wherever it does not turn.
 */
export function pressOn(
  fabric: FabricState,
  zoom: Zoom,
  geometry: () => FabricGeometry,
  svg: SVGSVGElement,
) {
  let drag: Drag | null = null

  const goTo = (event: PointerEvent): void => {
    const point = pointUnder(event, svg)
    const hit = point && geometry().at(point.x, point.y)
    if (hit) fabric.goTo(hit.row, hit.peg)
  }

  return {
    down(event: PointerEvent): void {
      if (event.button !== 0) return
      drag = { pointer: event.pointerId, x: event.clientX, y: event.clientY, moved: false }
    },
    move(event: PointerEvent): void {
      if (drag?.pointer !== event.pointerId) return
      const [dx, dy] = [event.clientX - drag.x, event.clientY - drag.y]
      const turns = fabric.view === 'tube'
      if (!drag.moved) {
        if (Math.hypot(dx, dy) < slip) return
        drag.moved = true
        svg.setPointerCapture(event.pointerId)
      }
      drag.x = event.clientX
      drag.y = event.clientY
      if (turns) fabric.turnBy(dx / (geometry().stitch.width * zoom.scale))
      if (event.pointerType !== 'touch') zoom.view?.scrollBy(turns ? 0 : -dx, -dy)
    },
    up(event: PointerEvent): void {
      if (drag && !drag.moved && event.type === 'pointerup') goTo(event)
      drag = null
      if (svg.hasPointerCapture(event.pointerId)) svg.releasePointerCapture(event.pointerId)
    },
  }
}
