import { eachChart } from '../../../src/pattern/edits/chart'
import { chartOn } from '../../../src/pattern/charts'
import { expect, test } from 'vitest'
import { changesBetween } from '../../../src/turning/changes'
import { mirror } from '../../../src/pattern/edits/mirror'
import { addChart } from '../../../src/pattern/edits/piece'
import { reverseDirection } from '../../../src/pattern/edits/turn-round'
import { setWords } from '../../../src/pattern/edits/words'
import type { Pattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { starterCharts } from '../../../src/shelf/seeds'
import { writeWords } from '../../../src/words/write'
import { patternOf } from '../../pattern/edits/chart-text'
import { smallBench } from '../render'
import { stitchOf } from '../../../src/stitches/vocabulary'

const starter = (id: string): Pattern => {
  const chart = starterCharts.find((one) => one.id === id)
  if (!chart) throw new Error(`There is no starter chart ${id}`)
  return chart.pattern()
}
const told = (now: Pattern, then: Pattern) => {
  const { changes, stays } = changesBetween(now, then)
  return {
    changes: changes.map(({ text }) => text),
    stays,
    lines: changes.flatMap((c) => c.lines ?? []),
  }
}
const sameLook = 'The look of the fabric: each stitch stays where it is on the right side.'

const cuff = patternOf(
  'k k k k k k k k p p',
  '2/2_LC . . . k k2tog yo k p p',
  '2/2_LC . . . 1/1_RC . k k p p',
)

test('mirroring a cuff: crosses and leans swap, counted', () => {
  const { changes, stays, lines } = told(cuff, mirror(cuff))
  expect(changes).toContain('2 left crosses become right crosses.')
  expect(changes).toContain('1 right cross becomes a left cross.')
  expect(changes).toContain('1 k2tog becomes ssk.')
  expect(stays).toContain('The loom is worked clockwise, peg 1 at the right.')
  expect(stays).not.toContain(sameLook)
  expect(lines[0]?.now).toBe('Rnd 1: k8, p2. (10 sts)')
  expect(lines[0]?.then).toBe('Rnd 1: p2, k8. (10 sts)')
  expect(lines).toHaveLength(2)
})

test('reversing the direction of a cuff: the fabric stays, peg 1 and the words change', () => {
  const { changes, stays } = told(cuff, reverseDirection(cuff))
  expect(changes.slice(0, 2)).toEqual([
    'The loom is worked counterclockwise instead of clockwise, seen from above.',
    'Peg 1 stands at the left instead of the right, and round 1 runs left to right instead of right to left.',
  ])
  expect(changes.join(' ')).not.toMatch(/cross/)
  expect(stays).toContain(sameLook)
  expect(stays).toContain('Crosses, decreases and increases lean as they do.')
})

test('a design that is its own mirror image stays as it looks', () => {
  const rib = patternOf('k p p k', 'p k k p')
  const { changes, stays } = told(rib, mirror(rib))
  expect(changes).toEqual([])
  expect(stays).toContain(sameLook)
  expect(stays).toContain('The words from the chart.')
})

test.each([
  ['reversed', reverseDirection],
  ['mirrored', mirror],
])('the heel of a starter chart, %s, moves to the other half and can be worked', (_name, turn) => {
  const heel = starter('hundred-steps-heel')
  const { changes, stays } = told(heel, turn(heel))
  expect(changes).toContain('Short rows 21-49 move from pegs 1-22 to pegs 19-40.')
  expect(stays).toContain('Findings in the charts: none.')
})

test('lines of the words name their chart where there are several', () => {
  const socks = starter('fog-watch-socks')
  const { lines } = told(socks, mirror(socks))
  expect(lines.length).toBeGreaterThan(0)
  for (const { now, then } of lines) expect([now, then].join()).toMatch(/^(\w+): .*,\1: /)
})

test('a heel worked in the other direction makes the same fabric', () => {
  const heel = starter('hundred-steps-heel')
  expect(told(heel, reverseDirection(heel)).stays).toContain(sameLook)
})

test('on a bar the mirror image is worked from the other end, and its crosses are counted', () => {
  const bar: Pattern = { ...cuff, loom: { ...cuff.loom, shape: 'bar' } }
  const { changes, stays } = told(bar, mirror(bar))
  expect(changes).toContain('2 left crosses become right crosses.')
  expect(changes).toContain('1 k2tog becomes ssk.')
  expect(changes).toContain(
    'Peg 1 stands at the left instead of the right, and row 1 runs left to right instead of right to left.',
  )
  expect(stays).not.toContain(sameLook)
  expect(told(bar, reverseDirection(bar)).stays).toContain(
    'Crosses, decreases and increases lean as they do.',
  )
})

test('own words stay, and it is said in how many places they will differ', () => {
  const words = writeWords(workPattern(cuff), 'us')
    .lines.map(({ text }) => text)
    .join('\n')
  const own = setWords(cuff, words)
  const bench = smallBench(own)
  expect(bench.wording.differences).toBe(0)
  const { changes } = told(own, mirror(own))
  bench.apply('Mirror the design', mirror)
  expect(changes).toContain(
    `My own words stay as they are and will differ from the chart in ${bench.wording.differences} places (now 0).`,
  )
  expect(bench.wording.differences).toBeGreaterThan(1)
})

test('every chart of the piece is told of by its name', () => {
  const leg = chartOn(patternOf('2/2_LC . . . k k k k k k'))
  const piece = addChart(cuff, 'Leg', leg)
  const own: Pattern = {
    ...piece,
    charts: eachChart(piece.charts, (one) =>
      one.name === 'Leg' ? { ...one, words: 'Rnd 1: 2/2 LC, k6.' } : one,
    ),
  }
  const { changes } = told(own, mirror(own))
  expect(changes).toContain('3 left crosses become right crosses.')
  expect(changes.some((text) => text.startsWith('Leg: my own words stay as they are'))).toBe(true)
})

test('pegs that steps name are counted from the other end', () => {
  const piece: Pattern = {
    ...cuff,
    steps: [
      ...cuff.steps.slice(0, -1),
      { kind: 'pegs', run: { from: 0, to: 3 }, toAndFro: true },
      { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 2 } },
      { kind: 'pegs', run: null, toAndFro: false },
      ...cuff.steps.slice(-1),
    ],
  }
  expect(told(piece, mirror(piece)).changes).toContain(
    'Step 3, pegs in work: pegs 7-10 instead of pegs 1-4.',
  )
})
