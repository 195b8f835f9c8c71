import fc from 'fast-check'
import { expect, test } from 'vitest'
import { parseJson } from '../../src/shelf/formatJson'

/** The engine's own reader is the outside source. */
const byEngine = (text: string): { value: unknown } | null => {
  try {
    return { value: JSON.parse(text) as unknown }
  } catch {
    return null
  }
}

test('reads what the engine reads', () => {
  fc.assert(
    fc.property(fc.json({ stringUnit: 'binary' }), fc.nat(4), (json, indent) => {
      const value = JSON.parse(json) as unknown
      const text = JSON.stringify(value, null, indent)
      expect(parseJson(text)).toStrictEqual({ ok: true, value })
    }),
  )
})

test('refuses what the engine refuses', () => {
  const pieces = ['{', '}', '[', ']', ',', ':', '"', '"a"', '"b"', '1', '-0.5e3', '01', 'null']
  const odd = ['tru', ' ', '\n', '\\', '"\\u00e9"', '"\\x"', '.5', '+1', '\u00a0', "'"]
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...pieces, ...odd), { maxLength: 12 }), (parts) => {
      const text = parts.join('')
      const mine = parseJson(text)
      const theirs = byEngine(text)
      if (mine.ok) expect(theirs).toStrictEqual({ value: mine.value })
      else if (theirs) expect(mine.reason).toContain('is given twice')
    }),
    { numRuns: 3000 },
  )
})

test.each([
  ['{\n  "a": 1\n  "b": 2\n}', 3, 3, '"\\"" stands where "," or "}" is expected'],
  ['[1, 2', 1, 6, 'the file ends where "," or "]" is expected'],
  ['{"a": 1,}', 1, 9, '"}" stands where a name is expected'],
  ['{"é": 😀}', 1, 7, '"😀" stands where a value is expected'],
  ['{"a": 1}\r\n{', 2, 1, '"{" stands where the end of the file is expected'],
  ['{"a": "b\n"}', 1, 9, 'text may not run over the end of a line'],
  ['["a', 1, 2, 'this text has no closing quote'],
  ['{"a": 1, "a": 2}', 1, 10, '"a" is given twice'],
])('%j is wrong at line %i, column %i', (text, line, column, reason) => {
  expect(parseJson(text)).toStrictEqual({ ok: false, reason, line, column })
})
