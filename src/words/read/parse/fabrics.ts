import type { Stitch } from '../../../stitches/stitch'
import { standardVocabulary } from '../../../stitches/vocabulary'
import type { Copies, FabricItem, Item } from '../nodes'
import type { TextRange } from '../reading'
import { readLimits } from '../limits'
import { askMoss } from '../remarks/parsing'
import { readUntil } from './extents'
import type { Parsing } from './parsing'
import * as phrases from './phrases'
import { spanOf } from './items'
import type { Stars } from './stars'

const k = standardVocabulary.withRole('knit')
const p = standardVocabulary.withRole('purl')

/**
 * Fabrics by name, as the right side looks: one list of stitches for each row until the rows begin
 * anew. The right side of a loom always faces, so garter stitch changes from row to row there, flat
 * as well as in the round (common practice).
 */
const fabrics = {
  garter: [[k], [p]],
  seed: [
    [k, p],
    [p, k],
  ],
  double: [
    [k, p],
    [k, p],
    [p, k],
    [p, k],
  ],
} as const satisfies Record<string, FabricItem['rows']>

const named: readonly (readonly [phrases: readonly string[], rows: FabricItem['rows']])[] = [
  [phrases.garter, fabrics.garter],
  [phrases.doubleMoss, fabrics.double],
  [phrases.seed, fabrics.seed],
]

/** "garter stitch", "in seed st to last 2 sts", "2x2 rib": false if no such words stand here. */
export function readFabric(parsing: Parsing, stars: Stars): boolean {
  const { cursor } = parsing
  const start = cursor.at
  const put = (rows: FabricItem['rows'], whole: boolean): true => {
    const range = cursor.rangeFrom(start)
    parsing.cycle = Math.max(parsing.cycle, twoRows, rows.length)
    stars.items.push(fabricItem(rows, whole, readUntil(cursor), range))
    return true
  }
  for (const [list, rows] of named) if (cursor.eatOne(list, 'stitch')) return put(rows, false)
  if (cursor.eatOne(phrases.moss, 'stitch')) {
    if (parsing.terms === 'us')
      parsing.remark(askMoss(parsing.quote(start), cursor.rangeFrom(start)))
    return put(fabrics.seed, false)
  }
  if (cursor.eatOne(phrases.ribByNumbers, 'stitch')) {
    const [knits, purls] = cursor.numbers.map(({ value }) => Math.min(value, readLimits.rib))
    return put([ribOf([k, knits ?? 1], [p, purls ?? 1])], true)
  }
  return readRib(parsing, stars)
}

/** Worked back and forth, every other row meets the repeat from its other end. */
const twoRows = 2

const ribOf = (...parts: readonly (readonly [stitch: Stitch, count: number])[]): Stitch[] =>
  parts.flatMap(([stitch, count]) => Array.from({ length: count }, () => stitch))

/** "k1, p1 rib", "(k2, p2) ribbing": the stitches stand before the word. */
function readRib(parsing: Parsing, stars: Stars): boolean {
  const { cursor } = parsing
  if (!cursor.looksAtOne(phrases.rib)) return false
  const before = stars.items.at(-1)
  const group =
    before?.do === 'group' && before.copies.kind === 'fixed' && before.copies.times === 1
  const list = group ? before.items : stars.items.slice(-2)
  const parts = list.map(partOf)
  if (parts.length < 2 || new Set(parts.map((part) => part?.[0])).size < 2) return false
  const cells = parts.every((part) => part !== null) ? ribOf(...parts) : []
  const [first] = list
  if (cells.length === 0 || !first) return false
  stars.items.splice(group ? -1 : -2)
  const start = cursor.at
  cursor.eatOne(phrases.rib, 'stitch')
  const range = spanOf(before && group ? before.range : first.range, cursor.rangeFrom(start))
  parsing.cycle = Math.max(parsing.cycle, twoRows)
  stars.items.push(fabricItem([cells], true, readUntil(cursor), range))
  stars.sentenceEnds()
  return true
}

const partOf = (item: Item): readonly [Stitch, number] | null =>
  item.do === 'stitch' && item.stitch.takes === 1 && item.stitch.makes === 1
    ? [item.stitch, Math.min(item.count ?? 1, readLimits.rib)]
    : null

const fabricItem = (
  rows: FabricItem['rows'],
  whole: boolean,
  until: Copies | null,
  range: TextRange,
): FabricItem => ({
  do: 'fabric',
  rows,
  whole,
  last: until?.kind === 'until' ? until.last : 0,
  range,
})
