/** A stitch of several pegs that does not stand whole is named in every reading, with what cuts it. */
import { withChart } from '../../src/pattern/edits/chart'
import { describe, expect, it } from 'vitest'
import { rotateColumns } from '../../src/pattern/edits/turn-round'
import type { Pattern, Chart } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { stitchOf, standardVocabulary } from '../../src/stitches/vocabulary'
import { abbreviations } from '../../src/words/abbreviations'
import { compare } from '../../src/words/compare/compare'
import { read } from '../../src/words/read/read'
import { readSettingsOf } from '../../src/words/read/reading'
import { cellsOf } from '../arbitraries'
import { linesOf, pieceOf, rowOf } from './helpers'

const cross = cellsOf(stitchOf('2/2 LC'))
const crossed = pieceOf([rowOf(['p', 'p', ...cross, 'p', 'p'])])

const onPegs = (pattern: Pattern, pegs: number, more: Partial<Chart>): Pattern =>
  withChart({ ...pattern, loom: { ...pattern.loom, pegs } }, { ...more })

const cases: [string, Pattern, string][] = [
  [
    'the start of the round',
    rotateColumns(crossed, 4),
    'Rnd 1: k2, p4, 2/2 LC (cut at the end of the round, 2 of 4 pegs). (8 sts)',
  ],
  [
    'the edge of the repeat, as its last column',
    rotateColumns(onPegs(crossed, 16, { repeat: { from: 0, to: 7 } }), 4),
    'Rnd 1: *k2, p4, 2/2 LC (cut at the edge of the repeat, 2 of 4 pegs); rep from * to end. (16 sts)',
  ],
  [
    'the edge of the repeat, between two copies',
    onPegs(crossed, 12, { repeat: { from: 0, to: 3 } }),
    'Rnd 1: p2, 2/2 LC (cut at the edge of the repeat, 2 of 4 pegs), p2, 2/2 LC, p2. (12 sts)',
  ],
  [
    'the edge of a bar',
    {
      ...pieceOf([rowOf(['p', 'p', ...cross.slice(0, 3)])]),
      loom: { ...crossed.loom, shape: 'bar', pegs: 5 },
    },
    'Row 1: p2, 2/2 LC (cut at the edge of the piece, 3 of 4 pegs). (5 sts)',
  ],
  [
    'a stitch beside it',
    pieceOf([rowOf(['2/2 LC', 'p', 'p'])]),
    'Rnd 1: 2/2 LC (cut by the stitch beside it, 1 of 4 pegs), p2. (3 sts)',
  ],
  [
    'the pegs that its row works',
    pieceOf([rowOf([...cross, ...cross], { run: { from: 2, to: 5 } })]),
    'Row 1: Pegs 3 to 6: *2/2 LC (cut at the edge of its row, 2 of 4 pegs); rep from * to end. (8 sts)',
  ],
]

describe.each(cases)('a cross cut by %s', (_, pattern, line) => {
  it('is written as what it is', () => {
    expect(linesOf(pattern)).toEqual([line])
  })

  it('is read back as that, and agrees with the chart', () => {
    const work = workPattern(pattern)
    const reading = read(line, readSettingsOf(pattern))
    const sites = work.run.rows[0]?.row.sites.map(({ stitch }) => stitch)
    expect(reading.rows[0]?.stitches.map(({ stitch }) => stitch)).toEqual(sites)
    expect(compare(reading, work).differences).toEqual([])
  })

  it('stands among the abbreviations behind what is whole', () => {
    const list = abbreviations(workPattern(pattern), 'us').map(({ abbr }) => abbr)
    const cut = list.findIndex((abbr) => abbr.includes('(cut '))
    expect(cut).toBeGreaterThanOrEqual(0)
    if (list.includes('2/2 LC')) expect(cut).toBe(list.indexOf('2/2 LC') + 1)
  })
})

it.each(
  standardVocabulary.stitches
    .filter(({ width }) => width > 1)
    .map((stitch) => [stitch.id, stitch] as const),
)('%s without its last peg is read back in both sets of terms', (_, stitch) => {
  for (const terms of ['us', 'uk'] as const) {
    const made = pieceOf([rowOf(['p', ...cellsOf(stitch).slice(0, -1)])])
    const pattern: Pattern = { ...made, style: { ...made.style, terms } }
    const reading = read(linesOf(pattern).join('\n'), readSettingsOf(pattern))
    const [, cut] = workPattern(pattern).run.rows[0]?.row.sites ?? []
    expect(cut?.stitch.cut?.of).toBe(stitch)
    expect(reading.rows[0]?.stitches[1]?.stitch).toBe(cut?.stitch)
  }
})
