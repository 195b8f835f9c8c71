import { excerpt } from '../../../pattern/excerpt'
import { readLimits } from '../limits'
import type { Stitch } from '../../../stitches/stitch'
import { nearest } from '../terms/near'
import type { RelativeRemark } from '../nodes'
import type { TextRange } from '../reading'
import { nearWords, type Meaning } from '../terms/spellings'
import { warning, write } from './remark'
import { termOf } from '../../../languages/languages'

/** "K2 TGO" and "k2tgo" look alike: only letters and figures count. */
export function unknownWord(word: string, range: TextRange): RelativeRemark {
  const near = nearest(word, nearWords())
  const counted = /^([a-z]+)(\d+)$/i.exec(word)
  return warning(
    'unknown-word',
    range,
    `"${excerpt(word)}" is not known and is left out.`,
    near.length > 0
      ? `Perhaps ${near.map((one) => `"${one}"`).join(' or ')} is meant.`
      : counted
        ? 'Explain the stitch in the abbreviations, or use another name for it.'
        : "Change it, or leave it if it isn't a stitch.",
    near.map((text) => write(range, text)),
  )
}

/** A stitch that the vocabulary lacks, and the one that is charted in its place. */
export const standsIn = (name: string, stitch: Stitch, range: TextRange): RelativeRemark =>
  warning(
    'no-stitch',
    range,
    `"${excerpt(name)}" cannot be charted; ${termOf(stitch, 'us').abbr} is used instead: it takes ${stitch.takes} and makes ${stitch.makes} too.`,
    `Write "${termOf(stitch, 'us').abbr}" if that will do, or explain the stitch in the notes of the pattern.`,
    [write(range, termOf(stitch, 'us').abbr)],
  )

/** Several loops made of one: `instead` is what is charted, which comes to as many. */
export const madeInOne = (
  said: string,
  made: number,
  instead: string,
  range: TextRange,
): RelativeRemark =>
  warning(
    'no-stitch',
    range,
    `"${excerpt(said)}" makes ${made} stitches of one, which cannot be charted; ${instead} is used instead: it makes as many.`,
    `Write "${instead}" if that will do, or explain it in the notes of the pattern.`,
    [write(range, instead)],
  )

export function askCross(
  said: string,
  { size, lean, three }: Extract<Meaning, { is: 'cross' }>,
  range: TextRange,
): RelativeRemark {
  const letter = lean === 'right' ? 'R' : 'L'
  const rest = size > 0 ? size : 4
  const pairs = Array.from(
    { length: rest - 1 },
    (_, index) => [rest - 1 - index, index + 1] as const,
  )
    .filter(([front, back]) => front <= 4 && back <= 4)
    .filter(([front, back]) => size === 0 || Math.abs(front - back) <= 2)
  return warning(
    three ? 'no-stitch' : 'ask-cross',
    range,
    three
      ? `"${excerpt(said)}" crosses three groups, and only crosses of two can be charted. Its ${size} stitches are knitted for now.`
      : size > 0
        ? `"${excerpt(said)}" crosses ${size} stitches and does not say how many of them go in front.`
        : `"${excerpt(said)}" does not say how many stitches cross.`,
    'Write it with both groups, front first, as in 2/1 LC, or explain it in the abbreviations.',
    pairs.map(([front, back]) => write(range, `${front}/${back} ${letter}${three ?? 'C'}`)),
  )
}

export const noStitch = (name: string, range: TextRange): RelativeRemark =>
  warning(
    'no-stitch',
    range,
    `"${excerpt(name)}" cannot be charted and is left out.`,
    'Use another stitch that takes and makes as many.',
  )

export const askMoss = (said: string, range: TextRange): RelativeRemark =>
  warning(
    'ask-moss',
    range,
    `"${excerpt(said)}" is seed stitch in UK terms, and in US terms often each row of it is worked twice; it is read as seed stitch.`,
    'Write "seed stitch" or "double moss stitch".',
    ['seed stitch', 'double moss stitch'].map((text) => write(range, text)),
  )

export const tooDeep = (range: TextRange): RelativeRemark =>
  warning(
    'too-long',
    range,
    `Brackets stand inside more than ${readLimits.depth} others here, and those are left out.`,
    `Write it with at most ${readLimits.depth} brackets inside each other.`,
  )

export const noStar = (mark: string, range: TextRange): RelativeRemark =>
  warning(
    'star-missing',
    range,
    `There is no ${mark} to repeat from, so everything before it is repeated.`,
    `Put ${mark} where the repeat begins.`,
  )

export const starOpen = (range: TextRange): RelativeRemark =>
  warning(
    'star-open',
    range,
    'Nothing is repeated from this asterisk.',
    'Say how often with "rep from * ...", or remove the asterisk.',
  )

export const bracketOpen = (range: TextRange): RelativeRemark =>
  warning(
    'bracket-open',
    range,
    'This bracket is not closed.',
    'Close it behind the last stitch that belongs to the group.',
  )

export const askDoubled = (said: string, range: TextRange): RelativeRemark =>
  warning(
    'ask-ds',
    range,
    `"${excerpt(said)}" can mean doubled stitches of German turns, or stitches over three stitches. They are read as knit stitches.`,
    'Write "knit" where doubled stitches are worked as one, or explain it in the abbreviations.',
  )
