import { opposite, type Direction, type Heading } from '../loom/direction'
import { loomRow, type Site } from '../loom/row'
import { languages, termOf } from '../languages/languages'
import type { Terms } from '../languages/terms'
import type { Block } from '../pattern/blocks/block'
import type { Cell, LoomSetup } from '../pattern/pattern'
import { placed } from '../pattern/row'
import { keepsItsLoop, type Stitch } from '../stitches/stitch'
import { writeStitches } from './sentence'
import { isCounted } from './tokens'

/** What a block's text is written and read for. */
export interface BlockSetting {
  readonly shape: LoomSetup['shape']
  readonly terms: Terms
}

/** Rows of a bar go to and fro, the first one from its lowest peg. */
export const headingIn = (shape: LoomSetup['shape'], row: number): Heading =>
  shape === 'bar' && row % 2 === 1 ? opposite('forward') : 'forward'

/**
 * A block as text that a person can read and work from: its rows as words, numbered from 1, and the way in which it is
 * worked, "Rnd 3: 2/2 RC." It is read back by `readBlock`.
 */
export function writeBlock(block: Block, { shape, terms }: BlockSetting): string {
  const language = languages[terms]
  const kind = shape === 'ring' ? 'round' : 'row'
  const sentences = block.rows.map((cells, row) => sentenceOf(cells, headingIn(shape, row), terms))
  const lines: string[] = []
  for (let from = 0; from < sentences.length;) {
    let to = from
    while (sentences[to + 1] === sentences[from]) to++
    lines.push(`${language.label(kind, from + 1, to + 1)}: ${sentences[from] ?? ''}.`)
    from = to + 1
  }
  const direction: Direction = block.rightToLeft ? 'clockwise' : 'counterclockwise'
  return `${[...lines, language.direction(shape, direction)].join('\n')}\n`
}

function sentenceOf(cells: readonly Cell[], heading: Heading, terms: Terms): string {
  const items = placed({ cells })
  const sites = items.map(({ stitch, column }): Site<Stitch> => ({ stitch, peg: column }))
  const row = { ...loomRow(sites, 0, cells.length - 1, heading, 'on' as const), isPart: true }
  const [only, second] = items
  // A bare name, or "sl1", would be read as that stitch to the end of the round.
  if (
    only &&
    !second &&
    keepsItsLoop(only.stitch) &&
    !(only.stitch.family === 'knit and purl' && isCounted(only.stitch, terms))
  )
    return `${termOf(only.stitch, terms).abbr} ${languages[terms].times(1)}`
  return writeStitches(row, heading, false, terms, false)
}
