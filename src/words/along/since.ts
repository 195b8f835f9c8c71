import { diffArrays } from 'diff'
import { memo } from '../../pattern/memo'
import { textOf, type Along } from './along'
import { clamp, type Place } from './place'

/** What each stop of a piece said, in a number each: enough to see what was changed since. */
export type Prints = readonly number[]

/** The same for the same piece. */
export const printsOf = memo((along: Along): Prints =>
  along.stops.map((stop) => {
    const { chart, stretch } = { chart: stop.stretch.chart?.chart ?? '', stretch: stop.stretch }
    return hash(`${stretch.kind}/${stretch.isRound ? 'round' : ''}/${chart}/${textOf(along, stop)}`)
  }),
)

/** FNV-1a over UTF-16 units, 32 bit. */
function hash(text: string): number {
  let sum = 0x811c9dc5
  for (let at = 0; at < text.length; at++) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193)
  return sum >>> 0
}

/** How a piece that is knitted was changed since the place in it was kept. */
export interface Since {
  /** The same place in the piece as it is now, or the nearest there is. */
  readonly place: Place
  /** What became of the row itself: it reads as it did, reads differently, or is gone. */
  readonly own: 'same' | 'changed' | 'gone'
  /** Stops that came before the place, less those that went. */
  readonly shift: number
  /** Stops, by their index now, that read differently or are new: before the place, and after it. */
  readonly before: readonly number[]
  readonly after: readonly number[]
  /** Stops that are gone after the place, and nothing stands for them. */
  readonly goneAfter: number
}

/** More stops than this that differ are not matched one by one. */
const mostDifferent = 3000

/** null: nothing was changed. */
export function changedSince(along: Along, kept: Place, was: Prints): Since | null {
  const now = printsOf(along)
  if (was.length === now.length && was.every((print, at) => print === now[at])) return null
  const found: { before: number[]; after: number[] } = { before: [], after: [] }
  let place: Place | null = null
  let own: Since['own'] = 'same'
  let goneAfter = 0
  for (const { from, oldFrom, count, oldCount, same } of stretchesOf(was, now)) {
    const inOld = kept.stop - oldFrom
    const isHere = place === null && inOld < oldCount
    const at = from + inOld
    if (isHere && inOld >= 0) {
      const stands = same || inOld < count
      own = same ? 'same' : stands ? 'changed' : 'gone'
      const stop = stands ? at : from + count
      place = same ? { ...kept, stop } : { stop, stint: 0, left: 0 }
    }
    if (same) continue
    for (let index = from; index < from + count; index++) {
      if (place && index === place.stop && own === 'changed') continue
      found[place === null || index < place.stop ? 'before' : 'after'].push(index)
    }
    if (place !== null && !isHere) goneAfter += Math.max(0, oldCount - count)
  }
  place ??= { ...kept, stop: now.length - was.length + kept.stop }
  const inside = clamp(along, place)
  return { place: inside, own, shift: inside.stop - kept.stop, ...found, goneAfter }
}

interface Stretch {
  readonly from: number
  readonly oldFrom: number
  readonly count: number
  readonly oldCount: number
  readonly same: boolean
}

/** The stops of now and of then side by side: those that are the same, and those that differ. */
function stretchesOf(was: Prints, now: Prints): readonly Stretch[] {
  const changes = diffArrays([...was], [...now], { maxEditLength: mostDifferent })
  if (!changes)
    return [{ from: 0, oldFrom: 0, count: now.length, oldCount: was.length, same: false }]
  const stretches: Stretch[] = []
  let [from, oldFrom] = [0, 0]
  let [count, oldCount] = [0, 0]
  const close = () => {
    if (count + oldCount > 0) stretches.push({ from, oldFrom, count, oldCount, same: false })
    from += count
    oldFrom += oldCount
    count = oldCount = 0
  }
  for (const { added, removed, value } of changes) {
    if (added) count += value.length
    else if (removed) oldCount += value.length
    else {
      close()
      const { length } = value
      stretches.push({ from, oldFrom, count: length, oldCount: length, same: true })
      from += length
      oldFrom += length
    }
  }
  close()
  return stretches
}
