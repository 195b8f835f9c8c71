import { countOpen, openFindings } from '../checks/open'
import { draftMark } from '../drawing/draft'
import type { Pattern } from '../pattern/pattern'
import { findSection, isOneChart, sectionsOf, usedSections, withOnBench } from '../pattern/sections'
import type { Work } from '../pattern/work'
import { workOnce, workPieceOnce } from '../pattern/workOnce'
import { totalsOf } from '../pattern/totals'
import { runsOf } from '../words/statements'
import { countErrors } from '../words/compare/told/told'
import { textColumn, type Column } from './page/blocks'
import { withSoundCells } from './chart/cellWish'
import { keyOf } from './chart/blocks'
import { chartPart, type ChartRoom, type Part } from './chart/chart'
import { filledBy, flow, type Block } from './page/flow'
import { footed } from './page/foot'
import { frontBlocks } from './parts/front'
import { abbreviationBlocks, cautionBlocks, wordBlocks } from './parts/instructions'
import { explainsStitches, ownWordBlocks } from './parts/ownWords'
import type { Booklet, PrintWarning } from './page/page'
import { liveArea, papers, type BookletSettings } from './page/paper'
import { phrasesOf } from './phrases'
import { pictureParts } from './parts/pictures'
import { totalsBlocks } from './parts/totals'
import { lettersMissing } from './page/text'
import { typeScale } from './page/typeScale'
import { wholePiece } from './wholePiece'

/**
 * Lay out the printed booklet of a pattern: title page, charts, key, abbreviations, words, step
 * pictures, what it takes, the second of a pair, cautions. Pure: text is measured with the widths
 * of the embedded fonts. With errors every page is marked as a draft. `warnings` say this first, then
 * what is not printed as it was asked for, and what to do.
 */
export function layOutBooklet(asked: Work, settings: BookletSettings): Booklet {
  const { work, warnings } = withSoundCells(asked)
  const { pattern } = work
  const phrases = phrasesOf[pattern.style.terms]
  const paper = papers[settings.paper]
  const area = liveArea(paper)
  const column = textColumn(area.width, typeScale(settings.largePrint))
  const room = { settings, column, area }
  const { blocks, warnings: ofBlocks } = isOneChart(pattern)
    ? oneChart(work, room)
    : wholePiece(pattern, room)
  const runs = pattern.making.forBaby ? runsOf(workPieceOnce(pattern)) : []
  const own = settings.words && settings.wording === 'own'
  const open = countOpen(openFindings(asked))
  const wrong = own ? wordErrors(asked) : noErrors
  const errors = open.error + wrong.onBench
  return {
    title: pattern.title,
    author: pattern.designer,
    language: phrases.tag,
    paper: settings.paper,
    pages: footed(
      flow([...blocks, ...cautionBlocks(pattern, runs, column)], area),
      pattern.title,
      paper,
      column,
      phrases,
      errors > 0 || wrong.elsewhere.length > 0,
    ),
    warnings: [
      ...draftWarnings(errors, wrong.elsewhere),
      ...openWarnings(open.warning, pattern.making.forBaby),
      ...warnings,
      ...new Map(ofBlocks.map((one) => [one.message, one])).values(),
      ...letterWarnings(pattern, own),
    ],
  }
}

/** A piece of one chart, cast on and bound off. */
function oneChart(work: Work, room: Omit<ChartRoom, 'filled'>): Part {
  const { settings, column, area } = room
  const { pattern } = work
  const own = settings.wording === 'own' ? pattern.words : null
  const front = frontBlocks(work, column)
  const filled = filledBy(front, area)
  const chart = settings.charts ? chartPart(work, { ...room, filled }) : nothing
  const pictures = settings.pictures ? pictureParts(pattern, () => work, room) : nothing
  const piece = workPieceOnce(pattern)
  const { yarn, minutes } = totalsOf(piece).whole
  return {
    blocks: [
      ...front,
      ...chart.blocks,
      ...(settings.charts ? keyOf([work], column) : []),
      ...(settings.words ? instructionBlocks(work, own, column) : []),
      ...pictures.blocks,
      ...(yarn !== null || minutes !== null ? totalsBlocks(piece, column) : []),
    ],
    warnings: [...chart.warnings, ...pictures.warnings],
  }
}

const nothing: Part = { blocks: [], warnings: [] }

/** Abbreviations and words; own words that explain their own stitches explain them alone. */
function instructionBlocks(work: Work, own: string | null, column: Column): Block[] {
  if (own === null) return [...abbreviationBlocks(work, column), ...wordBlocks(work, column)]
  const key = explainsStitches(work, own) ? [] : abbreviationBlocks(work, column)
  return [...key, ...ownWordBlocks(work, own, column)]
}

/** Errors of the own words that are printed: as Findings lists them, and charts that do not lie on the bench. */
interface WordErrors {
  readonly onBench: number
  readonly elsewhere: readonly string[]
}
const noErrors: WordErrors = { onBench: 0, elsewhere: [] }

const errorsKnown = new WeakMap<Pattern, WordErrors>()

/** Read and compared once for each version of the pattern, however often it is laid out. */
function wordErrors(work: Work): WordErrors {
  const { pattern } = work
  const known = errorsKnown.get(pattern) ?? findWordErrors(work)
  errorsKnown.set(pattern, known)
  return known
}

function findWordErrors(work: Work): WordErrors {
  const { pattern } = work
  const used = isOneChart(pattern)
    ? [pattern.piece.onBench]
    : usedSections(pattern).map(({ name }) => name)
  const isWrong = (name: string): boolean =>
    findSection(pattern, name)?.words !== null &&
    countErrors(workOnce(withOnBench(pattern, name))) > 0
  return {
    onBench: used.includes(pattern.piece.onBench) ? countErrors(work) : 0,
    elsewhere: used.filter((name) => name !== pattern.piece.onBench && isWrong(name)),
  }
}

function draftWarnings(errors: number, elsewhere: readonly string[]): PrintWarning[] {
  const [are, them] = errors === 1 ? ['error is', 'it'] : ['errors are', 'them']
  const listed = {
    message: `${errors} ${are} listed under Findings, so each page says ${draftMark}.`,
    advice: `Fix ${them} before you publish.`,
  }
  return [
    ...(errors > 0 ? [listed] : []),
    ...elsewhere.map((name) => ({
      message: `Your own words of “${name}” have errors, so each page says ${draftMark}.`,
      advice: 'Open this chart to see them, and fix them before you publish.',
    })),
  ]
}

/** Warnings make no draft, but whoever publishes is to know of them. */
function openWarnings(warnings: number, forBaby: boolean): PrintWarning[] {
  if (warnings === 0) return []
  const [are, them] = warnings === 1 ? ['warning is', 'it'] : ['warnings are', 'them']
  return [
    {
      message: `${warnings} ${are} open: see Findings.`,
      advice: forBaby
        ? `This piece is for a baby or child: mend ${them} before you publish.`
        : `Mend ${them}, or set ${them} aside.`,
    },
  ]
}

function letterWarnings(pattern: Pattern, own: boolean): PrintWarning[] {
  const { title, designer, notes, piece } = pattern
  const sections = sectionsOf(pattern)
  const texts = [
    title,
    designer,
    notes,
    ...(own ? sections.map(({ words }) => words ?? '') : []),
    ...(isOneChart(pattern) ? [] : sections.map(({ name }) => name)),
    ...piece.steps.map((step) => (step.kind === 'note' ? step.text : '')),
  ]
  const missing = lettersMissing(texts.join(' '))
  if (missing.length === 0) return []
  const shown = missing.slice(0, 10).join(' ')
  return [
    {
      message: `The fonts of the booklet do not have ${missing.length} of its letters: ${shown}. An empty box is printed for each.`,
      advice: `Write the title, the designer${own ? ', the notes and your own words' : ' and the notes'} with other letters to print them whole.`,
    },
  ]
}
