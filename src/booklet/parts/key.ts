import { runsRightToLeft } from '../../loom/direction'
import { cellRatio } from '../../drawing/geometry'
import { signScene } from '../../drawing/key'
import type { Work } from '../../pattern/work'
import { byVocabulary } from '../../stitches/cut'
import { heading, textStrips, type Column } from '../page/blocks'
import { merged, type Block, type Strip } from '../page/flow'
import { movedContent, textLine, type PageContent } from '../page/page'
import { widthOf } from '../page/text'
import { cellSizes } from '../page/typeScale'
import { laid, type Part } from '../part'
import { rowMarkEntries, type KeyEntry } from './rowMarks'
import { languages, termOf } from '../../languages/languages'

/** What the signs of the charts mean. */
export const key: Part = {
  id: 'key',
  label: 'Key',
  isAsked: ({ settings }) => settings.charts,
  blocks: ({ charts, column }) => laid(keyOf(charts, column)),
}

/** Exactly the stitches in the charts: sign, abbreviation, name; and where the signs come from. */
export function keyOf(works: readonly Work[], column: Column): Block[] {
  const [first] = works
  if (!first) return []
  const { type, width } = column
  const { style } = first.pattern
  const phrases = languages[style.terms].booklet
  const stitches = new Set(
    works.flatMap(({ run }) => run.rows.flatMap(({ row }) => row.sites.map((site) => site.stitch))),
  )
  const used = byVocabulary(stitches)
  const widest = Math.max(1, ...used.map((stitch) => stitch.width))
  const cell = Math.min(cellSizes.key, (0.3 * width) / type.chart / widest)
  const ratio = cellRatio(first.pattern)
  const entries = used.map((stitch) => ({
    // The name says what is left of a stitch that is cut; its letters alone fit beside the sign.
    ...termOf(stitch, style.terms),
    ...(stitch.cut ? { abbr: termOf(stitch.cut.of, style.terms).abbr } : {}),
    sign: signScene(stitch, style.symbols, {
      cell,
      ratio,
      blank: stitch === style.background,
      terms: style.terms,
      leftward: runsRightToLeft(first.pattern.loom.direction),
    }),
  }))
  const council = used.filter(({ signs, cut }) => !cut && signs?.council)
  const source = textStrips(
    phrases.symbolSource(council.map((stitch) => termOf(stitch, style.terms).abbr)),
    column,
    { size: type.small, measure: width },
  )
  const sourced = style.symbols === 'cyc' && council.length > 0
  const marks = rowMarkEntries(works, { width: cell, height: cell * ratio })
  return [
    heading(phrases.key, column),
    { ...keyBlock([...entries, ...marks], column), withNext: sourced },
    ...(sourced ? [{ strips: source, before: 0 }] : []),
  ]
}

/** How the parts of an entry stand beside each other, mm. */
interface Places {
  readonly abbr: number
  readonly name: number
  /** For the whole entry. */
  readonly width: number
  /** The name stands beside the abbreviation, not under it. */
  readonly beside: boolean
}

/** More entries than this are set in two columns where they fit. */
const fewEntries = 5

/** Signs, abbreviations and names: one block, so that the key stays together. */
export function keyBlock(entries: readonly KeyEntry[], column: Column): Block {
  const { type, width } = column
  const gap = type.text
  const signs = type.chart * Math.max(0, ...entries.map(({ sign }) => sign.width))
  const abbreviations = Math.max(0, ...entries.map(({ abbr }) => widthOf(abbr, type.text, 'bold')))
  const names = Math.max(0, ...entries.map(({ name }) => widthOf(name, type.text)))
  const half = (width - 2 * gap) / 2
  const close = { abbr: signs + gap, name: signs + abbreviations + 2 * gap }
  if (entries.length > fewEntries && close.name + names <= half) {
    const places = { ...close, width: half, beside: true }
    const rows = Math.ceil(entries.length / 2)
    const strips = entries.map((entry) => entryStrip(entry, places, column))
    return {
      strips: strips.slice(0, rows).map((left, i) => pair(left, strips[rows + i], half + 2 * gap)),
      before: 0,
    }
  }
  const abbr = Math.max(close.abbr, column.indent)
  const name = abbr + abbreviations + gap
  const beside = width - name >= 8 * type.text
  const places = { abbr, name: beside ? name : abbr, width, beside }
  return { strips: entries.map((entry) => entryStrip(entry, places, column)), before: 0 }
}

function entryStrip({ sign, abbr, name }: KeyEntry, places: Places, column: Column): Strip {
  const { type } = column
  const label = textLine(abbr, places.abbr, 0.74 * type.unit, { size: type.text, weight: 'bold' })
  const names = textStrips(name, column, { x: places.name, measure: places.width - places.name })
  const lines = places.beside ? names.length : names.length + 1
  const signHeight = type.chart * sign.height
  const space = 0.35 * type.unit
  const height =
    Math.ceil((Math.max(signHeight, lines * type.unit) + space) / type.unit - 0.01) * type.unit
  const content: PageContent = {
    texts: [
      ...label,
      ...names.flatMap(
        (strip, i) => movedContent(strip, 0, (places.beside ? i : i + 1) * type.unit).texts,
      ),
    ],
    pictures: [],
  }
  const picture = { x: 0, y: (height - signHeight) / 2, scale: type.chart, scene: sign }
  return {
    height,
    ...movedContent(content, 0, (height - lines * type.unit) / 2),
    pictures: [picture],
  }
}

function pair(left: Strip, right: Strip | undefined, x: number): Strip {
  if (!right) return left
  const height = Math.max(left.height, right.height)
  return { height, ...merged([left, movedContent(right, x, 0)]) }
}
