import { expect, test } from 'vitest'
import { doneSaid } from '../../src/bench/commands/done'

test.each([
  ['Move it 3 pegs earlier', 'Moved 3 pegs earlier.'],
  ['Write Rnd 5 anew, as in the chart', 'Rnd 5 rewritten from the chart.'],
  ['Chart Rnd 6 as in the words', 'Charted Rnd 6 as in the words.'],
  ['Knit peg 1 instead of k2tog', 'Knitted peg 1 instead of k2tog.'],
  ['Bind off all loops at the end', 'Bound off all loops at the end.'],
  ['Let knit mean e-wrap', 'Done: Let knit mean e-wrap.'],
])('after “%s” it is said what was done', (label, said) => {
  expect(doneSaid(label)).toBe(said)
})
