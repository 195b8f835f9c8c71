import { counted } from '../../../languages/english/forms'
import { onChart } from '../../../pattern/charts'
import { fix, nowhere, type Finding } from '../../../pattern/finding'
import type { Chart, NamedChart } from '../../../pattern/pattern'
import { chartWork, firstStepOf, workPattern } from '../../../pattern/work'
import type { PieceWork } from '../../../pattern/workPiece'
import { read } from '../../read/read'
import { readSettingsOf, type Reading } from '../../read/reading'
import { compare } from '../compare'
import { openErrors } from './told'

/** The errors that own words were found to have, and all that this hangs on. */
interface Known {
  readonly hangsOn: readonly unknown[]
  readonly reading: Reading
  readonly errors: readonly Finding[]
}
const known = new WeakMap<Chart, Known>()

/** Errors in the own words of a chart that are not set aside, against the chart where it is worked first. */
function errorsOf(piece: PieceWork, { name, chart, aside }: NamedChart, words: string) {
  const { pattern } = piece
  const { loom, making, style, readAs } = pattern
  const step = firstStepOf(pattern, name)
  const hangsOn = [loom, making, style, readAs, words, aside, piece.steps[step ?? -1]]
  const last = known.get(chart)
  if (last?.hangsOn.every((part, index) => part === hangsOn[index])) return last.errors
  const work =
    (step === null ? null : chartWork(piece, step)) ?? workPattern(pattern, undefined, null, name)
  const reading = read(words, readSettingsOf(pattern), last?.reading)
  const errors = openErrors(compare(reading, work), aside)
  known.set(chart, { hangsOn, reading, errors })
  return errors
}

/**
 * What is wrong in the designer's own words of other charts than `besides`, which is looked at: one finding for
 * each, at the step that works its chart first.
 */
export const otherWords = (piece: PieceWork, besides: string): readonly Finding[] =>
  piece.pattern.charts.flatMap((named): Finding[] => {
    const { name, words } = named
    const errors = words === null || name === besides ? [] : errorsOf(piece, named, words)
    const [first] = errors
    if (!first) return []
    const step = firstStepOf(piece.pattern, name)
    const more = errors.length - 1
    return [
      {
        id: `piece-words/${step ?? ''}`,
        rule: 'piece-words',
        severity: 'error',
        place: { ...nowhere, step },
        message: `In your own words of “${name}”: ${first.message}${more > 0 ? ` (and ${counted(more, 'error')} more)` : ''}`,
        advice: 'Open that chart to see where, and to mend it.',
        fixes: [fix(`Open “${name}”`, (sheet) => onChart(sheet, name))],
      },
    ]
  })
