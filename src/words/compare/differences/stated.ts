import type { Direction } from '../../../loom/direction'
import { knitNames } from '../../../languages/english/ways'
import { setLoom, setMaking } from '../../../pattern/edits/settings'
import { standardVocabulary } from '../../../stitches/vocabulary'
import type { Language } from '../../../languages/language'
import { statedDirection, statedKnit, statedPegs } from '../../read/terms/definitions'
import type { TextRange } from '../../read/reading'
import type { Draft, Rewrite } from './draft'
import type { Both } from './setting'
import { termOf } from '../../../languages/languages'
import { upperFirst } from '../../../languages/english/forms'

type Stated = Pick<Draft, 'rule' | 'range' | 'message' | 'advice' | 'edits' | 'rewrites'>

/**
 * What the words state for the whole piece, where the chart has it otherwise. Either side can be
 * put right: the sentence that states it, or the setting of the pattern.
 */
export function draftsStated(both: Both): Draft[] {
  const list = [knitStated(both), directionStated(both), pegsStated(both)]
  return list
    .filter((one) => one !== null)
    .map((one) => ({ ...one, row: null, rows: [], read: null, places: [], isRefused: false }))
}

function knitStated({ reading, work: { pattern }, language }: Both): Stated | null {
  const { knit } = reading.stated
  const { knit: charted } = pattern.making
  if (knit === undefined || knit === charted) return null
  const range = sentenceThat(reading.text, (said) => statedKnit(said) === knit)
  const abbr = termOf(standardVocabulary.withRole('knit'), reading.settings.terms).abbr
  return {
    rule: 'knit-differs',
    range,
    message: `In the words, knit means ${knitNames[knit]}; in the chart it means ${knitNames[charted]}.`,
    advice: 'Make both name the same plain knit.',
    rewrites: rewrites(reading.text, range, `Write that knit means ${knitNames[charted]}`, [
      (said) => withKnit(said, charted),
      (said) => withKnit(said, knitNames[charted]),
      () => language.knitMeans(abbr, charted),
    ]),
    edits: [{ label: `Let knit mean ${knitNames[knit]}`, edit: (p) => setMaking(p, { knit }) }],
  }
}

function directionStated({ reading, work: { pattern }, language }: Both): Stated | null {
  const { direction } = reading.stated
  const { loom } = pattern
  if (direction === undefined || direction === loom.direction) return null
  const range = sentenceThat(reading.text, (said) => statedDirection(said) === direction)
  const name = language.words.clockwise
  return {
    rule: 'direction-differs',
    range,
    message: `The words are worked ${name[direction]}, the chart ${name[loom.direction]}.`,
    advice: 'Make both go the same way: crosses worked the other way lean the other way.',
    rewrites: rewrites(reading.text, range, `Write ${name[loom.direction]}`, [
      (said) => withDirection(said, loom.direction, language),
    ]),
    edits: [{ label: `Work ${name[direction]}`, edit: (p) => setLoom(p, { direction }) }],
  }
}

function pegsStated({ reading, work: { pattern } }: Both): Stated | null {
  const { text, settings, stated } = reading
  const { pegs } = stated
  const { loom } = pattern
  if (pegs === undefined || pegs === loom.pegs) return null
  const range = statedPegs(text, settings.size)?.range ?? null
  return {
    rule: 'pegs-differ',
    range,
    message: `The words are for ${pegs} pegs, the chart for ${loom.pegs}.`,
    advice: 'Make both name the same number of pegs.',
    rewrites: rewrites(text, range, `Write ${loom.pegs}`, [
      (said) => withNumber(said, settings.size, loom.pegs),
    ]),
    edits: [{ label: `Fit the chart on ${pegs} pegs`, edit: (p) => setLoom(p, { pegs }) }],
  }
}

/** Ways to write a stretch of the text anew: the first that states what it should is taken. */
const rewrites =
  (
    text: string,
    range: TextRange | null,
    label: string,
    ways: readonly ((said: string) => string)[],
  ): (() => Rewrite[]) =>
  () =>
    range
      ? ways.map((way) => ({
          label,
          changes: () => [{ range, text: way(text.slice(range.from, range.to)) }],
        }))
      : []

/** The first sentence of a line that states it; null: it is told some other way. */
function sentenceThat(text: string, states: (said: string) => boolean): TextRange | null {
  for (const { 0: said, index } of text.matchAll(/[^\s.;][^\n.;]*(?:[.;](?!\s)[^\n.;]*)*[.;]?/g))
    if (states(said)) return { from: index, to: index + said.trimEnd().length }
  return null
}

const knitSaid = /\b(?:(an?)(\s+))?((?:e|u)[- ]?wrap(?:ped)?|flat|true|reversed)\b/i

/** "an e-wrap" becomes "a flat". */
const withKnit = (said: string, name: string): string =>
  said.replace(knitSaid, (_, article?: string, space?: string) =>
    article ? `${name.startsWith('e') ? 'an' : 'a'}${space ?? ' '}${name}` : name,
  )

const otherWay: ReadonlyMap<string, string> = new Map([
  ['right', 'left'],
  ['left', 'right'],
])

/** "clockwise: right to left" becomes "counterclockwise: left to right". */
function withDirection(said: string, direction: Direction, { words }: Language): string {
  const name = words.clockwise[direction]
  return said
    .replace(/\b(?:(?:counter|anti)[- ]?)?clockwise\b/i, (was) =>
      /^[A-Z]/.test(was) ? upperFirst(name) : name,
    )
    .replaceAll(
      /\b(right|left) to (right|left)\b/g,
      (_, from: string, to: string) => `${otherWay.get(from) ?? from} to ${otherWay.get(to) ?? to}`,
    )
}

/** Of the numbers in a text, the one of the size that is read; the last where it has fewer. */
function withNumber(said: string, size: number, number: number): string {
  const numbers = [...said.matchAll(/\d+/g)]
  const { 0: was, index } = numbers[Math.min(size, numbers.length - 1)] ?? { 0: '', index: 0 }
  return `${said.slice(0, index)}${number}${said.slice(index + was.length)}`
}
