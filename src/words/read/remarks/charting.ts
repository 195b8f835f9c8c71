import type { Gauge, Run } from '../../../pattern/pattern'
import type { Reading, ReadRow, Remark } from '../reading'
import { unitOfRead, nameOf } from '../rows/wordsOfRows'

/** Stitches of a row that have no peg. */
export function noRoom(
  read: ReadRow,
  row: number,
  left: number,
  covers: Run,
  shape: 'ring' | 'bar',
): Remark {
  const { label, saidAt, stitches } = read
  const name = nameOf(unitOfRead(read, shape), label)
  const width = stitches.reduce((sum, { stitch }) => sum + stitch.width, 0)
  const pegs = covers.to - covers.from + 1
  return {
    rule: 'no-room',
    severity: 'error',
    range: saidAt,
    row,
    pegs: covers,
    message: `${name} needs ${width} pegs, the loom has ${pegs}. ${left} ${left === 1 ? 'stitch is' : 'stitches are'} left out of the chart.`,
    advice: 'Use a loom with more pegs, or see whether too many stitches are left before it.',
    fixes: [],
  }
}

/** The words state another gauge than the pattern has, which is kept. */
export const statedGaugeRemark = (said: Gauge, kept: Gauge, range: Remark['range']): Remark => ({
  rule: 'stated-gauge',
  severity: 'warning',
  range,
  row: null,
  pegs: null,
  message: `The words state a gauge of ${said.stitches} stitches and ${said.rows} rows to 10 cm; the pattern has ${kept.stitches} and ${kept.rows}.`,
  advice: 'Change the gauge in the words, or that of the pattern.',
  fixes: [],
})

export const tooManyRows = ({ rows }: Reading, left: number): Remark => ({
  rule: 'no-room',
  severity: 'error',
  range: rows.at(-1)?.saidAt ?? { from: 0, to: 0 },
  row: rows.length - 1,
  pegs: null,
  message: `The chart has no room for the last ${left} of ${rows.length} rows.`,
  advice: 'Make a chart of fewer rows: repeat rows as a band instead of writing them out.',
  fixes: [],
})
