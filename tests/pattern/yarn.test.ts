import { expect, test } from 'vitest'
import { yarnClasses, yarnClassesFor } from '../../src/pattern/yarn'

// Craft Yarn Council, Standard Yarn Weight System: stitches to 4 in of plain knit.
test.each([
  [6, ['jumbo']],
  [7, ['super bulky']],
  [11.4, ['super bulky']],
  [11.5, ['bulky']],
  [15, ['bulky']],
  [16, ['medium']],
  [20, ['medium']],
  [21, ['light']],
  [23, ['fine', 'light']],
  [24, ['fine', 'light']],
  [26, ['fine']],
  [27, ['super fine']],
  [33, ['lace']],
  [40, ['lace']],
  [41, []],
  [0, []],
])('%d stitches to 10 cm are knitted of %o yarn', (stitches, names) => {
  expect(yarnClassesFor(stitches).map(({ name }) => name)).toEqual(names)
})

test('classes are numbered from the finest', () => {
  expect(yarnClasses.map(({ number }) => number)).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
})
