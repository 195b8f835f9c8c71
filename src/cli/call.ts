import { parseArgs, type ParseArgsConfig } from 'node:util'
import { directions, type Direction } from '../loom/direction'
import { excerpt, inQuotes } from '../pattern/excerpt'
import { limits, type Pattern } from '../pattern/pattern'
import { findChart, chartsInOrder, onChart } from '../pattern/charts'
import { sizesIn } from '../words/read/lines/sizesIn'
import { termSets, type Terms } from '../languages/terms'

/** A call, or a file it names, that cannot be used; the message is one line for the user. */
export class Unusable extends Error {}

export const optionTable = {
  pegs: { type: 'string' },
  flat: { type: 'boolean' },
  direction: { type: 'string' },
  size: { type: 'string' },
  needles: { type: 'boolean' },
  terms: { type: 'string' },
  json: { type: 'boolean' },
  words: { type: 'string' },
  chart: { type: 'string' },
  'from-charts': { type: 'boolean' },
  as: { type: 'string' },
  output: { type: 'string', short: 'o' },
  help: { type: 'boolean', short: 'h' },
} as const satisfies NonNullable<ParseArgsConfig['options']>

export type OptionName = keyof typeof optionTable

/** What was asked for, as it was typed. */
export interface Call {
  readonly files: readonly string[]
  readonly values: {
    readonly [K in OptionName]?: (typeof optionTable)[K]['type'] extends 'boolean'
      ? boolean
      : string
  }
}

/** Read the arguments of a command that knows these options. */
export function parseCall(
  command: string,
  args: readonly string[],
  names: readonly OptionName[],
): Call {
  let parsed
  try {
    parsed = parseArgs({ args: joined(args), options: optionTable, allowPositionals: true })
  } catch (error) {
    throw new Unusable(`${firstSentence(error)} See --help.`)
  }
  const { values, positionals } = parsed
  for (const name of Object.keys(values) as OptionName[])
    if (name !== 'help' && !names.includes(name))
      throw new Unusable(`${command} has no option --${name}. See --help.`)
  return { files: positionals, values }
}

/** A number below nought is the value of the option before it, and no option: "--pegs -4". */
function joined(args: readonly string[]): string[] {
  const all: string[] = []
  for (const arg of args) {
    const before = all.at(-1) ?? ''
    if (/^-\d/.test(arg) && /^--[a-z-]+$/.test(before)) all[all.length - 1] = `${before}=${arg}`
    else all.push(arg)
  }
  return all
}

/** Node's own messages go on with hints for programmers. */
function firstSentence(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error)
  const line = message.replaceAll(/\s+/g, ' ')
  return `${excerpt(line.split('. ')[0]?.replace(/\.$/, '') ?? line, 120)}.`
}

const oneOf = <T extends string>(name: string, value: string, words: readonly T[]): T => {
  const found = words.find((word) => word === value)
  if (found) return found
  throw new Unusable(`--${name} must be ${words.join(' or ')}; it is ${inQuotes(value)}.`)
}

function wholeNumber(name: string, value: string, least: number, most: number): number {
  const number = /^\d{1,9}$/.test(value) ? Number(value) : NaN
  if (number >= least && number <= most) return number
  throw new Unusable(
    `--${name} must be a whole number from ${least} to ${most}; it is ${inQuotes(value)}.`,
  )
}

export const pegsOf = ({ values: { pegs } }: Call): number | undefined =>
  pegs === undefined ? undefined : wholeNumber('pegs', pegs, limits.pegs.least, limits.pegs.most)

export const directionOf = ({ values: { direction } }: Call): Direction | undefined =>
  direction === undefined ? undefined : oneOf('direction', direction, directions)

export const termsOf = ({ values: { terms } }: Call): Terms | undefined =>
  terms === undefined ? undefined : oneOf('terms', terms, termSets)

/** Options that mean nothing on the loom that is named would be passed over in silence. */
export function agreeWithShape({ values }: Call): void {
  if (values.flat && values.direction !== undefined)
    throw new Unusable(
      '--direction is for a round loom: on a rake each row turns back. Leave out --direction or --flat.',
    )
  if (values.needles && !values.flat)
    throw new Unusable(
      '--needles is for flat words: in the round there are no wrong-side rows. Add --flat, or leave --needles out.',
    )
}

/** Words in several sizes must have the one that is asked for. */
export function agreeWithSizes({ values: { size } }: Call, text: string): void {
  if (size === undefined) return
  const sizes = sizesIn(text)
  if (Number(size) > sizes)
    throw new Unusable(
      `These words have ${sizes === 1 ? 'one size' : `${sizes} sizes`}; --size says ${size}. Say --size 1${sizes === 1 ? ', or leave it out' : ` to ${sizes}`}.`,
    )
}

/** Sizes count from 1 for people, from 0 here. */
export const sizeOf = ({ values: { size } }: Call): number =>
  size === undefined ? 0 : wholeNumber('size', size, limits.sizes.least, limits.sizes.most) - 1

export const drawings = ['rows', 'ring', 'side'] as const
export type Drawing = (typeof drawings)[number]

export const drawnAsOf = ({ values }: Call): Drawing => {
  if (values.as === undefined) throw new Unusable('draw needs --as rows, --as ring or --as side.')
  return oneOf('as', values.as, drawings)
}

/** The pattern with the chart that is asked for to be read; as it is when none is. */
export function atChart(pattern: Pattern, { values: { chart } }: Call): Pattern {
  if (chart === undefined) return pattern
  if (findChart(pattern, chart)) return onChart(pattern, chart)
  const names = chartsInOrder(pattern).map(({ name }) => inQuotes(name))
  throw new Unusable(
    `There is no chart ${inQuotes(chart)}; ${names.length === 1 ? 'there is' : 'there are'} ${names.join(', ')}.`,
  )
}

/** The one file a command works on. */
export function onlyFile(command: string, { files }: Call): string {
  const [file] = files
  if (file !== undefined && files.length === 1) return file
  throw new Unusable(`${command} takes one file; ${files.length} are named. See --help.`)
}
