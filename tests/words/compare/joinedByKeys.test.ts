import { expect, it } from 'vitest'
import { joinedByKeys } from '../../../src/words/compare/joinedByKeys'

const joined = (...things: string[]) => joinedByKeys(things, (thing) => [...thing])

it('joins what shares a key, and what shares one by way of another', () => {
  expect(joined('a', 'b', 'a')).toEqual([['a', 'a'], ['b']])
  expect(joined('a', 'b', 'c', 'ab')).toEqual([['a', 'b', 'ab'], ['c']])
})

it('keeps each group in order, whatever joined it', () => {
  expect(joined('a', 'b', 'bc', 'ac', 'd')).toEqual([['a', 'b', 'bc', 'ac'], ['d']])
})
