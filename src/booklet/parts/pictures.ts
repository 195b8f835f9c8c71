import { figurePicture, partOf } from '../../drawing/pegs/figures/step'
import type { StripPart } from '../../drawing/pegs/strip/window'
import { walkRow, type Moment } from '../../loom/walk'
import type { Pictures } from '../../pattern/piece'
import type { LoomSetup, Pattern } from '../../pattern/pattern'
import { findChart } from '../../pattern/charts'
import type { PatternRun, Work } from '../../pattern/work'
import { workOnce } from '../../pattern/workOnce'
import { handsContext } from '../../words/hands/context'
import { stepFigures, type StepFigure } from '../../words/hands/figures'
import { heading, paragraph, textStrips, type Column } from '../page/blocks'
import type { Context, Laid, Part } from '../part'
import { heightOf, merged, stacked, type Block, type Strip } from '../page/flow'
import { movedContent, textLine, type PagePicture, type PrintWarning } from '../page/page'
import { widthOf } from '../page/text'
import { unitOfRow } from '../../pattern/unit'
import { languages } from '../../languages/languages'

/** The moves that the piece shows, each stretch of them under a heading of its own. */
export const pictures: Part = {
  id: 'pictures',
  label: 'Step pictures',
  leavable: { setting: 'pictures', isOffered: ({ pictures }) => pictures.length > 0 },
  isAsked: ({ settings }) => settings.pictures,
  blocks: (context) => {
    const shown = context.piece.pattern.pictures.map((asked) => picturesOf(asked, context))
    return {
      blocks: shown.flatMap(({ blocks }) => blocks),
      warnings: shown.flatMap(({ warnings }) => warnings),
    }
  },
}

function picturesOf(asked: Pictures, context: Context): Laid {
  const { pattern } = context.piece
  const work = workOf(asked.chart, context)
  const run = work?.firstRuns[asked.row]
  if (!work || !run) return leftOut(asked, work ? `it has ${work.firstRuns.length}` : null)
  const moments = walkRow(run, work.run.habits)
  const last = moments.length - 2
  if (asked.from > last || asked.to < asked.from)
    return leftOut(asked, `row ${asked.row + 1} has ${last + 1} moves`)
  const shown = moments.slice(asked.from, asked.to + 2)
  const warnings = asked.to > last ? [cutShort(asked, last)] : []
  const figures = stepFigures(shown, handsContext(pattern))
  return {
    blocks: [
      ...titleBlocks(pattern, asked, work, run, figures, context.column),
      ...figureRows(shown, figures, pattern, context),
    ],
    warnings,
  }
}

/** The chart as the piece works it first; null for a name that none has. */
function workOf(name: string, { piece: { pattern }, charts }: Context): Work | null {
  const used = charts.find((work) => work.name === name)
  return used ?? (findChart(pattern, name) ? workOnce(pattern, name) : null)
}

function leftOut({ chart, row, from, to }: Pictures, reason: string | null): Laid {
  return {
    blocks: [],
    warnings: [
      {
        message:
          reason === null
            ? `Step pictures of “${chart}” are left out: there is no chart of this name.`
            : `Step pictures of moves ${from + 1} to ${to + 1} in row ${row + 1} of “${chart}” are left out: ${reason}.`,
        advice: 'Choose the moves anew in the pegs, or take these pictures out.',
      },
    ],
  }
}

const cutShort = ({ chart, row, to }: Pictures, last: number): PrintWarning => ({
  message: `Step pictures in row ${row + 1} of “${chart}” should go on to move ${to + 1}; the row has ${last + 1} moves, and the pictures end there.`,
  advice: 'Choose the moves anew in the pegs to be sure that all are shown.',
})

/** Headings of the figures, each once, in order. */
const stitchesIn = (figures: readonly StepFigure[]): readonly string[] => [
  ...new Set(figures.filter(isNamed).map((figure) => figure.heading)),
]
const isNamed = ({ isAgain, heading: name }: StepFigure): boolean => name !== '' && !isAgain

function titleBlocks(
  pattern: Pattern,
  { chart, row }: Pictures,
  work: Work,
  run: PatternRun,
  figures: readonly StepFigure[],
  column: Column,
): Block[] {
  const phrases = languages[pattern.style.terms].booklet
  const several = pattern.charts.length > 1
  const where = phrases.picturesOf({
    kind: unitOfRow(run, work.run.habits.shape),
    number: work.numbers[row] ?? row + 1,
    section: several ? chart : null,
  })
  const [first = where, ...others] = stitchesIn(figures)
  return [
    heading(phrases.pictures(others.length === 0 ? first : where.replace(/\.$/, '')), column),
    ...(others.length === 0 ? [{ ...paragraph(where, column), withNext: true }] : []),
  ]
}

/** A picture with the lines of its sentence. */
interface Cell {
  readonly picture: Omit<PagePicture, 'x' | 'y'>
  readonly caption: readonly Strip[]
}

/** Space between pictures of a row, in letter heights. */
const gapEms = 1.6
/** Pegs are drawn no closer to each other than this, mm before large print. */
const leastUnit = 6
/** Sentences are set no narrower than this, in letter heights. */
const leastCaption = 12
const mostPegs = 16

/** Pictures with their sentences, two or three in a row; a row is never parted. */
function figureRows(
  moments: readonly Moment[],
  figures: readonly StepFigure[],
  pattern: Pattern,
  { column, area }: Context,
): Block[] {
  const { type, width } = column
  const gap = gapEms * type.text
  const shared = sharedPart(moments, pattern.loom)
  const pegs = shared ? pegsIn(shared) : mostPegs
  const cellWidth = (across: number) => (width - (across - 1) * gap) / across
  const rowsOf = (across: number): Block[] => {
    const cells = cellsOf(moments, figures, pattern, shared, cellWidth(across), column)
    const rows = Array.from({ length: Math.ceil(cells.length / across) }, (_, row) =>
      cells.slice(row * across, (row + 1) * across),
    )
    const areTwo = rows.length === 2
    return rows.map((row, index) => ({
      ...(areTwo && index === 0 ? { beforeNext: 4 as const } : {}),
      strips:
        across === 1
          ? row.flatMap((cell) => alone(cell, column))
          : [rowStrip(row, cellWidth(across) + gap, column)],
      before: (index === 0 ? 0.4 : 0.8) * type.unit,
    }))
  }
  const fits = (across: number): boolean =>
    cellWidth(across) / type.chart / (pegs + 0.9) >= leastUnit &&
    cellWidth(across) >= leastCaption * type.text
  for (const across of orders(figures.length).filter(fits)) {
    const rows = rowsOf(across)
    if (rows.every((row) => heightOf(row) <= area.height)) return rows
  }
  return rowsOf(1)
}

/** How many in a row, best first: no more than there are, and no single one after a row of three. */
const orders = (figures: number): readonly number[] =>
  figures < 3 ? [2] : figures % 3 === 1 ? [2, 3] : [3, 2]

function cellsOf(
  moments: readonly Moment[],
  figures: readonly StepFigure[],
  { loom, style: { terms } }: Pattern,
  shared: StripPart | null,
  width: number,
  column: Column,
): Cell[] {
  const scale = column.type.chart
  const named = stitchesIn(figures).length > 1
  let said = ''
  return figures.map((figure, index) => {
    const scene = figurePicture(moments, figure, loom, {
      width: width / scale,
      terms,
      ...(shared ? { part: shared } : {}),
    })
    const title = named && figure.heading !== said && isNamed(figure) ? figure.heading : ''
    if (isNamed(figure)) said = figure.heading
    return {
      picture: { scene, scale },
      caption: captionOf(index + 1, title, figure, width, column),
    }
  })
}

const pegsIn = (part: StripPart): number => ('count' in part ? part.count : part.to - part.from + 1)

/** The pegs that all the pictures show; null where there are too many of them. */
function sharedPart(moments: readonly Moment[], loom: LoomSetup): StripPart | null {
  let from = Infinity
  let to = -Infinity
  for (const [index, after] of moments.entries()) {
    const before = moments[index - 1]
    if (!before) continue
    const part = partOf(before, after, loom)
    if ('count' in part) return null
    from = Math.min(from, part.from)
    to = Math.max(to, part.to)
  }
  return to - from + 1 <= Math.min(mostPegs, loom.pegs) ? { from, to } : null
}

/** The sentence with its number before it, and the stitch over it where there are several. */
function captionOf(
  number: number,
  title: string,
  { sentence }: StepFigure,
  width: number,
  column: Column,
): Strip[] {
  const { type } = column
  const x = widthOf('00 ', type.text, 'bold')
  const measure = width - x
  const lines = [
    ...(title ? textStrips(title, column, { x, measure, weight: 'bold' }) : []),
    ...textStrips(sentence, column, { x, measure }),
  ]
  return lines.map((strip, index) =>
    index > 0
      ? strip
      : {
          ...strip,
          texts: [
            ...textLine(String(number), 0, strip.texts[0]?.y ?? strip.height, {
              size: type.text,
              weight: 'bold',
            }),
            ...strip.texts,
          ],
        },
  )
}

/** Pictures on one line, with their sentences below. */
function rowStrip(cells: readonly Cell[], step: number, { type: { unit } }: Column): Strip {
  const high = Math.max(...cells.map(({ picture }) => picture.scale * picture.scene.height))
  const top = Math.ceil(high / unit - 0.01) * unit
  const parts = cells.map(({ picture, caption }, index) => {
    const { height, ...below } = stacked(caption)
    const y = top - picture.scale * picture.scene.height
    const above = { texts: [], pictures: [{ ...picture, x: 0, y }] }
    const content = merged([above, movedContent(below, 0, top)])
    return { height: top + height, content: movedContent(content, index * step, 0) }
  })
  return {
    height: Math.max(...parts.map(({ height }) => height)),
    ...merged(parts.map(({ content }) => content)),
  }
}

/** One picture; its sentence may be longer than a page has room for below it. */
function alone({ picture, caption: [first, ...others] }: Cell, column: Column): Strip[] {
  const head = rowStrip([{ picture, caption: first ? [first] : [] }], 0, column)
  return [head, ...others]
}
