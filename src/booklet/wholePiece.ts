import type { Pattern } from '../pattern/pattern'
import { pegsOfSecond, secondByItself } from '../pattern/pair'
import { findSection, sectionsOf, usedSections, withOnBench } from '../pattern/sections'
import { chartWork, type Work } from '../pattern/work'
import { workOnce, workPieceOnce } from '../pattern/workOnce'
import type { PieceWork } from '../pattern/workPiece'
import { directionSaid } from '../words/statements'
import { piecePhrases } from '../words/piece/phrases'
import { paragraph, partHeading } from './page/blocks'
import { keyOf } from './chart/blocks'
import { chartPart, type ChartRoom, type Part } from './chart/chart'
import { filledBy, type Block } from './page/flow'
import type { PrintWarning } from './page/page'
import { phrasesOf } from './phrases'
import { pictureParts, type WorkOf } from './parts/pictures'
import { pieceFrontBlocks } from './parts/pieceFront'
import { totalsBlocks } from './parts/totals'
import { pieceAbbreviationBlocks, pieceWordBlocks } from './parts/pieceWords'

type Room = Omit<ChartRoom, 'filled'>

/** A piece of several steps: its charts by section, and its words from cast-on to bind-off. */
export function wholePiece(pattern: Pattern, room: Room): Part {
  const { settings, column, area } = room
  const piece = workPieceOnce(pattern)
  const second =
    settings.second && pattern.piece.pair === 'mirrored'
      ? workPieceOnce(secondByItself(pattern))
      : null
  const isTurned = second !== null && second.pattern.loom.direction !== pattern.loom.direction
  const pieces = second ? [piece, second] : [piece]
  const blocks: Block[] = pieceFrontBlocks(piece, column, area)
  const warnings: PrintWarning[] = settingWarnings(pattern, room)
  const add = (part: Part) => {
    blocks.push(...part.blocks)
    warnings.push(...part.warnings)
  }
  if (settings.charts) {
    addCharts(piece, room, blocks, add)
    blocks.push(...keyOf(chartsOf(piece), column))
  }
  if (settings.words) {
    blocks.push(...pieceAbbreviationBlocks(isTurned ? [piece] : pieces, column))
    blocks.push(...pieceWordBlocks(piece, settings.wording === 'own', column))
  }
  // Text before pictures: it fills the page that the words end on.
  blocks.push(...totalsBlocks(piece, column))
  if (settings.pictures) add(pictureParts(pattern, workOf(piece), room))
  if (second && (settings.charts || settings.words)) {
    blocks.push(partHeading(phrasesOf[pattern.style.terms].secondPart, column))
    // A bar is mirrored by beginning at its other end.
    const { secondPegs } = piecePhrases[pattern.style.terms]
    const numbered = secondPegs(pegsOfSecond(pattern))
    if (numbered) {
      const said = `${directionSaid(second.pattern)} ${numbered}`
      blocks.push({ ...paragraph(said, column, 0.5), withNext: true })
    }
    if (settings.charts) {
      addCharts(second, room, blocks, add)
      blocks.push(...keyOf(chartsOf(second), column))
    }
    // Crosses and decreases are other moves then.
    if (settings.words && isTurned) blocks.push(...pieceAbbreviationBlocks([second], column))
    if (settings.words) blocks.push(...pieceWordBlocks(second, false, column))
    if (settings.pictures) add(pictureParts(second.pattern, workOf(second), room))
  }
  return { blocks, warnings }
}

function addCharts(
  piece: PieceWork,
  room: Room,
  before: readonly Block[],
  add: (part: Part) => void,
): void {
  for (const work of chartsOf(piece))
    add(
      chartPart(work, { ...room, filled: filledBy(before, room.area) }, work.pattern.piece.onBench),
    )
}

/** The charts that the steps work, in the order of use, each as it is worked first. */
const chartsOf = (piece: PieceWork): readonly Work[] =>
  usedSections(piece.pattern).flatMap(({ name }) => workOf(piece)(name) ?? [])

const workOf =
  (piece: PieceWork): WorkOf =>
  (name) => {
    const { pattern, steps } = piece
    if (!findSection(pattern, name)) return null
    const step = steps.findIndex(({ section }) => section?.name === name)
    return chartWork(piece, step) ?? workOnce(withOnBench(pattern, name))
  }

/** What is left out of the piece as it is asked for. */
function settingWarnings(pattern: Pattern, { settings }: Room): PrintWarning[] {
  const used = usedSections(pattern).map(({ name }) => name)
  const unused = sectionsOf(pattern).filter(({ name }) => !used.includes(name))
  const names = unused.map(({ name }) => `“${name}”`).join(', ')
  return [
    ...(unused.length > 0 && settings.charts
      ? [
          {
            message: `${names} ${unused.length === 1 ? 'is' : 'are'} in no step of the piece and ${unused.length === 1 ? 'is' : 'are'} not printed.`,
            advice: 'Add a step that works it, or remove it.',
          },
        ]
      : []),
    ...(!settings.charts && !settings.words
      ? [
          {
            message: 'Neither charts nor words are printed: nobody can knit the piece from this.',
            advice: 'Print the charts, the words or both.',
          },
        ]
      : []),
    ...(pattern.piece.pair === 'mirrored' && !settings.second
      ? [
          {
            message: 'The second of the pair is the mirror image, and it is not written out.',
            advice: 'Print it too, or give its booklet along with this one.',
          },
        ]
      : []),
  ]
}
