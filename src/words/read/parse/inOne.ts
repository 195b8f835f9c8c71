import type { Stitch } from '../../../stitches/stitch'
import { standardVocabulary } from '../../../stitches/vocabulary'
import type { Item } from '../nodes'
import { madeInOne, noStitch, standsIn } from '../remarks/parsing'
import { stitchItem } from './items'
import type { Parsing } from './parsing'
import { termOf } from '../../../languages/languages'

/** So many loops are made of one at most; more cannot be meant. */
const mostMade = 9

const knit = standardVocabulary.withRole('knit')
const twisted = standardVocabulary.withRole('e-wrap')
const both = standardVocabulary.withRole('knit twice')
const left = standardVocabulary.withRole('make left')
const right = standardVocabulary.withRole('make right')

/**
 * "(k1, yo, k1) in next st": several stitches worked into one loop. Knit and twisted knit in one
 * are kfb (common practice); for others increases that come to as many loops stand in, and a remark
 * says so.
 */
export function readInOne(
  parsing: Parsing,
  items: readonly Item[],
  start: number,
): readonly Item[] {
  const range = parsing.cursor.rangeFrom(start)
  const said = parsing.quote(start)
  const worked = stitchesOf(items)
  if (worked.length === 2 && worked[0] === knit && worked[1] === twisted)
    return [stitchItem(both, 1, range)]
  if (worked.length === 1 && worked[0]) return [stitchItem(worked[0], 1, range)]
  if (worked.length === 0) {
    parsing.remark(noStitch(said, range))
    return [{ do: 'gap', number: null, range }]
  }
  if (worked.length === 2) {
    parsing.remark(standsIn(said, both, range))
    return [stitchItem(both, 1, range)]
  }
  const instead = [left, knit, ...worked.slice(2).map((_, index) => (index % 2 ? left : right))]
  const words = instead
    .map((stitch) => (stitch === knit ? 'k1' : termOf(stitch, 'us').abbr))
    .join(', ')
  parsing.remark(madeInOne(said, worked.length, words, range))
  return instead.map((stitch) => stitchItem(stitch, 1, range))
}

/** The loops that are made, one by one; none if it is not plain how many. */
function stitchesOf(items: readonly Item[]): readonly Stitch[] {
  const made: Stitch[] = []
  for (const item of items) {
    if (item.do !== 'stitch' || item.stitch.makes !== 1 || item.stitch.takes > 1) return []
    const count = item.count ?? 1
    if (made.length + count > mostMade) return []
    for (let n = 0; n < count; n++) made.push(item.stitch)
  }
  return made
}
