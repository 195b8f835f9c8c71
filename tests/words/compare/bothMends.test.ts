import { expect, it } from 'vitest'
import { setBand } from '../../../src/pattern/edits/rows'
import { workPattern } from '../../../src/pattern/work'
import { compared, linesOf, piece, repaired, starters } from './helpers'

const rib = 'k*2, p*2, k*2, p*2'
const band = ['p*8', 'k*8', 'p*8', 'k*4, p*4']
const rows = ['k*8', rib, rib, rib, ...band, 'p*4, k*4', 'k*3, p*5', 'k*8', rib, 'k*2, p*6']
const patterns = [piece(rows), setBand(piece(rows), 4, 7, 3), ...starters.slice(3, 6)]

/** Two lines left out, and something wrong with another. */
const slips = patterns.flatMap((pattern, which) => {
  const lines = linesOf(workPattern(pattern))
  return lines.slice(0, 12).flatMap((_, from) =>
    [from - 2, from + 3].flatMap((wrong) => {
      const line = lines[wrong]
      if (line === undefined) return []
      const ways = [line, line.replace(/: .*\./, ': k3, p2.'), line.replace('Knit', 'Purl')]
      return ways.map((other, way) => ({
        name: `piece ${which + 1}, line ${from + 1}, way ${way + 1} at line ${wrong + 1}`,
        pattern,
        lines: lines.with(wrong, other).toSpliced(from, 2),
      }))
    }),
  )
})

it('a difference is mended in the words and in the chart, or it is said why not', () => {
  const wrong = slips.flatMap(({ name, pattern, lines }) => {
    const comparison = compared(pattern, lines)
    return comparison.differences.flatMap(({ rule, fixes, lacking, isRefused }) => {
      const inWords = fixes.some((fix) => 'changes' in fix)
      const inChart = fixes.some((fix) => 'edit' in fix)
      const isSaid = (inWords && inChart) || lacking !== null || (inWords && isRefused)
      const loses = rule === 'row-missing-in-words' && inChart && !inWords
      return isSaid && !loses ? [] : [`${name}: ${fixes.map(({ label }) => label).join(', ')}`]
    })
  })
  expect(slips.length).toBeGreaterThan(200)
  expect(wrong).toEqual([])
})

const banded = setBand(piece(rows), 4, 7, 3)
const lines = linesOf(workPattern(banded))
const without = (start: string) => lines.filter((line) => !line.startsWith(start))

it.each([
  ['beside a line that does not add up', 'Rnd 6:', ['Rnd 8: k4, p4.', 'Rnd 8: k4, p3.']],
  ['beside a line that differs', 'Rnd 6:', ['Rnd 8: k4, p4.', 'Rnd 8: Purl.']],
] as const)('a round of a repeat is added to the words %s', (_, gone, [right, wrong]) => {
  const said = without(gone).map((line) => (line === right ? wrong : line))
  const comparison = compared(banded, said)
  const missing = comparison.differences.find(({ message }) => message.endsWith('leave out Rnd 6.'))
  const [fix] = missing?.fixes ?? []
  if (!fix) throw new Error('Nothing is offered')
  expect(fix.label).toMatch(/^Add Rnd 6 to the words/)
  const rules = repaired(comparison, fix).differences.map(({ rule }) => rule)
  expect(rules).toEqual(['words-differ'])
})

it('rounds before all others go above the line that repeats them', () => {
  const pattern = setBand(piece(['k*6', 'p*6']), 0, 0, 5)
  const comparison = compared(pattern, linesOf(workPattern(pattern)).slice(1))
  const [fix] = comparison.differences[0]?.fixes ?? []
  if (!fix) throw new Error('Nothing is offered')
  const { reading, differences } = repaired(comparison, fix)
  expect(reading.text).toMatch(/^Rnd 1: Knit\..*\nRep Rnd 1 /)
  expect(differences).toEqual([])
})

it('why rounds do not simply go from the chart is said in one sentence', () => {
  const { differences } = compared(
    banded,
    lines.filter((line) => !/^Rnd [5-8]:/.test(line)),
  )
  expect(differences.map(({ lacking }) => lacking)).toContain(
    'Removing them from the chart would put other rounds wrong.',
  )
})
