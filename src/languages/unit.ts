/** What goes round a ring is a round, all else a row (common practice). */
export type Unit = 'round' | 'row'
