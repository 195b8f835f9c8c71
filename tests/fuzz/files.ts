/** Pattern files, spoilt: the starters with numbers, texts and parts that nobody would write. */
import { writeFile } from '../../src/shelf/format'
import { starterCharts } from '../../src/shelf/seeds'
import type { Chance } from './chance'
import { nastyNumbers, nastyPhrases, nastyWords } from './nasty'
import { spoiltText } from './texts'

type Json = null | boolean | number | string | Json[] | { [key: string]: Json }

let known: readonly string[] | undefined
const soundFiles = (): readonly string[] =>
  (known ??= starterCharts.map(({ pattern }) => writeFile(pattern())))

interface Spot {
  readonly holder: Json[] | { [key: string]: Json }
  readonly key: string
}

/** Every place of a file that holds something. */
function spotsIn(value: Json, found: Spot[] = []): Spot[] {
  if (typeof value !== 'object' || value === null) return found
  for (const [key, inside] of Object.entries(value)) {
    found.push({ holder: value, key })
    spotsIn(inside, found)
  }
  return found
}

const get = ({ holder, key }: Spot): Json =>
  (Array.isArray(holder) ? holder[Number(key)] : holder[key]) ?? null

function put({ holder, key }: Spot, value: Json): void {
  if (Array.isArray(holder)) holder[Number(key)] = value
  else
    Object.defineProperty(holder, key, {
      value,
      enumerable: true,
      configurable: true,
      writable: true,
    })
}

const extremes: readonly number[] = [
  0, -1, 0.5, 1, 2, 3, 4, 5, 7, 12, 24, 40, 48, 50, 99, 100, 399, 400, 401, 600, 601, 1e6, 1e308,
  5e-324, 1e-9, -0, 0.1, 9007199254740992,
]

/** Most numbers become others that could stand there, so that most files are taken. */
function otherNumber(was: number, chance: Chance): number {
  if (chance.percent(50)) return Math.max(1, was + chance.of([-2, -1, 1, 2, 5, 10]))
  return chance.of(extremes)
}

const stitches = [
  'k',
  'p',
  'k2tog',
  'ssk',
  'yo',
  'sl',
  'slf',
  'm1l',
  'none',
  'mb',
  '2/2 LC',
  'tuck',
]

function otherText(was: string, chance: Chance): string {
  switch (chance.below(6)) {
    case 0:
      return was + chance.of(nastyWords)
    case 1:
      return chance.of(nastyWords)
    case 2:
      return chance.of(nastyPhrases).trim()
    case 3: {
      const ids = was.split(' ')
      ids[chance.below(ids.length)] = chance.of(stitches)
      return ids.join(' ')
    }
    case 4:
      return was.replace(/\d+/, () => chance.of(nastyNumbers))
    default:
      return was.repeat(2 + chance.below(chance.percent(5) ? 5000 : 3))
  }
}

function changeValue(file: Json, chance: Chance): void {
  const spots = spotsIn(file)
  if (spots.length === 0) return
  const spot = chance.of(spots)
  const value = get(spot)
  if (chance.percent(6)) return put(spot, structuredClone(get(chance.of(spots))))
  if (typeof value === 'number') return put(spot, otherNumber(value, chance))
  if (typeof value === 'string') return put(spot, otherText(value, chance))
  if (typeof value === 'boolean') return put(spot, !value)
  if (Array.isArray(value)) return put(spot, otherList(value, chance))
  if (value === null)
    return put(spot, chance.of<Json>([1, 'k', { from: 1, to: 2 }, { stitches: 20, rows: 28 }]))
  if (chance.percent(20)) {
    const [name] = Object.keys(value)
    if (name !== undefined) put({ holder: value, key: chance.of(nastyWords) }, value[name] ?? null)
  }
}

function otherList(list: readonly Json[], chance: Chance): Json[] {
  const copy = structuredClone([...list])
  const at = chance.below(copy.length + 1)
  switch (chance.below(5)) {
    case 0:
      copy.splice(at, 1)
      return copy
    case 1:
      return copy.reverse()
    case 2:
      return copy.length > 0 ? [...copy.slice(0, at), chance.of(copy), ...copy.slice(at)] : copy
    case 3: {
      const many = chance.percent(10) ? 600 : 3
      return Array.from({ length: many }, () => copy)
        .flat()
        .slice(0, 700)
    }
    default:
      return copy.slice(0, at)
  }
}

/** Own words that are spoilt as texts are, on the chart of the bench. */
function withOwnWords(file: { [key: string]: Json }, chance: Chance): void {
  put({ holder: file, key: 'words' }, spoiltText(chance).text.split('\n'))
}

/** The text of a starter's file with one to four changes of what it holds, or of its letters. */
export function spoiltFile(chance: Chance): string {
  const text = chance.of(soundFiles())
  if (chance.percent(10)) return spoiltLetters(text, chance)
  const file = JSON.parse(text) as { [key: string]: Json }
  for (let n = 1 + chance.below(4); n > 0; n--) changeValue(file, chance)
  if (chance.percent(20)) withOwnWords(file, chance)
  return JSON.stringify(file)
}

function spoiltLetters(text: string, chance: Chance): string {
  const at = chance.below(text.length)
  const put = chance.of([chance.of(nastyWords), chance.of(nastyNumbers), '', '{', '}'])
  return text.slice(0, at) + put + text.slice(at + chance.below(20))
}
