import { describe, expect, test } from 'vitest'
import type { Heading } from '../../src/loom/direction'
import { loomRow } from '../../src/loom/row'
import { castOn } from '../../src/loom/state'
import { workRow } from '../../src/loom/work'
import { crossings } from '../../src/loom/row'
import {
  barleycorn,
  euSizes,
  feetOfSock,
  footOfEuSize,
  footOfUkChildSize,
  parisPoint,
  roundFoot,
  sockShorter,
} from '../../src/booklet/feet'
import { yarnClasses, yarnClassesFor } from '../../src/pattern/yarn'
import { stitchOf, standardVocabulary } from '../../src/stitches/vocabulary'
import { abbreviations } from './data/abbreviations'
import {
  councilSigns,
  crossOrders,
  infantFeet,
  roundPerLength,
  shoeSizes,
  sockEase,
  yarnGauges,
} from './data/standards'
import { stitchNamed } from './notation'
import { habits } from './onLoom'
import { spellingsOf } from '../../src/languages/languages'

test('yarn classes have the gauges of the Craft Yarn Council', () => {
  const ours = yarnClasses.map(({ number, name, stitches: { least, most } }) => [
    number,
    name,
    least === 1 ? `${most} and fewer` : `${least}-${most}`,
  ])
  expect(ours).toEqual(yarnGauges.values)
})

test.each([
  [36, [0]],
  [24, [2, 3]],
  [20, [4]],
  [15.4, [5]],
  [3, [7]],
  [50, []],
])('%s stitches to 10 cm are yarn of class %j', (stitches, classes) => {
  expect(yarnClassesFor(stitches).map(({ number }) => number)).toEqual(classes)
})

test('shoe sizes count the last in Paris points and barleycorns', () => {
  const feet = shoeSizes.values
  expect(parisPoint).toBeCloseTo(feet.parisPoint, 2)
  expect(barleycorn).toBeCloseTo(feet.barleycorn, 2)
  for (const size of [17, 24, 30, 38, 45]) {
    const lastLength = footOfEuSize(size) + feet.lastLongerThanFoot
    expect((lastLength / 10) * feet.euSizePerLastCentimetre).toBeCloseTo(size)
  }
  for (const size of [2, 6, 10]) {
    const lastLength = footOfUkChildSize(size) + feet.lastLongerThanFoot
    expect((lastLength / 25.4) * feet.ukChildSizePerLastInch - feet.ukChildSizeLess).toBeCloseTo(
      size,
    )
  }
})

test('a sock fits feet that are longer than it by what socks are knitted shorter', () => {
  expect(sockShorter).toEqual(sockEase.values)
  const { least, most } = feetOfSock(220)
  expect((least - 220) / least).toBeCloseTo(sockEase.values.least)
  expect((most - 220) / most).toBeCloseTo(sockEase.values.most)
})

test('the smallest shoe size is for the youngest of the infant feet, 93 mm', () => {
  const sizes = Array.from(
    { length: euSizes.most - euSizes.least + 1 },
    (_, at) => euSizes.least + at,
  )
  const nearest = infantFeet.values.map(([, length]) => {
    const away = (size: number) => Math.abs(footOfEuSize(size) - length)
    return sizes.reduce((best, size) => (away(size) < away(best) ? size : best))
  })
  expect(nearest[0]).toBe(euSizes.least)
  // No foot is further from its size than half of what lies between two sizes.
  infantFeet.values.forEach(([, length], at) => {
    expect(Math.abs(footOfEuSize(nearest[at] ?? 0) - length)).toBeLessThan(
      shoeSizes.values.parisPoint / 2,
    )
  })
  // 1.5 x (143 mm + 15 mm) = 23.7; 3 x (143 mm + 15 mm) in inches - 12 = 6.7.
  expect(nearest.at(-1)).toBe(24)
  expect(footOfUkChildSize(6)).toBeLessThan(143)
  expect(footOfUkChildSize(7)).toBeGreaterThan(143)
})

test.each(infantFeet.values)(
  'round a foot at %i months is about 95 percent of its %i mm',
  (_, length) => {
    expect(roundFoot(length)).toBeCloseTo(length * roundPerLength.values)
  },
)

test('the signs printed under the name of the Craft Yarn Council are the ones it shows', () => {
  const shown = standardVocabulary.stitches.filter(({ signs }) => signs?.council)
  expect(shown.map(({ id }) => id).sort()).toEqual([...councilSigns.values].sort())
  for (const { signs } of shown) expect(signs?.cyc.length).toBeGreaterThan(0)
})

describe.each(crossings)('crosses by the habit "%s"', (crossing) => {
  const orderOf = (id: string, direction: 'clockwise' | 'counterclockwise', heading: Heading) => {
    const stitch = stitchOf(id)
    const pegs = stitch.width
    const start = castOn(pegs)
    const before =
      heading === 'forward' ? start : { ...start, yarn: { ...start.yarn, gap: pegs }, heading }
    const row = loomRow([{ stitch, peg: 0 }], 0, pegs - 1, heading, 'on')
    const run = workRow(before, row, { ...habits, shape: 'bar', direction, crossing })
    expect(run.faults).toEqual([])
    return run.after.stacks.map(([loop]) => (loop?.wale ?? -1) + 1)
  }

  test.each(crossOrders.values)('%s worked right to left sets the loops %j', (id, order) => {
    expect(orderOf(id, 'clockwise', 'forward')).toEqual(order)
  })

  test.each(crossOrders.values)(
    '%s: the same peg numbers the other way are its mirror',
    (id, order) => {
      expect(orderOf(stitchOf(id).mirror, 'counterclockwise', 'forward')).toEqual(order)
    },
  )

  test.each(crossOrders.values)('%s looks the same whichever way its row goes', (id, order) => {
    expect(orderOf(id, 'clockwise', 'back')).toEqual(order)
  })
})

describe('abbreviations', () => {
  const ours = abbreviations.flatMap(({ stitch, ...entry }) =>
    stitch ? [{ stitch, ...entry }] : [],
  )

  test.each(ours.map((entry) => [entry.token, entry] as const))(
    '%s: every spelling of it is known, and it takes and makes what the lists say',
    (_, { stitch, seen, takes, makes }) => {
      expect(seen.map((spelling) => [spelling, stitchNamed(spelling)?.id])).toEqual(
        seen.map((spelling) => [spelling, stitch]),
      )
      expect(stitchOf(stitch)).toMatchObject({ takes, makes })
    },
  )

  test('no spelling in our vocabulary stands for two stitches', () => {
    const owners = new Map<string, Set<string>>()
    for (const stitch of standardVocabulary.stitches)
      for (const spelling of [stitch.id, ...spellingsOf(stitch)]) {
        const key = spelling.toLowerCase().replaceAll(' ', '')
        owners.set(key, (owners.get(key) ?? new Set()).add(stitch.id))
      }
    expect([...owners].filter(([, ids]) => ids.size > 1)).toEqual([])
  })
})
