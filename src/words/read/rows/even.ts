import { memo } from '../../../pattern/memo'
import { fillItem } from '../parse/items'
import type { Body } from '../nodes'
import type { ReadRow } from '../reading'
import type { Words } from './rows'
import { isPlain } from './wordsOfRows'

/** The same words, read as "knit the knits and purl the purls". */
const asLoopsLie = memo((body: Body): Body => {
  const range = body.workEven?.range
  if (!range) return body
  return {
    ...body,
    items: [fillItem(null, false, null, range)],
    appears: { range, set: false },
    workEven: null,
  }
})

/**
 * What "work even" works: knit stitches are knitted and purl stitches purled, as they lie (common
 * practice), also after crosses and decreases. Where the last row has only these it is worked again.
 * "As set" is a pattern: `steady`, the last row that kept the stitch count, is worked again.
 */
export const evenRow = (
  words: Words,
  steady: Words | null,
  last: ReadRow | undefined,
): Words | null =>
  !last || words.body.workEven?.set || (steady && isPlain(last))
    ? steady
    : { ...words, body: asLoopsLie(words.body) }
