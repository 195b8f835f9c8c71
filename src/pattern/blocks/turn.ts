import type { Stitch } from '../../stitches/stitch'
import type { Vocabulary } from '../../stitches/vocabulary'
import { reverseCells } from '../edits/turn-over'
import type { Block } from './block'

/** Left and right changed: crosses and decreases lean the other way. */
export const flipped = (block: Block, vocabulary: Vocabulary): Block => ({
  ...block,
  rows: block.rows.map((cells) => reverseCells(cells, (stitch) => vocabulary.mirrorOf(stitch))),
})

/**
 * Does a stitch look the same upside down? One that takes and makes a loop on each of its pegs does: a strand that
 * leans to the right still does so, and the one in front stays there. A decrease would be an increase.
 */
const turns = ({ takes, makes, width }: Stitch): boolean =>
  takes === makes && (takes === width || takes === 0)

/** Turned half round: the last row is the first, and left is right. */
export const turnedHalfRound = (block: Block): Block => ({
  ...block,
  rows: block.rows.map((cells) => reverseCells(cells)).toReversed(),
})

/** The stitches of a block that cannot be turned: they would stand in it as they are. */
export const notTurned = ({ rows }: Block): readonly Stitch[] => [
  ...new Set(rows.flat().flatMap((cell) => (cell === null || turns(cell) ? [] : cell))),
]
