import type { Along } from '../../words/along/along'
import { isDone, stopAt, type Place } from '../../words/along/place'
import { changedSince } from '../../words/along/since'
import { whenOf } from '../../shelf/dates'
import { upperFirst, lowerFirst } from '../../languages/english/forms'
import type { KeptAlong } from './kept'
import { listStops, stopName } from './names'

/** Where somebody goes on, and what is said of it; a sentence each. */
export interface Return {
  readonly place: Place
  readonly said: readonly string[]
  /** Something was changed since: it is said with more weight. */
  readonly isChanged: boolean
}

/** Back to the place that was kept, in the piece as it is now. */
export function goBack(along: Along, kept: KeptAlong, now = new Date()): Return {
  const was: Place = { stop: kept.stop, stint: kept.stint, left: kept.left }
  const since = changedSince(along, was, [...kept.prints])
  const when = whenOf(kept.date, now)
  const left = when ? `where you left it, ${when}` : 'where you left it'
  if (!since) {
    const name = isDone(along, was) ? 'All is worked' : stopName(along, stopAt(along, was))
    return { place: was, said: [`${name}, ${left}.`], isChanged: false }
  }
  const { place, own, before, after, goneAfter } = since
  const name = stopName(along, stopAt(along, place))
  const old = kept.name || 'Your row'
  const said: string[] = []
  if (own === 'gone')
    said.push(
      `${old}, ${left}, is no longer there. You are at ${lowerFirst(name)}, the next that is left.`,
    )
  else if (own === 'changed')
    said.push(`${old}, ${left}, reads differently now. It begins at its first stitch.`)
  else if (name !== old)
    said.push(`${old}, ${left}, is ${lowerFirst(name)} now. You are at the same stitch in it.`)
  else said.push(`${name}, ${left}.`)
  if (before.length > 0)
    said.push(
      `Changed or new before it: ${listStops(along, before)}. Look whether what you knitted still fits.`,
    )
  if (after.length > 0) said.push(`Changed, and still to come: ${listStops(along, after)}.`)
  else if (goneAfter > 0) said.push('After it rows were removed.')
  return { place, said: said.map(upperFirst), isChanged: true }
}
