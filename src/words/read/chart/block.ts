import { directions, runsRightToLeft } from '../../../loom/direction'
import { languages } from '../../../languages/languages'
import type { Block } from '../../../pattern/blocks/block'
import { limits, type Cell } from '../../../pattern/pattern'
import type { Stitch } from '../../../stitches/stitch'
import { read } from '../read'
import type { ReadRow, ReadSettings, Reading } from '../reading'

export type ReadBlock =
  | {
      readonly ok: true
      readonly block: Block
      /** What of the text was not understood; null: nothing. */
      readonly lacks: string | null
    }
  /** Why there is no block, in a sentence. */
  | { readonly ok: false; readonly message: string }

/** Longer texts are no blocks: whole instructions are read into charts. In characters. */
const longest = 200_000

/** More pegs than any block has, so that rows that go "to end" are told from those that say how many. */
const boundless = 4 * limits.columns.most

/**
 * Read a block from words. Rows that go on to the end do so in the columns of the chart; where rows have different
 * widths, ground stands behind the shorter ones. `settings`: of the piece that it is for.
 */
export function readBlock(
  text: string,
  settings: ReadSettings,
  columns: number,
  ground: Stitch,
): ReadBlock {
  const no = (message: string): ReadBlock => ({ ok: false, message })
  if (text.trim() === '') return no('The clipboard is empty.')
  if (text.length > longest)
    return no(
      'That is too long for a block. “Chart from words” makes charts of whole instructions.',
    )
  const shape = /^\s*rows?\s+\d/im.test(text) ? 'bar' : 'ring'
  const reading = readFor(text, { ...settings, shape, needles: false }, columns)
  const rows = reading.rows.filter(({ time }) => time === 0)
  const cells = rows.map(cellsOf)
  const width = Math.max(0, ...cells.map(({ length }) => length))
  if (width === 0)
    return no('There are no rows of stitches on the clipboard, such as “Rnd 1: k2, p2.”')
  if (width > limits.columns.most || rows.length > limits.rows.most)
    return no(
      `The block on the clipboard is larger than a chart can be: ${limits.columns.most} pegs, ${limits.rows.most} rows.`,
    )
  const lack = reading.remarks.find(
    // How many loops there are beside a block is not known.
    ({ severity, rule }) => severity !== 'hint' && rule !== 'row-count',
  )
  return {
    ok: true,
    block: {
      columns: width,
      rows: cells.map((row) => [
        ...row,
        ...Array.from({ length: width - row.length }, () => ground),
      ]),
      rightToLeft: saysRightToLeft(text, reading, settings),
    },
    lacks: lack?.message ?? null,
  }
}

/** Once without an end to the pegs; where a row goes on to the end, within the columns there are. */
function readFor(text: string, settings: ReadSettings, columns: number): Reading {
  const reading = read(text, { ...settings, pegs: boundless })
  const goesOn = reading.rows.some(({ stitches }) => widthOf(stitches) > limits.columns.most)
  return goesOn ? read(text, { ...settings, pegs: columns }) : reading
}

const widthOf = (stitches: ReadRow['stitches']): number =>
  stitches.reduce((sum, { stitch }) => sum + stitch.width, 0)

function cellsOf({ stitches, goes }: ReadRow): Cell[] {
  const list = goes === 'back' ? stitches.toReversed() : stitches
  return list.flatMap(({ stitch }): Cell[] => [
    stitch,
    ...Array.from({ length: stitch.width - 1 }, () => null),
  ])
}

/** The way that the words say; without a word the loom's own. */
function saysRightToLeft(text: string, { stated }: Reading, settings: ReadSettings): boolean {
  for (const shape of ['ring', 'bar'] as const)
    for (const direction of directions)
      if (text.includes(languages[settings.terms].direction(shape, direction)))
        return runsRightToLeft(direction)
  return runsRightToLeft(stated.direction ?? settings.direction)
}
