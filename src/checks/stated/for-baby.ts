import { fix } from '../../pattern/finding'
import { sameWords } from '../../pattern/charts'
import { setMaking } from '../../pattern/edits/settings'
import type { Pattern } from '../../pattern/pattern'
import { mostPegsPassedIn } from '../../pattern/floats'
import { nothing } from '../nothing'
import type { PlacedNote, Rule } from '../rule'
import { counted } from '../../languages/english/forms'

/** Whole words that tell of somebody small. "Kid" alone is a yarn, as baby alpaca is; baby cables are small. */
const somebody =
  /(?<![\p{L}\p{N}])(?:baby(?!\s+(?:alpaca|cables?|camel|llama|merino|ribs?|wool|yarn)\b)|babies|new-?borns?|preemies?|infants?|toddlers?|child|children|kids|boot(?:ee|ie)s?)(?![\p{L}\p{N}])/iu

/** "3 to 6 months", "0-3 mths", "6 months old". */
const months =
  /(?<![\p{L}\p{N}])\d{1,2}(?:\s*(?:-|–|to)\s*\d{1,2}\s*(?:months?|mths?|mos?)|\s*(?:months?|mths?)[\s-]+old)(?![\p{L}\p{N}])/iu

/** "0-3 m", as children's sizes are graded; of yarn it is metres. */
const monthsInShort =
  /(?<![\p{L}\p{N}])(?:0|1|3|6|9|12|18|24)\s*(?:-|–|to)\s*(?:1|3|6|9|12|18|24|36)\s*m(?![\p{L}\p{N}])(?!\s*(?:of|yarn)\b)/iu

/** In the list of sizes one month alone is a size too: "Sizes: newborn (3 months, 6 m)". */
const monthsAsSize =
  /(?<![\p{L}\p{N}])(?:1|3|6|9|12|18|24|36)\s*(?:months?|mths?|m)(?![\p{L}\p{N}])/iu

/** Lines of own words that name sizes. */
const sizeLines = /^[^\S\n]*(?:finished )?sizes?\b.*$/gim

interface Mention {
  readonly where: string
  readonly word: string
}

const toldIn = (where: string, text: string, ways = [somebody, months, monthsInShort]): Mention[] =>
  ways.flatMap((way) => {
    const word = way.exec(text)?.[0]
    return word === undefined ? [] : [{ where, word }]
  })

function findTold({ title, notes, charts, steps: all }: Pattern): Mention | undefined {
  const sizes = charts.flatMap(({ words }) => words?.match(sizeLines) ?? []).join('\n')
  const steps = all.flatMap((step) => (step.kind === 'note' ? [step.text] : []))
  return [
    ...toldIn('The title says', title),
    ...toldIn('The notes say', notes),
    ...toldIn('A note among the steps says', steps.join('\n')),
    ...toldIn('The sizes say', sizes, [somebody, months, monthsInShort, monthsAsSize]),
  ][0]
}

let last: { readonly pattern: Pattern; readonly told: Mention | undefined } | null = null

/** Asked after every edit, most of which change none of these texts. */
function told(pattern: Pattern): Mention | undefined {
  const before = last?.pattern
  const same =
    before?.title === pattern.title &&
    before.notes === pattern.notes &&
    before.steps === pattern.steps &&
    sameWords(before.charts, pattern.charts)
  last = { pattern, told: last && same ? last.told : findTold(pattern) }
  return last.told
}

const toBaby = (pattern: Pattern): Pattern => setMaking(pattern, { forBaby: true })

/** What this loom allows for a baby, by the number that the check of floats and the cautions have. */
export function floatsForBaby(pattern: Pattern): string {
  const most = mostPegsPassedIn(toBaby(pattern))
  return most === 0
    ? 'on this loom no peg may be slipped'
    : `on this loom a float may pass no more than ${counted(most, 'peg')}`
}

/** Floats and loose ends inside catch small fingers and toes (common practice). */
export const forBaby: Rule = {
  id: 'for-baby',
  title: 'Not marked “For a baby or child”',
  severity: 'hint',
  scope: 'chart',
  check: ({ work: { pattern } }): readonly PlacedNote[] => {
    if (pattern.making.forBaby) return nothing
    const found = told(pattern)
    if (!found) return nothing
    return [
      {
        row: null,
        noted: {
          pegs: null,
          say: () =>
            `${found.where} “${found.word}”, but this pattern isn’t marked “For a baby or child”.`,
          advice: `Tick “For a baby or child”: ${floatsForBaby(pattern)}, and cautions are printed. If it isn’t for a child, set this aside.`,
          mend: () => [fix('Mark it “For a baby or child”', toBaby)],
        },
      },
    ]
  },
}
