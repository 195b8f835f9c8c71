import fc, { type Arbitrary } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { otherDirection, runsRightToLeft } from '../../../src/loom/direction'
import { allOf, grown, makePlain, tornBy, type Area } from '../../../src/pattern/blocks/area'
import {
  blockIn,
  facing,
  insideAt,
  moveBlock,
  putBlock,
  tornByBlock,
} from '../../../src/pattern/blocks/block'
import { shiftingOf, shiftRows, tornByShift } from '../../../src/pattern/blocks/shift'
import { countOf, swapStitches } from '../../../src/pattern/blocks/swap'
import { flipped, notTurned, turnedHalfRound } from '../../../src/pattern/blocks/turn'
import { chartOn } from '../../../src/pattern/charts'
import { setRepeat } from '../../../src/pattern/edits/columns'
import { placed } from '../../../src/pattern/row'
import type { Pattern, Run } from '../../../src/pattern/pattern'
import { standardVocabulary, stitchOf } from '../../../src/stitches/vocabulary'
import { arbitraryOneChart, arbitraryRun, arbitraryStitch } from '../../arbitraries'
import { patternOf, textOf } from '../edits/chart-text'

const run = (from: number, to = from): Run => ({ from, to })
const area = (rows: Run, columns: Run): Area => ({ rows, columns })

/** A piece and an area of its chart. */
const marked: Arbitrary<[Pattern, Area]> = arbitraryOneChart({
  columns: 14,
  rows: 6,
  cut: true,
}).chain((pattern) => {
  const { rows, columns } = chartOn(pattern)
  return fc.tuple(
    fc.constant(pattern),
    fc.record(
      { rows: arbitraryRun(rows.length), columns: arbitraryRun(columns) },
      { noNullPrototype: true },
    ),
  )
})

describe('an area', () => {
  test('grows to take crosses whole, as far as they lead', () => {
    const chart = chartOn(patternOf('k 1/1_LC . 2/2_LC . . . k', 'k k 1/1_LC . k k k k'))
    expect(grown(chart, area(run(0), run(4))).columns).toEqual(run(3, 6))
    expect(grown(chart, area(run(0, 1), run(4))).columns).toEqual(run(1, 6))
    expect(grown(chart, area(run(1), run(7))).columns).toEqual(run(7))
  })

  test('that is grown cuts nothing', () => {
    fc.assert(
      fc.property(marked, ([pattern, at]) => {
        const chart = chartOn(pattern)
        expect(tornBy(chart, grown(chart, at))).toEqual([])
        expect(grown(chart, grown(chart, at))).toEqual(grown(chart, at))
      }),
    )
  })

  test('names what its edges cut before it is cut', () => {
    const chart = chartOn(patternOf('p 2/2_LC . . . p'))
    expect(tornBy(chart, area(run(0), run(3, 5)))).toMatchObject([
      { row: 0, column: 1, columns: 4, stitch: { id: '2/2 LC' } },
    ])
  })

  test('made plain, keeps no part of a cross', () => {
    expect(textOf(makePlain(patternOf('p 2/2_LC . . . p'), area(run(0), run(3, 5))))).toEqual([
      'p k k k k k',
    ])
  })
})

describe('a block', () => {
  test('copied and pasted has the same cells', () => {
    fc.assert(
      fc.property(marked, fc.nat(6), fc.nat(14), ([pattern, at], row, column) => {
        const block = blockIn(pattern, at)
        const corner = insideAt(pattern, block, { row, column })
        const put = putBlock(pattern, block, corner)
        const there = area(
          run(corner.row, corner.row + block.rows.length - 1),
          run(corner.column, corner.column + block.columns - 1),
        )
        expect(tornBy(chartOn(put), there)).toEqual([])
        expect(blockIn(put, there)).toEqual(block)
      }),
    )
  })

  test('put back where it was changes nothing but cut stitches', () => {
    fc.assert(
      fc.property(marked, ([pattern, at]) => {
        const { rows, columns } = grown(chartOn(pattern), at)
        const corner = { row: rows.from, column: columns.from }
        const put = putBlock(pattern, blockIn(pattern, at), corner)
        const isCut = chartOn(pattern).rows.some((row) =>
          placed(row).some(
            ({ stitch, column, columns: count }) =>
              count < stitch.width || row.cells[column] === null,
          ),
        )
        if (!isCut) expect(put).toBe(pattern)
      }),
    )
  })

  test('says what it would cut, and cuts no more', () => {
    const pattern = patternOf('p 2/2_LC . . . p')
    const block = blockIn(patternOf('p p'), area(run(0), run(0, 1)))
    expect(tornByBlock(pattern, block, { row: 0, column: 0 })).toMatchObject([{ column: 1 }])
    expect(tornByBlock(pattern, block, { row: 0, column: 2 })).toMatchObject([{ column: 1 }])
    expect(textOf(putBlock(pattern, block, { row: 0, column: 2 }))).toEqual(['p k p p k p'])
  })

  test('that reaches beyond the chart leaves off what has no room', () => {
    const block = blockIn(patternOf('p 1/1_LC .', 'p p p'), area(run(0, 1), run(0, 2)))
    expect(textOf(putBlock(patternOf('k k k', 'k k k'), block, { row: 1, column: 1 }))).toEqual([
      'k k k',
      'k p k',
    ])
    expect(textOf(putBlock(patternOf('k k k', 'k k k'), block, { row: -1, column: -1 }))).toEqual([
      'p p k',
      'k k k',
    ])
  })

  test('keeps its look on a loom worked the other way', () => {
    const block = blockIn(patternOf('k p 2/1_LC . .'), area(run(0), run(0, 4)))
    const other = patternOf('k k k k k')
    const direction = otherDirection(other.loom.direction)
    const put = putBlock({ ...other, loom: { ...other.loom, direction } }, block, {
      row: 0,
      column: 0,
    })
    expect(textOf(put)).toEqual(['2/1_LC . . p k'])
    expect(facing(facing(block, !block.rightToLeft), runsRightToLeft('clockwise'))).toEqual(block)
  })

  test('moves: plain stays where it was', () => {
    const pattern = patternOf('p 1/1_LC . k k')
    const at = area(run(0), run(0, 2))
    expect(textOf(moveBlock(pattern, at, blockIn(pattern, at), { row: 0, column: 1 }))).toEqual([
      'k p 1/1_LC . k',
    ])
  })

  test('flipped leans the other way, twice as it was', () => {
    const block = blockIn(patternOf('k2tog p 2/1_LC . .'), area(run(0), run(0, 4)))
    const flat = flipped(block, standardVocabulary)
    expect(textOf(putBlock(patternOf('k k k k k'), flat, { row: 0, column: 0 }))).toEqual([
      '2/1_RC . . p ssk',
    ])
    fc.assert(
      fc.property(marked, ([pattern, at]) => {
        const any = blockIn(pattern, at)
        expect(flipped(flipped(any, standardVocabulary), standardVocabulary)).toEqual(any)
      }),
    )
  })

  test('turned half round keeps its leans, and names what cannot be turned', () => {
    const block = blockIn(
      patternOf('2/1_LC . . p', 'k2tog p p none', 'yo k k k'),
      area(run(0, 2), run(0, 3)),
    )
    const turned = turnedHalfRound(block)
    expect(
      textOf(putBlock(patternOf('k k k k', 'k k k k', 'k k k k'), turned, { row: 0, column: 0 })),
    ).toEqual(['k k k yo', 'none p p k2tog', 'p 2/1_LC . .'])
    expect(notTurned(block).map(({ id }) => id)).toEqual(['k2tog', 'yo'])
    fc.assert(
      fc.property(marked, ([pattern, at]) => {
        const any = blockIn(pattern, at)
        expect(turnedHalfRound(turnedHalfRound(any))).toEqual(any)
      }),
    )
  })
})

describe('shifting', () => {
  test('goes round within the repeat', () => {
    const pattern = setRepeat(patternOf('p k p yo k'), { from: 1, to: 3 })
    const shifting = shiftingOf(chartOn(pattern), area(run(0), run(2)))
    expect(textOf(shiftRows(pattern, shifting, 1))).toEqual(['p yo k p k'])
  })

  test('fills the edge with plain where nothing repeats', () => {
    const pattern = patternOf('p k p yo')
    const shifting = shiftingOf(chartOn(pattern), area(run(0), run(2)))
    expect(textOf(shiftRows(pattern, shifting, 1))).toEqual(['k p k p'])
    expect(textOf(shiftRows(pattern, shifting, -1))).toEqual(['k p yo k'])
  })

  test('names the crosses that the edge would cut', () => {
    const pattern = setRepeat(patternOf('k k 2/2_LC . . .', 'k k k k k p'), { from: 0, to: 5 })
    const shifting = shiftingOf(chartOn(pattern), area(run(0, 1), run(0)))
    expect(tornByShift(pattern, shifting, 1)).toMatchObject([{ row: 0, column: 2, columns: 4 }])
    expect(tornByShift(pattern, shifting, 4)).toEqual([])
    expect(textOf(shiftRows(pattern, shifting, 1))).toEqual(['k k k k k k', 'p k k k k k'])
    expect(textOf(shiftRows(pattern, shifting, 4))).toEqual(['2/2_LC . . . k k', 'k k k p k k'])
  })

  test('there and back is as it was where nothing is cut', () => {
    fc.assert(
      fc.property(marked, fc.integer({ min: -9, max: 9 }), ([pattern, at], by) => {
        const { columns } = chartOn(pattern)
        const repeating = setRepeat(pattern, { from: 0, to: columns - 1 })
        const shifting = shiftingOf(chartOn(repeating), at)
        const there = shiftRows(repeating, shifting, by)
        const back = shiftRows(there, shifting, -by)
        if (tornByShift(repeating, shifting, by).length > 0) return
        const cells = (sheet: Pattern) => blockIn(sheet, allOf(chartOn(sheet)))
        expect(cells(back)).toEqual(cells(repeating))
      }),
    )
  })
})

describe('swapping', () => {
  const [knit, purl, left, right] = ['k', 'p', '1/1 LC', '1/1 RC'].map(stitchOf)
  if (!knit || !purl || !left || !right) throw new Error('They are all there')
  const pattern = patternOf('p k 1/1_LC .', 'p k k k')
  const here = area(run(0), run(1, 3))

  test('takes place in the block, in the chart or everywhere', () => {
    expect(textOf(swapStitches(pattern, purl, knit, 'here', here))).toEqual(textOf(pattern))
    expect(textOf(swapStitches(pattern, knit, purl, 'here', here))).toEqual([
      'p p 1/1_LC .',
      'p k k k',
    ])
    expect(textOf(swapStitches(pattern, left, right, 'here', here))[0]).toBe('p k 1/1_RC .')
    expect(textOf(swapStitches(pattern, purl, knit, 'chart', here))).toEqual([
      'k k 1/1_LC .',
      'k k k k',
    ])
  })

  test('in the piece takes every chart and the plain rows', () => {
    const [chart] = pattern.charts
    const two: Pattern = {
      ...pattern,
      charts: [chart, { ...chart, name: 'Other' }],
      steps: [{ kind: 'plain', stitch: knit, amount: { rows: 2 } }],
    }
    const swapped = swapStitches(two, knit, purl, 'piece', here)
    expect(countOf(two, knit, 'piece', here)).toBe(8)
    expect(countOf(swapped, knit, 'piece', here)).toBe(0)
    expect(swapped.steps).toMatchObject([{ stitch: purl }])
  })

  test('is only for stitches of equal width, and leaves all others', () => {
    expect(swapStitches(pattern, left, knit, 'piece', here)).toBe(pattern)
    fc.assert(
      fc.property(marked, arbitraryStitch(), arbitraryStitch(), ([any, at], from, to) => {
        const swapped = swapStitches(any, from, to, 'here', at)
        if (from.width !== to.width) expect(swapped).toBe(any)
        if (from !== to && from.width === to.width)
          expect(countOf(swapped, from, 'here', at)).toBe(0)
      }),
    )
  })
})
