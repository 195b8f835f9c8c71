import { describe, expect, it } from 'vitest'
import { judge, readCases } from './cases'

const cases = readCases()

describe('words, case by case', () => {
  it.each(cases.map((one) => [`${one.file}: ${one.name}`, one] as const))('%s', (_, one) => {
    const { expected, found } = judge(one)
    expect(found).toEqual(expected)
  })

  it('has cases of different names', () => {
    expect(new Set(cases.map(({ file, name }) => `${file}: ${name}`)).size).toBe(cases.length)
    expect(cases.length).toBeGreaterThan(250)
  })
})
