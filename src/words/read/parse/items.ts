import type { ChoiceItem, Copies, FillItem, GapItem, GroupItem, Item, StitchItem } from '../nodes'
import { keepsItsLoop, type Stitch } from '../../../stitches/stitch'
import { standardVocabulary } from '../../../stitches/vocabulary'
import type { Meaning } from '../terms/spellings'
import type { TextRange } from '../reading'

export const stitchItem = (
  stitch: Stitch,
  count: number | null,
  range: TextRange,
  atBack?: true,
): StitchItem =>
  atBack ? { do: 'stitch', stitch, count, range, atBack } : { do: 'stitch', stitch, count, range }

export const groupItem = (items: readonly Item[], copies: Copies, range: TextRange): GroupItem => ({
  do: 'group',
  items,
  copies,
  range,
})

/** `rows` null: each loop as it looks. */
export const fillItem = (
  rows: FillItem['rows'],
  whole: boolean,
  until: Copies | null,
  range: TextRange,
): FillItem => ({
  do: 'fill',
  rows,
  whole,
  last: until?.kind === 'until' ? until.last : 0,
  range,
})

export const once: Copies = { kind: 'fixed', times: 1 }
export const untilEnd: Copies = { kind: 'until', last: 0, ending: false }

/** May a bare "knit" or "slip" of this stitch mean all the pegs there are? */
export const mayFill = keepsItsLoop

/** The item that a spelling makes, worked `count` times. */
export function itemOf(
  meaning: Meaning,
  count: number | null,
  range: TextRange,
): StitchItem | ChoiceItem | GapItem {
  if (meaning.is === 'stitch') return stitchItem(meaning.stitch, count, range, meaning.atBack)
  if (meaning.is === 'lacking') {
    const item = stitchItem(meaning.stitch, count, range)
    return meaning.twin ? { ...item, twinOf: meaning.name } : item
  }
  if (meaning.is === 'choice') return { do: 'choice', rule: meaning.rule, count: count ?? 1, range }
  // A cross whose halves are not told takes its loops all the same: they are knitted for now.
  if (meaning.is === 'cross' && meaning.size > 0)
    return stitchItem(standardVocabulary.withRole('knit'), meaning.size * (count ?? 1), range)
  return { do: 'gap', number: null, range }
}

/** From the first of two ranges to the end of the second. */
export const spanOf = (first: TextRange, last: TextRange): TextRange => ({
  from: first.from,
  to: Math.max(first.to, last.to),
})
