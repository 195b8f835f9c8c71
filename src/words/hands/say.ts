import type { Heading } from '../../loom/direction'
import { pegsOf } from '../../loom/gather'
import type { Site } from '../../loom/row'
import type { Moment } from '../../loom/walk'
import { stitchAt, type HandsContext } from '../../languages/hands'
import { languages } from '../../languages/languages'

/**
 * What the hands do in the move that led from one moment to the next, in one plain sentence. Pegs
 * are numbered from 1; left and right are as the knitter sees the outside of the loom in front.
 * Empty for the moment before the first move.
 */
export function sayMove(moment: Moment, before: Moment, context: HandsContext): string {
  const { move } = moment
  const { hands } = languages[context.terms]
  return move ? hands.moves([{ move, before, after: moment }], context) : ''
}

/** The heading of the moves of one stitch: "2/2 left cross on pegs 5 to 8". Pegs in working order. */
export function sayStitch(site: Site, heading: Heading, context: HandsContext): string {
  const stitch = stitchAt(site)
  return stitch ? languages[context.terms].hands.stitch(stitch, pegsOf(site, heading), context) : ''
}

/** What a move belongs to: a stitch on its pegs, or else a turn or an edge. */
export const sayHeading = (moment: Moment, context: HandsContext): string =>
  moment.site
    ? sayStitch(moment.site, moment.heading, context)
    : languages[context.terms].hands.edge(moment)
