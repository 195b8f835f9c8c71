import { figuresOf, readLimits } from '../limits'
import type { Stretch, Trouble } from '../stretch'
import type { Ambiguity, Named, RelativeRemark, Said } from '../nodes'
import type { TextFix, TextRange } from '../reading'

const loops = (count: number): string => `${count} ${count === 1 ? 'loop' : 'loops'}`
const are = (count: number): string => (count === 1 ? 'is' : 'are')

type Made = Omit<RelativeRemark, 'fixes'> & { readonly fixes?: readonly TextFix[] }
const made = (remark: Made): RelativeRemark => ({ fixes: [], ...remark })

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
          ? `${name}: the repeat takes ${block} of ${loops(all)}; ${over} ${are(over)} left over after ${copies} ${copies === 1 ? 'repeat' : 'repeats'}.`
          : `${name}: the other stitches take ${loops(-over)} too many; none are left for the repeat of ${block}.`,
      advice:
        over > 0
          ? `Use ${over} fewer or ${block - over} more loops, or change the repeat or the stitches before and after it.`
          : 'Take stitches away before or after the repeat, or work it on more loops.',
    })
  }
  if (trouble.kind === 'join')
    return made({
      ...base,
      rule: 'over-join',
      message: `${name} goes over the join of the round: up to the join it takes ${loops(trouble.loops)}, beyond it ${trouble.over} more. A row of a chart ends at the join.`,
      advice:
        'Start the round elsewhere, so that no row that turns passes between the last peg and peg 1.',
    })
  const by = Math.abs(takes - trouble.loops)
  const over = trouble.kind === 'over'
  return made({
    ...base,
    message: `${name} takes ${loops(takes)}; there ${are(trouble.loops)} ${trouble.loops}. ${
      over ? `That is ${by} too many.` : `${by} ${are(by)} left over.`
    }`,
    advice: over
      ? `Take ${by} away from the row, or see whether an earlier row should leave more.`
      : `Add stitches for ${by}, or see whether an earlier row should leave fewer.`,
  })
}

/** One row changes the number of loops, and so others do not come out: `others` after the first. */
export const causeOfMiscounts = (
  label: string,
  before: number,
  after: number,
  first: string,
  others: number,
): Omit<RelativeRemark, 'range'> => ({
  rule: 'row-count',
  severity: 'error',
  message: `Row ${label} leaves ${loops(after)}; there ${before === 1 ? 'was' : 'were'} ${before} before it. With them the rows after it do not come out: ${first} And so in ${others} more ${others === 1 ? 'row' : 'rows'} after it.`,
  advice: `See whether row ${label} should leave ${before}; else change the rows after it.`,
  fixes: [],
})

/** A number is left out between two heads. */
export const labelGap = (
  name: string,
  first: number,
  last: number,
  range: TextRange,
): RelativeRemark =>
  made({
    rule: 'label-gap',
    severity: 'warning',
    range,
    message: `${name} is told after number ${first - 1}: ${first === last ? `number ${first} is` : `numbers ${first} to ${last} are`} not told.`,
    advice: 'Tell what is worked there, or number the rows on.',
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
    message: `${name} has words that are not known; the others take ${takes} of ${loops(takes + unread)}. ${unread} ${are(unread)} left over.`,
    advice: 'Write the words that are not known as stitches, or explain them in the abbreviations.',
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
      ? `${Math.abs(said.count)} ${said.count < 0 ? 'fewer' : 'more'}`
      : `${said.count}`
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
    message: `${name}: the words say ${says} stitches after it; its stitches leave ${is}.`,
    advice: 'Correct the number, or the stitches of the row.',
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

export const statedRows = (said: Said, rows: number): RelativeRemark =>
  made({
    rule: 'stated-rows',
    severity: 'error',
    range: said.range,
    message: `The words say ${said.count} rows in all; repeated so often there are ${rows}.`,
    advice: 'Correct the number of rows, or how often they are repeated.',
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
    advice: 'See whether a number in it is right.',
  })
}

/** A line names more rows than one line can. */
export const tooManyRows = (range: TextRange): RelativeRemark =>
  made({
    rule: 'too-long',
    severity: 'error',
    range,
    message: `This line names more than ${figuresOf(readLimits.rowsInLine)} rows; the rest is left out.`,
    advice: 'See whether a number in it is right.',
  })

/** A number beyond all that are read. */
export const tooLarge = (said: string, range: TextRange): RelativeRemark =>
  made({
    rule: 'too-large',
    severity: 'error',
    range,
    message: `${said.slice(0, 12)}${said.length > 12 ? '...' : ''} is too large: numbers go up to ${figuresOf(readLimits.number)}.`,
    advice: 'See whether a figure was typed twice.',
  })

export const tooLong = (name: string, most: string, range: TextRange): RelativeRemark =>
  made({
    rule: 'too-long',
    severity: 'error',
    range,
    message: `${name} goes on for more than ${most}; the rest is left out.`,
    advice: 'See whether a number in it is right.',
  })

const asked: Readonly<Record<Ambiguity, (word: string) => { message: string; advice: string }>> = {
  'ask-times': (word) => ({
    message: `"${word}" can mean so many times more, or so many times in all, and the counts do not settle it; it is taken as more.`,
    advice: 'Write "times more" or "times in all".',
  }),
  'ask-yfwd': (word) => ({
    message: `"${word}" can mean a yarn over, or just the yarn to the front; it is taken as a yarn over.`,
    advice: 'Write "yo" for a yarn over, or leave it out.',
  }),
  'ask-inc': (word) => ({
    message: `"${word}" can mean knit front and back, or a lifted increase; it is taken as the first.`,
    advice: 'Write "kfb" or "m1L".',
  }),
  'ask-ds': (word) => ({
    message: `"${word}" can mean the doubled stitch of a German turn, or a stitch over three loops; it is taken as one knit stitch.`,
    advice:
      'Write "k1" where the doubled stitch is worked as one, or explain it in the abbreviations.',
  }),
  'ask-k1b': (word) => ({
    message: `"${word}" can mean knit through the back, or knit in the row below; it is taken as a twisted knit.`,
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
    message: `"${word}" says no number of stitches; it is taken as far as the stitches after it leave.`,
    advice: 'Write how many stitches to work, or how many to leave at the end.',
  })

export const needsGauge = (word: string, range: TextRange): RelativeRemark =>
  made({
    rule: 'needs-gauge',
    severity: 'warning',
    range,
    message: `"${word}" is a length; how many rows that is depends on the gauge. It is worked once.`,
    advice: 'Write the number of rows as well.',
  })

/** "rows 3-4", "an earlier row" */
function wantedRows(named: Named): string {
  if (named.kind !== 'numbers') return 'earlier rows'
  const [first = 0] = named.numbers
  const last = named.numbers.at(-1) ?? first
  return first === last ? `row ${first}` : `rows ${first} to ${last}`
}

export const noRow = (name: string, named: Named, range: TextRange): RelativeRemark =>
  made({
    rule: 'no-row',
    severity: 'error',
    range,
    message: `${name} refers to ${wantedRows(named)}; no such row is told before it.`,
    advice: 'Refer to rows that stand earlier, or write the row out.',
  })

export const pegsSkipped = (name: string, said: number, next: number, range: TextRange) =>
  made({
    rule: 'peg-place',
    severity: 'error',
    range,
    message: `${name}: the words go on at peg ${said + 1}; after what was worked before, peg ${next + 1} is next.`,
    advice: 'Say what is done on the pegs between, or correct the peg numbers.',
  })

export const turnPeg = (name: string, said: number, next: number, range: TextRange) =>
  made({
    rule: 'turn-peg',
    severity: 'warning',
    range,
    message: `${name}: the words turn at peg ${said + 1}; after its stitches that is peg ${next + 1}.`,
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
    message: `"${name}" on the wrong side has no stitch that looks the same from the right side; it is taken as it stands.`,
    advice: 'Write the row as its right side looks, or use another stitch.',
  })

export const asSet = (range: TextRange) =>
  made({
    rule: 'as-set',
    severity: 'warning',
    range,
    message:
      'The words go on as before and do not say how; the last row that keeps the count is worked again.',
    advice: 'Write the row out, or name the row that is repeated.',
  })

export const asEstablished = (range: TextRange) =>
  made({
    rule: 'as-set',
    severity: 'warning',
    range,
    message:
      'The words go on as established and do not say how; each loop is worked as it looks, knit or purl.',
    advice: 'Write the row out, or name the row that is repeated.',
  })

export const noRows = (range: TextRange) =>
  made({
    rule: 'no-rows',
    severity: 'error',
    range,
    message: 'These words tell no row.',
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
    message: `Of ${words} words ${unknown} are not known: this is not English, or it is no knitting instructions. No row is made of it.`,
    advice: 'Put the words into English, in US or UK terms; other languages are not read.',
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
    message: `These words are only for "${said.trim().slice(0, 40)}", and it is not said which of the sizes that is; they are read for all.`,
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
    message: `"${words.trim().slice(0, 40)}" tells rows, but not how they are worked; it makes none.`,
    advice: 'Write out one of the rows, and how often it is worked.',
  })

export const askOften = (word: string, range: TextRange) =>
  made({
    rule: 'ask-often',
    severity: 'warning',
    range,
    message: `"${word}" says no number of times.`,
    advice: 'Write how often the rows are worked, or how many there are in all.',
  })
