import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shorten, type Shortened, type Short } from '../../src/words/shorten'

/** Rows of letters: a, b, c are counted like k, x and y are groups like yo and take no loop. */
const letters = 'abcxy'
const textOf = (row: string) => ({
  stitches: Int32Array.from(row, (letter) => letters.indexOf(letter)),
  counted: [true, true, true, false, false],
  length: [1, 1, 1, 1, 1],
  takes: [1, 1, 1, 0, 0],
})

/** The number of words as src/words/measure.ts states it. */
const words = (parts: readonly Shortened[]): number =>
  parts.reduce((sum, part) => {
    if ('parts' in part) return sum + 2 + words(part.parts)
    return sum + (part.count > 1 && part.stitch > 2 ? 2 : 1)
  }, 0)
const wordsOf = ({ before, block, after }: Short) =>
  words(before) + (block ? 1 + words(block) : 0) + words(after)

/**
 * The least words, found by trying everything: any split, any group, groups two deep. Like
 * stitches side by side are one run, unless a group begins among them.
 */
function leastWords(row: string): number {
  const known = new Map<string, number>()
  const least = (text: string, depth: number): number => {
    if (text === '') return 0
    const key = `${depth}${text}`
    const before = known.get(key)
    if (before !== undefined) return before
    let best = leastFromGroup(text, depth)
    for (let run = 1; run <= text.length && text[run - 1] === text[0]; run++) {
      const cost = run > 1 && 'xy'.includes(text[0] ?? '') ? 2 : 1
      const rest = text.slice(run)
      best = Math.min(best, cost + (rest[0] === text[0] ? leastFromGroup : least)(rest, depth))
    }
    known.set(key, best)
    return best
  }
  const leastFromGroup = (text: string, depth: number): number => {
    let best = Infinity
    for (let period = 2; depth > 0 && period * 2 <= text.length; period++) {
      const block = text.slice(0, period)
      for (let end = period * 2; text.slice(end - period, end) === block; end += period)
        best = Math.min(best, 2 + least(block, depth - 1) + least(text.slice(end), depth))
    }
    return best
  }
  const takes = (text: string) => text.replace(/[xy]/g, '').length
  let best = least(row, 2)
  for (let from = 0; from < row.length; from++)
    for (let period = 1; from + period * 2 <= row.length; period++) {
      const block = row.slice(from, from + period)
      if (takes(block) === 0) continue
      for (let end = from + period * 2; row.slice(end - period, end) === block; end += period) {
        const tail = row.slice(end)
        if ((end - from) * 2 < row.length || (tail !== '' && takes(tail) === 0)) continue
        best = Math.min(best, least(row.slice(0, from), 2) + 1 + least(block, 1) + least(tail, 2))
      }
    }
  return best
}

const row = (most: number) =>
  fc
    .oneof(
      fc.array(fc.constantFrom('a', 'b'), { minLength: 1, maxLength: most }),
      fc.array(fc.constantFrom(...letters), { minLength: 1, maxLength: most }),
      fc
        .tuple(
          fc.string({ unit: fc.constantFrom('a', 'b', 'x'), maxLength: 3 }),
          fc.string({ unit: fc.constantFrom('a', 'b', 'x'), minLength: 1, maxLength: 4 }),
          fc.integer({ min: 2, max: 4 }),
          fc.string({ unit: fc.constantFrom('a', 'b', 'x'), maxLength: 3 }),
        )
        .map(([before, block, times, after]) => [...before, ...block.repeat(times), ...after]),
    )
    .map((list) => list.join(''))

describe('the shortest words', () => {
  it('has as few words as any way of writing the row', () => {
    fc.assert(
      fc.property(row(14), (text) => {
        expect(wordsOf(shorten(textOf(text), true)), text).toBe(leastWords(text))
      }),
      { numRuns: 4000 },
    )
  })

  it('writes no asterisk where the row does not come out', () => {
    expect(shorten(textOf('abababab'), false).block).toBeNull()
    expect(shorten(textOf('abababab'), true).block).not.toBeNull()
  })

  it('writes no asterisk for a block that takes no loop, since nothing would end it', () => {
    expect(shorten(textOf('xyxyxyxy'), true).block).toBeNull()
  })

  it('stays exact in a row that repeats in very many ways', () => {
    let [before, text] = ['a', 'ab']
    while (text.length < 400) [before, text] = [text, text + before]
    const fibonacci = text.slice(0, 400)
    const { before: parts } = shorten(textOf(fibonacci), false)
    const spell = (list: readonly Shortened[]): string =>
      list
        .map((part) =>
          'parts' in part
            ? spell(part.parts).repeat(part.times)
            : (letters[part.stitch] ?? '').repeat(part.count),
        )
        .join('')
    expect(spell(parts)).toBe(fibonacci)
  })
})
