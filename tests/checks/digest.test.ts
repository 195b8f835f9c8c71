import { expect, it, vi } from 'vitest'
import { digestOf } from '../../src/checks/digest'
import { nothing } from '../../src/checks/nothing'
import type { RowRule } from '../../src/checks/rule'
import { settingOf } from '../../src/checks/setting'
import { paint } from '../../src/pattern/edits/paint'
import { setMaking, setText } from '../../src/pattern/edits/settings'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { workPattern, type Work } from '../../src/pattern/work'
import { stitchOf } from '../../src/stitches/vocabulary'

const counting = () => {
  const check = vi.fn<RowRule['check']>(() => nothing)
  const rule: RowRule = {
    id: 'counting',
    title: 'Counting',
    severity: 'hint',
    scope: 'row',
    check,
  }
  const ask = (work: Work) =>
    work.chart.rows.map((row, index) => {
      const run = work.firstRuns[index]
      if (!run) throw new Error(`Row ${index + 1} was not worked.`)
      return digestOf(run, row, work.layout, settingOf(work.pattern), [rule])
    })
  return { check, ask }
}

/** How often the row rules are asked for an edit, after they were asked for the whole piece. */
function askedAfter(edit: (pattern: Pattern) => Pattern): number {
  const { check, ask } = counting()
  const before = workPattern(newPattern(12, 10))
  ask(before)
  check.mockClear()
  ask(workPattern(edit(before.pattern), before))
  return check.mock.calls.length
}

it('asks the row rules again only about rows that were worked anew', () => {
  expect(askedAfter((pattern) => setText(pattern, { title: 'Other' }))).toBe(0)
  // The painted row, and the next one, which works its purl off.
  expect(askedAfter((pattern) => paint(pattern, stitchOf('p'), 4, 3))).toBe(2)
})

it('asks about every row when a setting changes that rules go by', () => {
  expect(askedAfter((pattern) => setMaking(pattern, { forBaby: true }))).toBe(10)
})

it('shares one empty list among all rows in order', () => {
  const { ask } = counting()
  const digests = ask(workPattern(newPattern(12, 10)))
  expect(digests.every(({ notes, crosses }) => notes === nothing && crosses === nothing)).toBe(true)
})
