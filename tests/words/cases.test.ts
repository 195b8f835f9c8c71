import { describe, expect, it } from 'vitest'
import { readCases } from './cases'
import { linesOf } from './helpers'

const cases = readCases()

describe('charts in words, case by case', () => {
  it.each(cases.map((one) => [`${one.file}: ${one.name}`, one] as const))(
    '%s',
    (_, { pattern, words }) => expect(linesOf(pattern)).toEqual(words),
  )

  it('has cases of different names', () => {
    expect(new Set(cases.map(({ name }) => name)).size).toBe(cases.length)
    expect(cases.length).toBeGreaterThan(60)
  })
})
