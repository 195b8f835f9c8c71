import { namedOn } from '../../src/pattern/charts'
import { checkPiece } from '../../src/checks/piece/check'
import { sidePicture } from '../../src/drawing/piece/side'
import { addChart } from '../../src/pattern/edits/piece'
import { shortRowChart } from '../../src/pattern/generate/shortRows'
import { usualHeel } from '../../src/pattern/generate/wish'
import type { Pattern } from '../../src/pattern/pattern'
import { totalsOf } from '../../src/pattern/totals'
import { workPiece, type PieceWork } from '../../src/pattern/workPiece'
import { against, measureSteps, show, table } from './measure'
import { texturedPiece } from './pieces'
import { stitchOf } from '../../src/stitches/vocabulary'

const pegs = 60
const rounds = 200
const calls = 25
const warm = 5

/** The most that simulating a whole piece from nothing may take, ms. */
const most = 50

/** A sock of 60 pegs with some 200 rounds: textured leg, heel, foot, toe. */
function sock(seed: number): Pattern {
  const leg = texturedPiece(pegs, 20)
  const heel = shortRowChart(leg.loom, usualHeel(leg.loom))
  if (!heel.ok) throw new Error(heel.message)
  const pattern = addChart({ ...leg, gauge: { stitches: 28, rows: 40 } }, 'Heel', heel.chart)
  const heelRows = heel.chart.rows.length
  return {
    ...pattern,
    steps: [
      { kind: 'cast on', how: 'long-tail', pegs: null },
      { kind: 'chart', chart: namedOn(pattern).name, times: 4 },
      { kind: 'chart', chart: 'Heel', times: 1 },
      // Other lengths each time, so that no answer of an earlier call can be used again.
      {
        kind: 'plain',
        stitch: stitchOf('k'),
        amount: { rows: rounds - 80 - 2 * heelRows + (seed % 2) },
      },
      { kind: 'chart', chart: 'Heel', times: 1 },
      { kind: 'bind off', how: 'graft', pegs: null },
    ],
  }
}

/** A whole piece simulated from nothing, checked, counted and drawn from the side. */
export function benchPiece(): void {
  const versions = Array.from({ length: 2 }, (_, seed) => sock(seed))
  let work: PieceWork = workPiece(sock(0))
  const cells = work.steps
    .flatMap(({ rows }) => rows?.rows ?? [])
    .map(({ row }) => row.sites.length)
  const figures = measureSteps(
    {
      // The floor: touching as many cells as there are stitches.
      'an array of as many stacks': () =>
        cells.map((count) => new Array(count).fill(0).map((_, i) => [i])),
      'simulate from nothing': (index) => (work = workPiece(versions[index % 2] as Pattern)),
      check: () => checkPiece(work),
      count: () => totalsOf(work),
      'side picture': () => sidePicture(work, { width: 50, height: 120, text: 3, chosen: null }),
    },
    calls,
    warm,
  )
  const floor = figures[0]?.median ?? NaN
  console.log(`\nA whole piece of ${pegs} pegs and ${work.rows} rows, medians in ms`)
  table(
    ['', 'median', 'quickest', 'to the floor'],
    figures.map(({ name, median, least }) => [
      name,
      show(median),
      show(least),
      `${show(median / floor, 1)} x`,
    ]),
  )
  const simulate = figures.find(({ name }) => name === 'simulate from nothing')
  if (simulate)
    console.log(
      `Simulated from nothing: ${show(simulate.median, 1)} ms (${against(simulate.median, most)} ms)`,
    )
}
