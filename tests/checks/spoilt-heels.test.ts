import { describe, expect, test } from 'vitest'
import { checkPattern } from '../../src/checks/check'
import type { Finding } from '../../src/pattern/finding'
import type { Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { sections, turnedOn, variations, type Spoilt } from './spoilt'

/**
 * Each illegal variation of a generated section is caught by the rule meant for it, in the row it
 * is meant for. Sections: runs, steps, turns and shapes in their product; looms, sides and places
 * go round from one to the next.
 */

const findingsOf = (pattern: Pattern) => checkPattern(workPattern(pattern)).findings

test('as they are generated the sections are in order, and are the ones that are made anew here', () => {
  for (const section of sections) {
    const { wish, work, turns } = section
    expect([wish, findingsOf(work.pattern).filter(({ severity }) => severity !== 'hint')]).toEqual([
      wish,
      [],
    ])
    for (const turn of turns) expect(turnedOn(section, turn, turn.peg)).toEqual(work.pattern)
  }
})

/** Is this what was to be found, where it was to be found? */
const catches =
  ({ rules, rows, peg }: Spoilt) =>
  ({ rule, place }: Finding): boolean =>
    rules.includes(rule) &&
    rows.includes(place.rows[0] ?? -1) &&
    (peg === undefined || place.pegs.some(({ from, to }) => from <= peg && peg <= to))

const everywhere = ['heel', 'wedge', 'German turn', 'wrap', 'ring', 'bar', 'both', 'first', 'last']
/** Where there is no such thing to spoil: a wedge, for one, does not go out again. */
const notIn: Readonly<Record<string, readonly string[]>> = {
  'a turn repeated on the peg of the last one on its side, going out': ['wedge'],
  'a turn short of the nearest turned peg': ['wedge'],
  'a turned peg skipped on the way out': ['wedge'],
  'the last turn left out, so that the rounds go the other way': ['bar', 'first', 'last'],
  'a wrap past the edge of a bar': ['German turn', 'ring'],
}

describe('spoilt', () => {
  test.each(Object.entries(variations))('%s', (name, spoil) => {
    const met = new Set<string>()
    let tried = 0
    let strict = 0
    const missed: unknown[] = []
    sections.forEach((section, at) => {
      const { wish, place } = section
      const list = section.turns.flatMap((turn) => spoil(section, turn) ?? [])
      if (list.length === 0) return
      for (const what of [wish.shape, wish.turn, place.shape, place.sides]) met.add(what)
      // Two of each section: one of them, and the one after it.
      const two = [list[(at * 5) % list.length], list[(at * 5 + 1) % list.length]]
      for (const one of new Set(two as Spoilt[])) {
        const { pattern, ...meant } = one
        const found = findingsOf(pattern)
        tried++
        if (one.rules.length === 1) strict++
        if (!found.some(catches(one)))
          missed.push({ wish, place, ...meant, found: found.map(({ id }) => id) })
      }
    })
    expect(missed.slice(0, 3)).toEqual([])
    expect(everywhere.filter((what) => !met.has(what))).toEqual(notIn[name] ?? [])
    expect(strict / tried).toBeGreaterThan(0.8)
  })
})
