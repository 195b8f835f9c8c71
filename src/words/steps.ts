import { otherDirection, runsRightToLeft, type Heading } from '../loom/direction'
import { loomRow, type Site } from '../loom/row'
import { castOn } from '../loom/state'
import { walkRow } from '../loom/walk'
import type { Habits } from '../loom/work'
import type { Terms } from '../languages/terms'
import type { Stitch } from '../stitches/stitch'
import { standardVocabulary } from '../stitches/vocabulary'
import { emptiesPegs, unknownFates, type Fates, type PegFate } from './emptied'
import type { Language } from '../languages/language'
import { languages, termOf } from '../languages/languages'
import { groupsOf, isShortlyAlike } from './hands/groups'

/**
 * What the hands do for any stitch: from its moves where loops change their pegs, else from its
 * declaration. A stitch that empties pegs is told in each of the ways in which the pattern uses it:
 * `uses` says what becomes of those pegs.
 */
export function stepsOfStitch(
  stitch: Stitch,
  habits: Habits,
  heading: Heading,
  terms: Terms = 'us',
  uses: readonly Fates[] = [],
): string {
  const language = languages[terms]
  if (stitch.cross) {
    const moves = tellMoves([stitch], habits, heading, terms)
    return language.movesOver(stitch.width, [{ label: null, moves }])
  }
  if (stitch.role === 'knit') {
    const meant = standardVocabulary.meant(stitch, habits.knit)
    return language.knitSteps(termOf(meant, terms).name, language.steps(meant))
  }
  if (!emptiesPegs(stitch)) return language.steps(stitch)
  const told = (uses.length > 0 ? uses : [unknownFates(stitch)]).map((fates) => ({
    label: isMade(fates) || uses.length > 1 ? labelOf(stitch, fates, terms) : null,
    moves: [movesOf(stitch, fates, habits, heading, terms), ...fateOf(fates, language)].join('; '),
  }))
  return language.movesOver(stitch.takes, told)
}

/** Does the chart make a loop on one of the emptied pegs, which is then part of the recipe? */
const isMade = (fates: Fates): boolean =>
  fates.some((fate) => typeof fate === 'object' && fate.makes > 0)

/** "yo, k2tog", in working order. */
function labelOf(stitch: Stitch, fates: Fates, terms: Terms): string {
  const names = fates.flatMap((fate) =>
    fate === 'own'
      ? [termOf(stitch, terms).abbr]
      : typeof fate === 'object'
        ? [termOf(fate, terms).abbr]
        : [],
  )
  const alone = names.length === 1 && fates.length > 1
  return alone ? languages[terms].emptied.noneLeft(termOf(stitch, terms).abbr) : names.join(', ')
}

/** How the loops come to lie on one peg, and are worked there. */
function movesOf(
  stitch: Stitch,
  fates: Fates,
  habits: Habits,
  heading: Heading,
  terms: Terms,
): string {
  const row = fates.map((fate) =>
    fate === 'own' ? stitch : standardVocabulary.withRole('no stitch'),
  )
  return tellMoves(row, habits, heading, terms)
}

/** What is done with the emptied pegs; those on which a stitch is made stand in the label. */
function fateOf(fates: Fates, { emptied }: Language): string[] {
  const pegs = (is: (fate: PegFate) => boolean) =>
    fates.flatMap((fate, index) => (is(fate) ? [index + 1] : []))
  const left = pegs((fate) => typeof fate === 'object' && fate.makes === 0)
  const after = pegs((fate) => fate === 'filled from after')
  const before = pegs((fate) => fate === 'filled from before')
  const open = pegs((fate) => fate === 'open')
  return [
    ...(left.length > 0 ? [emptied.left(left)] : []),
    ...(after.length > 0 ? [emptied.filled(after, 'after')] : []),
    ...(before.length > 0 ? [emptied.filled(before, 'before')] : []),
    ...(open.length > 0 ? [emptied.open(open)] : []),
  ]
}

/**
 * The moves of a few stitches on a loom of just their pegs, as one phrase. Pegs are numbered in the order work
 * comes to them, so going back is work forward on a loom of the other direction.
 */
function tellMoves(
  stitches: readonly Stitch[],
  habits: Habits,
  heading: Heading,
  terms: Terms,
): string {
  let pegs = 0
  const sites = stitches.map((stitch): Site<Stitch> => {
    const peg = pegs
    pegs += stitch.width
    return { stitch, peg }
  })
  const direction = heading === 'forward' ? habits.direction : otherDirection(habits.direction)
  const row = loomRow(sites, 0, pegs - 1, 'forward', 'on')
  const moments = walkRow(
    { before: castOn(pegs), row, heading: 'forward' },
    { ...habits, direction },
  )
  const { inShort } = languages[terms].hands
  return groupsOf(moments, isShortlyAlike)
    .filter(({ moves: [first] }) => first?.after.site)
    .map(({ moves }) => inShort(moves, { ...habits, direction, terms }))
    .join('; ')
}

/** The name of the way work goes, as the right side is seen. */
export const wayOf = ({ direction }: Habits, heading: Heading, terms: Terms): string => {
  const language = languages[terms]
  return runsRightToLeft(direction, heading) ? language.rightToLeft : language.leftToRight
}
