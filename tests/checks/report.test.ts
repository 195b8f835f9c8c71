/** How findings are named, ordered and set aside, and which repairs are offered. */
import { expect, test } from 'vitest'
import { checkAfresh, checkPattern } from '../../src/checks/check'
import { chartErrors, openFindings, pieceErrors } from '../../src/checks/open'
import { byPlace } from '../../src/checks/report'
import { allOf, repairsThatWork } from '../../src/checks/vet'
import { setAside, setRuleOff, setText } from '../../src/pattern/edits/settings'
import { fix, nowhere, type Finding } from '../../src/pattern/finding'
import { newPattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { patternOf } from '../pattern/edits/chart-text'

const gauge = { stitches: 20, rows: 30 }
const clean = { ...newPattern(12, 2), gauge }
const wrong = patternOf(
  'k k k k k k k k k k k k',
  'k k k k k2tog k k k k k k k',
  'sl sl sl sl sl k sl sl sl sl sl k',
)

test('nothing found stays the same nothing', () => {
  const report = checkAfresh(clean)
  expect(report.findings).toEqual([])
  expect(checkPattern(workPattern(setText(clean, { title: 'Cuff' })), report).findings).toBe(
    report.findings,
  )
})

test('a finding goes by its rule, row and pegs; errors come first, then by row and peg', () => {
  expect(checkAfresh(wrong).findings.map(({ id }) => id)).toEqual([
    'row-count, row 2, pegs 5-12',
    'float, row 3, pegs 1-5',
    'float, row 3, pegs 7-11',
    'gauge, chart, all',
  ])
})

test('what is set aside is listed apart, and a rule that is off finds nothing', () => {
  const id = 'float, row 3, pegs 7-11'
  const { findings, aside } = checkAfresh(setAside(wrong, id, true))
  expect([findings.length, aside.map((one) => one.id)]).toEqual([3, [id]])
  const off = checkAfresh(setRuleOff(wrong, 'float', true))
  expect(off.findings.map(({ rule }) => rule)).toEqual(['row-count', 'gauge'])
  expect(off.aside).toEqual([])
})

test('repairs are tried once', () => {
  const [finding] = checkAfresh(wrong).findings
  expect(finding?.fixes).toBe(finding?.fixes)
  expect(finding?.fixes.length).toBeGreaterThan(0)
})

test('errors of the chart that is looked at stand before those of the piece', () => {
  const work = workPattern({ ...wrong, steps: wrong.steps.slice(0, 2) })
  const [message] = chartErrors(work)
  expect(chartErrors(work)).toEqual([
    'Round 2 needs 13 stitches, the loom holds 12. One stitch too many after peg 4.',
  ])
  expect(pieceErrors(work)).toEqual([
    message,
    '12 loops are still on the loom after the last step.',
  ])
  expect(openFindings(work).filter(({ severity }) => severity !== 'error')).toHaveLength(3)
})

test('findings at one place stand by their names', () => {
  const at = (
    severity: Finding['severity'],
    id: string,
    row: number | null,
    peg?: number,
  ): Finding => ({
    id,
    rule: id,
    severity,
    message: '',
    advice: '',
    fixes: [],
    place: {
      ...nowhere,
      rows: row === null ? [] : [row],
      pegs: peg === undefined ? [] : [{ from: peg, to: peg }],
    },
  })
  const sorted = [
    at('error', 'b', null),
    at('error', 'a', 0),
    at('error', 'a', 0, 0),
    at('error', 'b', 0, 0),
    at('error', 'a', 0, 3),
    at('error', 'a', 2, 1),
    at('warning', 'a', null),
    at('hint', 'a', 0),
  ]
  expect(sorted.toReversed().toSorted(byPlace)).toEqual(sorted)
  expect(byPlace(at('hint', 'a', 1), at('hint', 'a', 1))).toBe(0)
})

test('of repairs those are offered that mend, four at most and each label once', () => {
  const found = [{ rule: 'float' }]
  const after = (mends: boolean) => (mends ? [] : found)
  const mending = (label: string) => fix(label, (sheet) => setText(sheet, { title: 'Mended' }))
  const tried = (...fixes: ReturnType<typeof fix>[]) =>
    allOf(
      repairsThatWork(
        clean,
        'float',
        () => fixes,
        () => found,
        (sheet) => after(sheet.title === 'Mended'),
      ),
    ).map(({ label }) => label)
  const idle = fix('idle', (sheet) => sheet)
  const vain = fix('vain', (sheet) => setText(sheet, { title: 'Other' }))
  expect(tried(idle, vain, mending('a'))).toEqual(['a'])
  expect(tried(...['a', 'a', 'b', 'c', 'd', 'e'].map(mending))).toEqual(['a', 'b', 'c', 'd'])
  expect(tried()).toEqual([])
})
