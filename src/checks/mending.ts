import { paint } from '../pattern/edits/paint'
import type { Pattern } from '../pattern/pattern'
import type { Fix } from './finding'

/** Paint one stitch on several columns of a row; it is one edit. */
export const paintColumns =
  (id: string, row: number, columns: readonly number[]) =>
  (pattern: Pattern): Pattern =>
    columns.reduce((painted, column) => paint(painted, id, row, column), pattern)

/** Paint stitches side by side from a column on; it is one edit. */
export const paintLooks =
  (ids: readonly string[], row: number, column: number) =>
  (pattern: Pattern): Pattern =>
    ids.reduce((painted, id, offset) => paint(painted, id, row, column + offset), pattern)

export const fix = (label: string, edit: (pattern: Pattern) => Pattern): Fix => ({ label, edit })
