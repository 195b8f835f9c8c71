import { expect, test } from 'vitest'
import { newPattern } from '../../../src/pattern/pattern'
import { read } from '../../../src/words/read/read'
import { readSettingsOf } from '../../../src/words/read/reading'

test('after the loops at one end of a bar are bound off, work goes on to where loops are, as on the loom', () => {
  const settings = { ...readSettingsOf(newPattern(10, 1)), shape: 'bar' } as const
  const bindOff = 'Bind off the 5 loops on pegs 1 to 5 with the basic bind-off.'
  const { rows } = read(`Row 1: k10.\n${bindOff}\nRow 2: k5.`, settings)
  expect(rows.map(({ goes, before }) => [goes, before])).toEqual([
    ['forward', 10],
    ['forward', 5],
  ])
})
