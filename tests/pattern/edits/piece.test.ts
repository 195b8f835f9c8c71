import { setWords } from '../../../src/pattern/edits/words'
import { setAside } from '../../../src/pattern/edits/settings'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  addPictures,
  addChart,
  addStep,
  copyChart,
  changeStep,
  copyStep,
  freeName,
  moveStep,
  nameProblem,
  removeChart,
  removePictures,
  removeStep,
  renameChart,
  setPace,
  setPair,
} from '../../../src/pattern/edits/piece'
import { deleteRows, insertRows } from '../../../src/pattern/edits/rows'
import { newPattern, blankRow, type Pattern } from '../../../src/pattern/pattern'
import {
  chartsInOrder,
  chartOn,
  editOn,
  namedOn,
  onChart,
  withoutOn,
} from '../../../src/pattern/charts'
import { arbitraryPattern } from '../../arbitraries'
import { stitchOf } from '../../../src/stitches/vocabulary'

const names = (pattern: Pattern) => chartsInOrder(pattern).map(({ name }) => name)
const kinds = (pattern: Pattern) => pattern.steps.map(({ kind }) => kind)
const thumb = { columns: 12, repeat: null, bands: [], rows: [blankRow(12, stitchOf('p'))] }
const two = addChart(newPattern(12, 3), 'Thumb', thumb)

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

describe('charts', () => {
  test('an edit is done to the chart it is given for, and leaves the others as they are', () => {
    const onThumb = insertRows(setWords(onChart(two, 'Thumb'), 'Rnd 1: p12.'), 0)
    const [chart, changed] = onThumb.charts
    expect(chart).toBe(two.charts[0])
    expect([changed?.name, changed?.words, changed?.chart.rows.length]).toEqual([
      'Thumb',
      'Rnd 1: p12.',
      2,
    ])
  })

  test('an edit of another chart leaves the one that is worked on in hand', () => {
    const purl = editOn('Thumb', (sheet) => setAside(sheet, 'gauge', true))
    const done = purl(onChart(two, 'Chart'))
    expect(namedOn(done).name).toBe('Chart')
    expect(done.charts.map(({ aside }) => aside)).toEqual([[], ['gauge']])
    expect(purl(two)).toEqual(withoutOn(done))
  })

  test('a name is made free, and steps follow a new name', () => {
    expect(names(addChart(two, 'Thumb', thumb))).toEqual(['Chart', 'Thumb', 'Thumb 2'])
    expect(names(copyChart(two, 'Chart'))).toEqual(['Chart', 'Thumb', 'Chart 2'])
    const renamed = renameChart(two, 'Chart', 'Cuff')
    expect(names(renamed)).toEqual(['Cuff', 'Thumb'])
    expect(renamed.steps[1]).toEqual({ kind: 'chart', chart: 'Cuff', times: 1 })
  })

  test('a name that is taken, empty or too long is refused with the reason', () => {
    expect(nameProblem(two, 'Chart', 'Thumb')).toBe('There is a chart called “Thumb” already.')
    expect(nameProblem(two, 'Chart', ' ')).toBe('A chart needs a name.')
    expect(nameProblem(two, 'Chart', 'x'.repeat(61))).toBe(
      'The name has 61 characters, and 60 are the most.',
    )
    expect(renameChart(two, 'Chart', 'Thumb')).toBe(two)
  })

  test('taken out it goes with its steps; the last one stays', () => {
    const one = removeChart(two, 'Chart')
    expect(names(one)).toEqual(['Thumb'])
    expect(chartOn(one)).toEqual(thumb)
    expect(kinds(one)).toEqual(['cast on', 'bind off'])
    expect(removeChart(one, 'Thumb')).toBe(one)
  })
})

describe('step pictures', () => {
  const shown = addPictures(two, { chart: 'Chart', row: 1, from: 0, to: 4 })
  const rows = (pattern: Pattern) => pattern.pictures.map(({ row }) => row)

  test('go with their row when rows come in or go', () => {
    expect(rows(insertRows(shown, 0, 2))).toEqual([3])
    expect(rows(insertRows(shown, 2))).toEqual([1])
    expect(rows(deleteRows(shown, 0, 0))).toEqual([0])
    expect(rows(deleteRows(shown, 1, 1))).toEqual([])
  })

  test('stay where they are when another chart changes', () => {
    expect(rows(insertRows(onChart(shown, 'Thumb'), 0))).toEqual([1])
  })

  test('follow the name of their chart, and go with it', () => {
    expect(renameChart(shown, 'Chart', 'Cuff').pictures[0]?.chart).toBe('Cuff')
    expect(removeChart(shown, 'Chart').pictures).toEqual([])
  })
})

describe('as much as a piece can have', () => {
  const some = newPattern(12, 1)
  const note = { kind: 'note', text: 'Count.' } as const

  test('is a hundred steps', () => {
    let full: Pattern = some
    while (full.steps.length < 99) full = addStep(full, 1, note)
    const most = addStep(full, 1, note)
    expect(most.steps).toHaveLength(100)
    expect(addStep(most, 1, note)).toBe(most)
    expect(copyStep(most, 1)).toBe(most)
  })

  test('is forty charts', () => {
    let full: Pattern = some
    while (full.charts.length < 39) full = addChart(full, 'Thumb', thumb)
    const most = copyChart(full, 'Chart')
    expect(most.charts).toHaveLength(40)
    expect(copyChart(most, 'Chart')).toBe(most)
    expect(addChart(most, 'Thumb', thumb)).toBe(most)
  })

  test('is fifty stretches of pictures', () => {
    const shown = { chart: 'Chart', row: 0, from: 0, to: 1 }
    let full: Pattern = some
    for (let count = 0; count < 50; count++) full = addPictures(full, shown)
    expect(full.pictures).toHaveLength(50)
    expect(addPictures(full, shown)).toBe(full)
    expect(removePictures(full, 50)).toBe(full)
    expect(removePictures(full, 49).pictures).toHaveLength(49)
  })
})

test('a step is changed where there is one, and a change to the same is none', () => {
  const note = { kind: 'note', text: 'Count.' } as const
  const changed = changeStep(two, 1, note)
  expect(kinds(changed)).toEqual(['cast on', 'note', 'bind off'])
  expect(changeStep(changed, 1, note)).toBe(changed)
  expect(changeStep(changed, 3, note)).toBe(changed)
  expect(moveStep(changed, 1, 1)).toBe(changed)
  expect(moveStep(changed, 1, -1)).toBe(changed)
  expect(moveStep(changed, -1, 1)).toBe(changed)
  expect(kinds(moveStep(changed, 2, 0))).toEqual(['bind off', 'cast on', 'note'])
})

test('a free name is trimmed, numbered and no longer than a name can be', () => {
  expect(freeName(two, ' Cuff ')).toBe('Cuff')
  expect(freeName(two, '  ')).toBe('Chart 2')
  const long = 'x'.repeat(70)
  const named = addChart(two, long, thumb)
  expect(names(named)).toContain('x'.repeat(60))
  expect(freeName(named, long)).toBe(`${'x'.repeat(58)} 2`)
  expect(names(addChart(addChart(two, 'Thumb', thumb), 'Thumb', thumb))).toContain('Thumb 3')
})

test('a name stays free for its own chart, and is trimmed', () => {
  expect(nameProblem(two, 'Chart', 'Chart')).toBeNull()
  expect(nameProblem(two, 'Chart', 'x'.repeat(60))).toBeNull()
  expect(nameProblem(two, 'Chart', ' Thumb ')).toBe('There is a chart called “Thumb” already.')
  expect(renameChart(two, 'Chart', ' Chart ')).toBe(two)
  expect(renameChart(two, 'Crown', 'Cuff')).toBe(two)
  expect(names(renameChart(two, 'Chart', ' Cuff '))).toEqual(['Cuff', 'Thumb'])
  expect(namedOn(renameChart(onChart(two, 'Thumb'), 'Thumb', 'Cuff')).name).toBe('Cuff')
  expect(namedOn(renameChart(onChart(two, 'Thumb'), 'Chart', 'Cuff')).name).toBe('Thumb')
})

test('a chart that is not there is neither copied nor taken out', () => {
  expect(copyChart(two, 'Crown')).toBe(two)
  expect(removeChart(two, 'Crown')).toBe(two)
})

test('the pair and the pace are set once', () => {
  expect(setPair(two, 'none')).toBe(two)
  expect(setPair(two, 'alike').pair).toBe('alike')
  expect(setPace(two, null)).toBe(two)
  expect(setPace(two, 20).pace).toBe(20)
})
