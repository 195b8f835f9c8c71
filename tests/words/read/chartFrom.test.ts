import { chartOn } from '../../../src/pattern/charts'
import { describe, expect, it } from 'vitest'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { chartFrom } from '../../../src/words/read/chart/chartFrom'
import { read } from '../../../src/words/read/read'
import { readSettingsOf } from '../../../src/words/read/reading'
import { withSmallestRepeat } from '../../../src/words/read/chart/smallestRepeat'
import { pieceOf, rowOf } from '../helpers'
import { idsIn } from '../../cells'

const ring = (pegs: number): Pattern => newPattern(pegs, 1)
const bar = (pegs: number): Pattern => {
  const piece = newPattern(pegs, 1)
  return { ...piece, loom: { ...piece.loom, shape: 'bar' } }
}

const made = (text: string, pattern: Pattern) =>
  chartFrom(read(text, readSettingsOf(pattern)), pattern)

/** The stitches on the pegs, row by row, peg 1 first. */
const onPegs = ({ pattern }: ReturnType<typeof made>) =>
  workPattern(pattern).run.rows.map(({ row }) => row.sites.map(({ stitch }) => stitch.id).join(' '))

const miscounts = ({ pattern }: ReturnType<typeof made>) =>
  workPattern(pattern).run.rows.filter(({ miscount }) => miscount !== null)

describe('a chart from words', () => {
  it('is knitted as the words say that plain knit is made', () => {
    const text = 'Abbreviations\nk = e-wrap knit\n\nInstructions\nRnd 1: K2, p2, k4.\nRnd 2: Knit.'
    const reading = read(text, readSettingsOf(ring(8)))
    const { pattern } = chartFrom(reading)
    expect(pattern.making.knit).toBe('e-wrap')
    expect(onPegs({ pattern, remarks: [] })).toEqual(['k k p p k k k k', 'k k k k k k k k'])
  })

  it('takes up the title and the gauge that the words state, and says where the pattern has another', () => {
    // 4 in stand for 10 cm (common practice).
    for (const said of ['20 sts and 28 rnds = 10 cm in pattern', '28 rows x 20 sts to 4 in']) {
      const text = `Harbour Rope Cuff\n\nGauge: ${said}.\nRnd 1: knit.`
      const { pattern, remarks } = made(text, ring(8))
      expect(remarks).toEqual([])
      expect(pattern.title).toBe('Harbour Rope Cuff')
      expect(pattern.gauge).toEqual({ stitches: 20, rows: 28 })
      const other = { ...ring(8), title: 'Rope', gauge: { stitches: 18, rows: 28 } }
      const kept = made(text, other)
      expect(kept.pattern).toMatchObject({ title: 'Rope', gauge: other.gauge })
      expect(kept.remarks.map(({ rule }) => rule)).toEqual(['stated-gauge'])
      expect(kept.remarks[0]?.message).toContain('20 stitches and 28 rows')
      expect(kept.remarks[0]?.message).toContain('18 and 28')
    }
  })

  it('takes no gauge from half of one, and no title from the name of a section', () => {
    const { pattern } = made('Cuff\n\nTension: 20 sts to 10 cm\nRnd 1: knit.', ring(8))
    expect(pattern).toMatchObject({ title: ring(8).title, gauge: null })
    const inches = made('Gauge\n5 sts and 7 rows to 1 inch\n\nRnd 1: knit.', ring(8))
    expect(inches.pattern).toMatchObject({
      title: ring(8).title,
      gauge: { stitches: 20, rows: 28 },
    })
  })

  it('puts a no-stitch cell beside each decrease, and works only the pegs with loops after it', () => {
    const chart = made('Rnd 1: k3, k2tog, k3. Rnd 2: knit. Rnd 3: p3, ssk, p2.', ring(8))
    expect(onPegs(chart)).toEqual([
      'k k k k2tog none k k k',
      'k k k k none k k k',
      'p p p ssk none none p p',
    ])
    expect(miscounts(chart)).toEqual([])
    expect(chart.remarks).toEqual([])
  })

  it('gives an increase the nearest empty peg', () => {
    const chart = made('Rnd 1: k2tog, k4, k2tog. Rnd 2: k5, m1, k1. Rnd 3: knit.', ring(8))
    expect(onPegs(chart)).toEqual([
      'k2tog none k k k k k2tog none',
      'k none k k k k m1l k',
      'k none k k k k k k',
    ])
    expect(miscounts(chart)).toEqual([])
  })

  it('keeps a yarn over on the peg that its decrease empties', () => {
    const chart = made('Rnd 1: *k2, yo, k2tog; rep from * to end.', ring(8))
    expect(onPegs(chart)).toEqual(['k k yo k2tog k k yo k2tog'])
  })

  it('runs the other way on the way back', () => {
    const chart = made('Row 1: k2, p4\nRow 2: k2, 2/2 LC\nRow 3: k2, k2tog, k2', bar(6))
    expect(onPegs(chart)).toEqual(['k k p p p p', '2/2 LC k k', 'k k k2tog none k k'])
  })

  it('writes a band out that comes out otherwise the second time', () => {
    const { pattern } = made('Rnd 1: k2tog, knit to end\nRep Rnd 1 twice more.', ring(8))
    const { rows, bands } = chartOn(pattern)
    expect([rows.length, bands.length]).toEqual([3, 0])
  })

  it('has turns and runs where the words turn', () => {
    const { pattern } = made('Row 1: k6, w&t\nRow 2: p4, w&t\nRow 3: knit to end', bar(8))
    const { rows } = chartOn(pattern)
    expect(rows.map(({ run, heading, end }) => [run, heading, end])).toEqual([
      [{ from: 0, to: 5 }, null, 'wrap'],
      [{ from: 2, to: 5 }, null, 'wrap'],
      [{ from: 2, to: 7 }, null, 'on'],
    ])
  })

  it('says where there is no room, with the numbers', () => {
    const { remarks, pattern } = made('Rnd 1: knit\nRnd 2: (k1, m1) 6 times', ring(6))
    expect(remarks).toMatchObject([{ rule: 'no-room', severity: 'error', row: 1 }])
    expect(remarks[0]?.message).toBe(
      'Rnd 2 needs 12 pegs, the loom has 6. 6 stitches are left out of the chart.',
    )
    expect(chartOn(pattern).rows).toHaveLength(2)
  })

  it('lays words for other pegs on the loom there is', () => {
    const reading = read('Rnd 1: k2, p2, k2', { ...readSettingsOf(ring(8)), pegs: 6 })
    expect(chartOn(chartFrom(reading, ring(8)).pattern).rows[0]?.cells).toHaveLength(8)
    expect(chartFrom(reading).pattern.loom.pegs).toBe(6)
  })

  it('makes an empty chart of no words', () => {
    expect(chartOn(made('', ring(8)).pattern).rows).toHaveLength(1)
  })
})

describe('the smallest repeat', () => {
  const chartOf = (...rows: string[]) =>
    withSmallestRepeat(chartOn(pieceOf(rows.map((cells) => rowOf(cells)))))

  it('is the fewest columns that all rows repeat', () => {
    const chart = chartOf('(k*2, p*2)*6', '(p, k)*12')
    expect([chart.columns, chart.repeat]).toEqual([4, { from: 0, to: 3 }])
  })

  it('leaves edge stitches beside it', () => {
    const chart = chartOf('p, (k*3, p)*5, k')
    expect(chart.columns).toBeLessThan(8)
    expect(idsIn(chart.rows[0]?.cells).join(' ')).toBe('p k k k p k')
    expect(chart.repeat).toEqual({ from: 0, to: 3 })
  })

  it('cuts no cross', () => {
    const chart = chartOf('k*2, (2/2 LC)*5, k*2')
    expect(idsIn(chart.rows[0]?.cells)).toEqual(['k', 'k', '2/2 LC', '', '', '', 'k', 'k'])
  })

  it('is none where nothing repeats, and none in a plain piece', () => {
    expect(chartOf('k*3, p, k*2, p*4, k, p').repeat).toBeNull()
    expect(chartOf('k*24').columns).toBe(24)
  })
})
