import type { Pattern } from '../../pattern/pattern'
import { isOneChart, usedSections, withOnBench } from '../../pattern/sections'
import { workPattern } from '../../pattern/work'
import { compare } from '../../words/compare/compare'
import { read } from '../../words/read/read'
import { readSettingsOf } from '../../words/read/reading'

/** A section that is printed but does not lie on the bench. */
export interface OtherSection {
  readonly name: string
  /** Has it own words, in how many places do they differ from its chart, and how many errors have they? */
  readonly own: { readonly differences: number; readonly errors: number } | null
}

/** The sections that are printed beside the one that is looked at, which the bench checks itself. */
export const otherSections = (
  pattern: Pattern,
  lookedAt: string | null,
): readonly OtherSection[] =>
  isOneChart(pattern)
    ? []
    : usedSections(pattern)
        .filter(({ name }) => name !== lookedAt)
        .map(({ name, words }) => {
          const put = withOnBench(pattern, name)
          if (words === null) return { name, own: null }
          const reading = read(words, readSettingsOf(put))
          const { differences } = compare(reading, workPattern(put))
          const errors = reading.remarks.filter(({ severity }) => severity === 'error')
          return { name, own: { differences: differences.length, errors: errors.length } }
        })
