import type { Pattern } from '../../pattern/pattern'
import { isOneChart, usedSections, withOnBench } from '../../pattern/sections'
import { workPattern } from '../../pattern/work'
import { compare } from '../../words/compare/compare'
import { read } from '../../words/read/read'
import { readSettingsOf } from '../../words/read/reading'

/** A section that is printed but does not lie on the bench. */
export interface OtherSection {
  readonly name: string
  /** Has it own words, and in how many places do they differ from its chart? */
  readonly own: { readonly differences: number } | null
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
          return {
            name,
            own:
              words === null
                ? null
                : {
                    differences: compare(read(words, readSettingsOf(put)), workPattern(put))
                      .differences.length,
                  },
          }
        })
