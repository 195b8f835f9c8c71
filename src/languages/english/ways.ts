import type { BindOff, CastOn, How, Knit } from '../../loom/move'
import type { StrandWords } from './strands'

/** "the peg" for one, "each peg" for several that are done alike. */
type PegWord = 'the peg' | 'each peg'

const over = ({ all }: StrandWords) => `lift ${all} over the yarn and off the peg`
const above = ({ it, many }: StrandWords) => (many ? it : 'the loop')
const exchange = ({ many }: StrandWords) =>
  `draw a new loop of the yarn through, take the old ${many ? 'ones' : 'one'} off the peg and put the new one on`

const purl = (words: StrandWords): string =>
  `lay the yarn below ${above(words)}, put the hook down through ${words.all}, ${exchange(words)}`

/** How a peg is worked, each way (common practice). */
export const ways: Readonly<Record<How, (peg: PegWord, words: StrandWords) => string>> = {
  'e-wrap': (peg, words) =>
    `wind the yarn once round ${peg} so that it crosses itself, above ${above(words)}, and ${over(words)}`,
  'u-wrap': (peg, words) =>
    `lay the yarn across the front of ${peg} and partly round it, above ${above(words)}, and ${over(words)}`,
  flat: (peg, words) =>
    `lay the yarn straight across the front of ${peg}, above ${above(words)}, and ${over(words)}`,
  true: (_, words) =>
    `lay the yarn above ${above(words)}, put the hook up through ${words.all}, ${exchange(words)}`,
  purl: (_, words) => purl(words),
  'twisted purl': (peg, words) => `twist ${words.all} once on ${peg}; then ${purl(words)}`,
}

/** The kinds of plain knit in short: "flat knit", "e-wrap". Their whole names are those of their stitches. */
export const knitNames: Readonly<Record<Knit, string>> = {
  'e-wrap': 'e-wrap',
  'u-wrap': 'u-wrap',
  flat: 'flat knit',
  true: 'true knit',
}

export const verbOf = (how: How): 'knit' | 'purl' =>
  how === 'purl' || how === 'twisted purl' ? 'purl' : 'knit'

/** Said of a way that is not the pattern's own. */
export function inWay(how: How): string {
  if (how === 'purl') return ''
  return how === 'twisted purl' ? ', twisted' : ` by ${knitNames[how]}`
}

/**
 * How a first loop is put on. Common practice; the double e-wrap and the chain from memory. All end
 * with one strand round the outside of the peg. `peg` is "peg 5" or "each peg".
 */
export const castOnWays: Readonly<Record<CastOn, (peg: string) => string>> = {
  'e-wrap': (peg) =>
    `wind the yarn once round ${peg} so that it crosses itself; this makes its first loop`,
  'double e-wrap': (peg) =>
    `wind the yarn twice round ${peg} so that it crosses itself, and lift the lower strand over the upper one and off; the one that stays is its first loop`,
  chain: (peg) =>
    `with the crochet hook inside the loom and the yarn outside, lay the yarn round the outside of ${peg} and draw it through the loop on the hook; the strand round the outside is its first loop`,
  'long-tail': (peg) =>
    `make a loop of the long tail, draw a loop of the yarn through it, put that new loop on ${peg} and draw the tail tight below`,
  drawstring: (peg) =>
    `lay the yarn across the front of ${peg} without winding it round; that strand is its first loop`,
}

/** Where the chain ends: no strand is left for the last peg, but the loop on the hook (common practice). */
export const lastOfChain = (peg: string): string =>
  `put the last loop of the chain, from the hook, on ${peg}; this is its first loop`

/**
 * How a drawstring is woven (common practice). `back`: on the way back, else once more round. For a
 * baby nothing is left that can be pulled, as the cautions say.
 */
export const drawstringWay = (back: boolean, forBaby: boolean): string =>
  `weave the yarn in front of one peg and behind the next to the end; then ${back ? 'turn and weave back' : 'weave a second round'}, in front of the pegs you went behind and behind the others, so that a strand lies in front of each peg; these strands are the first loops${forBaby ? '. When the piece is done, draw the edge to its size with the yarn end and sew that end in firmly' : ', and the edge can be drawn tight later'}`

const chained: LetGoWay = (pegs, _, goesOn) =>
  goesOn
    ? `Pull the last loop, on ${pegs}, long, take it off the peg, pass the ball of yarn through it and pull it snug; do not cut the yarn.`
    : `Cut the yarn, draw its end through the last loop, on ${pegs}, and take that loop off the peg.`

type LetGoWay = (pegs: string, loops: string, goesOn: boolean) => string

/** How the loops are made safe (common practice). `goesOn`: other loops wait for the yarn. */
export const letGoWays: Readonly<Record<BindOff, LetGoWay>> = {
  basic: chained,
  elastic: chained,
  'three-needle': chained,
  sewn: (pegs, loops) =>
    `With the yarn end in a sewing needle, sew a back stitch through ${loops} on ${pegs} and take ${loops === 'the loop' ? 'it' : 'them'} off.`,
  gather: (pegs, loops) =>
    `With the yarn end in a sewing needle, go through ${loops} on ${pegs} and take ${loops === 'the loop' ? 'it' : 'them'} off onto the yarn.`,
  graft: (pegs, loops) =>
    `With the yarn end in a sewing needle, sew through ${loops} on ${pegs}, following the path of a knit row (twice through each loop by the end), and take ${loops === 'the loop' ? 'it' : 'them'} off.`,
}
