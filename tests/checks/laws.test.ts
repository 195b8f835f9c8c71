import { chartOn } from '../../src/pattern/charts'
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { checkAfresh, checkPattern, type Report } from '../../src/checks/check'
import { countBySeverity, type Finding } from '../../src/pattern/finding'
import { rules } from '../../src/checks/rules'
import { paint } from '../../src/pattern/edits/paint'
import { setAside, setRuleOff } from '../../src/pattern/edits/settings'
import type { Pattern } from '../../src/pattern/pattern'
import { workPattern, type Work } from '../../src/pattern/work'
import { arbitraryEdit, arbitrarySmallPiece, editedPiece, type Edit } from '../edits'
import { readCases } from './readCase'
import { stitchOf } from '../../src/stitches/vocabulary'
import { copyOf } from '../cells'

const folder = new URL('cases/', import.meta.url)
const cases = readdirSync(folder)
  .filter((name) => name.endsWith('.txt') && name !== 'README.txt')
  .flatMap((name) => readCases(readFileSync(new URL(name, folder), 'utf8')))

const idsOf = (findings: readonly Finding[]): string[] => findings.map(({ id }) => id)

const perRule = (findings: readonly Finding[]): Record<string, number> => {
  const counts: Record<string, number> = {}
  for (const { rule } of findings) counts[rule] = (counts[rule] ?? 0) + 1
  return counts
}

describe('every repair', () => {
  const withFixes = cases.flatMap(({ name, pattern }) =>
    checkAfresh(pattern)
      .findings.filter(({ fixes }) => fixes.length > 0)
      .map((finding) => ({ name, pattern, finding })),
  )

  it.each(withFixes)('of $finding.rule in "$name" takes it away and adds none', (one) => {
    const before = perRule(checkAfresh(one.pattern).findings)
    for (const { edit } of one.finding.fixes) {
      const pattern = edit(one.pattern)
      const after = perRule(checkAfresh(pattern).findings)
      const { rule } = one.finding
      expect(after[rule] ?? 0).toBeLessThan(before[rule] ?? 0)
      for (const [other, count] of Object.entries(after))
        expect(count, other).toBeLessThanOrEqual(before[other] ?? 0)
      const stays =
        chartOn(pattern).rows.length === chartOn(one.pattern).rows.length &&
        pattern.loom.pegs === one.pattern.loom.pegs
      if (stays) expect(idsOf(checkAfresh(pattern).findings)).not.toContain(one.finding.id)
    }
  })

  /** Numbers of pegs in a text: "pegs 3 and 5-7" names 3, 5, 6 and 7. */
  const pegsIn = (text: string): number[] =>
    [...text.matchAll(/\bpegs? ((?:\d+(?:-\d+)?(?:, | and )?)+)/g)].flatMap(([, list = '']) =>
      [...list.matchAll(/(\d+)(?:-(\d+))?/g)].flatMap(([, from, to = from]) =>
        Array.from({ length: Number(to) - Number(from) + 1 }, (_, at) => Number(from) + at),
      ),
    )

  // What is cut at the edge of the repeat may lie in edge columns besides.
  const painting =
    /^(?!Knit all its pegs|Start |Move |Begin |Turn |Add |Remove |Repeat |Give |Use |Set )/
  const painted = withFixes.flatMap(({ name, pattern, finding }) =>
    finding.fixes.flatMap(({ label, edit }) =>
      painting.test(label) ? [{ name, pattern, finding, label, mended: edit(pattern) }] : [],
    ),
  )

  it('changes stitches only in the row and on the pegs that it or its finding names', () => {
    expect(painted.length).toBeGreaterThan(40)
    for (const { name, pattern, finding, label, mended } of painted) {
      const [[row], [pegs]] = [finding.place.rows, finding.place.pegs]
      const { columnOf } = workPattern(pattern).layout
      const named = new Set([
        ...pegsIn(label),
        ...Array.from(
          { length: pegs ? pegs.to - pegs.from + 1 : 0 },
          (_, at) => (pegs?.from ?? 0) + at + 1,
        ),
      ])
      const columns = new Set([...named].map((peg) => columnOf[peg - 1]))
      const onward = /from here on|again with/.test(label)
      chartOn(mended).rows.forEach(({ cells }, index) =>
        cells.forEach((cell, column) => {
          if (cell === chartOn(pattern).rows[index]?.cells[column]) return
          const where = `${label} in "${name}": row ${index + 1}, column ${column + 1}`
          expect(columns.has(column), where).toBe(true)
          const own = /one (?:round|row) earlier/.test(label) ? (row ?? 0) - 1 : row
          expect(onward ? index >= (row ?? 0) : index === own, where).toBe(true)
        }),
      )
    }
  })

  it('is there for every rule but the hints', () => {
    const repaired = new Set(withFixes.map(({ finding }) => finding.rule))
    const without = rules.filter(
      ({ id, severity, scope }) => scope !== 'piece' && severity !== 'hint' && !repaired.has(id),
    )
    expect(without.map(({ id }) => id)).toEqual([])
  })
})

const readable = ({ findings, aside }: Report) => ({
  findings: findings.map(({ fixes: _, repairs: __, ...rest }) => rest),
  aside: idsOf(aside),
})

/** Any edit there is; rules off and findings set aside are edits too. */
const editOrSetting = (first: Pattern): fc.Arbitrary<Edit> =>
  fc.oneof(
    { weight: 20, arbitrary: arbitraryEdit(first) },
    fc.constantFrom(...rules).map(
      ({ id }) =>
        (p: Pattern) =>
          setRuleOff(p, id, !p.checks.off.includes(id)),
    ),
    fc.nat().map((n) => (p: Pattern) => {
      const { findings } = checkAfresh(p)
      const finding = findings[n % Math.max(1, findings.length)]
      return finding ? setAside(p, finding.id, true) : p
    }),
  )

/** Charts of the cases, and any others on small looms with few workings. */
const arbitraryStart = fc.oneof(
  fc.constantFrom(...cases.map(({ pattern }) => pattern)),
  arbitrarySmallPiece,
)

describe('a report', () => {
  it('made after an edit is the one made from nothing', () => {
    fc.assert(
      fc.property(editedPiece(arbitraryStart, editOrSetting), ([start, edits]) => {
        let pattern = start
        let work: Work = workPattern(pattern)
        let report = checkPattern(work)
        for (const edit of edits) {
          pattern = edit(pattern)
          work = workPattern(pattern, work)
          report = checkPattern(work, report)
          // A copy shares no row with what is remembered, so that nothing can be taken from there.
          expect(readable(report)).toEqual(readable(checkAfresh(copyOf(pattern))))
        }
      }),
      { numRuns: 150 },
    )
  })

  it('has each finding once, in order of severity, and counts them', () => {
    fc.assert(
      fc.property(arbitraryStart, (pattern) => {
        const { findings, aside } = checkAfresh(pattern)
        const ids = idsOf([...findings, ...aside])
        expect(new Set(ids).size).toBe(ids.length)
        const order = ['error', 'warning', 'hint']
        const ranks = findings.map(({ severity }) => order.indexOf(severity))
        expect(ranks).toEqual(ranks.toSorted((a, b) => a - b))
        const counts = countBySeverity(findings)
        expect(counts.error + counts.warning + counts.hint).toBe(findings.length)
      }),
    )
  })

  const saysAll = (pattern: Pattern): void => {
    for (const { message, advice, place } of checkAfresh(pattern).findings) {
      expect(message).toMatch(/^[A-Z].*\.$/)
      expect(advice).toMatch(/^[A-Z].*[.?]$/)
      expect(`${message}${advice}`).not.toMatch(/undefined|NaN|null|Infinity/)
      // One unit in one line: a round of a ring is no row.
      if (message.startsWith('Round')) expect(message).not.toMatch(/\brows?\b/)
      for (const row of place.rows) expect(row).toBeLessThan(chartOn(pattern).rows.length)
      for (const { from, to } of place.pegs) {
        expect(from).toBeGreaterThanOrEqual(0)
        expect(to).toBeGreaterThanOrEqual(from)
        expect(to).toBeLessThan(pattern.loom.pegs)
      }
    }
  }

  it('says of every finding what is wrong and what to do, in place and in one unit', () => {
    for (const { pattern } of cases) saysAll(pattern)
    fc.assert(fc.property(arbitrarySmallPiece, saysAll))
  })

  it('keeps the ids of findings in other rows when a row is painted', () => {
    for (const { pattern } of cases) {
      const last = chartOn(pattern).rows.length - 1
      const before = checkAfresh(pattern).findings.filter(
        ({ place }) => (place.rows[0] ?? 0) < last - 2,
      )
      const after = idsOf(checkAfresh(paint(pattern, stitchOf('p'), last, 0)).findings)
      for (const { id, rule } of before)
        if (!['band-match', 'masking', 'turn-left'].includes(rule)) expect(after).toContain(id)
    }
  })

  it('leaves out rules that are off, and lists apart what was set aside', () => {
    for (const { pattern } of cases)
      for (const { id, rule } of checkAfresh(pattern).findings) {
        const off = checkAfresh(setRuleOff(pattern, rule, true))
        expect(off.findings.some((finding) => finding.rule === rule)).toBe(false)
        const set = checkAfresh(setAside(pattern, id, true))
        expect(idsOf(set.findings)).not.toContain(id)
        expect(idsOf(set.aside)).toEqual([id])
      }
  })
})

describe('the rules', () => {
  it('have ids and titles of their own', () => {
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length)
    expect(new Set(rules.map(({ title }) => title)).size).toBe(rules.length)
    for (const { title } of rules) expect(title.length).toBeGreaterThan(5)
  })
})
