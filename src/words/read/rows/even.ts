import type { Body } from '../nodes'
import type { ReadRow } from '../reading'
import type { Words } from './rows'
import { isPlain } from './wordsOfRows'

const bodies = new WeakMap<Body, Body>()

/** The same words, read as "knit the knits and purl the purls". */
function asLoopsLie(words: Words): Words {
  const { body } = words
  const range = body.workEven?.range
  if (!range) return words
  let lying = bodies.get(body)
  if (!lying) {
    lying = {
      ...body,
      items: [{ do: 'appear', last: 0, range }],
      appears: { range, set: false },
      workEven: null,
    }
    bodies.set(body, lying)
  }
  return { ...words, body: lying }
}

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
  !last || words.body.workEven?.set || (steady && isPlain(last)) ? steady : asLoopsLie(words)
