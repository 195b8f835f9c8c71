import { expect, it } from 'vitest'
import { read } from '../../../src/words/read/read'
import { usual } from './cases'

it('a slip on the wrong side leaves the yarn there, unless it is said to be at the back', () => {
  const words = 'Row 1: k3.\nRow 2: sl 1, sl 1 wyif, sl 1 wyib.'
  const { rows } = read(words, { ...usual, shape: 'bar', needles: true, pegs: 3 })
  expect(rows[1]?.stitches.map(({ stitch }) => stitch.id)).toEqual(['sl', 'sl', 'slf'])
})

it('a repeat is broken off before a decrease only where its loops are there', () => {
  const { rows, remarks } = read('Rnd 1: *k2tog, k1; rep from *, end k3.', { ...usual, pegs: 10 })
  expect(rows[0]?.takes).toBe(9)
  expect(remarks.map(({ message }) => message)).toEqual([
    'Rnd 1: the repeat is 3 sts and 7 is not a multiple of 3: 2 repeats leave 1 st.',
  ])
})
