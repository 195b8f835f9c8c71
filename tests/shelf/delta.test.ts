import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { paint } from '../../src/pattern/edits/paint'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { chartOn } from '../../src/pattern/charts'
import { deltaBetween, withDelta } from '../../src/shelf/delta'
import { standardVocabulary } from '../../src/stitches/vocabulary'
import { arbitraryPattern } from '../arbitraries'
import { arbitraryEdit } from '../edits'

const between = (a: unknown, b: unknown) => {
  const delta = deltaBetween(a, b, standardVocabulary)
  return delta && (JSON.parse(JSON.stringify(delta)) as typeof delta)
}
const led = (a: unknown, b: unknown) => {
  const delta = between(a, b)
  return delta ? withDelta(a, delta, standardVocabulary) : a
}

const someVersions = arbitraryPattern().chain((first) =>
  fc
    .array(arbitraryEdit(first), { minLength: 1, maxLength: 6 })
    .map((edits) =>
      edits.reduce<Pattern[]>((all, edit) => [...all, edit(all.at(-1) ?? first)], [first]),
    ),
)

describe('the difference between two versions', () => {
  test('leads from the one to the other, whatever was done', () => {
    fc.assert(
      fc.property(someVersions, fc.nat(), fc.nat(), (versions, a, b) => {
        const from = versions[a % versions.length]
        const to = versions[b % versions.length]
        expect(led(from, to)).toEqual(to)
      }),
    )
  })

  test('leaves what both share the same objects', () => {
    const before = newPattern(24, 6)
    const after = paint(before, standardVocabulary.withRole('purl'), 2, 5)
    const again = led(before, after) as Pattern
    expect(chartOn(again).rows[2]).toEqual(chartOn(after).rows[2])
    for (const row of [0, 1, 3, 4, 5])
      expect(chartOn(again).rows[row]).toBe(chartOn(before).rows[row])
    expect(again.steps).toBe(before.steps)
    expect(again.vocabulary).toBe(before.vocabulary)
  })

  test('of one stitch in a large chart is short', () => {
    const before = newPattern(200, 500)
    const after = paint(before, standardVocabulary.withRole('purl'), 250, 100)
    expect(JSON.stringify(between(before, after)).length).toBeLessThan(200)
  })

  test.each([
    ['none', null, { keys: { a: { is: 1 } } }],
    ['a text', 'abc', { parts: [] }],
    ['a short list', [1], { parts: [[3, { is: 1 }]] }],
    ['an object', {}, { at: 0, take: 1, put: [] }],
    ['a stitch', {}, { is: { 'stitch id': 'no such' } }],
  ] as const)('that belongs to another value than %s is refused', (_, before, delta) => {
    expect(() => withDelta(before, delta as never, standardVocabulary)).toThrow(/^(?:[A-Z].*\.)$/)
  })
})
