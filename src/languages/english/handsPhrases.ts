import type { Knit } from '../../loom/move'
import type { Moment } from '../../loom/walk'
import type { Stitch } from '../../stitches/stitch'
import { standardVocabulary } from '../../stitches/vocabulary'
import type { HandsPhrases } from '../hands'
import type { DialectWords } from '../language'
import type { Term } from '../terms'
import { crossTerm } from './crosses'
import { lowerFirst, numberWord, upperFirst } from './forms'
import { sayMoves } from './hands'
import { sayInShort } from './inShort'
import { namePegs } from './pegs'

const timesMore = (count: number): string =>
  count === 1 ? 'once more' : count === 2 ? 'twice more' : `${numberWord(count)} times more`

/** What is said of the hands, in the words and terms of a dialect. */
export function handsPhrases(words: DialectWords, term: (stitch: Stitch) => Term): HandsPhrases {
  /** "2/2 left cross", "cable 4 front", "knit two together (k2tog)", "u-wrap knit". */
  const nameOf = (stitch: Stitch, knit: Knit): string => {
    const { cross } = stitch
    const { abbr, name } = term(stitch)
    if (cross && abbr === crossTerm(cross).abbr) {
      const { front, back, lean, frontTexture, backTexture } = cross
      const size = `${front}/${back} ${lean}`
      if (frontTexture === 'purl') return `purled ${size} cross`
      return backTexture === 'purl' ? `${size} purl cross` : `${size} cross`
    }
    if (cross) return `${name} (${abbr})`
    if (stitch.role === 'knit') return term(standardVocabulary.meant(stitch, knit)).name
    return stitch.family === 'increase' || stitch.family === 'decrease' ? `${name} (${abbr})` : name
  }
  const edge = ({ move }: Moment): string => {
    switch (move?.do) {
      case undefined:
        return ''
      case 'lay':
        return `${move.as === 'wrap' ? 'Wrap' : upperFirst(move.as)} on ${namePegs([move.peg])}`
      case 'turn':
        return 'Turn'
      // Only a drawstring goes past pegs at an edge.
      case 'cast on':
      case 'pass':
        return upperFirst(words.castOn)
      default:
        return upperFirst(words.bindOff)
    }
  }
  return {
    moves: sayMoves,
    inShort: sayInShort,
    stitch: (stitch, pegs, { knit }) => `${upperFirst(nameOf(stitch, knit))} on ${namePegs(pegs)}`,
    edge,
    inNextRound: (sentence) => `In the next round, ${lowerFirst(sentence)}`,
    sameAgain: 'The same again',
    again: (steps, more, where) => {
      const which = steps === 1 ? 'the last step' : `the last ${numberWord(steps)} steps`
      const place =
        'from' in where
          ? `from ${namePegs([where.from])} on to ${namePegs([where.to])}`
          : `each time with the next pegs inwards, up to ${namePegs(where.inwardsTo)}`
      return `Do ${which} ${timesMore(more)}, ${place}.`
    },
  }
}
