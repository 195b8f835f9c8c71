import { chartOn } from '../../../src/pattern/charts'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mirror } from '../../../src/pattern/edits/mirror'
import { reverseDirection, rotateColumns } from '../../../src/pattern/edits/turn-round'
import { reverseCells } from '../../../src/pattern/edits/turn-over'
import { headingsOf } from '../../../src/pattern/pegs/headings'
import { workPattern } from '../../../src/pattern/work'
import { waleOf } from '../../../src/loom/strand'
import { arbitraryOneChart } from '../../arbitraries'
import { patternOf, textOf } from './chart-text'
import { cellsFrom, idsIn } from '../../cells'

test('the round starts elsewhere and stitches stay whole', () => {
  expect(textOf(rotateColumns(patternOf('k 2/2_LC . . . p'), 1))).toEqual(['2/2_LC . . . p k'])
})

test('reversed cells keep a stitch at its lowest column', () => {
  const turned = reverseCells(cellsFrom(['k', '2/1 LC', '', '', 'p']))
  expect(idsIn(turned)).toEqual(['p', '2/1 LC', '', '', 'k'])
})

test('reversing the direction keeps the look: a left cross stays one, peg 1 changes sides', () => {
  const reversed = reverseDirection(patternOf('p 2/2_LC . . . k2tog yo'))
  expect(reversed.loom.direction).toBe('counterclockwise')
  expect(textOf(reversed)).toEqual(['yo k2tog 2/2_LC . . . p'])
})

test('mirroring changes the look: crosses and leans swap', () => {
  const mirrored = mirror(patternOf('p 2/2_LC . . . k2tog yo'))
  expect(mirrored.loom.direction).toBe('clockwise')
  expect(textOf(mirrored)).toEqual(['yo ssk 2/2_RC . . . p'])
})

describe('laws', () => {
  test.each([
    ['reversing the direction', reverseDirection],
    ['mirroring', mirror],
  ])('%s twice gives the same chart, each row worked the same way', (_name, turn) => {
    fc.assert(
      fc.property(arbitraryOneChart(), (pattern) => {
        const twice = turn(turn(pattern))
        expect(twice.loom).toEqual(pattern.loom)
        expect(textOf(twice)).toEqual(textOf(pattern))
        expect(chartOn(twice).repeat).toEqual(chartOn(pattern).repeat)
        expect(chartOn(twice).rows.map(({ run }) => run)).toEqual(
          chartOn(pattern).rows.map(({ run }) => run),
        )
        expect(headingsOf(chartOn(twice), twice.loom)).toEqual(
          headingsOf(chartOn(pattern), pattern.loom),
        )
        expect(twice.steps).toEqual(pattern.steps)
      }),
      { numRuns: 40 },
    )
  })

  test('reversing the direction keeps the order of the strands as the right side is seen', () => {
    const crosses = fc.constantFrom('1/1 LC', '2/1 RC', '2/2 LC', '1/3 LPC', '3/2 RC', 'k', 'p')
    const row = fc.array(crosses, { minLength: 1, maxLength: 6 }).map((ids) => {
      const cells = ids.flatMap((id) => {
        const width = /^(\d)\/(\d)/.exec(id)
        const columns = width ? Number(width[1]) + Number(width[2]) : 1
        return [id, ...new Array<string>(columns - 1).fill('')]
      })
      return [...cells, ...new Array<string>(30).fill('k')].slice(0, 30)
    })
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), (rows) => {
        const pattern = patternOf(
          ...rows.map((cells) => cells.map((c) => c.replace(' ', '_') || '.').join(' ')),
        )
        const wales = workPattern(pattern).run.end.stacks.map(waleOf)
        const reversed = workPattern(reverseDirection(pattern)).run.end.stacks.map(waleOf)
        // Wale w of one loom is wale last - w of the other; the pegs stand mirrored as well.
        expect(reversed.map((wale) => 29 - wale).reverse()).toEqual(wales)
      }),
    )
  })
})
