import { describe, expect, it } from 'vitest'
import { termSets, type Terms } from '../../src/languages/terms'
import { stitchOf, standardVocabulary } from '../../src/stitches/vocabulary'
import { tradeSpellings } from '../../src/words/read/terms/spellings'
import { lex } from '../../src/words/read/lines/lex'
import { termOf } from '../../src/languages/languages'

/**
 * Names as published lists of knitting abbreviations give them (from memory). UK lists tell a
 * slipped decrease by its moves.
 */
const terms: readonly (readonly [id: string, set: Terms, abbr: string, name: string])[] = [
  ['m1l', 'us', 'm1L', 'make 1 left'],
  ['m1r', 'us', 'm1R', 'make 1 right'],
  ['m1l', 'uk', 'm1L', 'make 1 left'],
  ['m1r', 'uk', 'm1R', 'make 1 right'],
  ['k2tog', 'us', 'k2tog', 'knit two together'],
  ['ssk', 'us', 'ssk', 'slip, slip, knit'],
  ['ssk', 'uk', 'skpo', 'slip one, knit one, pass slipped stitch over'],
  ['p2tog', 'us', 'p2tog', 'purl two together'],
  ['ssp', 'us', 'ssp', 'slip, slip, purl through the back loops'],
  ['ssp', 'uk', 'p2tog tbl', 'purl two together through the back loops'],
  ['k3tog', 'us', 'k3tog', 'knit three together'],
  ['sk2p', 'us', 'sk2p', 'slip one, knit two together, pass slipped stitch over'],
  ['sk2p', 'uk', 'sk2po', 'slip one, knit two together, pass slipped stitch over'],
  ['cdd', 'us', 's2kp', 'centered double decrease'],
  ['cdd', 'uk', 's2kpo', 'centred double decrease'],
  ['kfb', 'us', 'kfb', 'knit into front and back'],
  ['yo', 'us', 'yo', 'yarn over'],
  ['slf', 'us', 'sl wyif', 'slip, yarn in front'],
  ['mb', 'us', 'mb', 'make bobble'],
  ['2/2 LC', 'us', '2/2 LC', 'left cross, two over two'],
  ['2/1 RPC', 'us', '2/1 RPC', 'right purl cross, two over one'],
  ['2/2 LC', 'uk', 'C4F', 'cable 4 front'],
  ['2/2 RC', 'uk', 'C4B', 'cable 4 back'],
  ['2/1 LPC', 'uk', 'T3F', 'twist 3 front'],
]

describe('the names of stitches', () => {
  it.each(terms)('%s in %s terms is %s, %s', (id, set, abbr, name) => {
    expect(termOf(stitchOf(id), set)).toEqual({ abbr, name })
  })

  it('print no letters that no list has', () => {
    for (const stitch of standardVocabulary.stitches)
      for (const set of termSets) expect(termOf(stitch, set).abbr, stitch.id).not.toMatch(/PPC/)
    expect(termOf(stitchOf('2/2 LPPC'), 'us').abbr).toBe('purled 2/2 LC')
  })

  it('are each read as that stitch, in the form that is printed and in the one files have', () => {
    for (const stitch of standardVocabulary.stitches)
      for (const spelling of [stitch.id, ...termSets.map((set) => termOf(stitch, set).abbr)]) {
        const pieces = lex(spelling, 0)
        const found = tradeSpellings().find(pieces, 0)
        expect(found?.end, spelling).toBe(pieces.length)
        expect(found?.meaning, spelling).toMatchObject({ is: 'stitch', stitch: { id: stitch.id } })
      }
  })
})
