import { setWords } from '../../src/pattern/edits/words'
import { expect, test } from 'vitest'
import { ownWordsOf } from '../../src/booklet/ownWords'
import { newPattern } from '../../src/pattern/pattern'

test('a round whose stitches do not add up differs in one place, as the bench lists it', () => {
  const words = 'Rnd 1: p1, k4, p1, k6. (13 sts)'
  expect(ownWordsOf(setWords(newPattern(12, 1), words))).toMatchObject([{ differences: 1 }])
})
