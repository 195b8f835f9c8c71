import { withChart } from '../../../src/pattern/edits/chart'
import { setGauge } from '../../../src/pattern/edits/settings'
import { addChart, renameChart } from '../../../src/pattern/edits/piece'
import { shortRowChart } from '../../../src/pattern/generate/shortRows'
import { usualHeel } from '../../../src/pattern/generate/wish'
import type { Chart } from '../../../src/pattern/chart'
import { newPattern, type LoomSetup, type Pattern } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { rowOf } from '../helpers'
import { stitchOf } from '../../../src/stitches/vocabulary'

/** A chart whose columns fill any loom. */
export const chartOf = (...rows: readonly string[]): Chart => {
  const list = rows.map((cells) => rowOf(cells))
  const columns = list[0]?.cells.length ?? 1
  return { columns, repeat: { from: 0, to: columns - 1 }, bands: [], rows: list }
}

export const withPiece = (pattern: Pattern, piece: Partial<Pattern>): Pattern => ({
  ...pattern,
  ...piece,
})

/** The pattern with its first chart called this. */
export const called = (pattern: Pattern, name: string): Pattern =>
  renameChart(pattern, pattern.charts[0].name, name)

export const withSteps = (pattern: Pattern, steps: readonly Step[]): Pattern =>
  withPiece(pattern, { steps })

/** A piece of one chart called Band. */
export function band(chart: Chart, loom: Partial<LoomSetup> = {}): Pattern {
  const pattern = newPattern(loom.pegs ?? 24, 1)
  const charted = withChart({ ...pattern, loom: { ...pattern.loom, ...loom } }, chart)
  return called(charted, 'Band')
}

const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
const bindOff: Step = { kind: 'bind off', how: 'elastic', pegs: null }

/** The ferryman's mitt: a ribbed cuff, a thumb opening worked to and fro, a plait over the hand. */
export function ferryMitt(): Pattern {
  const cuff = band(chartOf('k, k, p, p', 'k, k, p, p'), { pegs: 32 })
  const named: Pattern = called(
    { ...setGauge(cuff, { stitches: 20, rows: 30 }), title: 'Ferry mitt' },
    'Cuff',
  )
  const plait = chartOf('k*2, 2/2 LC, k*2', 'k*8', 'k*8', 'k*8')
  return withPiece(addChart(named, 'Plait', plait), {
    steps: [
      castOn,
      { kind: 'chart', chart: 'Cuff', times: 6 },
      { kind: 'note', text: 'Now the hand.\n  Keep the plait at the back.' },
      { kind: 'chart', chart: 'Plait', times: 3 },
      { kind: 'pegs', run: null, toAndFro: true },
      { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 6 } },
      { kind: 'pegs', run: null, toAndFro: false },
      { kind: 'chart', chart: 'Plait', times: 1 },
      { kind: 'plain', stitch: stitchOf('p'), amount: { mm: 20 } },
      bindOff,
    ],
    pair: 'mirrored',
  })
}

/** The lamp keeper's sock: leg, generated heel, foot by length, gathered toe. */
export function keeperSock(): Pattern {
  const leg = band(chartOf('k, p'), { pegs: 40 })
  const named: Pattern = called(
    { ...setGauge(leg, { stitches: 25, rows: 35 }), title: 'Keeper’s sock' },
    'Leg',
  )
  const heel = shortRowChart(named.loom, usualHeel(named.loom))
  if (!heel.ok) throw new Error(heel.message)
  return withPiece(addChart(named, 'Heel', heel.chart), {
    steps: [
      { kind: 'cast on', how: 'double e-wrap', pegs: null },
      { kind: 'chart', chart: 'Leg', times: 30 },
      { kind: 'chart', chart: 'Heel', times: 1 },
      { kind: 'plain', stitch: stitchOf('k'), amount: { mm: 120 } },
      { kind: 'bind off', how: 'gather', pegs: null },
    ],
    pair: 'alike',
  })
}
