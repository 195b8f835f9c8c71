import { inQuotes } from '../pattern/excerpt'
import type { Cell } from '../pattern/pattern'
import type { Vocabulary } from '../stitches/vocabulary'

/**
 * A row's cells as one line of text, in column order (column 1, that is peg 1, first):
 *
 *   k            one knit; spaces in a stitch's id are written "_": 2/2_LC
 *   k*4          four of them, side by side
 *   2/2_LC:3     only three of the cross's four columns: cut short by its neighbour or the edge
 *   -            a column that continues no stitch
 *
 * Each stitch counts once, however many columns it has: "p*2 2/2_LC p*2" are eight columns.
 */
const cutSign = '-'
const pattern = /^(-|[^\s:*]+?)(?::([1-9]\d{0,2}))?(?:\*([1-9]\d{0,2}))?$/

/** A stitch with a count that no chart has room for. */
const manyCopies = /^[^\s:*]+(?::[1-9]\d{0,2})?\*[1-9]\d{3,}$/

export function writeCells(cells: readonly Cell[]): string {
  const words: { word: string; count: number }[] = []
  for (let column = 0; column < cells.length;) {
    const { word, columns } = readStitch(cells, column)
    const last = words.at(-1)
    if (last?.word === word) last.count++
    else words.push({ word, count: 1 })
    column += columns
  }
  return words.map(({ word, count }) => (count > 1 ? `${word}*${count}` : word)).join(' ')
}

function readStitch(cells: readonly Cell[], column: number): { word: string; columns: number } {
  const stitch = cells[column]
  if (!stitch) return { word: cutSign, columns: 1 }
  const { id, width } = stitch
  let columns = 1
  while (columns < width && cells[column + columns] === null) columns++
  const name = id.replaceAll(' ', '_')
  return { word: columns < width ? `${name}:${columns}` : name, columns }
}

export type CellsResult =
  | { readonly ok: true; readonly cells: readonly Cell[] }
  /** `column`: 1-based, where the word that cannot be read would stand. */
  | { readonly ok: false; readonly column: number; readonly reason: string }

/** Stops with a reason once there are more than `most` columns. */
export function readCells(text: string, most: number, vocabulary: Vocabulary): CellsResult {
  const cells: Cell[] = []
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const column = cells.length + 1
    const no = (reason: string): CellsResult => ({ ok: false, column, reason })
    const [, name = '', cut, count = '1'] = pattern.exec(word) ?? []
    if (!name && manyCopies.test(word))
      return no(`${inQuotes(word, 24)} is more than the ${most} columns that a chart can have`)
    if (!name) return no(`${inQuotes(word, 24)} is not a stitch with a count, such as k*4`)
    const stitch = name === cutSign ? null : vocabulary.find(name.replaceAll('_', ' '))
    if (stitch === undefined) return no(`there is no stitch ${inQuotes(name, 24)}`)
    const width = stitch?.width ?? 1
    const columns = cut === undefined ? width : Number(cut)
    if (cut !== undefined && columns >= width)
      return no(
        `${inQuotes(name, 24)} has ${plural(width, 'column')} and cannot be cut to ${columns}`,
      )
    const copies = Number(count)
    if (cells.length + copies * columns > most) return no(`there are more than ${most} columns`)
    for (let copy = 0; copy < copies; copy++) {
      cells.push(stitch)
      for (let more = 1; more < columns; more++) cells.push(null)
    }
  }
  return { ok: true, cells }
}

export const plural = (count: number, noun: string): string =>
  `${count} ${noun}${count === 1 ? '' : 's'}`
