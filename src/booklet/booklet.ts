import type { Work } from '../pattern/work'
import { textColumn, type Column } from './blocks'
import { keyOf, oneSheetBlocks, overviewBlocks, ringBlocks, sheetBlocks } from './chart'
import { wishedWidth, withSoundCells } from './cellWish'
import { planOneSheet, planSheets } from './chartSheets'
import { flow, heightOf, type Block } from './flow'
import { footed } from './foot'
import { frontBlocks } from './front'
import { abbreviationBlocks, cautionBlocks, wordBlocks } from './instructions'
import { explainsStitches, ownWordBlocks } from './ownWords'
import type { Booklet, PrintWarning } from './page'
import { liveArea, papers, type Area, type BookletSettings } from './paper'
import { phrasesOf } from './phrases'
import { largestRing } from './ringSize'
import { lettersMissing } from './text'
import { cellSizes, typeScale } from './typeScale'

interface Part {
  readonly blocks: readonly Block[]
  readonly warnings: readonly PrintWarning[]
}

/**
 * Lay out the printed booklet of a pattern: title page, chart, key, abbreviations, words, cautions.
 * Pure: text is measured with the widths of the embedded fonts. `warnings` say what is not printed
 * as it was asked for, and what to do.
 */
export function layOutBooklet(asked: Work, settings: BookletSettings): Booklet {
  const { work, warnings } = withSoundCells(asked)
  const { pattern } = work
  const phrases = phrasesOf[pattern.style.terms]
  const paper = papers[settings.paper]
  const area = liveArea(paper)
  const column = textColumn(area.width, typeScale(settings.largePrint))
  const front = frontBlocks(work, column)
  const own = settings.words && settings.wording === 'own' ? pattern.words : null
  const chart = chartPart(work, settings, column, area, front)
  const blocks = [
    ...front,
    ...chart.blocks,
    ...keyOf(work, column),
    ...(settings.words ? instructionBlocks(work, own, column) : []),
    ...cautionBlocks(work, column),
  ]
  return {
    title: pattern.title,
    author: pattern.designer,
    language: phrases.tag,
    paper: settings.paper,
    pages: footed(flow(blocks, area), pattern.title, paper, column, phrases),
    warnings: [...warnings, ...chart.warnings, ...letterWarnings(work, own ?? '')],
  }
}

/** Abbreviations and words; own words that explain their own stitches explain them alone. */
function instructionBlocks(work: Work, own: string | null, column: Column): Block[] {
  if (own === null) return [...abbreviationBlocks(work, column), ...wordBlocks(work, column)]
  const key = explainsStitches(work, own) ? [] : abbreviationBlocks(work, column)
  return [...key, ...ownWordBlocks(work, own, column)]
}

function chartPart(
  work: Work,
  settings: BookletSettings,
  column: Column,
  area: Area,
  front: readonly Block[],
): Part {
  const wishes = settings.chart
  const ring = wishes === 'flat' ? null : ringPart(work, settings, column, area)
  // Without a ring that can be read, the flat chart takes its place: no chart is left out silently.
  const flat =
    wishes !== 'ring' || ring?.blocks.length === 0
      ? flatPart(work, settings, column, area, front)
      : null
  return {
    blocks: [...(flat?.blocks ?? []), ...(ring?.blocks ?? [])],
    warnings: [...(ring?.warnings ?? []), ...(flat?.warnings ?? [])],
  }
}

/** Height of a heading over a chart, with the line under it. */
const headingHeight = ({ type }: Column): number => 3 * type.unit

function flatPart(
  work: Work,
  { cell }: BookletSettings,
  column: Column,
  area: Area,
  front: readonly Block[],
): Part {
  const { unit, chart: scale } = column.type
  const { width: wished, warnings } = wishedWidth(work.pattern, cell, scale)
  const used = front.reduce((sum, block) => sum + block.before + heightOf(block), 0)
  const height = area.height - headingHeight(column) - unit
  const { good, least: smallest } = cellSizes
  const below = { height: height - used - unit, least: good }
  for (const { height: free, least } of [below, { height, least: smallest }]) {
    const room = { width: area.width / scale, height: free / scale }
    const tiling = free > 0 ? planOneSheet(work, room, { wished, least }) : null
    if (tiling) return { blocks: oneSheetBlocks(work, tiling, column), warnings }
  }
  const tiling = planSheets(
    work,
    { width: area.width / scale, height: height / scale },
    column,
    wished,
  )
  if (tiling.sheets.length === 1) return { blocks: oneSheetBlocks(work, tiling, column), warnings }
  return {
    blocks: [...overviewBlocks(work, tiling, column), ...sheetBlocks(work, tiling, column)],
    warnings,
  }
}

function ringPart(work: Work, settings: BookletSettings, column: Column, area: Area): Part {
  const room = Math.min(area.width, area.height - headingHeight(column))
  const { chart: scale } = column.type
  const { least, most } = cellSizes
  const { side, options } = largestRing(work, room / scale, most)
  if (options && side >= least - 1e-9)
    return { blocks: ringBlocks(work, options, column), warnings: [] }
  const { pegs } = work.pattern.loom
  const rows = work.pattern.chart.rows.length
  const paper = papers[settings.paper].name
  return {
    blocks: [],
    warnings: [
      {
        message: `A ring chart of ${pegs} pegs and ${rows} rows would have cells of ${Math.floor(10 * scale * side + 1e-9) / 10} mm on ${paper}; ${Math.round(10 * scale * least) / 10} mm is the least that can be read, so it is left out.`,
        advice: 'The flat chart is printed; it can stand on several sheets.',
      },
    ],
  }
}

function letterWarnings(
  { pattern: { title, designer, notes } }: Work,
  words: string,
): PrintWarning[] {
  const missing = lettersMissing(`${title} ${designer} ${notes} ${words}`)
  if (missing.length === 0) return []
  const shown = missing.slice(0, 10).join(' ')
  return [
    {
      message: `The fonts of the booklet do not have ${missing.length} of its letters: ${shown}. An empty box is printed for each.`,
      advice: `Write the title, the designer${words ? ', the notes and your own words' : ' and the notes'} with other letters to print them whole.`,
    },
  ]
}
