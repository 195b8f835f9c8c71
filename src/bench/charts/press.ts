import { landing, paint } from '../../pattern/edits/paint'
import type { Spot } from '../../pattern/history'
import type { Geometry } from '../../drawing/geometry'
import { columnAt, eraseHere, pickUpHere } from '../commands/chart'
import { applyToStitches } from '../commands/lost'
import { pointUnder } from './pressed'
import { followsTheFirst, type Bench } from '../state/bench.svelte'
import { termOf } from '../../languages/languages'

/** Cells between two places, so that a quick drag leaves no gaps. */
export function between(from: Spot, to: Spot): Spot[] {
  const steps = Math.max(Math.abs(to.row - from.row), Math.abs(to.peg - from.peg))
  return Array.from({ length: steps }, (_, i) => {
    const part = (i + 1) / steps
    return {
      row: Math.round(from.row + (to.row - from.row) * part),
      peg: Math.round(from.peg + (to.peg - from.peg) * part),
    }
  })
}

/**
 * The pointer on a chart: one press, however far it is drawn, is one gesture and one step to take
 * back. A stitch of several columns is set side by side along the drag. A finger works when it is drawn
 * on or leaves, so that two that are set down do nothing. In the hand Mark, what is tapped second is
 * the other corner.
 */
export function pressOn(bench: Bench, geometry: () => Geometry, svg: SVGSVGElement) {
  let gesture: string | null = null
  let start: Spot | null = null
  let last: Spot | null = null
  /** Where a finger was set down that did nothing yet. */
  let touched: Spot | null = null
  /** The place that was tapped last with Mark in hand. */
  let tapped: Spot | null = null

  const spotUnder = (event: PointerEvent): Spot | null => {
    const point = pointUnder(event, svg)
    const hit = point && geometry().at(point.x, point.y)
    return hit && { row: hit.row, peg: hit.peg }
  }

  const paintAt = (spot: Spot): void => {
    const { stitch } = bench
    const { width } = stitch
    const first = start as Spot
    const peg = first.peg + Math.floor((spot.peg - first.peg) / width) * width
    bench.goTo({ row: spot.row, peg })
    const column = columnAt(bench)
    const where = landing(bench.pattern, bench.stitch, spot.row, column)
    if (!where.can) bench.say(where.reason)
    else
      applyToStitches(
        bench,
        `Paint ${termOf(stitch, bench.pattern.style.terms).abbr}`,
        (pattern) => paint(pattern, bench.stitch, spot.row, column),
        gesture,
      )
  }

  const workOn = (spot: Spot): void => {
    if (bench.hand === 'paint') paintAt(spot)
    else if (bench.hand === 'erase') {
      bench.goTo(spot)
      eraseHere(bench, gesture)
    } else if (bench.hand === 'mark') bench.goTo(spot, start)
  }

  const begin = (spot: Spot): void => {
    bench.goTo(spot)
    if (bench.hand === 'pick up') {
      pickUpHere(bench)
      return
    }
    if (bench.isSecond && bench.hand !== 'mark') {
      bench.say(followsTheFirst)
      return
    }
    gesture = bench.newGesture()
    start = last = bench.spot
    if (bench.hand !== 'mark') workOn(spot)
  }

  const goOnTo = (spot: Spot): void => {
    if (!last || (spot.row === last.row && spot.peg === last.peg)) return
    const path = bench.hand === 'mark' ? [spot] : between(last, spot)
    path.forEach(workOn)
    last = spot
  }

  const tap = (spot: Spot): void => {
    const isOther = bench.hand === 'mark' && tapped === bench.spot && !bench.corner
    if (isOther) bench.goTo(spot, tapped)
    else begin(spot)
    tapped = bench.hand === 'mark' && !isOther ? bench.spot : null
  }

  const end = (): void => {
    gesture = start = last = touched = null
  }

  return {
    down(event: PointerEvent): void {
      if (event.button !== 0) return
      const spot = spotUnder(event)
      if (!spot) return
      svg.setPointerCapture(event.pointerId)
      bench.hover = null
      if (event.shiftKey) bench.goTo(spot, bench.corner ?? bench.spot)
      else if (event.pointerType === 'touch') touched = spot
      else begin(spot)
    },
    move(event: PointerEvent): void {
      const spot = spotUnder(event)
      if (touched && spot && (spot.row !== touched.row || spot.peg !== touched.peg)) {
        begin(touched)
        touched = null
      }
      if (gesture && spot) goOnTo(spot)
      else if (!gesture) bench.hover = event.pointerType === 'mouse' ? spot : null
    },
    up(event: PointerEvent): void {
      if (touched && event.type === 'pointerup') tap(touched)
      end()
      if (svg.hasPointerCapture(event.pointerId)) svg.releasePointerCapture(event.pointerId)
    },
    /** A second finger was set down: what the first has done stays, and it does no more. */
    end,
    leave(): void {
      bench.hover = null
    },
  }
}
