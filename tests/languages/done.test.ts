import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { doneSaid } from '../../src/languages/english/done'

test.each([
  ['Move it 3 pegs earlier', 'Moved 3 pegs earlier.'],
  ['Rewrite Rnd 5 from the chart', 'Rnd 5 rewritten from the chart.'],
  ['Change the chart to match the words (Rnd 6)', 'Changed the chart to match the words (Rnd 6).'],
  ['Knit peg 1 instead of k2tog', 'Knitted peg 1 instead of k2tog.'],
  ['Bind off all loops at the end', 'Bound off all loops at the end.'],
  ['Let knit mean e-wrap', 'Knit now means e-wrap.'],
  ['No stitch on peg 2 from here on', 'Peg 2 is empty from here on.'],
  ['No stitch on pegs 2-4 from here on', 'Pegs 2-4 are empty from here on.'],
  ['No stitch on peg 2, which is empty', 'Peg 2 is marked as no stitch.'],
  ['Use a loom with 36 pegs', 'Now on a loom with 36 pegs.'],
  ['Tuck the yarn on peg 4', 'Tucked the yarn on peg 4.'],
  ['Before Cuff, knit pegs 1-6', 'Added before Cuff: knit pegs 1-6.'],
  ['Before the plain rounds, knit pegs 1-6', 'Added before the plain rounds: knit pegs 1-6.'],
  ['Give it pegs 5-8', 'It now has pegs 5-8.'],
  ['End it at peg 8', 'Now ends at peg 8.'],
  ['Mark it “For a baby or child”', 'Marked “For a baby or child”.'],
  ['Work it over all the pegs', 'Now worked over all the pegs.'],
  [
    'Work only pegs 1-6 from here on, back and forth',
    'Now only pegs 1-6 from here on, back and forth.',
  ],
])('after “%s” it is said what was done', (label, said) => {
  expect(doneSaid(label)).toBe(said)
})

test('every mend of the checks has a sentence that says what it did', () => {
  const cases = 'tests/checks/cases'
  const mends = readdirSync(cases)
    .flatMap((name) => readFileSync(join(cases, name), 'utf8').split('\n'))
    .flatMap((line) => /^\+ "?([A-Z][^"]*)/.exec(line)?.[1]?.trim() ?? [])
  expect(mends.length).toBeGreaterThan(40)
  expect(mends.map(doneSaid).filter((said) => said.startsWith('Done'))).toEqual([])
})
