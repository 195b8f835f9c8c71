import { expect, test } from 'vitest'
import { Places } from '../../../src/words/read/loops/place'

// Thousands of rows, each with more loops than the one before, are read without making a loom for each.
test('looms that are full share the list of their loops, wherever the yarn hangs', () => {
  const places = new Places({ shape: 'ring', direction: 'clockwise', knit: 'u-wrap' })
  const full = places.start(300)
  expect(full.loops).toBe(300)
  expect(full.stacks).toHaveLength(300)
  const elsewhere = places.at(full, 7, 'back')
  expect(elsewhere).not.toBe(full)
  expect(elsewhere.stacks).toBe(full.stacks)
  expect(places.start(300)).toBe(full)
  const larger = places.withLoops(full, 301)
  expect(larger.loops).toBe(301)
  expect(larger.stacks[299]).toBe(full.stacks[299])
})
