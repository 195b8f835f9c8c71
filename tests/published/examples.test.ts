/**
 * Worked examples from knitting books of 1843 to 1918; title, year and place stand beside each in
 * data/worked-examples.json. The counts there were made by hand and are made again here.
 */
import { withChart } from '../../src/pattern/edits/chart'
import { chartOn } from '../../src/pattern/charts'
import { describe, expect, test } from 'vitest'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { readFile, writeFile } from '../../src/shelf/format'
import { cellsOf } from '../arbitraries'
import { castOnOf, copiesOf, judge, readExamples, stitchesOf, type Example } from './examples'
import { expand, makesOf, takesOf } from './notation'
import { cellsFrom } from '../cells'

const examples = readExamples(new URL('data/worked-examples.json', import.meta.url))
const named = (list: readonly Example[]) =>
  list.map((example) => [`${example.id} (${example.where})`, example] as const)
const positive = named(examples.filter(({ kind }) => kind === 'positive'))
const negative = named(examples.filter(({ kind }) => kind === 'negative'))

test('there are examples of both kinds', () => {
  expect(positive.length).toBeGreaterThan(15)
  expect(negative.length).toBeGreaterThan(4)
})

describe.each(named(examples))('%s', (_, example) => {
  test('the counts made by hand are those of the stitches', () => {
    for (const row of example.rows) {
      const counts = { takes: 0, makes: 0, before: 0, after: 0 }
      if (row.canonical !== undefined) {
        const stitches = expand(row.canonical)
        counts.takes = takesOf(stitches)
        counts.makes = makesOf(stitches)
        expect(counts).toMatchObject({
          takes: row.consumes_per_repeat,
          makes: row.produces_per_repeat,
        })
      } else {
        const stitches = stitchesOf(example, row)
        const short = (row.sts_before ?? 0) - takesOf(stitches)
        expect(makesOf(stitches)).toBe(row.sts_after)
        if (example.kind === 'positive') expect(short).toBe(0)
      }
    }
  })
})

describe.each(positive)('%s', (_, example) => {
  test('fits its cast-on', () => {
    expect(copiesOf(example) % 1).toBe(0)
  })

  test('every row takes the loops that are there, on a loom', () => {
    const judged = judge(example)
    expect(judged.filter(({ wrong }) => wrong)).toEqual([])
    judged.forEach(({ row, loopsBefore, loopsAfter }) => {
      const given = example.rows.find((item) => item.row === row)
      if (given?.sts_before !== undefined)
        expect([loopsBefore, loopsAfter]).toEqual([given.sts_before, given.sts_after])
    })
  })

  test('no peg is found empty or taken, and the yarn is where each row starts', () => {
    // Loops that move far along the loom stretch: a chart would set the stitches otherwise.
    const faults = judge(example).flatMap(({ run }) => run.faults.map(({ kind }) => kind))
    expect(faults.filter((kind) => kind !== 'stretch' && kind !== 'float')).toEqual([])
  })
})

describe.each(negative)('%s', (_, example) => {
  test('is caught in the row that its note names, and in no other', () => {
    const wrong = judge(example).filter((judged) => judged.wrong)
    expect(wrong.map(({ row }) => row)).toEqual(example.wrong_rows)
  })

  test('the numbers of a miscount are those of the row', () => {
    for (const { run, loopsBefore } of judge(example))
      if (run.miscount)
        expect(run.miscount).toMatchObject({ takes: run.row.takes, loops: loopsBefore })
  })
})

/** As a real chart, where every row leaves as many loops as it takes. */
function chartOf(example: Example): Pattern | null {
  const { rows, multiple, plus = 0 } = example
  if (multiple === undefined) return null
  const edge = Math.floor(plus / 2)
  const plain = (count: number) => Array.from({ length: count }, () => 'k')
  const base = newPattern(castOnOf(example), 1)
  return withChart(
    { ...base, loom: { ...base.loom, shape: example.shape === 'flat' ? 'bar' : 'ring' } },
    {
      columns: multiple + plus,
      repeat: { from: edge, to: edge + multiple - 1 },
      bands: [],
      rows: rows.map(({ canonical = '' }) => ({
        cells: cellsFrom([
          ...plain(edge),
          ...expand(canonical).flatMap(cellsOf),
          ...plain(plus - edge),
        ]),
        run: null,
        heading: null,
        end: 'on' as const,
      })),
    },
  )
}

const balanced = ({ rows, multiple }: Example): boolean =>
  rows.every(
    ({ canonical = '' }) =>
      takesOf(expand(canonical)) === multiple && makesOf(expand(canonical)) === multiple,
  )

describe('as charts', () => {
  const charts = examples.flatMap((example) => {
    const pattern = chartOf(example)
    return pattern ? [[example.id, example, pattern] as const] : []
  })

  test.each(charts.filter(([, example]) => balanced(example)))(
    '%s fills its loom, works and is read back from its file',
    (_, example, pattern) => {
      const { run, layout } = workPattern(pattern)
      expect([layout.copies, layout.over]).toEqual([copiesOf(example), 0])
      expect(run.rows.map(({ miscount }) => miscount)).toEqual(
        chartOn(pattern).rows.map(() => null),
      )
      expect(run.end.stacks.every((stack) => stack.length === 1)).toBe(true)
      expect(readFile(writeFile(pattern))).toEqual({ ok: true, pattern })
    },
  )

  test.each(charts.filter(([, { kind }]) => kind === 'negative'))(
    '%s: a file with its rows is refused at the first that has too many columns',
    (_, example, pattern) => {
      const result = readFile(writeFile(pattern))
      const at = example.rows.findIndex(({ row }) => example.wrong_rows?.includes(row))
      const has = chartOn(pattern).rows[at]?.cells.length
      expect(result).toEqual({
        ok: false,
        message: `Row ${at + 1} has ${has} columns; the chart has ${example.multiple}.`,
      })
    },
  )
})
