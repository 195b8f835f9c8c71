import { nothing } from '../nothing'
import type { PlacedNote, Rule } from '../rule'

const missing: readonly PlacedNote[] = [
  {
    row: null,
    noted: {
      pegs: null,
      say: () => 'No gauge is stated.',
      advice: 'Work a swatch and put in its stitches and rows in 100 mm.',
    },
  },
]

/** The swatch decides, never the table (common practice). */
export const gauge: Rule = {
  id: 'gauge',
  title: 'No gauge stated',
  severity: 'hint',
  explain: 'Without a gauge no size can be told, and the chart is drawn with square cells.',
  scope: 'chart',
  check: ({ work: { pattern } }) => (pattern.gauge ? nothing : missing),
}
