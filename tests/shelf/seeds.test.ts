import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { checkPiece } from '../../src/checks/piece/check'
import { checkPattern } from '../../src/checks/check'
import type { Fault } from '../../src/loom/loom'
import { chartsInOrder, onChart, chartOn } from '../../src/pattern/charts'
import { workPattern } from '../../src/pattern/work'
import { workPiece } from '../../src/pattern/workPiece'
import { placed } from '../../src/pattern/row'
import { fileName, readFile, writeFile } from '../../src/shelf/format'
import { starterCharts } from '../../src/shelf/seeds'

const folder = new URL('../../seeds/', import.meta.url)
const chartOf = (id: string) => {
  const found = starterCharts.find((chart) => chart.id === id)
  if (!found) throw new Error(`no starter chart ${id}`)
  return found.pattern()
}
const runOf = (id: string) => workPattern(chartOf(id)).run

test('every file of seeds/ is a starter chart', () => {
  const files = readdirSync(folder).map((file) => file.replace(/\.json$/, ''))
  expect(files.sort()).toEqual(starterCharts.map(({ id }) => id).sort())
})

describe.each(starterCharts.map((chart) => [chart.id, chart] as const))('%s', (id, chart) => {
  const pattern = chart.pattern()
  const { run, layout } = workPattern(pattern)

  test('is kept as Pegwright itself writes it', () => {
    const text = readFileSync(new URL(`${id}.json`, folder), 'utf8')
    expect(readFile(text)).toEqual({ ok: true, pattern })
    expect(writeFile(pattern)).toBe(text)
    expect(fileName(pattern)).toBe(`${id}.pegwright.json`)
    expect(chart.title).toBe(pattern.title)
  })

  test('fills its loom and is worked without a fault or a wrong count', () => {
    expect(layout.over).toBe(0)
    // Bars in front are what a slip with the yarn in front makes; only a baby's are looked at.
    const isBar = (fault: Fault) => fault.kind === 'float' && fault.side === 'outside'
    expect(run.rows.flatMap(({ faults }) => faults).filter((fault) => !isBar(fault))).toEqual([])
    expect(run.rows.map(({ miscount }) => miscount).filter(Boolean)).toEqual([])
  })

  test('leaves one loop on each peg, no strand of a turn, and the yarn at the start', () => {
    expect(run.end.stacks.map((stack) => stack.length)).toEqual(run.end.stacks.map(() => 1))
    expect(run.end.yarn.gap).toBe(0)
    expect(run.end.heading).toBe('forward')
  })

  test('no rule finds anything in it', () => {
    const { findings } = checkPattern(workPattern(pattern))
    expect(findings.map(({ rule, message }) => [rule, message])).toEqual([])
  })

  test('can be worked from cast-on to bind-off, and so can each of its charts', () => {
    expect(checkPiece(workPiece(pattern)).map(({ message }) => message)).toEqual([])
    for (const { name } of chartsInOrder(pattern)) {
      const { findings } = checkPattern(workPattern(onChart(pattern, name)))
      expect(findings.map(({ rule, message }) => [name, rule, message])).toEqual([])
    }
  })

  test('is made as often as its notes say', () => {
    const isPair = /make two|\bpair of (?!rope|strand)|either hand|the second/i.test(pattern.notes)
    expect(pattern.pair !== 'none').toBe(isPair)
    // Steps can be changed, the notes stay: numbers of pegs in an opening would no longer be true.
    expect(pattern.notes).not.toMatch(/(first|last) (two|four|six|eight|\d+) pegs/)
  })

  test('says in its notes what it is', () => {
    expect(pattern.notes.length).toBeGreaterThan(100)
    expect(chart.about).toContain(`${pattern.loom.pegs} pegs`)
    expect(chart.about).toMatch(pattern.loom.shape === 'bar' ? /\brake of/ : /\bround loom of/)
  })

  test('crosses the same strands again after three plain rows at least', () => {
    // Common practice for crosses of up to four pegs.
    const last = new Map<number, number>()
    run.rows.forEach(({ row, before }, index) => {
      for (const { stitch, peg } of row.sites.filter(({ stitch }) => stitch.cross))
        for (const [{ wale } = { wale: -1 }] of before.stacks.slice(peg, peg + stitch.width)) {
          expect(index - (last.get(wale) ?? -4)).toBeGreaterThan(3)
          last.set(wale, index)
        }
    })
  })
})

test('together they use every family of stitches', () => {
  const families = starterCharts
    .flatMap((chart) => chartsInOrder(chart.pattern()))
    .flatMap(({ chart }) => chart.rows.flatMap((row) => placed(row)))
    .map(({ stitch }) => stitch.family)
  expect([...new Set(families)].sort()).toEqual(
    ['cross', 'decrease', 'increase', 'knit and purl', 'slip', 'texture'].sort(),
  )
})

test('the heel turns seven pegs a side and closes both corners', () => {
  // w = round(H / 3) pegs a side: common practice; H = 20 heel pegs, 2 to 21.
  const turned = chartOn(chartOf('hundred-steps-heel')).rows.flatMap(({ run, end }, index) =>
    end === 'German turn' && run ? [index % 2 ? run.to + 1 : run.from + 1] : [],
  )
  expect(turned.slice(0, 14)).toEqual([21, 2, 20, 3, 19, 4, 18, 5, 17, 6, 16, 7, 15, 8])
  expect(turned.slice(14, 26)).toEqual([16, 7, 17, 6, 18, 5, 19, 4, 20, 3, 21, 2])
  expect(turned.slice(26)).toEqual([22, 1])
})

test('the plait is back in order after three workings of its eight rounds, not before', () => {
  const wales = (after: number) =>
    runOf('hawser-band').rows[after - 1]?.after.stacks.map(([loop]) => loop?.wale)
  const straight = Array.from({ length: 81 }, (_, peg) => peg)
  // Two rounds of rib, then eight rounds three times.
  expect(wales(2 + 8)).not.toEqual(straight)
  expect(wales(2 + 16)).not.toEqual(straight)
  expect(wales(2 + 24)).toEqual(straight)
})
