import { chartOn } from '../../../src/pattern/charts'
import { expect, test } from 'vitest'
import { pieceFromWords, replacedSaid } from '../../../src/words/read/chart/pieceFromWords'
import { setGauge, setLoom, setMaking, setText } from '../../../src/pattern/edits/settings'
import { newPattern } from '../../../src/pattern/pattern'
import { read } from '../../../src/words/read/read'
import { readSettingsOf } from '../../../src/words/read/reading'

const hat = setMaking(
  setGauge(
    setLoom(setText(newPattern(24, 4), { title: 'Ferry hat', designer: 'The ferry loom' }), {
      pitch: 12,
    }),
    { stitches: 14, rows: 20 },
  ),
  { forBaby: true },
)
const made = (text: string, kept = true) =>
  pieceFromWords(read(text, readSettingsOf(hat)), kept ? hat : null)

test('a chart from words keeps what the words do not say', () => {
  const piece = made('Rnds 1-6: *k2, p2; rep from *.')
  expect(piece).toMatchObject({
    title: 'Ferry hat',
    designer: 'The ferry loom',
    loom: { pegs: 24, pitch: 12 },
    gauge: { stitches: 14, rows: 20 },
    making: { forBaby: true },
    charts: [{ words: 'Rnds 1-6: *k2, p2; rep from *.' }],
  })
  expect(chartOn(piece).rows).toHaveLength(6)
})

test('what the words say stands before what the piece had', () => {
  const piece = made('Gauge: 18 sts and 26 rows = 10 cm\nRnd 1: *k2, p2; rep from *.')
  expect(piece.gauge).toEqual({ stitches: 18, rows: 26 })
})

test('one that starts a piece takes nothing from the piece on the bench', () => {
  expect(made('Rnd 1: knit.', false)).toMatchObject({
    title: newPattern().title,
    gauge: null,
    making: { forBaby: false },
  })
})

test('what goes is said before', () => {
  expect(replacedSaid(hat)).toBe(
    'This replaces “Ferry hat”: its 3 steps and its chart go. Title, swatch and baby setting stay, unless your words say otherwise. Undo brings all of it back.',
  )
})
