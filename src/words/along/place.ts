import { readStop, type Along, type Stop } from './along'
import type { Stint } from './stints'

/** Where in a piece somebody is who knits it. */
export interface Place {
  /** Index of the stop; that behind the last one when all is worked. */
  readonly stop: number
  /** The stint that comes next in it, from 0. */
  readonly stint: number
  /** The stint that the mark stood on when the stop before was done. */
  readonly left: number
}

export const start: Place = { stop: 0, stint: 0, left: 0 }

/** What one press does: a whole row or edge, or one stint. */
export const strides = ['row', 'stitch'] as const
export type Stride = (typeof strides)[number]

export const stopAt = ({ stops }: Along, { stop }: Place): Stop | null => stops[stop] ?? null
export const isDone = ({ stops }: Along, { stop }: Place): boolean => stop >= stops.length

const lastStint = (along: Along, stop: Stop | undefined): number =>
  stop ? Math.max(0, readStop(along, stop).stints.length - 1) : 0

export const stintAt = (along: Along, place: Place): Stint | null => {
  const stop = stopAt(along, place)
  return stop ? (readStop(along, stop).stints[place.stint] ?? null) : null
}

/** One stride on; the same place when all is worked. */
export function next(along: Along, place: Place, by: Stride): Place {
  const stop = stopAt(along, place)
  if (!stop) return place
  if (by === 'stitch' && place.stint < lastStint(along, stop))
    return { ...place, stint: place.stint + 1 }
  return { stop: place.stop + 1, stint: 0, left: place.stint }
}

/**
 * One stride back. By rows a row that is begun is left to its start first; from there, to where the mark
 * stood when the row before was done. The same place at the very beginning.
 */
export function back(along: Along, place: Place, by: Stride): Place {
  const { stop, stint } = place
  if (stint > 0) return { ...place, stint: by === 'row' ? 0 : stint - 1 }
  if (stop === 0) return place
  const last = lastStint(along, along.stops[stop - 1])
  return { stop: stop - 1, stint: by === 'row' ? Math.min(place.left, last) : last, left: 0 }
}

/** To a stint of the same stop. */
export const toStint = (place: Place, stint: number): Place => ({ ...place, stint })

/** To the same stint in another copy of the repeat, from 0; the same place where there is none. */
export function toCopy(along: Along, place: Place, copy: number): Place {
  const stop = stopAt(along, place)
  if (!stop) return place
  const { stints } = readStop(along, stop)
  const of = stints[place.stint]?.copy?.of
  const found = stints.findIndex((stint) => stint.copy?.of === of && stint.copy?.at === copy)
  return of === undefined || found < 0 ? place : toStint(place, found)
}

/** A place inside of the piece that is there. */
export function clamp(along: Along, { stop, stint, left }: Place): Place {
  const at = Math.min(stop, along.stops.length)
  return { stop: at, stint: Math.min(stint, lastStint(along, along.stops[at])), left }
}
