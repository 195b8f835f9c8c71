import { nothing } from '../nothing'
import type { PlacedNote, Rule } from '../rule'

const missing: readonly PlacedNote[] = [
  {
    row: null,
    noted: {
      pegs: null,
      say: () => 'No gauge yet.',
      advice: 'Knit a swatch and enter its stitches and rows in 10 cm.',
    },
  },
]

/** The swatch decides, never the table (common practice). */
export const gauge: Rule = {
  id: 'gauge',
  title: 'No gauge yet',
  severity: 'hint',
  scope: 'chart',
  check: ({ work: { pattern } }) => (pattern.gauge ? nothing : missing),
}
