import { withChart } from '../../../src/pattern/edits/chart'
import { readFileSync } from 'node:fs'
import fc, { type Arbitrary } from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { pieceErrors } from '../../../src/checks/open'
import { directions } from '../../../src/loom/direction'
import { bindOffs, castOns } from '../../../src/loom/move'
import { addChart } from '../../../src/pattern/edits/piece'
import type { Pattern, Run } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { workPattern } from '../../../src/pattern/work'
import { workPiece } from '../../../src/pattern/workPiece'
import { readFile } from '../../../src/shelf/format'
import { termSets, type Terms } from '../../../src/languages/terms'
import { pieceText } from '../../../src/words/piece/text'
import { writePiece } from '../../../src/words/piece/write'
import { read } from '../../../src/words/read/read'
import { readLimits } from '../../../src/words/read/limits'
import { readSettingsOf, type Reading } from '../../../src/words/read/reading'
import { versionAt } from '../../../src/words/read/piece/sectionRows'
import { called, chartOf, ferryMitt, keeperSock, withPiece } from '../piece/pieces'
import { workable } from './workable'
import { cellsFrom } from '../../cells'
import { stitchOf } from '../../../src/stitches/vocabulary'

const stitchesOf = (list: readonly string[]): string => list.join(' ')

/** Stitches of each row as the steps work them. */
const workedRows = (pattern: Pattern): string[] =>
  workPiece(pattern).steps.flatMap(({ rows }) =>
    (rows?.rows ?? []).map(({ row, heading }) => {
      const ids = row.sites.map(({ stitch }) => stitch.id)
      const worked = heading === 'forward' ? ids : ids.toReversed()
      return stitchesOf(worked.filter((id) => id !== 'none'))
    }),
  )

const readRows = (pattern: Pattern, text: string, terms: Terms) => {
  const settings = { ...readSettingsOf(pattern), terms }
  const { rows, remarks } = read(text, settings)
  return {
    rows: rows.map(({ stitches }) =>
      stitchesOf(stitches.map(({ stitch }) => stitch.id).filter((id) => id !== 'none')),
    ),
    errors: remarks.filter(({ severity }) => severity === 'error'),
    remarks,
  }
}

const blocksText = (pattern: Pattern, terms: Terms): string =>
  writePiece(workPiece(pattern), terms)
    .blocks.map(({ heading, lines }) => [heading, ...lines.map(({ text }) => text)].join('\n'))
    .join('\n\n')

const starter = (name: string): Pattern => {
  const file = readFile(
    readFileSync(new URL(`../../../seeds/${name}.json`, import.meta.url), 'utf8'),
  )
  if (!file.ok) throw new Error(name)
  return file.pattern
}

describe.each([
  ['mitt', ferryMitt()],
  ['sock', keeperSock()],
  ['starter sock', starter('fog-watch-socks')],
])('the words of a %s', (_, pattern) => {
  test.each(termSets)('in %s terms read back to its rows', (terms) => {
    for (const direction of directions) {
      const turned = { ...pattern, loom: { ...pattern.loom, direction } }
      for (const text of [blocksText(turned, terms), pieceText(workPiece(turned), terms)]) {
        const { rows, remarks } = readRows(turned, text, terms)
        expect(rows, text).toEqual(workedRows(turned))
        // A note that sounds like rows is asked about.
        expect(remarks.filter(({ rule }) => rule !== 'not-read')).toEqual([])
      }
    }
  })
})

const names = [
  ...[
    'Cuff',
    'Plait',
    'Leg & heel',
    'Chart 1',
    'Heel, back',
    'k2, p2 rib',
    'Plain rounds',
    'Notes',
  ],
  ...[
    'Rnd 1',
    'again',
    'Work',
    'Thumb again',
    'Cast-on',
    'Bind-off',
    'Toe',
    'a',
    'Abbreviations',
    'ROWS 1-4',
  ],
]

/** A piece of two charts that come out by themselves, plain rows, and pegs in work. */
const wholePieces: Arbitrary<Pattern> = workable.chain((pattern) => {
  const { pegs } = pattern.loom
  const run: Arbitrary<Run> = fc
    .tuple(fc.nat(pegs - 1), fc.nat(pegs - 1))
    .map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) }))
  const plain = fc.constantFrom('k', 'p', 'ew', 'sl', 'tuck', 'slf')
  const edge = fc.oneof(
    fc.record({
      kind: fc.constant('bind off' as const),
      how: fc.constantFrom(...bindOffs),
      pegs: run,
    }),
    fc.record({
      kind: fc.constant('cast on' as const),
      how: fc.constantFrom(...castOns),
      pegs: run,
    }),
  )
  return fc
    .tuple(
      fc.uniqueArray(fc.constantFrom(...names), { minLength: 2, maxLength: 2 }),
      fc.array(fc.array(plain, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 }),
      fc.array(
        fc.oneof(
          fc.record({
            kind: fc.constant('chart' as const),
            chart: fc.nat(1),
            times: fc.integer({ min: 1, max: 4 }),
          }),
          fc.record({
            kind: fc.constant('plain' as const),
            stitch: plain.map(stitchOf),
            amount: fc.oneof(
              fc.integer({ min: 1, max: 5 }).map((rows) => ({ rows })),
              fc.integer({ min: 5, max: 30 }).map((mm) => ({ mm })),
            ),
          }),
          fc.record({
            kind: fc.constant('pegs' as const),
            run: fc.option(run),
            toAndFro: fc.boolean(),
          }),
          fc.constant({
            kind: 'note' as const,
            text: 'Mark this place.\n\nThe left side is the palm.',
          }),
        ),
        { minLength: 1, maxLength: 6 },
      ),
      fc.array(edge, { maxLength: 1 }),
      fc.constantFrom(...castOns),
      fc.option(fc.integer({ min: 15, max: 40 })),
      fc.constantFrom(...termSets),
      fc.integer({ min: 0, max: 3 }).map((n) => n === 0),
    )
    .map(([[one = '', two = ''], cells, middle, edges, how, rows, terms, wild]) => {
      const width = Math.max(...cells.map(({ length }) => length))
      const fill = cells.map((list) => Array.from({ length: width }, (_, at) => list[at] ?? 'k'))
      const chart = {
        columns: width,
        repeat: { from: 0, to: width - 1 },
        bands: [],
        rows: fill.map((list) => ({
          cells: cellsFrom(list),
          run: null,
          heading: null,
          end: 'on' as const,
        })),
      }
      const across = (...ids: string[]): string =>
        Array.from({ length: pegs }, (_, peg) => ids[peg % ids.length]).join(', ')
      const simple = chartOf(across('k', 'p'), across('k', 'k', 'p', 'p'), across('p', 'k', 'k'))
      const base: Pattern = {
        ...called(wild ? pattern : withChart(pattern, simple), one),
        gauge: rows === null ? null : { stitches: 20, rows },
        style: { ...pattern.style, terms },
      }
      const steps: Step[] = [...middle, ...edges].map((step) =>
        step.kind === 'chart' ? { ...step, chart: step.chart === 0 ? one : two } : step,
      )
      return withPiece(addChart(base, two, chart), {
        steps: [
          { kind: 'cast on', how, pegs: null },
          ...steps,
          { kind: 'bind off', how: 'sewn', pegs: null },
        ],
      })
    })
})

describe('the words of any piece', () => {
  it('read back to its rows, and say no error that it has not', () => {
    let sound = 0
    let turning = 0
    fc.assert(
      fc.property(wholePieces, (pattern) => {
        const work = workPiece(pattern)
        const faulty = pieceErrors(workPattern(pattern)).length > 0
        const { terms } = pattern.style
        const text = pieceText(work, terms)
        const { rows, errors } = readRows(pattern, text, terms)
        if (faulty || work.rows === 0) return
        sound++
        if (text.includes(' time:')) turning++
        expect(rows, text).toEqual(workedRows(pattern))
        expect(errors, text).toEqual([])
      }),
      { numRuns: 1500 },
    )
    expect(sound).toBeGreaterThan(100)
    expect(turning).toBeGreaterThan(15)
  })

  it('are read anew as from the start, wherever they change', () => {
    const text = pieceText(workPiece(ferryMitt()))
    const settings = readSettingsOf(ferryMitt())
    const plain = ({ rows, remarks, bands }: Reading) =>
      structuredClone({
        rows: rows.map((row) => ({
          ...row,
          stitches: row.stitches.map(({ stitch, range }) => [stitch.id, range]),
        })),
        remarks,
        bands,
      })
    let last = read(text, settings)
    const lines = text.split('\n')
    lines.forEach((line, index) => {
      const changed = lines.with(index, line.replace(/\d/, '3')).join('\n')
      last = read(changed, settings, last)
      expect(plain(last), line).toEqual(plain(read(changed, settings)))
    })
  })

  it('are bounded: a section worked as often as any, again and again', () => {
    const again = Array.from({ length: 400 }, () => 'Work Cuff again, Rnds 1-4, 99999 times.')
    const text = `Cuff\nWork Cuff, Rnds 1-4, 99999 times:\nRnds 1-3: k.\nRnd 4: p.\n${again.join('\n')}`
    const { rows } = read(text, readSettingsOf(ferryMitt()))
    expect(rows).toHaveLength(readLimits.rows)
  })
})

test('beyond its times a section goes on as it was told', () => {
  const at = (lists: readonly (readonly number[])[], time: number) =>
    versionAt(
      lists.map((times, index) => ({ times, index })),
      time,
    )?.index
  expect([3, 4].map((time) => at([[1], [2]], time))).toEqual([0, 1])
  expect([4, 5].map((time) => at([[1, 3], [2]], time))).toEqual([1, 0])
  expect([4, 9].map((time) => at([[1], [2, 3]], time))).toEqual([1, 1])
  expect(at([[1, 2, 3]], 7)).toBe(0)
})
