import type { Heading } from '../../loom/direction'
import { pegsOf } from '../../loom/gather'
import type { Site } from '../../loom/row'
import type { Moment } from '../../loom/walk'
import type { Stitch } from '../../stitches/stitch'
import { standardVocabulary } from '../../stitches/vocabulary'
import { languages, termOf } from '../../languages/languages'
import { stitchAt, type HandsContext } from './context'
import { upperFirst } from '../../languages/english/forms'
import { namePegs } from '../../languages/english/pegs'

/** "2/2 left cross", "cable 4 front", "knit two together (k2tog)", "u-wrap knit". */
function nameOf(stitch: Stitch, { terms, knit }: HandsContext): string {
  const { cross } = stitch
  const { abbr, name } = termOf(stitch, terms)
  if (cross && abbr === termOf(stitch, 'us').abbr) {
    const { front, back, lean, frontTexture, backTexture } = cross
    const size = `${front}/${back} ${lean}`
    if (frontTexture === 'purl') return `purled ${size} cross`
    return backTexture === 'purl' ? `${size} purl cross` : `${size} cross`
  }
  if (cross) return `${name} (${abbr})`
  if (stitch.role === 'knit') return termOf(standardVocabulary.meant(stitch, knit), terms).name
  return stitch.family === 'increase' || stitch.family === 'decrease' ? `${name} (${abbr})` : name
}

/** The heading of the moves of one stitch: "2/2 left cross on pegs 5 to 8". Pegs in working order. */
export function sayStitch(site: Site, heading: Heading, context: HandsContext): string {
  const stitch = stitchAt(site)
  return stitch ? headingOf(stitch, pegsOf(site, heading), context) : ''
}

export const headingOf = (stitch: Stitch, pegs: readonly number[], context: HandsContext): string =>
  `${upperFirst(nameOf(stitch, context))} on ${namePegs(pegs)}`

/** The heading of moves that belong to no stitch: a turn, or an edge. */
export function sayEdge({ move }: Moment, { terms }: HandsContext): string {
  const { castOn, bindOff } = languages[terms].words
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
      return upperFirst(castOn)
    default:
      return upperFirst(bindOff)
  }
}
