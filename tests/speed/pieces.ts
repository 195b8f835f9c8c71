import { chartOn } from '../../src/pattern/charts'
import { paint } from '../../src/pattern/edits/paint'
import { withChart } from '../../src/pattern/edits/chart'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import { cellsFrom } from '../cells'
import { stitchOf } from '../../src/stitches/vocabulary'

/** A textured piece without a repeat: ribs, seed stitch and a cross every tenth row. */
export function texturedPiece(pegs: number, rows: number): Pattern {
  const cells = (row: number): string[] => {
    const list = Array.from({ length: pegs }, (_, column): string => {
      const block = Math.floor(column / 12) % 2
      const purl = block === 0 ? column % 4 > 1 : (column + row) % 2 === 0
      return purl ? 'p' : 'k'
    })
    if (row % 10 === 5)
      for (let column = 0; column + 12 <= pegs; column += 24)
        list.splice(column + 4, 4, row % 20 === 5 ? '2/2 LC' : '2/2 RC', '', '', '')
    return list
  }
  return withChart(newPattern(pegs, rows), {
    rows: Array.from({ length: rows }, (_, row) => ({
      cells: cellsFrom(cells(row)),
      run: null,
      heading: null,
      end: 'on' as const,
    })),
  })
}

/** Versions of a piece, each one edit after the last, none of which changes a later row. */
export function* editedVersions(piece: Pattern): Generator<Pattern, never> {
  const { columns, rows } = chartOn(piece)
  let version = piece
  for (let i = 0; ; i++) {
    const row = (2 + i * 10) % rows.length
    const column = (i * 7) % columns
    const next = chartOn(version).rows[row]?.cells[column]?.id === 'p' ? 'k' : 'p'
    const edited = paint(version, stitchOf(next), row, column)
    if (edited !== version) yield (version = edited)
  }
}
