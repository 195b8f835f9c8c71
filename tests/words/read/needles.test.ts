import { describe, expect, it } from 'vitest'
import { stitchOf, vocabulary } from '../../../src/stitches/vocabulary'
import { fromWrongSide } from '../../../src/words/read/needles'
import { read } from '../../../src/words/read/read'
import { usual } from './cases'

describe('a stitch worked on the wrong side', () => {
  it.each(['sl', 'tuck', 'yo', 'mb', 'none'])(
    '%s is the same from both sides (common practice)',
    (id) => {
      expect(fromWrongSide(stitchOf(id))).toBe(stitchOf(id))
    },
  )

  it('seen from behind twice is the stitch itself', () => {
    // These two look from behind like a plainer stitch, which comes back as itself.
    const plainer = ['slf', 'uw', 'fk', 'tk']
    const there = vocabulary.filter(
      (stitch) => fromWrongSide(stitch) && !plainer.includes(stitch.id),
    )
    expect(there.length).toBeGreaterThan(100)
    for (const stitch of there) {
      const behind = fromWrongSide(stitch)
      expect(behind && fromWrongSide(behind), stitch.id).toBe(stitch)
    }
  })
})

it('a repeat is broken off before a decrease only where its loops are there', () => {
  const { rows, remarks } = read('Rnd 1: *k2tog, k1; rep from *, end k3.', { ...usual, pegs: 10 })
  expect(rows[0]?.takes).toBe(9)
  expect(remarks.map(({ message }) => message)).toEqual([
    'Rnd 1: the repeat is 3 sts and 7 is not a multiple of 3: 2 repeats leave 1 st.',
  ])
})
