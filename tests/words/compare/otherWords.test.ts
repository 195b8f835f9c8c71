import { expect, test } from 'vitest'
import { namedOn, onChart } from '../../../src/pattern/charts'
import { paint } from '../../../src/pattern/edits/paint'
import { addChart, addStep } from '../../../src/pattern/edits/piece'
import { setAside } from '../../../src/pattern/edits/settings'
import { setWords } from '../../../src/pattern/edits/words'
import { blankRow, newPattern, type Pattern } from '../../../src/pattern/pattern'
import { workPattern } from '../../../src/pattern/work'
import { workPiece } from '../../../src/pattern/workPiece'
import { stitchOf } from '../../../src/stitches/vocabulary'
import { compare } from '../../../src/words/compare/compare'
import { otherWords } from '../../../src/words/compare/told/otherWords'
import { toldOf } from '../../../src/words/compare/told/told'
import { read } from '../../../src/words/read/read'
import { readSettingsOf } from '../../../src/words/read/reading'

const knit = blankRow(4, stitchOf('k'))
const leg = { columns: 4, repeat: { from: 0, to: 3 }, bands: [], rows: [knit, knit] }
const two = addStep(addChart(newPattern(12, 2), 'Leg', leg), 2, {
  kind: 'chart',
  chart: 'Leg',
  times: 1,
})
const withWords = (words: string): Pattern => setWords(onChart(two, 'Leg'), words)
const said = (pattern: Pattern, besides = 'Chart') => otherWords(workPiece(pattern), besides)

test('own words of another chart that differ from it are told once, at its step', () => {
  const [finding, ...more] = said(withWords('Rnd 1: k12.\nRnd 2: p12.'))
  expect(more).toEqual([])
  expect(finding).toMatchObject({ severity: 'error', place: { step: 2 } })
  expect(finding?.message).toMatch(/^In your own words of “Leg”: .*\.$/)
  expect(finding?.fixes.map(({ label }) => label)).toEqual(['Open “Leg”'])
  expect(namedOn(finding?.fixes[0]?.edit(two) ?? two).name).toBe('Leg')
})

test('nothing is told where they agree, or of the chart that is looked at', () => {
  expect(said(withWords('Rnds 1-2: k12.'))).toEqual([])
  expect(said(withWords('Rnd 1: k12.\nRnd 2: p12.'), 'Leg')).toEqual([])
})

test('what is set aside is told no more, and an edit of that chart is seen', () => {
  const wrong = withWords('Rnd 1: k12.\nRnd 2: p12.')
  expect(said(wrong)).toHaveLength(1)
  const reading = read(namedOn(wrong).words ?? '', readSettingsOf(wrong))
  const { findings } = toldOf(compare(reading, workPattern(wrong)))
  const aside = findings.reduce((sheet, { id }) => setAside(sheet, id, true), onChart(wrong, 'Leg'))
  expect(said(aside)).toEqual([])
  const purled = [0, 1, 2, 3].reduce(
    (sheet, column) => paint(sheet, stitchOf('p'), 1, column),
    onChart(wrong, 'Leg'),
  )
  expect(said(purled)).toEqual([])
  expect(said(wrong)).toHaveLength(1)
})
