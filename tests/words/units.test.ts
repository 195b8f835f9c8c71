import { describe, expect, it } from 'vitest'
import { read } from '../../src/words/read/read'
import { compared, linesOf, starters } from './compare/helpers'
import { readCases } from './read/cases'
import { workPattern } from '../../src/pattern/work'

/** Sentences for people: a whole sentence, one unit in it, numbers with their plurals. */
function saysWell(message: string, advice: string): void {
  // What is quoted from the words is theirs.
  const own = message.replaceAll(/"[^"]*"|“[^”]*”/g, '')
  expect(message).toMatch(/^["A-Z\d].*[.:]$/s)
  expect(advice).toMatch(/^[A-Z].*[.?]$/s)
  expect(`${own}${advice}`).not.toMatch(/undefined|NaN|null|Infinity|\(s\)/)
  expect(`${own} ${advice}`).not.toMatch(
    /\b1 (?:stitches|sts|pegs|rows|rounds|rnds|times)\b|\b(?:[2-9]|\d{2,}) (?:stitch|st|peg|row|rnd|time)\b/,
  )
  const units = [/\brnds?\b/i, /\brounds? \d/i, /\brows? \d/i]
  expect(units.filter((unit) => unit.test(own)).length, message).toBeLessThan(2)
}

describe('what is said of words', () => {
  it('is, of every remark of the cases, a sentence with one unit', () => {
    let count = 0
    for (const { lines, settings } of readCases())
      for (const { message, advice } of read(lines.map(({ text }) => text).join('\n'), settings)
        .remarks) {
        saysWell(message, advice)
        count++
      }
    expect(count).toBeGreaterThan(100)
  })

  it('is so of every difference, whichever line of a starter is left out or comes twice', () => {
    let count = 0
    for (const pattern of starters) {
      const lines = linesOf(workPattern(pattern))
      for (const at of lines.keys())
        for (const other of [lines.toSpliced(at, 1), lines.with(at, 'Rnd 1: k1, p2.')])
          for (const { message, advice } of compared(pattern, other).differences) {
            saysWell(message, advice)
            count++
          }
    }
    expect(count).toBeGreaterThan(100)
  })
})
