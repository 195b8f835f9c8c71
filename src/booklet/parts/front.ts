import type { Ends, FootTold } from '../../languages/booklet'
import { euSizeOf, feetOfSock, roundFoot, ukChildSizeOf } from '../feet'
import { footLength } from '../../drawing/piece/foot'
import { lengthOfPiece } from '../../drawing/piece/length'
import { profileOf } from '../../drawing/piece/profile'
import { sidePicture } from '../../drawing/piece/side'
import type { Pattern } from '../../pattern/pattern'
import { centimetres, inCentimetres, sizeOf, type Size } from '../../pattern/size'
import type { PieceWork } from '../../pattern/workPiece'
import { languages } from '../../languages/languages'
import { pieceStatements } from '../../words/piece/text'
import { statements } from '../../words/statements'
import { heading, paragraph, pictureBlock, textStrips, type Column } from '../page/blocks'
import { heightOf, stacked, merged, type Block, type Strip } from '../page/flow'
import { pictureTexts, type PagePicture } from '../page/page'
import type { Area } from '../page/paper'
import { widthOf } from '../page/text'
import { laid, type Part } from '../part'

/** Title, designer, loom and size, and what must be known before the first row. */
export const front: Part = {
  id: 'front',
  label: 'Title',
  isAsked: () => true,
  blocks: ({ piece, column, area, isOneChart }) =>
    laid(
      isOneChart ? chartFrontBlocks(piece.pattern, column) : pieceFrontBlocks(piece, column, area),
    ),
}

/** Title, designer, one line on the loom, and what must be known before the first row. */
function chartFrontBlocks(pattern: Pattern, column: Column): Block[] {
  const { terms } = pattern.style
  const phrases = languages[terms].booklet
  const { chart } = pattern.charts[0]
  const size = sizeOf(chart, pattern)
  const { width } = column
  return [
    ...titleBlocks(pattern, column),
    paragraph(phrases.description(pattern), column, 2, { measure: width }),
    ...(size
      ? [paragraph(phrases.size(told(size), pattern.loom.shape), column, 0, { measure: width })]
      : []),
    paragraph(statements(pattern, [chart], terms).join(' '), column, 1),
    ...noteBlocks(pattern, column),
  ]
}

function titleBlocks({ title: text, designer }: Pattern, column: Column): Block[] {
  const { type, width } = column
  const title = textStrips(text, column, { size: type.title, measure: width })
  return [
    { strips: [{ height: 3 * type.unit, texts: [], pictures: [] }, ...title], before: 0 },
    ...(designer.trim() ? [paragraph(designer.trim(), column, 1)] : []),
  ]
}

function noteBlocks({ notes, style }: Pattern, column: Column): Block[] {
  const text = notes.trim()
  return text === ''
    ? []
    : [
        heading(languages[style.terms].headings.notes, column),
        ...text
          .split(/\s*\n\s*/u)
          .filter(Boolean)
          .map((line, i) => paragraph(line, column, i === 0 ? 0 : 0.5)),
      ]
}

/** The most room of the picture of the piece, mm; beside the facts, a share of the width. */
const mostHigh = 105
const leastHigh = 45
const besideShare = 0.42

/** Title and designer, then the facts with the piece from the side beside them; notes below. */
function pieceFrontBlocks(work: PieceWork, column: Column, area: Area): Block[] {
  const { pattern } = work
  const notes = noteBlocks(pattern, column)
  const title = titleBlocks(pattern, column)
  const gap = 2 * column.type.text
  const share = Math.round(besideShare * column.width)
  const textWidth = column.width - share - gap
  if (column.indent > 0) {
    const narrow = { ...column, width: textWidth, measure: textWidth }
    const scene = sideOf(work, share, column)
    const picture = { x: textWidth + gap, y: 0, scale: 1, scene }
    const both = besideEachOther(factBlocks(work, narrow), picture, column)
    if (heightOf(both) <= area.height) return [...title, both, ...notes]
  }
  const scene = sideOf(work, column.width, column)
  const picture = { x: 0, y: 0, scale: 1, scene }
  const [first, ...facts] = factBlocks(work, column)
  const under = first ? [{ ...first, before: 2 * column.type.unit }, ...facts] : facts
  return [...title, ...under, pictureBlock(picture, column, 1), ...notes]
}

function factBlocks(work: PieceWork, column: Column): Block[] {
  const { pattern } = work
  const { style, loom, pair } = pattern
  const phrases = languages[style.terms].booklet
  const size = sizeOfPiece(work)
  const foot = size && footLength(profileOf(work))
  return [
    paragraph(phrases.description(pattern), column),
    ...(size ? [paragraph(phrases.pieceSize(told(size), loom.shape), column, 0.5)] : []),
    ...(foot ? [paragraph(phrases.foot(footTold(foot)), column, 0.5)] : []),
    ...(pair === 'none' ? [] : [paragraph(phrases.pair[pair], column, 0.5)]),
    ...pieceStatements(work, style.terms).map((text, i) =>
      paragraph(text, column, i === 0 ? 1 : 0.5),
    ),
  ]
}

/** Round a tube, or across; and along the piece. Null without a gauge. */
function sizeOfPiece(work: PieceWork): Size | null {
  const { gauge, loom } = work.pattern
  if (!gauge) return null
  const slices = profileOf(work)
  const widest = Math.max(0, ...slices.map(({ lower, upper }) => Math.max(lower, upper)))
  return {
    width: loom.shape === 'ring' ? 2 * widest : widest,
    height: lengthOfPiece(slices),
  }
}

/** As high as the piece is in its room, but not so low that the labels would lie on each other. */
function sideOf(work: PieceWork, width: number, { type }: Column) {
  const slices = profileOf(work)
  const long = slices.reduce((sum, slice) => sum + slice.height, 0)
  const widest = Math.max(1, ...slices.map(({ lower, upper }) => Math.max(lower, upper)))
  const labels = work.steps.filter(({ step }) => step.kind !== 'note' && step.kind !== 'pegs')
  const forLabels = labels.reduce(
    (sum, { edge }) => sum + (edge ? 1.6 : 4.1) * type.small,
    3 * type.small,
  )
  const proper = (0.5 * width * long) / widest
  const height = Math.min(mostHigh, Math.max(leastHigh, forLabels, proper))
  const draw = (wide: number) =>
    sidePicture(work, { width: wide, height, text: type.small, chosen: null }).scene
  const scene = draw(width)
  // The drawing reckons with letters of middling width; here they are measured.
  const beyond = Math.max(
    0,
    ...pictureTexts({ x: 0, y: 0, scale: 1, scene }).map(
      ({ x, text, size, face }) =>
        x + (face === 'fallback' ? 0 : widthOf(text, size, face)) - width,
    ),
  )
  return beyond > 0 ? draw(width - beyond) : scene
}

/** Blocks on the left, a picture on the right: one strip, so that they stay together. */
function besideEachOther(
  blocks: readonly Block[],
  picture: PagePicture,
  { type: { unit } }: Column,
): Block {
  const space = (height: number): Strip => ({ height, texts: [], pictures: [] })
  const strips = blocks.flatMap((block, i) => [space(i > 0 ? block.before : 0), ...block.strips])
  const { height: high, ...facts } = stacked(strips)
  const height = Math.ceil(Math.max(high, picture.scene.height) / unit - 0.01) * unit
  const content = merged([facts, { texts: [], pictures: [picture] }])
  return { strips: [{ height, ...content }], before: 2 * unit }
}

const told = ({ width, height }: Size) => ({
  width: centimetres(width),
  height: centimetres(height),
})

/** What a sock of this length fits, in mm from heel to toe. */
function footTold(foot: number): FootTold {
  const { least, most } = feetOfSock(foot)
  const sizes = (sizeOfShoe: (foot: number) => number | null): Ends | null => {
    const [smallest, largest] = [sizeOfShoe(least), sizeOfShoe(most)]
    return smallest === null || largest === null ? null : [smallest, largest]
  }
  return {
    length: centimetres(foot),
    feet: [inCentimetres(least), inCentimetres(most)],
    round: centimetres(roundFoot((least + most) / 2)),
    eu: sizes(euSizeOf),
    ukChild: sizes(ukChildSizeOf),
  }
}
