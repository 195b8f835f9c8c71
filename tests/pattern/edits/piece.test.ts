import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  addPictures,
  addSection,
  addStep,
  copySection,
  copyStep,
  moveStep,
  nameProblem,
  openSection,
  removeSection,
  removeStep,
  renameSection,
} from '../../../src/pattern/edits/piece'
import { deleteRows, insertRows } from '../../../src/pattern/edits/rows'
import { newPattern, noRow, type Pattern } from '../../../src/pattern/pattern'
import { sectionsOf } from '../../../src/pattern/sections'
import { arbitraryPattern } from '../../arbitraries'

const names = (pattern: Pattern) => sectionsOf(pattern).map(({ name }) => name)
const kinds = (pattern: Pattern) => pattern.piece.steps.map(({ kind }) => kind)
const thumb = { columns: 12, repeat: null, bands: [], rows: [noRow(12, 'p')] }
const two = addSection(newPattern(12, 3), 'Thumb', thumb)

describe('steps', () => {
  const pattern = newPattern()

  test('are added, copied, moved and taken out', () => {
    const note = addStep(pattern, 1, { kind: 'note', text: 'Mark peg 1.' })
    expect(kinds(note)).toEqual(['cast on', 'note', 'chart', 'bind off'])
    expect(kinds(copyStep(note, 1))).toEqual(['cast on', 'note', 'note', 'chart', 'bind off'])
    expect(kinds(moveStep(note, 1, 3))).toEqual(['cast on', 'chart', 'bind off', 'note'])
    expect(removeStep(note, 1)).toEqual(pattern)
  })

  test('a place that is not there changes nothing', () => {
    expect(moveStep(pattern, 0, 3)).toBe(pattern)
    expect(removeStep(pattern, 3)).toBe(pattern)
    expect(copyStep(pattern, -1)).toBe(pattern)
  })

  test('moved and moved back it is as it was', () => {
    fc.assert(
      fc.property(arbitraryPattern({ rows: 2 }), fc.nat(6), fc.nat(6), (any, from, to) => {
        const moved = moveStep(any, from, to)
        expect(moveStep(moved, to, from)).toEqual(any)
      }),
    )
  })
})

describe('sections', () => {
  test('go on the bench and off it with their charts, words and what was set aside', () => {
    const worded = { ...two, words: 'Rnd 1: k12.', checks: { ...two.checks, aside: ['gauge'] } }
    const opened = openSection(worded, 'Thumb')
    expect(opened.chart).toEqual(thumb)
    expect([opened.words, opened.checks.aside]).toEqual([null, []])
    expect(openSection(opened, 'Chart')).toEqual(worded)
  })

  test('a name is made free, and steps follow a new name', () => {
    expect(names(addSection(two, 'Thumb', thumb))).toEqual(['Chart', 'Thumb', 'Thumb 2'])
    expect(names(copySection(two, 'Chart'))).toEqual(['Chart', 'Thumb', 'Chart 2'])
    const renamed = renameSection(two, 'Chart', 'Cuff')
    expect(names(renamed)).toEqual(['Cuff', 'Thumb'])
    expect(renamed.piece.steps[1]).toEqual({ kind: 'chart', section: 'Cuff', times: 1 })
  })

  test('a name that is taken, empty or too long is refused with the reason', () => {
    expect(nameProblem(two, 'Chart', 'Thumb')).toBe('There is a chart called “Thumb” already.')
    expect(nameProblem(two, 'Chart', ' ')).toBe('A chart needs a name.')
    expect(nameProblem(two, 'Chart', 'x'.repeat(61))).toBe(
      'The name has 61 characters, and 60 are the most.',
    )
    expect(renameSection(two, 'Chart', 'Thumb')).toBe(two)
  })

  test('taken out it goes with its steps; the last one stays', () => {
    const one = removeSection(two, 'Chart')
    expect(names(one)).toEqual(['Thumb'])
    expect(one.chart).toEqual(thumb)
    expect(kinds(one)).toEqual(['cast on', 'bind off'])
    expect(removeSection(one, 'Thumb')).toBe(one)
  })
})

describe('step pictures', () => {
  const shown = addPictures(two, { section: 'Chart', row: 1, from: 0, to: 4 })
  const rows = (pattern: Pattern) => pattern.piece.pictures.map(({ row }) => row)

  test('go with their row when rows come in or go', () => {
    expect(rows(insertRows(shown, 0, 2))).toEqual([3])
    expect(rows(insertRows(shown, 2))).toEqual([1])
    expect(rows(deleteRows(shown, 0, 0))).toEqual([0])
    expect(rows(deleteRows(shown, 1, 1))).toEqual([])
  })

  test('stay where they are when another section changes', () => {
    expect(rows(insertRows(openSection(shown, 'Thumb'), 0))).toEqual([1])
  })

  test('follow the name of their section, and go with it', () => {
    expect(renameSection(shown, 'Chart', 'Cuff').piece.pictures[0]?.section).toBe('Cuff')
    expect(removeSection(shown, 'Chart').piece.pictures).toEqual([])
  })
})
