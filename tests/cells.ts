import type { Cell } from '../src/pattern/pattern'
import type { Stitch } from '../src/stitches/stitch'
import { standardVocabulary, Vocabulary } from '../src/stitches/vocabulary'

/** Cells as ids, '' for a column in which a stitch goes on. */
export const cellsFrom = (ids: readonly string[]): Cell[] =>
  ids.map((id) => (id === '' ? null : standardVocabulary.stitch(id)))

export const idsIn = (cells: readonly Cell[] = []): string[] => cells.map((cell) => cell?.id ?? '')

/** A deep copy that shares nothing but the vocabulary and its stitches, which are known as objects. */
export function copyOf<T>(value: T): T {
  if (typeof value !== 'object' || value === null || isShared(value)) return value
  if (Array.isArray(value)) return value.map(copyOf) as T
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, copyOf(part)])) as T
}

const isShared = (value: object): boolean =>
  value instanceof Vocabulary || standardVocabulary.placeOf(value as Stitch) >= 0
