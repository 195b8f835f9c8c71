import type { BindOff } from '../../loom/move'
import type { Role, Stitch } from '../../stitches/stitch'
import { bindOffNames, castOnNames } from './edges'
import { castOnWays, drawstringWay, lastOfChain } from './ways'
import type { DialectWords } from '../language'
import type { EdgePlace, Halves, PegsOfSecond, PiecePhrases } from '../piece'
import type { Term } from '../terms'
import { counted, listed, ordinal, rowWords, times, upperFirst } from './forms'
import { namePegRuns, pegsFromTo } from './pegs'
import { pieceLines } from './pieceLines'

/** Which way a bind-off goes; nothing where its pegs say it, or where it goes from peg 1 on. */
function wayOf({ whole, first, last, round }: EdgePlace): string {
  if (round)
    return `, from peg ${round[0]} ${first <= last ? 'on' : 'back'} and round to peg ${round[1]}`
  return whole && first > last ? `, from peg ${first} down to peg ${last}` : ''
}

/** "peg 2 with peg 1, peg 3 with peg 48, and so on to peg 25 with peg 26". */
function pairsOf(near: readonly number[], far: readonly number[]): string {
  const pairs = near.map((peg, index) => `peg ${peg + 1} with peg ${(far[index] ?? peg) + 1}`)
  return pairs.length < 5
    ? listed(pairs)
    : `${pairs.slice(0, 2).join(', ')}, and so on to ${pairs.at(-1) ?? ''}`
}

/** Strands of a German turn that no row has worked as one yet. */
function asOneLoop(pegs: readonly number[]): string {
  const named = listed(pegs.map((peg) => `peg ${peg + 1}`))
  return pegs.length === 0
    ? ''
    : ` The two strands of the double stitch on ${named} count as one loop.`
}

const plainVerbs: { readonly [role in Role]?: string } = { knit: 'Knit', purl: 'Purl' }

const chainStep =
  'knit the next peg, move its loop back onto the peg before it, lift the lower loop there over it and off'
/** Where loops wait for the yarn it is not cut: the ball goes through the loop (common practice). */
const chainEnd = (goesOn: boolean): string =>
  `rep from * until one ${goesOn ? 'of these loops' : 'loop'} is left; ${goesOn ? 'pull that loop long, take it off, pass the ball of yarn through it and pull it snug, without cutting the yarn' : 'cut the yarn, draw its end through that loop and take it off'}`
const basicWay = (goesOn: boolean): string =>
  `knit the first peg; *${chainStep}, and move it forward again to its own peg; ${chainEnd(goesOn)}`

const joinAgain = (goesOn: boolean): string =>
  goesOn ? ' Join the yarn again where this edge ends, and go on.' : ''

/** Its own words say which pegs come first. */
const joinsHalves = (how: BindOff): boolean => how === 'graft' || how === 'three-needle'

/** Lengths of the tails: common practice. */
const bindOffWays: Readonly<Record<BindOff, (goesOn: boolean, halves: Halves) => string>> = {
  basic: (goesOn) => `${upperFirst(basicWay(goesOn))}.`,
  elastic: (goesOn) =>
    `Knit the first peg twice, one loop after the other; *${chainStep}, move it forward again to its own peg and knit it once more, which lets the edge stretch; ${chainEnd(goesOn)}.`,
  sewn: (goesOn) =>
    `Cut the yarn, leaving a tail about three times as long as the edge; with the end in a sewing needle, sew a back stitch through each loop in turn and take it off.${joinAgain(goesOn)}`,
  gather: (goesOn) =>
    `Cut the yarn, leaving a tail about twice as long as the edge; with the end in a sewing needle, go through every loop in turn and take it off; pull it tight, pass it through the centre and fasten off.${joinAgain(goesOn)}`,
  'three-needle': (goesOn, { near, far }) =>
    `Put the loops of ${namePegRuns(far)} onto ${namePegRuns(near)}, in this order, so that two loops lie on each peg; then, working both loops of a peg as one, ${basicWay(goesOn)}.`,
  graft: (goesOn, { near, far, doubled }) =>
    `Cut the yarn, leaving a tail three to four times as long as the edge. Pair the pegs: ${pairsOf(near, far)}. With the tail in a sewing needle, follow the path of a knit row from side to side, twice through each loop, and take the loops off as you go.${asOneLoop(doubled)}${joinAgain(goesOn)}`,
}

const secondBegins = ({ shape, direction }: PegsOfSecond, { clockwise }: DialectWords): string =>
  shape === 'ring'
    ? `It is worked ${clockwise[direction]} round the loom, and its pegs are numbered that way.`
    : 'It begins at the other end of the loom, and its pegs are numbered from there.'

/** The sentences of a piece, in the words and terms of a dialect. */
export function piecePhrases(words: DialectWords, term: (stitch: Stitch) => Term): PiecePhrases {
  const { castOn, bindOff } = words
  const off = bindOff.replace(' ', '-')
  const offNames = bindOffNames(words)
  const ofStitch = (stitch: Stitch) => {
    const { abbr, name } = term(stitch)
    const verb = stitch.role && plainVerbs[stitch.role]
    return verb
      ? { verb, what: '' }
      : { verb: 'Work', what: ` of ${abbr === name ? abbr : `${abbr} (${name})`}` }
  }
  return {
    castOnHeading: upperFirst(castOn.replace(' ', '-')),
    bindOffHeading: upperFirst(off),
    plainHeading: { round: 'Plain rounds', row: 'Plain rows' },
    secondHeading: 'The second one',
    castOn: (how, loops, where) => {
      const { whole, open, first, last } = where
      const way =
        first <= last ? `from peg 1 to peg ${last} and back` : `from peg ${first} down to peg 1`
      return pieceLines.castOn.write({
        castOn: upperFirst(castOn),
        count: counted(loops, 'peg'),
        how: castOnNames[how],
        where: !whole
          ? `: ${pegsFromTo(first, last)}`
          : open
            ? `, flat, ${way}`
            : ', in the round, from peg 1 on',
      })
    },
    castOnWay: (how, loops, { open }, forBaby) => {
      if (how === 'drawstring') return `${upperFirst(drawstringWay(open, forBaby))}.`
      if (how !== 'chain') return `${upperFirst(castOnWays[how]('each peg'))}.`
      return loops < 2
        ? `${upperFirst(lastOfChain('the peg'))}.`
        : `${upperFirst(castOnWays.chain('each peg but the last'))}; ${lastOfChain('the last peg')}.`
    },
    bindOff: (how, loops, where) => {
      const which = where.whole
        ? `all ${counted(loops, 'loop')}`
        : `the ${counted(loops, 'loop')} on ${pegsFromTo(where.first, where.last)}`
      return loops === 0
        ? `There are no loops to ${bindOff} here.`
        : pieceLines.bindOff.write({
            bindOff: upperFirst(bindOff),
            which,
            how: ` ${offNames[how]}${joinsHalves(how) ? '' : wayOf(where)}`,
          })
    },
    bindOffWay: (how, goesOn, halves) => bindOffWays[how](goesOn, halves),
    newYarn:
      'The yarn is somewhere else: use a new length here, about three times as long as the edge.',
    workChart: (name, rows, number, again) =>
      pieceLines.workChart.write({
        name,
        again: again ? ' again' : '',
        rows,
        often: number === 1 ? '' : `, ${times(number)}`,
        end: again ? '.' : ':',
      }),
    noChart: (name) => pieceLines.noChart.write({ name }),
    whichTimes: (numbers) =>
      pieceLines.whichTimes.write({ which: `The ${listed(numbers.map(ordinal))}`, many: '' }),
    plain: (stitch, kind, rows, length) => {
      const { verb, what } = ofStitch(stitch)
      const about = length === null ? '' : ` (about ${length})`
      return `${verb} ${counted(rows, rowWords[kind])}${what}${about}.`
    },
    plainToLength: (stitch, kind, length) => {
      const { verb, what } = ofStitch(stitch)
      return `${verb} ${length}${what ? ` of ${rowWords[kind]}s${what}` : ''}, measured on your piece: no ${words.gauge} is given, so the ${rowWords[kind]}s are not counted.`
    },
    onAllPegs: (way, pegs, again) =>
      way === 'round'
        ? `From here work in the round on all ${pegs} pegs${again ? ' again' : ''}.`
        : `From here work back and forth on all ${pegs} pegs${again ? ' again' : ''}${way === 'bar' ? '' : ', without closing the round'}.`,
    onSomePegs: (first, last, othersWait) =>
      `From here work back and forth on ${pegsFromTo(first, last)}${othersWait ? '; the other loops wait' : ''}.`,
    leftOut: (rows, most) =>
      `The last ${counted(rows, 'row')} of this step ${rows === 1 ? 'is' : 'are'} left out here: a piece can have ${most} rows in all. Work this step fewer times, or make it shorter.`,
    alikeSecond: 'Make a second one in the same way.',
    mirroredSecond: (numbering) =>
      `For the second one follow its own instructions: it is the mirror image of this one, with crosses and leaning stitches the other way${
        numbering.turned
          ? `. ${secondBegins(numbering, words)}`
          : `; what is on peg 1 here is on peg ${numbering.pegs} there, and so on.`
      }`,
    secondPegs: (numbering) =>
      !numbering.turned
        ? null
        : numbering.shape === 'ring'
          ? 'Its pegs are numbered the other way round from those of the first.'
          : 'Its pegs are numbered from the other end of the loom.',
    weaveIn: 'Weave in the ends.',
  }
}
