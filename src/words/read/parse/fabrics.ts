import type { Stitch } from '../../../stitches/stitch'
import { standardVocabulary } from '../../../stitches/vocabulary'
import type { FillItem, Item, StitchItem } from '../nodes'
import { readLimits } from '../limits'
import type { TextRange } from '../reading'
import { askMoss } from '../remarks/parsing'
import { readUntil } from './extents'
import type { Reader } from './parsing'
import * as phrases from './phrases'
import { fillItem, spanOf } from './items'

type Rows = NonNullable<FillItem['rows']>

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
} as const satisfies Record<string, Rows>

const named: readonly (readonly [phrases: readonly string[], rows: Rows])[] = [
  [phrases.garter, fabrics.garter],
  [phrases.doubleMoss, fabrics.double],
  [phrases.seed, fabrics.seed],
  [phrases.moss, fabrics.seed],
]

/** Worked back and forth, every other row meets the repeat from its other end. */
const twoRows = 2

/** "garter stitch", "in seed st to last 2 sts", "2x2 rib", "k1, p1 rib". */
export const readFabric: Reader = (parsing) => {
  const { cursor, found, settings, stars } = parsing
  const start = cursor.at
  const put = (rows: Rows, whole: boolean, range = cursor.rangeFrom(start)): true => {
    found.cycle = Math.max(found.cycle, twoRows, rows.length)
    return parsing.put(fillItem(rows, whole, readUntil(cursor), range))
  }
  for (const [list, rows] of named) {
    if (!cursor.eat(list, 'stitch')) continue
    if (list === phrases.moss && settings.terms === 'us')
      parsing.remark(askMoss(parsing.quote(start), cursor.rangeFrom(start)))
    return put(rows, false)
  }
  if (cursor.eat(phrases.ribByNumbers, 'stitch')) {
    const [knits, purls] = cursor.numbers.map(({ value }) => value)
    return put([[...times(k, knits), ...times(p, purls)]], true)
  }
  const rib = cursor.looksAt(phrases.rib) ? takeRib(stars.items) : null
  if (!rib) return false
  cursor.eat(phrases.rib, 'stitch')
  put([rib.cells], true, spanOf(rib.range, cursor.rangeFrom(start)))
  stars.sentenceEnds()
  return true
}

const times = (stitch: Stitch, count = 1): readonly Stitch[] =>
  Array.from({ length: Math.min(count, readLimits.rib) }, () => stitch)

/** "k1, p1 rib", "(k2, p2) ribbing": the stitches that stand before the word, taken out of the list. */
function takeRib(items: Item[]): { cells: readonly Stitch[]; range: TextRange } | null {
  const last = items.at(-1)
  const isOnce = last?.do === 'group' && last.copies.kind === 'fixed' && last.copies.times === 1
  const list = isOnce ? last.items : items.slice(-2)
  const cells = list.flatMap((item) => (isRibbed(item) ? times(item.stitch, item.count ?? 1) : []))
  const [first] = list
  if (!first || !list.every(isRibbed) || new Set(cells).size < 2) return null
  items.splice(isOnce ? -1 : -2)
  return { cells, range: isOnce ? last.range : first.range }
}

const isRibbed = (item: Item): item is StitchItem =>
  item.do === 'stitch' && item.stitch.takes === 1 && item.stitch.makes === 1
