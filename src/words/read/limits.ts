/** What one reading is bounded by, so that any text is read in a time that follows its length. */
export const readLimits = {
  /** Characters read; the rest of a longer text is left unread. */
  text: 1_000_000,
  /** Stitches in one row. */
  stitches: 4000,
  /** Rows in all, repeats of rows worked out. */
  rows: 5000,
  /** Stitches in all rows together. */
  work: 1_000_000,
  /** Brackets inside brackets. */
  depth: 12,
  remarks: 1000,
} as const
