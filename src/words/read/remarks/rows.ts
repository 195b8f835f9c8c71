import { excerpt } from '../../../pattern/excerpt'
import { figuresOf, readLimits } from '../limits'
import { nearestWidths, repeatLeaves } from '../../../pattern/repeatFit'
import type { Run } from '../../../pattern/pattern'
import type { Stretch, Trouble } from '../loops/stretch'
import type { Ambiguity, Body, Named, RelativeRemark, Said } from '../nodes'
import type { TextFix, TextRange } from '../reading'
import { listOfRows } from '../rows/wordsOfRows'

const stitches = (count: number): string => `${count} ${count === 1 ? 'stitch' : 'stitches'}`
const sts = (count: number): string => `${count} ${count === 1 ? 'st' : 'sts'}`
const are = (count: number): string => (count === 1 ? 'is' : 'are')

type Made = Omit<RelativeRemark, 'fixes'> & { readonly fixes?: readonly TextFix[] }
const made = (remark: Made): RelativeRemark => ({ fixes: [], ...remark })

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
  { takes }: Pick<Stretch, 'takes'>,
  range: TextRange,
): RelativeRemark {
  const base = { rule: 'row-count', severity: 'error', range } as const
  if (trouble.kind === 'repeat') {
    const { block, copies, over } = trouble
    const all = copies * block + Math.max(0, over)
    return made({
      ...base,
      message:
        over > 0
          ? copies === 0
            ? `${name}: the repeat is ${sts(block)}, and only ${all} ${are(all)} there for it.`
            : `${name}: ${repeatLeaves(block, all, copies, over)}`
          : `${name}: the stitches beside the repeat need ${sts(-over)} more than there are, so none are left for the repeat.`,
      advice:
        over > 0
          ? repeatAdvice(block, all, over)
          : 'Write fewer stitches before or after the repeat, or use more pegs.',
    })
  }
  if (trouble.kind === 'join')
    return made({
      ...base,
      rule: 'over-join',
      message: `${name} goes past the end of the round: ${sts(trouble.loops)} before it and ${trouble.over} beyond it. In a chart a row ends there.`,
      advice:
        'Start the round elsewhere, so that no row that turns passes between the last peg and peg 1.',
    })
  const by = Math.abs(takes - trouble.loops)
  const over = trouble.kind === 'over'
  return made({
    ...base,
    message: over
      ? `${name} needs ${stitches(takes)}, the loom holds ${trouble.loops}: ${by} too many.`
      : `${name} works ${takes} of ${stitches(trouble.loops)}: ${by} ${are(by)} left over.`,
    advice: over
      ? `Remove ${stitches(by)}, or check the lines above.`
      : `Add ${stitches(by)}, or check the lines above.`,
  })
}

/** One row changes the number of loops, and so others do not come out: `others` after the first. */
export const causeOfMiscounts = (
  name: string,
  before: number,
  after: number,
  first: string,
  others: number,
): Omit<RelativeRemark, 'range'> => ({
  rule: 'row-count',
  severity: 'error',
  message: `${name} turns ${stitches(before)} into ${after}, so the count is off ${others === 1 ? 'twice' : `${others + 1} times`} after it. The first: ${first}`,
  advice: `Check ${name}: should it leave ${before}? If not, change what follows it.`,
  fixes: [],
})

/** Numbers are left out between two heads. `named`: "Rnd 2", "Rnds 2-4". */
export const labelGap = (named: string, lacking: Run, range: TextRange): RelativeRemark =>
  made({
    lacks: [lacking],
    rule: 'label-gap',
    severity: 'warning',
    range,
    message: `${named} ${lacking.from === lacking.to ? 'is' : 'are'} missing.`,
    advice: 'Write what is worked there, or correct the numbers.',
  })

/** The words that are known do not fill the row, and those that are not known may mean anything. */
export const unreadCount = (
  name: string,
  { takes, unread }: Pick<Stretch, 'takes' | 'unread'>,
  range: TextRange,
): RelativeRemark =>
  made({
    rule: 'row-count',
    severity: 'error',
    range,
    message: `${name} has words that are not known. Without them it works ${takes} of ${stitches(takes + unread)}: ${unread} ${are(unread)} left over.`,
    advice: 'Write these words as stitches, or explain them in the abbreviations.',
  })

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
  return made({
    rule: 'stated-count',
    severity: 'error',
    range: said.range,
    message: `${name} says ${says}; its stitches come to ${is}.`,
    advice: 'Correct the number or the stitches.',
    fixes:
      said.kind === 'total'
        ? [
            {
              label: `Write ${computed} sts`,
              changes: [{ range: said.range, text: `${computed} sts` }],
            },
          ]
        : [],
  })
}

/** `unit`: "rnds" or "rows". */
export const statedRows = (said: Said, rows: number, unit: string): RelativeRemark =>
  made({
    rule: 'stated-rows',
    severity: 'error',
    range: said.range,
    message: `The words say ${said.count} ${unit}, but these repeats make ${rows}.`,
    advice: `Correct the number, or how often the ${unit} are repeated.`,
  })

/** A row that is longer than any: counted where it can be. */
export function tooManyStitches(
  name: string,
  { needs, loops: there }: Pick<Stretch, 'needs' | 'loops'>,
  range: TextRange,
): RelativeRemark {
  const most = `${figuresOf(readLimits.stitches)} stitches`
  if (needs === null || needs <= there) return tooLong(name, most, range)
  return made({
    rule: 'row-count',
    severity: 'error',
    range,
    message: `${name} needs ${figuresOf(needs)} stitches, the loom holds ${there}. A row has at most ${most}.`,
    advice: 'Check the numbers in it.',
  })
}

/** A line names more rows than one line can. */
export const tooManyRows = (range: TextRange): RelativeRemark =>
  made({
    rule: 'too-long',
    severity: 'error',
    range,
    message: `This line names more than ${figuresOf(readLimits.rowsInLine)} rows; the rest is left out.`,
    advice: 'Check the numbers in it.',
  })

/** A number beyond all that are read. */
export const tooLarge = (said: string, range: TextRange): RelativeRemark =>
  made({
    rule: 'too-large',
    severity: 'error',
    range,
    message: `${excerpt(said, 12)} is too large: numbers go up to ${figuresOf(readLimits.number)}.`,
    advice: 'Check whether a digit was typed twice.',
  })

export const tooLong = (name: string, most: string, range: TextRange): RelativeRemark =>
  made({
    rule: 'too-long',
    severity: 'error',
    range,
    message: `${name} goes on for more than ${most}; the rest is left out.`,
    advice: 'Check the numbers in it.',
  })

const asked: Readonly<Record<Ambiguity, (word: string) => { message: string; advice: string }>> = {
  'ask-times': (word) => ({
    message: `"${excerpt(word)}" can mean so many times more or so many times in all, and the stitch counts do not tell. It is read as more.`,
    advice: 'Write "times more" or "times in all".',
  }),
  'ask-yfwd': (word) => ({
    message: `"${excerpt(word)}" can mean a yarn over, or just the yarn to the front. It is read as a yarn over.`,
    advice: 'Write "yo" for a yarn over, or leave it out.',
  }),
  'ask-inc': (word) => ({
    message: `"${excerpt(word)}" can mean knit front and back, or a lifted increase. It is read as knit front and back.`,
    advice: 'Write "kfb" or "m1L".',
  }),
  'ask-ds': (word) => ({
    message: `"${excerpt(word)}" can mean the doubled stitch of a German turn, or a stitch over three stitches. It is read as one knit stitch.`,
    advice:
      'Write "k1" where the doubled stitch is worked as one, or explain it in the abbreviations.',
  }),
  'ask-k1b': (word) => ({
    message: `"${excerpt(word)}" can mean knit through the back, or knit in the row below. It is read as a twisted knit.`,
    advice: 'Write "ew1" for the twisted knit.',
  }),
}

const replacements: Readonly<Record<Ambiguity, (times: number) => readonly string[]>> = {
  'ask-times': (times) => [`${times} times more`, `${times} times in all`],
  'ask-yfwd': () => ['yo', ''],
  'ask-inc': () => ['kfb', 'm1L'],
  'ask-ds': () => ['k1'],
  'ask-k1b': () => ['ew1'],
}

export const ask = (rule: Ambiguity, word: string, range: TextRange, times = 0): RelativeRemark =>
  made({
    rule,
    severity: 'warning',
    range,
    ...asked[rule](word),
    fixes: replacements[rule](times).map((text) => ({
      label: text === '' ? 'Leave it out' : `Write "${text}"`,
      changes: [{ range, text }],
    })),
  })

export const askMarker = (word: string, range: TextRange): RelativeRemark =>
  made({
    rule: 'ask-marker',
    severity: 'warning',
    range,
    message: `"${excerpt(word)}" says no number of stitches. It is worked as far as the stitches after it allow.`,
    advice: 'Write how many stitches to work, or how many to leave at the end.',
  })

export const needsGauge = (word: string, range: TextRange): RelativeRemark =>
  made({
    rule: 'needs-gauge',
    severity: 'warning',
    range,
    message: `"${excerpt(word, 60)}" is a length. How many rows that is depends on the gauge, so it is worked once.`,
    advice: 'Write the number of rows as well.',
  })

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
  const base = { rule: 'no-row', severity: 'error', range } as const
  if (named.kind !== 'numbers')
    return made({
      ...base,
      message: name
        ? `${name} goes by the one above it, and there is none.`
        : 'There is nothing above this line to repeat.',
      advice: 'Write the stitches out.',
    })
  const lacking = listOfRows(kind, missing)
  const wanted = listOfRows(kind, named.numbers)
  const whole = lacking === wanted ? (missing.length === 1 ? 'it' : 'they') : wanted
  const cannot = name
    ? `${name} can't be worked like ${whole === 'they' ? 'them' : whole}`
    : `${whole} can't be repeated`
  return made({
    ...base,
    lacks: missing.map((number) => ({ from: number, to: number })),
    message: `${lacking} ${are(missing.length)} missing above this line, so ${cannot}.`,
    advice: `Write ${lacking} above it, or correct the number.`,
  })
}

export const pegsSkipped = (name: string, said: number, next: number, range: TextRange) =>
  made({
    rule: 'peg-place',
    severity: 'error',
    range,
    message: `${name} goes on at peg ${said + 1}, but peg ${next + 1} is next.`,
    advice: 'Say what is done on the pegs between, or correct the peg numbers.',
  })

export const turnPeg = (name: string, said: number, next: number, range: TextRange) =>
  made({
    rule: 'turn-peg',
    severity: 'warning',
    range,
    message: `${name} turns at peg ${said + 1}, but its stitches lead to peg ${next + 1}.`,
    advice: 'Correct the peg number, or the stitches before the turn.',
  })

export const plainTurn = (name: string, range: TextRange) =>
  made({
    rule: 'plain-turn',
    severity: 'hint',
    range,
    message: `${name} turns without a wrap or a German turn, which leaves a hole.`,
    advice: 'Write "w&t" or "turn, ds" if the turn is to be closed.',
  })

export const wrongSide = (name: string, range: TextRange) =>
  made({
    rule: 'wrong-side',
    severity: 'warning',
    range,
    message: `"${excerpt(name)}" on the wrong side has no stitch that looks the same from the right side. It is read as it stands.`,
    advice: 'Write the row as its right side looks, or use another stitch.',
  })

/** "Work 5 rounds even", or in a pattern as set. */
export const untold = ({ range, set }: NonNullable<Body['workEven']>) =>
  made({
    rule: 'as-set',
    severity: 'warning',
    range,
    message: set
      ? 'These words don’t say which stitches. The last row that keeps the stitch count is repeated: check it.'
      : 'These words don’t say which stitches. Knit stitches are knitted, purl stitches purled: check it.',
    advice: 'Write the row out, or name the row that is repeated.',
  })

export const asEstablished = (range: TextRange) =>
  made({
    rule: 'as-set',
    severity: 'warning',
    range,
    message:
      'These words don’t say which stitches. Knit stitches are knitted, purl stitches purled: check it.',
    advice: 'Write the row out, or name the row that is repeated.',
  })

export const noRows = (range: TextRange) =>
  made({
    rule: 'no-rows',
    severity: 'error',
    range,
    message: 'There are no rows in these words.',
    advice: 'Begin each row with its number, as in "Rnd 1: k2, p2".',
  })

export const notEnglish = (
  { unknown, words }: { readonly unknown: number; readonly words: number },
  range: TextRange,
) =>
  made({
    rule: 'not-english',
    severity: 'error',
    range,
    message: `${unknown} of ${words} words are not known: this does not look like knitting instructions in English. No rows are made of it.`,
    advice: 'Write the words in English, in US or UK terms; other languages are not read.',
  })

export const sizeLists = (length: number, usual: number, range: TextRange) =>
  made({
    rule: 'size-lists',
    severity: 'warning',
    range,
    message: `This list has ${length} sizes; the others have ${usual}.`,
    advice: 'Give a number for every size, in the same order everywhere.',
  })

export const askSize = (said: string, range: TextRange): RelativeRemark =>
  made({
    rule: 'ask-size',
    severity: 'warning',
    range,
    message: `These words are only for "${excerpt(said)}", and no list says which size that is. They are read for all sizes.`,
    advice: 'Name the sizes in their order once, as in "Sizes S (M, L)".',
  })

export const statedPegsRemark = (said: number, pegs: number, range: TextRange) =>
  made({
    rule: 'stated-pegs',
    severity: 'warning',
    range,
    message: `The words cast on ${said}; they are read for ${pegs}.`,
    advice: `Read them for ${said} pegs, or change the number in the words.`,
  })

export const notRead = (words: string): RelativeRemark =>
  made({
    rule: 'not-read',
    severity: 'warning',
    range: { from: 0, to: words.length },
    message: `"${excerpt(words, 60)}" does not say how its rows are worked, so it makes none.`,
    advice: 'Write one of them out, and how often it is worked.',
  })

export const askOften = (word: string, range: TextRange) =>
  made({
    rule: 'ask-often',
    severity: 'warning',
    range,
    message: `"${excerpt(word, 60)}" says no number of times.`,
    advice: 'Write how often the rows are worked, or how many there are in all.',
  })
