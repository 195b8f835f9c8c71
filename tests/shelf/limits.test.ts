import { withChart } from '../../src/pattern/edits/chart'
import { chartOn, namedOn } from '../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { limits, newPattern, blankRow, type Pattern } from '../../src/pattern/pattern'
import { pieceLimits } from '../../src/pattern/piece'
import { checkPattern } from '../../src/checks/check'
import { flatChart } from '../../src/drawing/flat'
import { workPattern } from '../../src/pattern/work'
import { workPiece } from '../../src/pattern/workPiece'
import { writeWords } from '../../src/words/write'
import { readFile, writeFile } from '../../src/shelf/format'
import { arbitraryPattern } from '../arbitraries'
import { stitchOf } from '../../src/stitches/vocabulary'

type Node = Record<string, unknown>

/** Every value inside of a file: what holds it, and its key. */
const slotsOf = (node: Node): [Node, string][] =>
  Object.keys(node).flatMap((key) => {
    const child = node[key]
    const deeper = typeof child === 'object' && child !== null ? slotsOf(child as Node) : []
    return [[node, key] as [Node, string], ...deeper]
  })

/** A file in which each kind of entry stands at least once. */
function fullFile(): Node {
  const pattern = newPattern(36, 12)
  const full: Pattern = withChart(
    {
      ...pattern,
      gauge: { stitches: 20, rows: 28 },
      checks: { ...pattern.checks, rowsBetweenCrosses: 3 },
      charts: [
        { ...namedOn(pattern), words: 'Rnd 1: k' },
        { name: 'Heel', chart: chartOn(pattern), wish: null, words: 'Rnd 1: k', aside: ['float'] },
      ],
      steps: [
        { kind: 'cast on', how: 'e-wrap', pegs: { from: 0, to: 35 } },
        { kind: 'chart', chart: 'Heel', times: 2 },
        { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 4 } },
        { kind: 'plain', stitch: stitchOf('k'), amount: { mm: 40 } },
        { kind: 'note', text: 'Weave in the end.' },
        { kind: 'pegs', run: { from: 0, to: 17 }, toAndFro: true },
        { kind: 'bind off', how: 'basic', pegs: { from: 0, to: 35 } },
      ],
      pace: 20,
      swatch: { stitches: 20, rows: 28, grams: 4.5 },
      pictures: [{ chart: 'Heel', row: 1, from: 1, to: 2 }],
    },
    {
      repeat: { from: 0, to: 3 },
      bands: [{ from: 1, to: 2, times: 3 }],
      rows: [
        { ...blankRow(36, stitchOf('k')), run: { from: 2, to: 30 } },
        ...chartOn(pattern).rows.slice(1),
      ],
    },
  )
  return JSON.parse(writeFile(full)) as Node
}
const read = (file: Node) => readFile(JSON.stringify(file))

describe('numbers', () => {
  const numbers = () => slotsOf(fullFile()).filter(([at, key]) => typeof at[key] === 'number')

  test('the file that is spoilt is whole, and has numbers of each kind', () => {
    expect(read(fullFile())).toMatchObject({ ok: true })
    expect(new Set(numbers().map(([, key]) => key))).toEqual(
      new Set(
        `pegwright pegs pitch stitches rows columns from to times size longestFloat longestCross
         rowsBetweenCrosses heavyEvery pace mm grams row`.split(/\s+/),
      ),
    )
  })

  test.each(['5e-324', '1e-9', '-1', '1e9', '1.7e308', '1e999', '-1e999'])(
    'none of them may be %s',
    (number) => {
      const count = numbers().length
      for (let at = 0; at < count; at++) {
        const file = fullFile()
        const [node, key] = slotsOf(file).filter(([on, name]) => typeof on[name] === 'number')[
          at
        ] as [Node, string]
        node[key] = 'here'
        const answer = readFile(JSON.stringify(file).replace('"here"', number))
        expect(answer.ok, `${key} as ${number}`).toBe(false)
      }
    },
  )
})

describe('lists', () => {
  const lists: [string, (file: Node) => Node, string, number][] = [
    ['rows', (file) => (file['charts'] as [Node])[0], 'rows', limits.rows.most],
    ['steps', (file) => file, 'steps', pieceLimits.steps.most],
    ['charts', (file) => file, 'charts', pieceLimits.charts.most],
    ['step pictures', (file) => file, 'pictures', pieceLimits.pictures.most],
  ]
  test.each(lists)('as many %s as are allowed, and not one more', (noun, of, key, most) => {
    const file = fullFile()
    const [item] = of(file)[key] as [Node]
    const make = (count: number) =>
      Array.from({ length: count }, (_, index) =>
        key === 'charts' && index > 0
          ? { ...item, name: index === 1 ? 'Heel' : `Heel ${index}` }
          : item,
      )
    of(file)[key] = make(most)
    expect(read(file)).toMatchObject({ ok: true })
    of(file)[key] = make(most + 1)
    const answer = read(file)
    expect(answer).toMatchObject({ ok: false })
    expect(answer.ok ? '' : answer.message).toContain(`is a list of ${most + 1}; it must be`)
    expect(answer.ok ? '' : answer.message).toContain(`${most} ${noun}.`)
  })
})

describe('a refusal', () => {
  /** Letters of the longest message, whatever is in the file. */
  const longest = 300
  const long = 'kp2'.repeat(40_000)

  test('repeats little of the file, whatever value or name is that long', () => {
    for (const spoil of [
      (node: Node, key: string) => (node[key] = long),
      (node: Node, key: string) => (node[key] = { [long]: 1 }),
      (node: Node) => (node[long] = 1),
      (node: Node, key: string) => (node[key] = [long, long]),
    ]) {
      const count = slotsOf(fullFile()).length
      for (let at = 0; at < count; at++) {
        const file = fullFile()
        const [node, key] = slotsOf(file)[at] as [Node, string]
        spoil(node, key)
        const answer = read(file)
        if (!answer.ok) expect(answer.message.length, key).toBeLessThan(longest)
      }
    }
    const twice = readFile(`{"pegwright": 3, "${long}": 1, "${long}": 1}`)
    expect(twice.ok ? '' : twice.message).toMatch(/is given twice/)
    expect(twice.ok ? 0 : twice.message.length).toBeLessThan(longest)
  })

  test('is short for any file', () => {
    const texts = fc.oneof(fc.constant(long), fc.jsonValue(), fc.double())
    fc.assert(
      fc.property(
        arbitraryPattern({ times: limits.times.most }),
        fc.nat(),
        texts,
        (pattern, pick, value) => {
          const file = JSON.parse(writeFile(pattern)) as Node
          const slots = slotsOf(file)
          const [node, key] = slots[pick % slots.length] ?? [file, 'title']
          node[key] = value
          const answer = read(file)
          expect(answer.ok ? 0 : answer.message.length).toBeLessThan(longest)
        },
      ),
    )
  })
})

test('the longest chart and piece that a file may hold are worked, checked, drawn and written', () => {
  const { rows, times } = limits
  const pattern = newPattern(limits.pegs.least, rows.most)
  const bands = Array.from({ length: rows.most / 2 }, (_, band) => ({
    from: 2 * band,
    to: 2 * band + 1,
    times: times.most,
  }))
  const step = { kind: 'chart' as const, chart: 'Chart', times: pieceLimits.times.most }
  const castOn = { kind: 'cast on' as const, how: 'e-wrap' as const, pegs: null }
  const steps = [castOn, ...Array.from({ length: pieceLimits.steps.most - 1 }, () => step)]
  const file = writeFile(withChart({ ...pattern, steps }, { bands }))
  const answer = readFile(file)
  if (!answer.ok) throw new Error(answer.message)
  const work = workPattern(answer.pattern)
  expect(checkPattern(work).findings.length).toBeGreaterThan(0)
  expect(flatChart(work).height).toBeGreaterThan(0)
  const [first, second] = writeWords(work, 'us').lines
  expect(first?.text).toMatch(/^Rnds 1-2:/)
  expect(second?.text).toContain(`${2 * times.most} rnds`)
  expect(workPiece(answer.pattern).rows).toBeLessThanOrEqual(pieceLimits.rows.most)
})
