import { stitchOf } from '../../src/stitches/vocabulary'
import { onChart } from '../../src/pattern/charts'
import { addChart, addStep } from '../../src/pattern/edits/piece'
import { setWords } from '../../src/pattern/edits/words'
import { expect, test } from 'vitest'
import { ownWordsOf } from '../../src/booklet/ownWords'
import { newPattern, emptyChart } from '../../src/pattern/pattern'

test('a round whose stitches do not add up differs in one place, as the bench lists it', () => {
  const words = 'Rnd 1: p1, k4, p1, k6. (13 sts)'
  expect(ownWordsOf(setWords(newPattern(12, 1), words))).toMatchObject([{ differences: 1 }])
})

test('words of a longer chart that differ are told whichever chart is looked at', () => {
  const two = addChart(newPattern(12, 2), 'Leg', emptyChart(12, 8, stitchOf('k')))
  const worked = addStep(two, 2, { kind: 'chart', chart: 'Leg', times: 1 })
  const words = 'Rnds 1-6: knit. (12 sts)\nRnds 7-8: k5, p2, k5. (12 sts)'
  const own = setWords(onChart(worked, 'Leg'), words)
  for (const name of ['Chart', 'Leg'])
    expect(ownWordsOf(onChart(own, name))).toMatchObject([{ name: 'Leg', differences: 1 }])
})
