/** Instructions, spoilt: the texts of all cases, of printed books, and what the writer writes. */
import { workPattern } from '../../src/pattern/work'
import { workPiece } from '../../src/pattern/workPiece'
import { starterCharts } from '../../src/shelf/seeds'
import { readSettingsOf, type ReadSettings } from '../../src/words/read/reading'
import { pieceText } from '../../src/words/piece/text'
import { plainText } from '../../src/words/text'
import { readExamples } from '../published/examples'
import { readCases, usual } from '../words/read/cases'
import { wordsOf } from '../words/read/wording'
import type { Chance } from './chance'
import { nastyNumbers, nastyPhrases, nastyWords } from './nasty'

export interface TextCase {
  readonly text: string
  readonly settings: ReadSettings
}

function sound(): TextCase[] {
  const cases = readCases().map(({ lines, settings }) => ({
    text: lines.map(({ text }) => text).join('\n'),
    settings,
  }))
  const address = new URL('../published/data/worked-examples.json', import.meta.url)
  const printed = readExamples(address).map((example): TextCase => {
    const { text, pegs, flat } = wordsOf(example)
    return { text, settings: { ...usual, pegs, shape: flat ? 'bar' : 'ring' } }
  })
  const written = starterCharts.flatMap(({ pattern }) => {
    const settings = readSettingsOf(pattern())
    return [plainText(workPattern(pattern())), pieceText(workPiece(pattern()))].map((text) => ({
      text,
      settings,
    }))
  })
  return [...cases, ...printed, ...written]
}

let known: readonly TextCase[] | undefined
export const soundTexts = (): readonly TextCase[] => (known ??= sound())

/** Where a word or a number ends, so that most changes keep words whole. */
const seams = (text: string): number[] =>
  [...text.matchAll(/\d+|[a-z]+|\s+|[^a-z\d\s]/gi)].map(({ index }) => index)

const longest = 4000

/** One change; all of it comes from the chance. */
function change(text: string, chance: Chance): string {
  const places = seams(text)
  const at = chance.of(places.length > 0 ? places : [0])
  const to = chance.percent(70)
    ? (places.find((place) => place > at) ?? text.length)
    : Math.min(text.length, at + chance.below(60))
  const put = (piece: string): string => text.slice(0, at) + piece + text.slice(to)
  switch (chance.below(9)) {
    case 0:
      return put('')
    case 1:
      return put(chance.of(nastyNumbers))
    case 2:
      return put(chance.of(nastyWords))
    case 3:
      return put(chance.of(nastyPhrases))
    case 4:
      return put(text.slice(at, to).repeat(2 + chance.below(5)))
    case 5: {
      const from = chance.of(places.length > 0 ? places : [0])
      return put(text.slice(from, from + 1 + chance.below(120)))
    }
    case 6: {
      const numbers = [...text.matchAll(/\d+/g)]
      if (numbers.length === 0) return put(chance.of(nastyNumbers))
      const { 0: was, index } = chance.of(numbers)
      return text.slice(0, index) + chance.of(nastyNumbers) + text.slice(index + was.length)
    }
    case 7: {
      const other = chance.of(soundTexts()).text
      const line = chance.of(other.split('\n'))
      return `${text.slice(0, at)}\n${line}\n${text.slice(at)}`
    }
    default:
      return put(chance.of([' ', '9', ', ', '(', '*', '-', 'k1 ']).repeat(1 + chance.below(800)))
  }
}

const looms = [1, 2, 3, 8, 24, 31, 60, 120, 400] as const

/** A sound text with one to six changes, read for its own loom or for another. */
export function spoiltText(chance: Chance): TextCase {
  const { text, settings } = chance.of(soundTexts())
  let now = text
  for (let n = 1 + chance.below(6); n > 0; n--) now = change(now, chance).slice(0, longest)
  if (chance.percent(70)) return { text: now, settings }
  return {
    text: now,
    settings: {
      ...settings,
      pegs: chance.of(looms),
      shape: chance.of(['ring', 'bar']),
      terms: chance.of(['us', 'uk']),
      size: chance.below(4),
      needles: chance.percent(20),
    },
  }
}
