/** A fix changes nothing but what its finding and its own label name; the fabric elsewhere is the same. */
import { chartOn } from '../../src/pattern/charts'
import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { checkAfresh } from '../../src/checks/check'
import type { Finding } from '../../src/pattern/finding'
import { layoutOf } from '../../src/pattern/layout'
import type { Pattern } from '../../src/pattern/pattern'
import { placedAt } from '../../src/pattern/row'
import { workPattern } from '../../src/pattern/work'
import { readCases } from './readCase'

const folder = new URL('cases/', import.meta.url)
const patterns = readdirSync(folder)
  .filter((name) => name.endsWith('.txt') && name !== 'README.txt')
  .flatMap((file) => readCases(readFileSync(new URL(file, folder), 'utf8')))

/** Pegs and rows are where they were: nothing came in, went or was counted from another end. */
const liesAlike = (a: Pattern, b: Pattern): boolean =>
  chartOn(a).rows.length === chartOn(b).rows.length &&
  chartOn(a).columns === chartOn(b).columns &&
  layoutOf(a).columnOf.join() === layoutOf(b).columnOf.join()

/** "peg 5", "pegs 4, 8 and 10-12", of people: 0-based numbers. */
function pegsIn(text: string): number[] {
  return [...text.matchAll(/\bpegs? ((?:\d+(?:-\d+)?(?:, | and )?)+)/g)].flatMap(([, list = '']) =>
    [...list.matchAll(/(\d+)(?:-(\d+))?/g)].flatMap(([, from, to = from]) =>
      Array.from({ length: Number(to) - Number(from) + 1 }, (_, at) => Number(from) - 1 + at),
    ),
  )
}

/** Columns that the finding or the label of its fix names; in every copy of the repeat they are the same. */
function named(pattern: Pattern, { place, message }: Finding, label: string): Set<number> {
  const { columnOf } = layoutOf(pattern)
  const pegs = [...pegsIn(message), ...pegsIn(label)]
  for (const { from, to } of place.pegs) for (let peg = from; peg <= to; peg++) pegs.push(peg)
  // A peg that is emptied gives its loop to a neighbour.
  const beside = pegs.flatMap((peg) => [peg - 1, peg, peg + 1])
  const columns = beside.flatMap((peg) => columnOf[peg] ?? [])
  const cells = chartOn(pattern).rows[place.rows[0] ?? 0]
  const whole = columns.flatMap((column) => {
    const item = cells && placedAt(cells, column)
    return item ? Array.from({ length: item.columns }, (_, at) => item.column + at) : []
  })
  const [, by = '0', way] = /Move it (\d+) pegs? (earlier|later)/.exec(label) ?? []
  const moved = Array.from({ length: Number(by) }, (_, at) => (way === 'later' ? at + 1 : -at - 1))
  return new Set([...columns, ...whole].flatMap((column) => [0, ...moved].map((at) => column + at)))
}

/** The first row that may change. */
const firstRow = ({ finding: { place }, label }: Tried): number =>
  (place.rows[0] ?? 0) - (/one (?:round|row) earlier/.test(label) ? 1 : 0)

/** The fabric, loop by loop: what hangs on each peg after each row. */
const fabric = (pattern: Pattern): string[][] =>
  workPattern(pattern).firstRuns.map(({ after }) =>
    after.stacks.map((stack) => stack.map(({ kind }) => kind).join('+')),
  )

interface Tried {
  readonly name: string
  readonly before: Pattern
  readonly after: Pattern
  readonly finding: Finding
  readonly label: string
}

const tried: readonly Tried[] = patterns.flatMap(({ name, pattern }) =>
  checkAfresh(pattern)
    .findings.filter(({ place }) => place.rows.length > 0)
    .flatMap((finding) =>
      finding.fixes.map(({ label, edit }) => ({
        name,
        before: pattern,
        after: edit(pattern),
        finding,
        label,
      })),
    )
    .filter(({ before, after }) => liesAlike(before, after))
    // All pegs are counted from another one then.
    .filter(({ label }) => !label.startsWith('Start the ')),
)

test('cells change only on the pegs that are named, from the row of the finding on', () => {
  const wrong = tried.flatMap((one) => {
    const { name, before, after, finding, label } = one
    const columns = named(before, finding, label)
    const row = firstRow(one)
    const changed = chartOn(before).rows.flatMap(({ cells }, index) =>
      cells.flatMap((cell, column) =>
        chartOn(after).rows[index]?.cells[column] !== cell ? [{ index, column }] : [],
      ),
    )
    const strange = changed.filter(({ index, column }) => index < row || !columns.has(column))
    return strange.length > 0
      ? [`${name}: ${label}: ${strange.map(({ index, column }) => `${index}/${column}`).join(' ')}`]
      : []
  })
  expect(wrong).toEqual([])
  expect(tried.length).toBeGreaterThan(100)
})

test('the fabric below the row of the finding is the same', () => {
  for (const one of tried) {
    const { name, before, after, label } = one
    const row = firstRow(one)
    expect(fabric(after).slice(0, row), `${name}: ${label}`).toEqual(fabric(before).slice(0, row))
  }
})
