/** The sets of terms that the house knows, each a dialect of a language. */
export const termSets = ['us', 'uk'] as const
export type Terms = (typeof termSets)[number]

/** How a stitch is called. */
export interface Term {
  readonly abbr: string
  readonly name: string
}

/** What a language says of a stitch that is no cross; its dialects may call it otherwise. */
export interface StitchWords extends Term {
  /** Other spellings in use, lower case; hyphens, commas, dots and `&` in them may be left out. */
  readonly also: readonly string[]
  /**
   * What the hands do, in one sentence without direction. Decreases and crosses have none, since
   * their moves are told one by one, nor has the plain knit, which stands for another stitch.
   */
  readonly steps?: string
}
