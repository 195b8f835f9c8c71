import { sameWords } from '../../pattern/charts'
import type { Pattern } from '../../pattern/pattern'
import { nothing } from '../nothing'
import type { PlacedNote, Rule } from '../rule'

const before = String.raw`(?<![\p{L}\p{N}])(?<!(?:\bno|\bnever|\bnot|\bwithout|\bavoid)\s(?:[\p{L}-]+\s){0,3})`
const after = String.raw`(?![\p{L}\p{N}])`
const word = (body: string): RegExp => new RegExp(`${before}(?:${body})${after}`, 'iu')

/** What is pulled or wound. An i-cord edge is no cord, ribbon yarn no ribbon, and to tie off is no tie. */
const cords = word(
  String.raw`ribbons?(?:\s+ties?)?(?!\s+yarn)|(?:twisted |crochet(?:ed)? |plaited |braided )?(?:i-?\s?)?cords?(?!\s*-?\s*(?:bind|cast|edg|border|of\s+the\s+needle))|draw-?\s?strings?(?!\s*-?\s*cast)|(?:(?:ear|neck|chin|hat|sew(?:ing)?(?:\s+on)?|add(?:ing)?)\s+|(?:a|the|each|both|one|two|long|short)\s+)ties?(?!\s+(?:off|in|on|the|a)\b)`,
)

/** What is sewn on and can come off. */
const trims = word(String.raw`pom-?\s?poms?|bobbles?\s+to\s+sew\s+on|tassels?|buttons?|beads?`)

interface Mention {
  readonly where: string
  readonly word: string
  readonly isCord: boolean
}

function findTold({ notes, charts, steps: all }: Pattern): Mention | null {
  const steps = all.flatMap((step) => (step.kind === 'note' ? [step.text] : []))
  const texts: [where: string, text: string][] = [
    ['The words say', charts.map(({ words }) => words ?? '').join('\n')],
    ['A note among the steps says', steps.join('\n')],
    ['The notes say', notes],
  ]
  for (const [where, text] of texts) {
    const cord = cords.exec(text)?.[0]
    const found = cord ?? trims.exec(text)?.[0]
    if (found !== undefined) return { where, word: found, isCord: cord !== undefined }
  }
  return null
}

let last: { readonly pattern: Pattern; readonly told: Mention | null } | null = null

/** Asked after every edit, most of which change none of these texts. */
function told(pattern: Pattern): Mention | null {
  const known = last?.pattern
  const same =
    known?.notes === pattern.notes &&
    known.steps === pattern.steps &&
    sameWords(known.charts, pattern.charts)
  last = { pattern, told: last && same ? last.told : findTold(pattern) }
  return last.told
}

/** The cautions that are printed say the same; where rules differ from place to place, no number is given here. */
export const cordsForBaby: Rule = {
  id: 'baby-cords',
  title: 'Cords and trims for a baby',
  severity: 'hint',
  scope: 'chart',
  check: ({ work: { pattern } }): readonly PlacedNote[] => {
    const found = pattern.making.forBaby ? told(pattern) : null
    if (!found) return nothing
    return [
      {
        row: null,
        noted: {
          pegs: null,
          say: () => `${found.where} “${found.word}”, and this piece is for a baby or child.`,
          advice: found.isCord
            ? 'Leave cords and ribbons off the head and neck; elsewhere keep them short and sew them on firmly. Check your local rules before you make or sell it.'
            : 'Leave it off if you can: what is sewn on can come off. Check your local rules on small parts before you make or sell it.',
        },
      },
    ]
  },
}
