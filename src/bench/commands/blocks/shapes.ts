import { runsRightToLeft } from '../../../loom/direction'
import { listed } from '../../../languages/english/forms'
import { termOf } from '../../../languages/languages'
import { blockIn, putBlock, type Block } from '../../../pattern/blocks/block'
import { shiftingOf, shiftRows, tornByShift } from '../../../pattern/blocks/shift'
import { flipped, notTurned, turnedHalfRound } from '../../../pattern/blocks/turn'
import { rowsNamed } from '../times'
import type { Bench } from '../../state/bench.svelte'
import type { Command } from '../command'
import { applyToStitches } from '../lost'
import { blockArea } from './laying'
import { wouldCut } from './said'

/** Change the block that lies on the chart, or else the one that is marked, in its place. */
function change(bench: Bench, label: string, make: (block: Block) => Block): void {
  const { preview } = bench.block
  if (preview) {
    bench.block.lay({ ...preview, block: make(preview.block) })
    return
  }
  const { rows, columns } = blockArea(bench)
  const block = make(blockIn(bench.pattern, { rows, columns }))
  const at = { row: rows.from, column: columns.from }
  if (!applyToStitches(bench, label, (p) => putBlock(p, block, at)))
    bench.say('Nothing changes: it looks the same this way.')
}

/** The block that `change` would change. */
const blockNow = (bench: Bench): Block =>
  bench.block.preview?.block ?? blockIn(bench.pattern, blockArea(bench))

export const flipCommand: Command = {
  id: 'block-flip',
  label: 'Flip left to right',
  keys: ['Shift+f'],
  edits: true,
  run: (bench) =>
    change(bench, 'Flip left to right', (block) => flipped(block, bench.pattern.vocabulary)),
}

/** What cannot be turned is named, and left as it is only where that is wanted. */
export const turnCommand: Command = {
  id: 'block-turn',
  label: 'Turn half round',
  keys: ['Shift+t'],
  edits: true,
  run: (bench) => {
    const { preview } = bench.block
    const turn = () => {
      if (preview) bench.block.lay(preview)
      change(bench, 'Turn half round', turnedHalfRound)
    }
    const stuck = notTurned(blockNow(bench))
    if (stuck.length === 0) {
      turn()
      return
    }
    const names = stuck.map((stitch) => termOf(stitch, bench.pattern.style.terms).abbr)
    bench.block.ask({
      says: `${listed(names)} cannot be turned half round`,
      torn: [],
      label: 'Turn, leave as they are',
      run: turn,
      instead: null,
    })
  },
}

/** Shift the marked rows by so many pegs towards a side; what that would cut is asked first. */
function shift(bench: Bench, side: 'left' | 'right', pegs = 1): void {
  const towardsHigher = (side === 'left') === runsRightToLeft(bench.pattern.loom.direction)
  const by = (count: number) => (towardsHigher ? count : -count)
  const shifting = shiftingOf(bench.chart, bench.marked)
  const label = `Shift ${rowsNamed(bench, bench.marked.rows).toLowerCase()} ${pegs === 1 ? 'a peg' : `${pegs} pegs`} to the ${side}`
  const torn = tornByShift(bench.pattern, shifting, by(pegs))
  const run = () => {
    if (!applyToStitches(bench, label, (p) => shiftRows(p, shifting, by(pegs))))
      bench.say('Nothing changes: the stitches look the same shifted.')
  }
  if (torn.length === 0) {
    run()
    return
  }
  const width = shifting.columns.to - shifting.columns.from + 1
  let fits = pegs + 1
  while (fits < width && tornByShift(bench.pattern, shifting, by(fits)).length > 0) fits++
  const on = fits - pegs
  bench.block.ask({
    says: wouldCut(bench, torn),
    torn,
    label: 'Shift, rest plain',
    run,
    instead:
      fits < width && shifting.wraps
        ? {
            label: `${on} peg${on === 1 ? '' : 's'} on`,
            key: side === 'left' ? 'ArrowLeft' : 'ArrowRight',
            run: () => shift(bench, side, fits),
          }
        : null,
  })
}

const shifting = (side: 'left' | 'right', key: string): Command => ({
  id: `block-shift-${side}`,
  label: (bench) =>
    `Shift ${rowsNamed(bench, bench.marked.rows).toLowerCase()} a peg to the ${side}`,
  keys: [key],
  edits: true,
  run: (bench) => shift(bench, side),
})

export const shiftLeftCommand = shifting('left', 'Alt+ArrowLeft')
export const shiftRightCommand = shifting('right', 'Alt+ArrowRight')
