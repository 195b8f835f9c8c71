import fc from 'fast-check'
import { expect, test } from 'vitest'
import { pieceLines } from '../../src/languages/english/pieceLines'
import { template } from '../../src/languages/english/template'

test('a sentence with gaps is read back as it was written, and no other sentence is', () => {
  const rain = template('It rains (on {day}).', { day: '[A-Z][a-z]+' })
  expect(rain.write({ day: 'Monday' })).toBe('It rains (on Monday).')
  expect(rain.read('  It rains (on Monday). ')).toEqual({ day: 'Monday' })
  expect(rain.read('It rains (on 12).')).toBeNull()
  expect(rain.read('It rains on Monday.')).toBeNull()
})

test('a chart is called for by any name that is no call itself', () => {
  const name = fc.constantFrom(
    'Cuff',
    'Left thumb',
    'Cuff, part 2',
    'Rnds 1-2',
    'Over: again and on',
  )
  const call = fc.record({
    name,
    again: fc.constantFrom('', ' again'),
    rows: fc.constantFrom('Rnds 1-12', 'Row 3'),
    often: fc.constantFrom('', ', twice', ', 6 times'),
    end: fc.constantFrom(':', '.'),
  })
  fc.assert(
    fc.property(call, (said) => {
      const { workChart } = pieceLines
      expect(workChart.read(workChart.write(said))).toEqual(said)
    }),
  )
})

test('edges are read with the pegs that they name', () => {
  const { castOn, bindOff } = pieceLines
  const put = {
    castOn: 'Cast on',
    count: '6 pegs',
    how: 'with the chain cast-on',
    where: ': pegs 16 to 11',
  }
  expect(castOn.read(castOn.write(put))).toEqual(put)
  expect(castOn.read('Cast on 6 pegs with the chain cast-on.')).toBeNull()
  const which = 'the 6 loops on pegs 11 to 16'
  const off = { bindOff: 'Cast off', which, how: ' with the basic cast-off' }
  expect(bindOff.read(bindOff.write(off))).toEqual(off)
})
