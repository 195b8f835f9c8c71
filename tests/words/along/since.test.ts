import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { workPiece } from '../../../src/pattern/workPiece'
import type { Pattern } from '../../../src/pattern/pattern'
import { alongPiece, type Along } from '../../../src/words/along/along'
import { changedSince, printsOf } from '../../../src/words/along/since'
import type { Place } from '../../../src/words/along/place'
import { band, chartOf } from '../piece/pieces'

const along = (pattern: Pattern): Along => alongPiece(workPiece(pattern))
const place = (stop: number, stint = 1): Place => ({ stop, stint, left: 0 })

/** Rows that all read differently, so that each can be found again. */
const rowNames = [
  'k*5, p',
  'k*4, p*2',
  'k*3, p*3',
  'k*2, p*4',
  'k, p*5',
  'p, k*5',
  'p*2, k*4',
  'p*3, k*3',
]
const rowsOf = (...rows: readonly string[]) => along(band(chartOf(...rows), { pegs: 24 }))
const all = rowsOf(...rowNames)

const since = (now: Along, kept: Place, was = all) => changedSince(now, kept, printsOf(was))

describe('a place in a piece that was changed since', () => {
  test('nothing was changed', () => {
    expect(since(rowsOf(...rowNames), place(4))).toBeNull()
  })

  test('a row that is changed later leaves the place as it was', () => {
    const now = rowsOf(...rowNames.with(6, 'p*6'))
    expect(since(now, place(4))).toEqual({
      place: place(4),
      own: 'same',
      shift: 0,
      before: [],
      after: [7],
      goneAfter: 0,
    })
  })

  test('rows that are put in before it move it', () => {
    const now = rowsOf('p*6', ...rowNames)
    expect(since(now, place(4))).toMatchObject({
      place: place(5),
      own: 'same',
      shift: 1,
      before: [1],
    })
  })

  test('rows that are removed before it move it back', () => {
    const now = rowsOf(...rowNames.slice(2))
    expect(since(now, place(5))).toMatchObject({ place: place(3), own: 'same', shift: -2 })
  })

  test('its own row changed: it begins at the first stitch', () => {
    const now = rowsOf(...rowNames.with(3, 'p*6'))
    expect(since(now, place(4))).toMatchObject({
      place: place(4, 0),
      own: 'changed',
      before: [],
      after: [],
    })
  })

  test('its own row gone: the row after it is the nearest', () => {
    const now = rowsOf(...rowNames.toSpliced(3, 1))
    expect(since(now, place(4))).toMatchObject({ place: place(4, 0), own: 'gone', after: [] })
  })

  test('a piece that is worked to its end stays so, with what was changed in it', () => {
    const now = rowsOf('p*6', ...rowNames)
    expect(since(now, place(10, 0))).toMatchObject({
      place: place(11, 0),
      own: 'same',
      before: [1],
    })
  })

  test('whatever is done to its rows, a row that still stands is found again', () => {
    const kinds = fc.array(fc.constantFrom<'remove' | 'put in'>('remove', 'put in'), {
      maxLength: 4,
    })
    fc.assert(
      fc.property(fc.nat(7), kinds, fc.infiniteStream(fc.nat()), (row, edits, numbers) => {
        const rows = [...rowNames]
        const own = rowNames[row] as string
        for (const edit of edits) {
          const at = Number(numbers.next().value) % rows.length
          if (edit === 'put in') rows.splice(at, 0, 'p*6')
          else if (rows[at] !== own) rows.splice(at, 1)
        }
        const found = since(rowsOf(...rows), place(row + 1))
        expect(found?.place ?? place(row + 1)).toEqual(place(rows.indexOf(own) + 1))
        expect(found?.own ?? 'same').toBe('same')
      }),
    )
  })

  test('a place of any kind lands inside of the piece that is there', () => {
    fc.assert(
      fc.property(fc.array(fc.nat()), fc.nat(30), fc.nat(30), (was, stop, stint) => {
        const found = changedSince(all, { stop, stint, left: 0 }, was)
        expect(found?.place.stop).toBeGreaterThanOrEqual(0)
        expect(found?.place.stop).toBeLessThanOrEqual(all.stops.length)
      }),
    )
  })
})
