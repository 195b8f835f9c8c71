import { paint } from '../pattern/edits/paint'
import type { Pattern } from '../pattern/pattern'
import type { Role } from '../stitches/stitch'

/** Paint the stitch of this role on several columns of a row; it is one edit. */
export const paintColumns =
  (role: Role, row: number, columns: readonly number[]) =>
  (pattern: Pattern): Pattern => {
    const stitch = pattern.vocabulary.withRole(role)
    return columns.reduce((painted, column) => paint(painted, stitch, row, column), pattern)
  }

/** Paint stitches of these roles side by side from a column on; it is one edit. */
export const paintLooks =
  (roles: readonly Role[], row: number, column: number) =>
  (pattern: Pattern): Pattern =>
    roles.reduce(
      (painted, role, at) => paint(painted, pattern.vocabulary.withRole(role), row, column + at),
      pattern,
    )
