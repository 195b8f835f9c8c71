import { describe, expect, test } from 'vitest'
import { contextOf } from '../../src/booklet/context'
import { layParts } from '../../src/booklet/part'
import { bookletParts } from '../../src/booklet/parts'
import { usualSettings } from '../../src/booklet/settings'
import type { Pattern } from '../../src/pattern/pattern'
import { workPattern } from '../../src/pattern/work'
import { starterCharts } from '../../src/shelf/seeds'
import { turnedHeel } from '../drawing/pieces'
import { ferryMitt, withPiece } from '../words/piece/pieces'
import { allText, layOut } from './read'

const forBaby = (pattern: Pattern): Pattern => ({
  ...pattern,
  making: { ...pattern.making, forBaby: true },
})

/** A piece that has something of everything: several charts, a pair, pictures. */
const everything = forBaby(
  withPiece(ferryMitt(), { pictures: [{ chart: 'Plait', row: 0, from: 2, to: 9 }] }),
)

const contextIn = (pattern: Pattern, settings = usualSettings) =>
  contextOf(workPattern(pattern), settings)

describe.each(bookletParts.map((part) => [part.id, part] as const))('the part %s', (_, part) => {
  test('stands in the booklet of a piece that has everything', () => {
    const context = contextIn(everything)
    expect(part.isAsked(context)).toBe(true)
    const { blocks } = layParts([part], context)
    expect(blocks.flatMap(({ strips }) => strips).length).toBeGreaterThan(0)
  })

  test('is left out when its switch is off', () => {
    if (!part.leavable) return
    expect(part.leavable.isOffered(everything)).toBe(true)
    const settings = { ...usualSettings, [part.leavable.setting]: false }
    expect(part.isAsked(contextIn(everything, settings))).toBe(false)
    expect(layParts(bookletParts, contextIn(everything, settings)).blocks.length).toBeLessThan(
      layParts(bookletParts, contextIn(everything)).blocks.length,
    )
  })
})

test('parts have names of their own', () => {
  expect(new Set(bookletParts.map(({ id }) => id)).size).toBe(bookletParts.length)
  expect(new Set(bookletParts.map(({ label }) => label)).size).toBe(bookletParts.length)
})

test('what is not offered for a piece has nothing to lay out', () => {
  for (const { pattern } of starterCharts)
    for (const { id, leavable } of bookletParts)
      if (leavable && !leavable.isOffered(pattern()))
        expect(
          layParts(
            bookletParts.filter((part) => part.id === id),
            contextIn(pattern()),
          ).blocks,
        ).toEqual([])
})

test('"rep" is explained where only the bind-off says it', () => {
  const [list = '', rows = ''] = allText(layOut(turnedHeel())).split(' Instructions ')
  expect(rows.match(/\brep\b/gu)).toEqual(['rep'])
  expect(rows.indexOf('rep')).toBeGreaterThan(rows.indexOf('Bind off'))
  expect(list).toContain(' rep repeat ')
})

test('cautions stand before the first chart, and so before a second piece', () => {
  const ids = bookletParts.map(({ id }) => id)
  expect(ids.indexOf('cautions')).toBe(ids.indexOf('front') + 1)
  const text = allText(layOut(everything))
  expect(text).toContain('Cautions')
  expect(text.indexOf('Cautions')).toBeLessThan(text.indexOf('Key'))
})
