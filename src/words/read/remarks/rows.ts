import { counted, isOne, needsStitches } from '../../../languages/english/forms'
import { excerpt } from '../../../pattern/excerpt'
import { figuresOf, readLimits } from '../limits'
import { nearestWidths, repeatLeaves } from '../../../pattern/columns/repeatFit'
import type { Run } from '../../../pattern/pattern'
import type { RowTold, Trouble } from '../loops/stretch'
import type { Ambiguity, Body, Named, RelativeRemark, Said } from '../nodes'
import type { TextRange } from '../reading'
import { error, hint, warning, write } from './remark'
import { listOfRows } from '../rows/wordsOfRows'

const stitches = (count: number): string => counted(count, 'stitch', 'stitches')
const sts = (count: number): string => counted(count, 'st')
const are = (count: number): string => (isOne(count) ? 'is' : 'are')

/** "These fit: a repeat of 5 or 10 sts, or 2 sts more beside it." */
function repeatAdvice(block: number, room: number, over: number): string {
  const widths = nearestWidths(room, block)
  const repeat = widths.length > 0 ? `a repeat of ${widths.join(' or ')} sts, or ` : ''
  return `These fit: ${repeat}${sts(over)} more beside it.`
}

/** A row that takes another number of loops than there are. `name`: "Rnd 3". */
export function rowCount(
  name: string,
  trouble: Trouble,
  { takes }: Pick<RowTold, 'takes'>,
  range: TextRange,
): RelativeRemark {
  if (trouble.kind === 'repeat') return repeatCount(name, trouble, range)
  if (trouble.kind === 'join')
    return error(
      'over-join',
      range,
      `${name} goes past the end of the round: ${sts(trouble.loops)} before it and ${trouble.over} beyond it. In a chart a row ends there.`,
      'Start the round elsewhere, so that no row that turns passes between the last peg and peg 1.',
    )
  const by = Math.abs(takes - trouble.loops)
  return trouble.kind === 'over'
    ? error(
        'row-count',
        range,
        `${name} ${needsStitches(takes, trouble.loops)}: ${by} too many.`,
        `Remove ${stitches(by)}, or check the lines above.`,
      )
    : error(
        'row-count',
        range,
        `${name} works ${takes} of ${stitches(trouble.loops)}: ${by} ${are(by)} left over.`,
        `Add ${stitches(by)}, or check the lines above.`,
      )
}

function repeatCount(
  name: string,
  { block, copies, over }: Extract<Trouble, { kind: 'repeat' }>,
  range: TextRange,
): RelativeRemark {
  if (over <= 0)
    return error(
      'row-count',
      range,
      `${name}: the stitches beside the repeat need ${sts(-over)} more than there are, so none are left for the repeat.`,
      'Write fewer stitches before or after the repeat, or use more pegs.',
    )
  const all = copies * block + over
  const left =
    copies === 0
      ? `the repeat is ${sts(block)}, and only ${all} ${are(all)} there for it.`
      : repeatLeaves(block, all, copies, over)
  return error('row-count', range, `${name}: ${left}`, repeatAdvice(block, all, over))
}

/** One row changes the number of loops, and so others do not come out: `others` after the first. */
export const causeOfMiscounts = (
  name: string,
  before: number,
  after: number,
  first: string,
  others: number,
  range: TextRange,
): RelativeRemark =>
  error(
    'row-count',
    range,
    `${name} turns ${stitches(before)} into ${after}, so the count is off ${others === 1 ? 'twice' : `${others + 1} times`} after it. The first: ${first}`,
    `Check ${name}: should it leave ${before}? If not, change what follows it.`,
  )

/** Numbers are left out between two heads. `named`: "Rnd 2", "Rnds 2-4". */
export const labelGap = (named: string, lacking: Run, range: TextRange): RelativeRemark => ({
  ...warning(
    'label-gap',
    range,
    `${named} ${lacking.from === lacking.to ? 'is' : 'are'} missing.`,
    'Write what is worked there, or correct the numbers.',
  ),
  lacks: [lacking],
})

/** The words that are known do not fill the row, and those that are not known may mean anything. */
export const unreadCount = (
  name: string,
  { takes, unread }: Pick<RowTold, 'takes' | 'unread'>,
  range: TextRange,
): RelativeRemark =>
  error(
    'row-count',
    range,
    `${name} has words that are not known. Without them it works ${takes} of ${stitches(takes + unread)}: ${unread} ${are(unread)} left over.`,
    'Write these words as stitches, or explain them in the abbreviations.',
  )

export function statedCount(
  name: string,
  said: Said,
  computed: number,
  before: number,
): RelativeRemark {
  const change = computed - before
  const says =
    said.kind === 'change'
      ? `${stitches(Math.abs(said.count))} ${said.count < 0 ? 'fewer' : 'more'}`
      : stitches(said.count)
  const is =
    said.kind === 'change'
      ? change === 0
        ? 'no change'
        : `${Math.abs(change)} ${change < 0 ? 'fewer' : 'more'}`
      : `${computed}`
  return error(
    'stated-count',
    said.range,
    `${name} says ${says}; its stitches come to ${is}.`,
    'Correct the number or the stitches.',
    said.kind === 'total' ? [write(said.range, `${computed} sts`, `Write ${computed} sts`)] : [],
  )
}

/** `unit`: "rnds" or "rows". */
export const statedRows = (said: Said, rows: number, unit: string): RelativeRemark =>
  error(
    'stated-rows',
    said.range,
    `The words say ${said.count} ${unit}, but these repeats make ${rows}.`,
    `Correct the number, or how often the ${unit} are repeated.`,
  )

/** A row that is longer than any: counted where it can be. */
export function tooManyStitches(
  name: string,
  { needs, loops: there }: Pick<RowTold, 'needs' | 'loops'>,
  range: TextRange,
): RelativeRemark {
  const most = `${figuresOf(readLimits.stitches)} stitches`
  if (needs === null || needs <= there) return tooLong(name, most, range)
  return error(
    'row-count',
    range,
    `${name} needs ${figuresOf(needs)} stitches, the loom holds ${there}. A row has at most ${most}.`,
    'Check the numbers in it.',
  )
}

/** A line names more rows than one line can. `said`: its head, or "This line". */
export const tooManyRows = (said: string, range: TextRange): RelativeRemark =>
  error(
    'too-long',
    range,
    `${said} names more than ${figuresOf(readLimits.rowsInLine)} rows; the rest is left out.`,
    'Check the numbers in it.',
  )

/** A number beyond all that are read. */
export const tooLarge = (said: string, range: TextRange): RelativeRemark =>
  error(
    'too-large',
    range,
    `${excerpt(said, 12)} is too large: numbers go up to ${figuresOf(readLimits.number)}.`,
    'Check whether a digit was typed twice.',
  )

export const tooLong = (name: string, most: string, range: TextRange): RelativeRemark =>
  error(
    'too-long',
    range,
    `${name} goes on for more than ${most}; the rest is left out.`,
    'Check the numbers in it.',
  )

/** What an ambiguous word can mean, what to do, and the words that leave no doubt. */
const asked: Readonly<
  Record<Ambiguity, (times: number) => readonly [means: string, advice: string, ...to: string[]]>
> = {
  'ask-times': (times) => [
    'can mean so many times more or so many times in all, and the stitch counts do not tell. It is read as more.',
    'Write "times more" or "times in all".',
    `${times} times more`,
    `${times} times in all`,
  ],
  'ask-yfwd': () => [
    'can mean a yarn over, or just the yarn to the front. It is read as a yarn over.',
    'Write "yo" for a yarn over, or leave it out.',
    'yo',
    '',
  ],
  'ask-inc': () => [
    'can mean knit front and back, or a lifted increase. It is read as knit front and back.',
    'Write "kfb" or "m1L".',
    'kfb',
    'm1L',
  ],
  'ask-ds': () => [
    'can mean the doubled stitch of a German turn, or a stitch over three stitches. It is read as one knit stitch.',
    'Write "k1" where the doubled stitch is worked as one, or explain it in the abbreviations.',
    'k1',
  ],
  'ask-k1b': () => [
    'can mean knit through the back, or knit in the row below. It is read as a twisted knit.',
    'Write "ew1" for the twisted knit.',
    'ew1',
  ],
}

export function ask(rule: Ambiguity, word: string, range: TextRange, times = 0): RelativeRemark {
  const [means, advice, ...words] = asked[rule](times)
  const fixes = words.map((text) => write(range, text, text === '' ? 'Leave it out' : undefined))
  return warning(rule, range, `"${excerpt(word)}" ${means}`, advice, fixes)
}

export const askMarker = (word: string, range: TextRange): RelativeRemark =>
  warning(
    'ask-marker',
    range,
    `"${excerpt(word)}" says no number of stitches. It is worked as far as the stitches after it allow.`,
    'Write how many stitches to work, or how many to leave at the end.',
  )

export const needsGauge = (word: string, range: TextRange): RelativeRemark =>
  warning(
    'needs-gauge',
    range,
    `"${excerpt(word, 60)}" is a length. How many rows that is depends on the gauge, so it is worked once.`,
    'Write the number of rows as well.',
  )

/**
 * A row that is worked as others are, or a repeat of others, and some are not above it: `missing`.
 * `name`: "Rnd 3"; null: the repeat.
 */
export function noRow(
  name: string | null,
  named: Named,
  missing: readonly number[],
  range: TextRange,
  kind: 'round' | 'row',
): RelativeRemark {
  if (named.kind !== 'numbers')
    return error(
      'no-row',
      range,
      name
        ? `${name} goes by the one above it, and there is none.`
        : 'There is nothing above this line to repeat.',
      'Write the stitches out.',
    )
  const lacking = listOfRows(kind, missing)
  const wanted = listOfRows(kind, named.numbers)
  const whole = lacking === wanted ? (missing.length === 1 ? 'it' : 'they') : wanted
  const cannot = name
    ? `${name} can't be worked like ${whole === 'they' ? 'them' : whole}`
    : `${whole} can't be repeated`
  return {
    ...error(
      'no-row',
      range,
      `${lacking} ${are(missing.length)} missing above this line, so ${cannot}.`,
      `Write ${lacking} above it, or correct the number.`,
    ),
    lacks: missing.map((number) => ({ from: number, to: number })),
  }
}

export const pegsSkipped = (name: string, said: number, next: number, range: TextRange) =>
  error(
    'peg-place',
    range,
    `${name} goes on at peg ${said + 1}, but peg ${next + 1} is next.`,
    'Say what is done on the pegs between, or correct the peg numbers.',
  )

export const turnPeg = (name: string, said: number, next: number, range: TextRange) =>
  warning(
    'turn-peg',
    range,
    `${name} turns at peg ${said + 1}, but its stitches lead to peg ${next + 1}.`,
    'Correct the peg number, or the stitches before the turn.',
  )

export const plainTurn = (name: string, range: TextRange) =>
  hint(
    'plain-turn',
    range,
    `${name} turns without a wrap or a German turn, which leaves a hole.`,
    'Write "w&t" or "turn, ds" if the turn is to be closed.',
  )

export const wrongSide = (name: string, range: TextRange) =>
  warning(
    'wrong-side',
    range,
    `"${excerpt(name)}" on the wrong side has no stitch that looks the same from the right side. It is read as it stands.`,
    'Write the row as its right side looks, or use another stitch.',
  )

/** "Work 5 rounds even", "as established", or in a pattern as set. */
export const untold = ({ range, set }: NonNullable<Body['workEven']>) =>
  warning(
    'as-set',
    range,
    set
      ? 'These words don’t say which stitches. The last row that keeps the stitch count is repeated: check it.'
      : 'These words don’t say which stitches. Knit stitches are knitted, purl stitches purled: check it.',
    'Write the row out, or name the row that is repeated.',
  )

export const noRows = (range: TextRange) =>
  error(
    'no-rows',
    range,
    'There are no rows in these words.',
    'Begin each row with its number, as in "Rnd 1: k2, p2".',
  )

export const notEnglish = (
  { unknown, words }: { readonly unknown: number; readonly words: number },
  range: TextRange,
) =>
  error(
    'not-english',
    range,
    `${unknown} of ${words} words are not known: this does not look like knitting instructions in English. No rows are made of it.`,
    'Write the words in English, in US or UK terms; other languages are not read.',
  )

export const sizeLists = (length: number, usual: number, range: TextRange) =>
  warning(
    'size-lists',
    range,
    `This list has ${length} sizes; the others have ${usual}.`,
    'Give a number for every size, in the same order everywhere.',
  )

export const askSize = (said: string, range: TextRange): RelativeRemark =>
  warning(
    'ask-size',
    range,
    `These words are only for "${excerpt(said)}", and no list says which size that is. They are read for all sizes.`,
    'Name the sizes in their order once, as in "Sizes S (M, L)".',
  )

export const statedPegsRemark = (said: number, pegs: number, range: TextRange) =>
  warning(
    'stated-pegs',
    range,
    `The words cast on ${said}; they are read for ${pegs}.`,
    `Read them for ${said} pegs, or change the number in the words.`,
  )

export const notRead = (words: string): RelativeRemark =>
  warning(
    'not-read',
    { from: 0, to: words.length },
    `"${excerpt(words, 60)}" does not say how its rows are worked, so it makes none.`,
    'Write one of them out, and how often it is worked.',
  )

export const askOften = (word: string, range: TextRange) =>
  warning(
    'ask-often',
    range,
    `"${excerpt(word, 60)}" says no number of times.`,
    'Write how often the rows are worked, or how many there are in all.',
  )
