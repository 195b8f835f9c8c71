import { describe, expect, it } from 'vitest'
import { read } from '../../../src/words/read/read'
import type { TextFix } from '../../../src/words/read/reading'
import { judge, readCases, usual } from './cases'

const applied = (text: string, { changes }: TextFix): string =>
  changes
    .toSorted((a, b) => b.range.from - a.range.from)
    .reduce(
      (now, { range, text: put }) => now.slice(0, range.from) + put + now.slice(range.to),
      text,
    )

/** Every fix of every remark in the cases. */
const fixes = readCases().flatMap((one) => {
  const { reading } = judge(one)
  return reading.remarks.flatMap((remark) =>
    remark.fixes.map((fix) => [`${one.name}: ${fix.label}`, reading, remark, fix] as const),
  )
})

describe('fixes of remarks', () => {
  it('are there for words to be asked about, spellings and counts', () => {
    const rules = new Set(fixes.map(([, , { rule }]) => rule))
    for (const rule of ['unknown-word', 'ask-cross', 'ask-times', 'ask-inc', 'ask-yfwd'])
      expect(rules).toContain(rule)
    expect(rules).toContain('stated-count')
  })

  it.each(fixes)('%s', (_, reading, remark, fix) => {
    const count = (list: readonly { rule: string }[]) =>
      list.filter(({ rule }) => rule === remark.rule).length
    const mended = read(applied(reading.text, fix), reading.settings)
    expect(count(mended.remarks), mended.text).toBe(count(reading.remarks) - 1)
  })
})

describe('words that are nearly known', () => {
  const slips = ['Kniit', 'kinit', 'prul', 'Purlse', 'knitss', 'purll', 'repaet', 'turm', 'tiems']
  it.each(slips)('"%s" has suggestions that differ from each other', (word) => {
    const { remarks } = read(`Rnd 1: k4, ${word}.`, usual)
    const slip = remarks.find(({ rule }) => rule === 'unknown-word')
    const texts = slip?.fixes.map(({ changes }) => changes[0]?.text.toLowerCase()) ?? []
    expect(texts.length).toBeGreaterThan(0)
    expect(new Set(texts).size).toBe(texts.length)
  })
})
