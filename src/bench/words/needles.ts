import { setReadAs } from '../../pattern/edits/words'
import { wrongSideMessage, wrongSideRow } from '../../words/wrongSide'
import type { Reading } from '../../words/read/reading'
import type { WordsFinding } from './findings'

/** A hint at the setting for needles, where own words speak of wrong-side rows and it is off. */
export function needlesHint({ text, settings }: Reading): WordsFinding[] {
  const range = wrongSideRow(text, settings)
  if (!range) return []
  return [
    {
      id: 'words, wrong-side',
      rule: 'wrong-side',
      severity: 'hint',
      range,
      rows: [],
      places: [],
      message: wrongSideMessage,
      advice: 'If this is a needle pattern, have it read as one: wrong-side rows are turned over.',
      fixes: [{ label: 'Read as a needle pattern', edit: (p) => setReadAs(p, { needles: true }) }],
      lacking: null,
    },
  ]
}
