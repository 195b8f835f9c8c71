import { pegsPassed, type Done, type DoneOf, type HandsContext } from '../hands'
import { lowerFirst, times } from './forms'
import { carriesOn, firstOf, pegsIn, sayMoves, stackBefore, type Doing } from './hands'
import { namePegs } from './pegs'
import { verbOf } from './ways'

type Short<D extends Doing> = (list: readonly DoneOf<D>[]) => string

/** Moves in a few words, for lists of them: "knit pegs 1 to 4". */
export function sayInShort(list: readonly Done[], context: HandsContext): string {
  const short = list[0] && (shorts[list[0].move.do] as Short<Doing> | undefined)
  return short ? short(list) : lowerFirst(sayMoves(list, context)).replace(/\.$/, '')
}

const loop = ({ length }: readonly unknown[]): string => (length === 1 ? 'loop' : 'loops')

function shortWork(list: readonly DoneOf<'work'>[]): string {
  const { move, before } = firstOf(list)
  const pegs = [...new Set(pegsIn(list))]
  const loops = before.stacks[move.peg]?.length ?? 0
  const verb = move.how === 'twisted purl' ? 'purl twisted' : verbOf(move.how)
  const often = list.length > pegs.length ? ` ${times(list.length)}` : ''
  return loops > 1
    ? `${verb} ${loops === 2 ? 'both' : `the ${loops}`} loops of ${namePegs(pegs)} as one`
    : `${verb} ${namePegs(pegs)}${often}`
}

function shortMove(list: readonly DoneOf<'move'>[]): string {
  const places = list.map((done) =>
    stackBefore(done, done.move.to).length === 0
      ? ''
      : done.move.under
        ? ', underneath'
        : ', on top',
  )
  const [from, to] = [list.map(({ move }) => move.from), list.map(({ move }) => move.to)]
  if (list.length > 1 && places.every((place) => place === ''))
    return `move the loops of ${namePegs(from)}, one after the other, to ${namePegs(to)}`
  return list
    .map(({ move }, index) => {
      const which = index === 0 ? 'move the loop of' : 'then that of'
      return `${which} ${namePegs([move.from])} to ${namePegs([move.to])}${places[index] ?? ''}`
    })
    .join(', ')
}

/** What has no short form here is told in its whole sentence. */
const shorts: { readonly [D in Doing]?: Short<D> } = {
  work: shortWork,
  carry: (list) => {
    const done = firstOf(list)
    return carriesOn(done)
      ? `carry the yarn behind ${namePegs(pegsPassed(done))}`
      : `bring the yarn back behind the pegs to ${namePegs([done.move.gap])}`
  },
  take: (list) =>
    `take the ${loop(list)} of ${namePegs(pegsIn(list))} onto the spare needle, ${firstOf(list).move.to} the loom`,
  put: (list) => `put the waiting ${loop(list)} on ${namePegs(pegsIn(list))}`,
  move: shortMove,
}
