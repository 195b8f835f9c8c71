import { runsRightToLeft } from '../../../loom/direction'
import { grown, type Area } from '../../../pattern/blocks/area'
import { areaOf, insideAt, moveBlock, putBlock, type Corner } from '../../../pattern/blocks/block'
import type { Spot } from '../../../pattern/history'
import type { Sheet } from '../../../pattern/pattern'
import type { Bench } from '../../state/bench.svelte'
import type { Preview } from '../../state/block.svelte'
import { keyOf } from '../command'
import { applyToStitches } from '../lost'
import { answer } from './asking'
import { areaSaid, areaSize, sizeSaid, wouldCut } from './said'

/** What is marked, or the stitch at the place, with all of each cross. */
export const blockArea = (bench: Bench): Area => grown(bench.chart, bench.marked)

/** First peg on which a column stands. */
const pegOf = ({ work }: Bench, column: number): number =>
  Math.max(0, work.layout.columnOf.indexOf(column))

export const spotAt = (bench: Bench, { row, column }: Corner): Spot => ({
  row,
  peg: pegOf(bench, column),
})

/** Mark the cells of an area. */
export function markArea(bench: Bench, { rows, columns }: Area): void {
  bench.goTo(
    spotAt(bench, { row: rows.from, column: columns.from }),
    spotAt(bench, { row: rows.to, column: columns.to }),
  )
}

/** Lay a block on the chart, as it would be: on the lowest corner of what is marked, or on the place. */
export function lay(bench: Bench, preview: Omit<Preview, 'at'>): void {
  const { rows, columns } = bench.marked
  bench.block.lay({ ...preview, at: { row: rows.from, column: columns.from } })
  const laid = bench.block.preview
  if (laid) bench.goTo(spotAt(bench, laid.at))
}

/** Lay the preview elsewhere. The place goes with it, so that it is seen. */
export function layAt(bench: Bench, at: Corner): void {
  const { preview } = bench.block
  if (!preview) return
  bench.block.lay({ ...preview, at })
  bench.goTo(spotAt(bench, insideAt(bench.pattern, preview.block, at)))
}

const verbs = { paste: 'Paste', stamp: 'Stamp', move: 'Move' } as const

/** Put what lies on the chart into it. */
export function putPreview(bench: Bench): void {
  const { preview } = bench.block
  if (!preview) return
  const { block, at, how, from } = preview
  const size = sizeSaid(bench, block.columns, block.rows.length)
  const lay = (p: Sheet): Sheet => (from ? moveBlock(p, from, block, at) : putBlock(p, block, at))
  const done = applyToStitches(bench, `${verbs[how]} ${size}`, lay, null, how === 'move')
  if (!done) bench.say('Nothing changes: the same stitches stand there already.')
  if (how === 'stamp') {
    bench.block.lay(preview)
    return
  }
  bench.block.leave()
  markArea(bench, areaOf(block, at))
}

/** "Would cut 2/2 LC, round 11", else what would be done where. */
export function previewSaid(bench: Bench, preview: Preview): string {
  const { torn, area } = bench.block
  if (torn.length > 0) return wouldCut(bench, torn)
  if (!area) return ''
  const what = { paste: 'Paste', stamp: 'Stamp', move: 'Move to' }[preview.how]
  return `${what} ${areaSize(bench, area)}: ${areaSaid(bench, area)}`
}

/** On the button that puts it there. */
export const putLabel = ({ how }: Preview, cuts: boolean): string =>
  `${verbs[how]}${cuts ? ', rest plain' : ''}`

/** One peg on or back where nothing would be cut, by the arrow that leads there; null: there is no such place. */
export function fitBeside(bench: Bench, preview: Preview): { key: string; at: Corner } | null {
  if (bench.block.torn.length === 0) return null
  const leftIsOn = runsRightToLeft(bench.pattern.loom.direction)
  for (const step of [1, -1]) {
    const wanted = { ...preview.at, column: preview.at.column + step }
    const at = insideAt(bench.pattern, preview.block, wanted)
    if (at.column !== wanted.column || bench.block.tornAt(preview, at).length > 0) continue
    return { key: step > 0 === leftIsOn ? 'ArrowLeft' : 'ArrowRight', at }
  }
  return null
}

const arrows: Readonly<Record<string, readonly [rows: number, sideways: number]>> = {
  ArrowUp: [1, 0],
  ArrowDown: [-1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
}

/** A key while a block lies on the chart, or something is asked. False: it is none of theirs. */
export function blockKey(bench: Bench, event: KeyboardEvent): boolean {
  const { preview, question } = bench.block
  if (!preview && !question) return false
  const key = keyOf(event)
  const arrow = Object.hasOwn(arrows, key) ? arrows[key] : undefined
  if (key === 'Escape') bench.block.leave()
  else if (preview && (key === 'Enter' || key === 'Space')) putPreview(bench)
  else if (preview && arrow) {
    const [rows, sideways] = arrow
    const along = runsRightToLeft(bench.pattern.loom.direction) ? -sideways : sideways
    layAt(bench, { row: preview.at.row + rows, column: preview.at.column + along })
  } else if (question && (key === 'Enter' || key === 'Space')) answer(bench, question.run)
  else if (question?.instead?.key === key) answer(bench, question.instead.run)
  else return false
  event.preventDefault()
  return true
}
