import { runsRightToLeft } from '../../loom/direction'
import type { Knit } from '../../loom/move'
import type { CutBy, Stitch } from '../../stitches/stitch'
import { standardVocabulary } from '../../stitches/vocabulary'
import type { Dialect, Language } from '../language'
import type { Gauge } from '../gauge'
import type { StitchWords, Term } from '../terms'
import { bindOffNames, castOnNames } from './edges'
import { bookletPhrases } from './booklet'
import { drawingPhrases } from './drawings'
import { handsPhrases } from './handsPhrases'
import { piecePhrases } from './piece'
import { terms } from './terms'
import { totalsPhrases } from './totals'
import { counted, numbered, rowWords, times, timesInWords, upperFirst } from './forms'
import { numbersOfPegs } from './pegs'

const stitchWords = new Map<string, StitchWords>(Object.entries(terms))
/** A stitch that has no term goes by its id. */
const wordsOf = ({ id }: Stitch): StitchWords =>
  stitchWords.get(id) ?? { abbr: id, name: id, also: [] }

const stitches = (count: number): string => counted(count, 'st')

const inOrder = 'counted in the order you work them'

/** What is left of a stitch by any of its names: "k2tog (cut at the end of the round, 1 of 2 pegs)". */
const cutTerm = ({ abbr, name }: Term, by: CutBy, left: number, width: number): Term => ({
  abbr: `${abbr} (${cut[by]}, ${left} of ${width} pegs)`,
  name: `${name}, ${cut[by]}, ${left} of ${width} pegs`,
})

const cut: Readonly<Record<CutBy, string>> = {
  repeat: 'cut at the edge of the repeat',
  join: 'cut at the end of the round',
  'bar edge': 'cut at the edge of the piece',
  'run edge': 'cut at the edge of its row',
  overlap: 'cut by the stitch beside it',
}

function stepsOf(stitch: Stitch): string {
  if (!stitch.cut) return wordsOf(stitch).steps ?? ''
  const { width } = stitch.cut.of
  return stitch.width === 1
    ? `Only one of its ${width} pegs is here: knit it.`
    : `Only ${stitch.width} of its ${width} pegs are here: knit them.`
}

/** English as looms are written about, in one of its dialects. */
export function english(dialect: Dialect): Language {
  const { words } = dialect
  const known = new WeakMap<Stitch, Term>()
  const findTerm = (stitch: Stitch): Term => {
    if (stitch.cut)
      return cutTerm(term(stitch.cut.of), stitch.cut.by, stitch.width, stitch.cut.of.width)
    if (stitch.cross) return dialect.cross(stitch.cross)
    const { abbr, name } = dialect.terms.get(stitch.id) ?? wordsOf(stitch)
    return { abbr, name }
  }
  const term = (stitch: Stitch): Term => {
    let found = known.get(stitch)
    if (!found) known.set(stitch, (found = findTerm(stitch)))
    return found
  }
  const gauge = (measured: Gauge, knit: Knit) => `${words.gauge} ${gaugeIn(measured, named(knit))}`
  const named = (knit: Knit) => term(standardVocabulary.withRole(knit)).name
  return {
    tag: dialect.tag,
    words,
    booklet: bookletPhrases(dialect, gauge),
    piece: piecePhrases(words, term),
    hands: handsPhrases(words, term),
    totals: totalsPhrases(words),
    drawings: drawingPhrases(words),
    term,
    also: (stitch) => wordsOf(stitch).also,
    steps: stepsOf,
    cut,
    label: (kind, from, to) => numbered(upperFirst(rowWords[kind]), from, to),
    rows: counted,
    allKnit: 'knit',
    allPurl: 'purl',
    wholeRow: (said) => `${said === 'knit' || said === 'purl' ? upperFirst(said) : said}.`,
    times,
    repeatToEnd: 'rep from * to end',
    repeatToLast: (count) => `rep from * to last ${count === 1 ? 'st' : stitches(count)}`,
    as: (label) => `As ${label}.`,
    stitches: (count) => `(${stitches(count)})`,
    repeatRows: (label, more) => `Rep ${label} ${timesInWords(more)} more.`,
    repeatUntil: (label, kind, rows) => `Rep ${label} until ${rows} ${rowWords[kind]}s are worked.`,
    repeatTo: (label, last) => `Rep ${label} until ${last} is worked.`,
    inAll: (kind, rows, count) =>
      `(${rows} ${rowWords[kind]}s in all${count === null ? '' : `, ${stitches(count)}`})`,
    pegs: (first, last, goingBack) =>
      first === last
        ? `Peg ${first}${goingBack ? ', going back' : ''}`
        : `Pegs ${first} to ${last}`,
    turn: ({ end, peg }) =>
      end === 'German turn'
        ? `turn; DS on peg ${peg ?? ''}`
        : peg === null
          ? 'wrap and turn'
          : `wrap peg ${peg} and turn`,
    turnSteps: {
      'German turn': {
        abbr: 'DS',
        name: 'double stitch (German short rows)',
        steps:
          'Work the peg that is named and turn. Bring the yarn to the front and up over that peg, so that two strands lie on it, and work back from the peg beside it. When you come to that peg again, work its two strands as one.',
      },
      wrap: {
        abbr: 'wrap and turn',
        name: 'short rows with wrapped pegs',
        steps:
          'Stop before the peg that is named. Take its loop off, lay the yarn round the peg and put the loop back above it; then turn and work back. When you come to that peg again, work the loop and its wraps as one.',
      },
    },
    movesOver: (pegs, ways) => {
      const [first, ...others] = ways
      if (others.length === 0)
        return first?.label
          ? `${first.label} (over ${pegs} pegs, ${inOrder}): ${first.moves}.`
          : `Over ${pegs} pegs, ${inOrder}: ${first?.moves ?? ''}.`
      const told = ways.map(({ label, moves }) => `${label ?? ''}: ${moves}.`)
      return `Over ${pegs} pegs, ${inOrder}. ${told.join(' ')}`
    },
    emptied: {
      left: (pegs) => `leave ${numbersOfPegs(pegs)} empty`,
      filled: (pegs, from) =>
        from === 'after'
          ? `fill ${numbersOfPegs(pegs)} by moving the loops after ${pegs.length === 1 ? 'it' : 'them'} back along the loom`
          : `fill ${numbersOfPegs(pegs)} by moving the loops before ${pegs.length === 1 ? 'it' : 'them'} forward along the loom`,
      open: (pegs) => `${numbersOfPegs(pegs)} ${pegs.length === 1 ? 'is' : 'are'} now empty`,
      noneLeft: (abbr) => `${abbr} with no peg left empty`,
    },
    knitSteps: (name, steps) => `${upperFirst(name)} in this pattern. ${steps}`,
    rightToLeft: 'Worked right to left.',
    leftToRight: 'Worked left to right.',
    abbreviations: [
      { abbr: 'rnd(s)', name: 'round(s)', shows: /\brnds?\b/i },
      { abbr: 'rep', name: 'repeat', shows: /\brep\b/i },
      { abbr: 'st(s)', name: 'stitch(es)', shows: /\d sts?\b/ },
    ],
    headings: {
      about: 'How it is worked',
      abbreviations: 'Abbreviations',
      notes: 'Notes',
      instructions: 'Instructions',
      finishing: 'Finishing',
      cautions: 'Cautions',
    },
    direction: (shape, direction) => {
      const rightToLeft = runsRightToLeft(direction)
      const [way, side] = rightToLeft ? ['right to left', 'right'] : ['left to right', 'left']
      return shape === 'ring'
        ? `Worked ${words.clockwise[direction]} round the loom seen from above: ${way} as you face it.`
        : `Peg 1 is at the ${side} as you face the loom: rows from peg 1 up are worked ${way}, rows down to peg 1 the other way.`
    },
    rightSide: 'The right side always faces you.',
    knitMeans: (abbr, knit) => `${abbr} means ${named(knit)} in this pattern.`,
    crossing: {
      'knit then move': 'Crosses: knit the loops first, then cross them.',
      'move then knit': 'Crosses: cross the loops first, then knit them.',
    },
    transfer: {
      ordered:
        'Decreases: stack the loops in the order given under each abbreviation; the bottom one is the one that shows.',
      plain: 'Decreases: put the loop that is moved on top of the other.',
    },
    cautions: (mostPassed, ladders) => [
      `Floats and loose ends inside can catch fingers and toes: ${mostPassed === 0 ? 'slip no peg' : `let the yarn pass no more than ${counted(mostPassed, 'peg')} before it is caught`}.`,
      ...(ladders
        ? [
            'In some places the yarn runs over empty pegs and leaves a ladder that small fingers and toes can catch in: close each ladder from the inside with a yarn end.',
          ]
        : []),
      'Weave ends in securely, turn the piece inside out and check it before every use.',
      'No cords or ribbons at the head or neck; keep any other ties short and sew them on firmly.',
      'Buttons and trims can come off: avoid them.',
      "Use a soft, washable yarn that doesn't shed.",
      "Check your local rules on children's clothing and small parts before you make or sell it.",
    ],
    start: (how, pegs, shape) =>
      `${upperFirst(words.castOn)} ${pegs} pegs ${castOnNames[how]}, ${shape === 'ring' ? 'in the round' : 'flat'}.`,
    finish: (how) =>
      `${upperFirst(words.bindOff)} all stitches ${bindOffNames(words)[how]} and weave in the ends.`,
    gauge,
    gaugeLine: (measured, knit) => `${upperFirst(words.gauge)}: ${gaugeIn(measured, named(knit))}.`,
  }
}

const gaugeIn = ({ stitches: count, rows }: Gauge, knit: string): string =>
  `${count} sts and ${rows} rows to 10 cm (4 in) in ${knit}`
