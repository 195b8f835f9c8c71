import { expect, test } from 'vitest'
import { read } from '../../../src/words/read/read'
import { usual } from './cases'

const long = 'yarrow'.repeat(40)
const blanks = ' '.repeat(60)

/** The longest run of one text that stands in another, in characters. */
function longestShared(message: string, text: string): number {
  let most = 0
  for (let at = 0; at < text.length; at++)
    while (message.includes(text.slice(at, at + most + 1)) && at + most < text.length) most++
  return most
}

test.each([
  ['a word', `Rnd 1: k4, ${long}, k20`],
  ['a stitch', `Rnd 1: k4, (k1, ${'yo, k1, '.repeat(30)}p1) in next st, k19`],
  ['a cross', `Rnd 1: cable ${blanks}over ${blanks}4 ${blanks}sts, k20`],
  ['a section', `Rnd 1: knit\nWork ${long.slice(0, 75)}, Rnds 1-4, twice.`],
  ['the name of a row', `${long} rnd: k4, p2\nRnd ${long}: k4`],
  ['how often', `Rnd 1: knit\nRep Rnd 1 until ${long} is reached.\nRep Rnd 1 for ${long}.`],
  ['a length', `Work even until the piece ${long} measures 12 cm ${long}.`],
  ['rows as they were', `Rnd 1: work as ${long} established ${long}.`],
  ['a number', `Rnd 1: k${'9'.repeat(400)}`],
])('no remark repeats more than a line of the words: %s', (_, text) => {
  const { remarks } = read(text, usual)
  expect(remarks.length).toBeGreaterThan(0)
  for (const { message, advice, fixes } of remarks)
    for (const said of [message, advice, ...fixes.map(({ label }) => label)])
      expect(longestShared(said, text), said).toBeLessThanOrEqual(60)
})
