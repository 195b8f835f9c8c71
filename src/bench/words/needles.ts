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
      advice:
        'If they are written for needles, have them read so: wrong-side rows are turned round.',
      fixes: [
        { label: 'Read as written for needles', edit: (p) => setReadAs(p, { needles: true }) },
      ],
    },
  ]
}
