import { expect, test } from 'vitest'
import { setChecks, setLoom, setMaking } from '../../src/pattern/edits/settings'
import { mostPegsPassed, mostPegsPassedIn } from '../../src/pattern/floats'
import { newPattern } from '../../src/pattern/pattern'

test('a strand passes as many pegs as the designer allows', () => {
  expect(mostPegsPassed({ forBaby: false, longestFloat: 7, pitch: 20 })).toBe(7)
})

// Two pegs and about a centimetre (common practice).
test.each([
  [3, 4.8, 2],
  [3, 5, 2],
  [3, 5.1, 1],
  [3, 10, 1],
  [3, 10.1, 0],
  [1, 3, 1],
  [0, 3, 0],
])('for a baby, of %i allowed on pegs %d mm apart, at most %i', (longestFloat, pitch, most) => {
  expect(mostPegsPassed({ forBaby: true, longestFloat, pitch })).toBe(most)
  const pattern = setChecks(setLoom(newPattern(), { pitch }), { longestFloat })
  expect(mostPegsPassedIn(setMaking(pattern, { forBaby: true }))).toBe(most)
  expect(mostPegsPassedIn(pattern)).toBe(longestFloat)
})
