/**
 * What differs between two versions of a document, as plain data that JSON can hold: small where an
 * edit was small, however large the document. What both versions share is the same object in both, so
 * it is never looked into; and it is shared again by the version that is made from the difference.
 */
import type { Stitch } from '../stitches/stitch'
import type { Vocabulary } from '../stitches/vocabulary'

/** JSON, with stitches by their ids. */
type Plain = string | number | boolean | null | readonly Plain[] | { readonly [key: string]: Plain }

export type Delta =
  /** Another value altogether. */
  | { readonly is: Plain }
  /** A text or list: `take` of its parts from `at` on are replaced. */
  | { readonly at: number; readonly take: number; readonly put: string | readonly Plain[] }
  /** A list of as many parts: some of them differ, each by its place. */
  | { readonly parts: readonly (readonly [number, Delta])[] }
  /** An object: keys that differ, and keys that it has no more. */
  | { readonly keys: { readonly [key: string]: Delta }; readonly gone?: readonly string[] }

const stitchKey = 'stitch id'
type Named = Readonly<Record<string, unknown>>

const isNamed = (value: unknown): value is Named => typeof value === 'object' && value !== null

/** From `before` to `after`; null where they are one. Both are made of one vocabulary. */
export function deltaBetween(
  before: unknown,
  after: unknown,
  vocabulary: Vocabulary,
): Delta | null {
  if (Object.is(before, after)) return null
  if (typeof before === 'string' && typeof after === 'string') {
    const { at, take, end } = between(before, after)
    return { at, take, put: after.slice(at, end) }
  }
  if (Array.isArray(before) && Array.isArray(after)) return ofLists(before, after, vocabulary)
  if (isObject(before, vocabulary) && isObject(after, vocabulary)) {
    const keys: Record<string, Delta> = {}
    for (const [key, value] of Object.entries(after)) {
      if (value === undefined) continue
      const delta = deltaBetween(before[key], value, vocabulary)
      if (delta) keys[key] = delta
    }
    const gone = Object.keys(before).filter(
      (key) => before[key] !== undefined && after[key] === undefined,
    )
    return { keys, ...(gone.length > 0 && { gone }) }
  }
  return { is: plain(after, vocabulary) }
}

function ofLists(
  before: readonly unknown[],
  after: readonly unknown[],
  vocabulary: Vocabulary,
): Delta {
  const { at, take, end } = between(before, after)
  const put = after.slice(at, end)
  const isOfObjects = put.every((value) => isObject(value, vocabulary))
  if (take !== put.length || !isOfObjects)
    return { at, take, put: put.map((value) => plain(value, vocabulary)) }
  const parts = put.flatMap((value, index): [number, Delta][] => {
    const delta = deltaBetween(before[at + index], value, vocabulary)
    return delta ? [[at + index, delta]] : []
  })
  return { parts }
}

/** The part in which two texts or lists differ: `take` from `at` on in the first, up to `end` in the second. */
function between<T>(
  before: ArrayLike<T>,
  after: ArrayLike<T>,
): { at: number; take: number; end: number } {
  const most = Math.min(before.length, after.length)
  let at = 0
  while (at < most && Object.is(before[at], after[at])) at++
  let same = 0
  while (
    same < most - at &&
    Object.is(before[before.length - 1 - same], after[after.length - 1 - same])
  )
    same++
  return { at, take: before.length - same - at, end: after.length - same }
}

const isStitch = (value: unknown, vocabulary: Vocabulary): value is Stitch =>
  isNamed(value) && vocabulary.placeOf(value as unknown as Stitch) >= 0

/** Is it an object whose keys are compared one by one? */
const isObject = (value: unknown, vocabulary: Vocabulary): value is Named =>
  isNamed(value) && !Array.isArray(value) && !isStitch(value, vocabulary)

function plain(value: unknown, vocabulary: Vocabulary): Plain {
  if (isStitch(value, vocabulary)) return { [stitchKey]: value.id }
  if (Array.isArray(value)) return value.map((one) => plain(one, vocabulary))
  if (!isNamed(value)) return value as Plain
  const entries = Object.entries(value).filter(([, one]) => one !== undefined)
  return Object.fromEntries(entries.map(([key, one]) => [key, plain(one, vocabulary)]))
}

function whole(value: Plain, vocabulary: Vocabulary): unknown {
  if (Array.isArray(value)) return (value as readonly Plain[]).map((one) => whole(one, vocabulary))
  if (!isNamed(value)) return value
  const id = value[stitchKey]
  if (typeof id === 'string') return vocabulary.stitch(id)
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [key, whole(one, vocabulary)]),
  )
}

/**
 * The version that `delta` leads to from `before`. Throws a RangeError or TypeError where it does not
 * belong to it; what it gives then is not known to be a document, so check it as a file is checked.
 */
export function withDelta(before: unknown, delta: Delta, vocabulary: Vocabulary): unknown {
  if ('is' in delta) return whole(delta.is, vocabulary)
  if ('at' in delta) {
    const { at, take, put } = delta
    if (typeof before === 'string' && typeof put === 'string')
      return before.slice(0, at) + put + before.slice(at + take)
    if (!Array.isArray(before) || typeof put === 'string')
      throw new TypeError('A part of a list or text is to be replaced where there is none.')
    return (before as unknown[]).toSpliced(at, take, ...put.map((one) => whole(one, vocabulary)))
  }
  if ('parts' in delta) {
    if (!Array.isArray(before))
      throw new TypeError('Parts of a list are changed where there is none.')
    const list = [...(before as unknown[])]
    for (const [at, part] of delta.parts) {
      if (!(at in list)) throw new RangeError(`Part ${at} of a list of ${list.length} is changed.`)
      list[at] = withDelta(list[at], part, vocabulary)
    }
    return list
  }
  if (!isNamed(before)) throw new TypeError('Keys are changed where there is no object.')
  const object: Record<string, unknown> = { ...before }
  for (const key of delta.gone ?? []) delete object[key]
  for (const [key, part] of Object.entries(delta.keys))
    object[key] = withDelta(before[key], part, vocabulary)
  return object
}
