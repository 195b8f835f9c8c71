import { memo } from '../pattern/memo'
import type { Pattern } from '../pattern/pattern'
import { usedCharts } from '../pattern/charts'
import { workOnce } from '../pattern/workOnce'
import { compare } from '../words/compare/compare'
import { openErrors, toldOf } from '../words/compare/told/told'
import { read } from '../words/read/read'
import { readSettingsOf } from '../words/read/reading'

/** How the own words of a chart that is printed stand to it. */
export interface OwnWords {
  /** The chart's name. */
  readonly name: string
  /** In how many places they differ from it. */
  readonly differences: number
  /** Errors in them that are not set aside. */
  readonly errors: number
}

/** The charts of the booklet that have own words: read and compared once for each version of the pattern. */
export const ownWordsOf = memo((pattern: Pattern): readonly OwnWords[] =>
  usedCharts(pattern).flatMap(({ name, words, aside }) => {
    if (words === null) return []
    const comparison = compare(read(words, readSettingsOf(pattern)), workOnce(pattern, name))
    return [
      {
        name,
        differences: toldOf(comparison).differences,
        errors: openErrors(comparison, aside).length,
      },
    ]
  }),
)
