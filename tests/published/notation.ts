/**
 * The notation of the published examples: tokens between commas, "k3" for three, "(yo,k1)x6" for a
 * group worked six times, "k*" for knits over all that is left. Tokens may be of any age.
 */
import { findStitch, standardVocabulary } from '../../src/stitches/vocabulary'
import type { Stitch } from '../../src/stitches/stitch'
import { spellingsOf } from '../../src/languages/languages'

const bare = (text: string): string => text.toLowerCase().replace(/[\s.]/g, '')

const spellings = new Map<string, Stitch>()
for (const stitch of standardVocabulary.stitches)
  for (const spelling of [stitch.id, ...spellingsOf(stitch)])
    if (!spellings.has(bare(spelling))) spellings.set(bare(spelling), stitch)

/** C3/3F, C4/4B: stitches in front and behind, and where the first ones wait (front leans left). */
const waiting = /^c(\d)\/(\d)([fb])$/

function named(text: string): Stitch | undefined {
  const found = spellings.get(text)
  if (found) return found
  const [, front, back, where] = waiting.exec(text) ?? []
  return where ? findStitch(`${front}/${back} ${where === 'f' ? 'L' : 'R'}C`) : undefined
}

/** A stitch by any of its spellings. */
export const stitchNamed = (text: string): Stitch | undefined => named(bare(text))

/** All stitches of a line in the order they are worked. `loops`: how many there are for "k*". */
export function expand(line: string, loops = 0): Stitch[] {
  const rest = /^(.*?),?(\w+)\*,?(.*)$/.exec(line)
  if (rest) {
    const [, before = '', token = '', after = ''] = rest
    const edges = [expand(before), expand(after)] as const
    const left = loops - takesOf(edges.flat())
    return [...edges[0], ...expand(token + String(left)), ...edges[1]]
  }
  return splitList(line).flatMap((item) => {
    const group = /^\((.*)\)x(\d+)$/.exec(item)
    if (group) return times(expand(group[1] ?? ''), Number(group[2]))
    return token(bare(item))
  })
}

function token(text: string): Stitch[] {
  const [, letters = '', count = ''] = /^(.*?)(\d+)$/.exec(text) ?? []
  const plain = named(letters)
  if (plain?.takes === plain?.makes && plain?.width === 1) return times([plain], Number(count))
  const one = named(text)
  if (one) return [one]
  if (plain) return times([plain], Number(count))
  throw new Error(`There is no stitch "${text}".`)
}

const times = <T>(list: readonly T[], count: number): T[] =>
  Array.from({ length: count }, () => list).flat()

/** Split at commas that stand outside brackets. */
function splitList(line: string): string[] {
  const items: string[] = []
  let depth = 0
  let item = ''
  for (const sign of line) {
    if (sign === '(') depth++
    if (sign === ')') depth--
    if (sign === ',' && depth === 0) {
      items.push(item)
      item = ''
    } else item += sign
  }
  return [...items, item].map((text) => text.trim()).filter(Boolean)
}

export const takesOf = (stitches: readonly Stitch[]): number =>
  stitches.reduce((sum, { takes }) => sum + takes, 0)
export const makesOf = (stitches: readonly Stitch[]): number =>
  stitches.reduce((sum, { makes }) => sum + makes, 0)
export const columnsOf = (stitches: readonly Stitch[]): number =>
  stitches.reduce((sum, { width }) => sum + width, 0)
