import { landing, paint } from '../../pattern/edits/paint'
import type { Spot } from '../../pattern/history'
import type { Geometry } from '../../drawing/geometry'
import { columnAt, eraseHere, pickUpHere } from '../commands/chart'
import { applyToStitches } from '../commands/lost'
import { numberAt } from '../../drawing/flatGeometry'
import { handleUnder, type Handle } from './handles'
import { pressOnBlock, pressOnNumbers, type PressElsewhere, type Under } from './pressElsewhere'
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

/** Milliseconds that a finger rests until it marks. */
const restTime = 400

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
  /** A finger that rests, or one on a corner of the mark, marks whatever is in the hand. */
  let isMarking = false
  let rest: ReturnType<typeof setTimeout> | undefined
  /** The corner of the mark that a finger was set down on. */
  let handle: Handle | null = null
  const handNow = () => (isMarking ? 'mark' : bench.hand)
  const others = [pressOnBlock(bench), pressOnNumbers(bench)]
  let other: PressElsewhere | null = null

  const spotUnder = (event: PointerEvent): Spot | null => {
    const point = pointUnder(event, svg)
    const hit = point && geometry().at(point.x, point.y)
    return hit && { row: hit.row, peg: hit.peg }
  }
  const under = (event: PointerEvent): Under => {
    const point = pointUnder(event, svg)
    return {
      spot: spotUnder(event),
      number: point && numberAt(geometry(), point.x, point.y),
      isAdding: event.shiftKey,
    }
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
    const hand = handNow()
    if (hand === 'paint') paintAt(spot)
    else if (hand === 'erase') {
      bench.goTo(spot)
      eraseHere(bench, gesture)
    } else if (hand === 'mark') bench.goTo(spot, start)
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
    const path = handNow() === 'mark' ? [spot] : between(last, spot)
    path.forEach(workOn)
    last = spot
  }

  const tap = (spot: Spot): void => {
    const isOther = bench.hand === 'mark' && tapped === bench.spot && !bench.corner
    if (isOther) bench.goTo(spot, tapped)
    else begin(spot)
    tapped = bench.hand === 'mark' && !isOther ? bench.spot : null
  }

  /** Mark from this place on, as far as the finger is drawn. */
  const beginMark = (from: Spot, at: Spot): void => {
    isMarking = true
    touched = null
    gesture = bench.newGesture()
    start = from
    last = at
    bench.goTo(at, from)
  }

  const end = (): void => {
    clearTimeout(rest)
    gesture = start = last = touched = other = handle = null
    isMarking = false
  }

  return {
    down(event: PointerEvent): void {
      if (event.button !== 0) return
      other = others.find((one) => one.down(under(event))) ?? null
      const spot = spotUnder(event)
      if (!spot && !other) return
      svg.setPointerCapture(event.pointerId)
      bench.hover = null
      if (!spot || other) return
      if (event.shiftKey) bench.goTo(spot, bench.corner ?? bench.spot)
      else if (event.pointerType === 'touch') {
        handle = handleUnder(bench, geometry(), svg, event)
        touched = spot
        rest = setTimeout(() => {
          if (touched) beginMark(touched, touched)
        }, restTime)
      } else begin(spot)
    },
    move(event: PointerEvent): void {
      const isHeld = svg.hasPointerCapture(event.pointerId)
      if (other) {
        other.move(under(event))
        return
      }
      if (!isHeld && event.pointerType === 'mouse') others.forEach((one) => one.over(under(event)))
      const spot = spotUnder(event)
      if (touched && spot && (spot.row !== touched.row || spot.peg !== touched.peg)) {
        clearTimeout(rest)
        if (handle) beginMark(handle.other, handle.cell)
        else begin(touched)
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
