import { stitchOf } from '../../src/stitches/vocabulary'
import { onChart } from '../../src/pattern/charts'
import { addChart, addStep } from '../../src/pattern/edits/piece'
import { setWords } from '../../src/pattern/edits/words'
import { expect, test } from 'vitest'
import { ownWordsOf } from '../../src/booklet/ownWords'
import { blankRow, newPattern } from '../../src/pattern/pattern'

test('a round whose stitches do not add up differs in one place, as the bench lists it', () => {
  const words = 'Rnd 1: p1, k4, p1, k6. (13 sts)'
  expect(ownWordsOf(setWords(newPattern(12, 1), words))).toMatchObject([{ differences: 1 }])
})

test('words of a longer chart that differ are told whichever chart is looked at', () => {
  const row = blankRow(4, stitchOf('k'))
  const rib = { ...row, cells: row.cells.with(0, stitchOf('p')) }
  const leg = {
    columns: 4,
    repeat: { from: 0, to: 3 },
    bands: [],
    rows: Array.from({ length: 8 }, () => rib),
  }
  const two = addChart(newPattern(12, 6), 'Leg', leg)
  const worked = addStep(two, 2, { kind: 'chart', chart: 'Leg', times: 1 })
  const words = 'Rnds 1-2: *p1, k3; rep from * to end.\nRnds 3-8: *k3, p1; rep from * to end.'
  const own = setWords(onChart(worked, 'Leg'), words)
  for (const name of ['Chart', 'Leg'])
    expect(ownWordsOf(onChart(own, name))).toMatchObject([{ name: 'Leg', differences: 2 }])
})
