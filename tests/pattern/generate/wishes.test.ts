/** A chart that has a wish is what the wish makes, whatever is done; else the wish is gone. */
import fc, { type Arbitrary } from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findChart, onChart } from '../../../src/pattern/charts'
import { mirror } from '../../../src/pattern/edits/mirror'
import { erase, paint } from '../../../src/pattern/edits/paint'
import { addChart, addStep, renameChart } from '../../../src/pattern/edits/piece'
import { setBand } from '../../../src/pattern/edits/rows'
import { setLoom } from '../../../src/pattern/edits/settings'
import { reverseDirection } from '../../../src/pattern/edits/turn-round'
import { makeAnew, wishesLetGo } from '../../../src/pattern/generate/anew'
import { shortRowChart } from '../../../src/pattern/generate/shortRows'
import { mostTurns, usualHeel } from '../../../src/pattern/generate/wish'
import { add, begin, undo } from '../../../src/pattern/history'
import { secondOf } from '../../../src/pattern/pair'
import {
  newPattern,
  shapes,
  shortRowShapes,
  shortRowSides,
  shortRowTurns,
  type Cell,
  type Pattern,
  type ShortRowWish,
} from '../../../src/pattern/pattern'
import { readFile, writeFile } from '../../../src/shelf/format'
import { stitchOf } from '../../../src/stitches/vocabulary'
import { arbitraryEdit } from '../../edits'

const heelIn = (pattern: Pattern) => {
  const heel = findChart(pattern, 'Heel')
  if (!heel) throw new Error('The heel is gone.')
  return heel
}

/** A piece whose first chart is made from this wish. */
function pieceOf(pegs: number, shape: 'ring' | 'bar', wish: ShortRowWish): Pattern | null {
  const empty = setLoom(newPattern(pegs, 2), { shape })
  const made = shortRowChart(empty.loom, wish)
  if (!made.ok) return null
  const added = addStep(addChart(empty, 'Heel', made.chart, wish), 2, {
    kind: 'chart',
    chart: 'Heel',
    times: 1,
  })
  const [leg, ...others] = added.charts
  return { ...added, charts: [...others, leg] as unknown as Pattern['charts'] }
}

/** All that the form can ask for on a loom of 6 to 30 pegs, the other pegs plain or textured. */
const arbitraryMade: Arbitrary<Pattern> = fc
  .record({
    pegs: fc.integer({ min: 6, max: 30 }),
    loomShape: fc.constantFrom(...shapes),
    ends: fc.tuple(fc.nat(6), fc.nat(6)),
    share: fc.double({ min: 0, max: 0.99, noNaN: true }),
    texture: fc.option(
      fc.array(fc.constantFrom('k', 'p', '1/1 LC'), { minLength: 2, maxLength: 8 }),
    ),
    wish: fc.record({
      shape: fc.constantFrom(...shortRowShapes),
      turn: fc.constantFrom(...shortRowTurns),
      sides: fc.constantFrom(...shortRowSides),
      step: fc.integer({ min: 1, max: 4 }),
      closeCorners: fc.boolean(),
    }),
  })
  .map(({ pegs, loomShape, ends: [before, after], share, texture, wish }) => {
    const run = {
      from: wish.sides === 'last' ? 0 : before,
      to: pegs - 1 - (wish.sides === 'first' ? 0 : after),
    }
    const turned = 1 + Math.floor(share * mostTurns(run, wish.step, wish.sides))
    const round = (shift: number): readonly Cell[] => {
      const cells: Cell[] = []
      for (let at = shift; texture && cells.length < pegs; at++) {
        const stitch = stitchOf(texture[at % texture.length] ?? 'k')
        if (cells.length + stitch.width > pegs) cells.push(stitchOf('k'))
        else cells.push(stitch, ...(stitch.width > 1 ? [null] : []))
      }
      return cells
    }
    const beside = texture && ([round(0), round(1)] as const)
    return pieceOf(pegs, loomShape, { ...wish, run, turned, beside })
  })
  .filter((pattern) => pattern !== null)

/** Charts with a wish that are not what it makes. */
const untrue = ({ charts, loom }: Pattern): readonly string[] =>
  charts.flatMap(({ name, chart, wish }) => {
    if (!wish) return []
    const made = shortRowChart(loom, wish)
    return made.ok && JSON.stringify(made.chart) === JSON.stringify(chart) ? [] : [name]
  })

describe('laws', () => {
  test('saved and opened again it is the same, and the file holds the wish and no rows', () => {
    fc.assert(
      fc.property(arbitraryMade, (pattern) => {
        const text = writeFile(pattern)
        expect(readFile(text)).toEqual({ ok: true, pattern })
        const { charts } = JSON.parse(text) as { charts: { name: string }[] }
        const heel = charts.find(({ name }) => name === 'Heel')
        expect(Object.keys(heel ?? {})).toEqual(['name', 'wish', 'words', 'aside'])
      }),
    )
  })

  test('after any edits a chart is what its wish makes, or has none', () => {
    const edited = arbitraryMade.chain((first) =>
      fc.tuple(fc.constant(first), fc.array(arbitraryEdit(first), { maxLength: 6 })),
    )
    fc.assert(
      fc.property(edited, ([first, edits]) => {
        let pattern = first
        for (const edit of edits) {
          pattern = edit(pattern)
          expect(untrue(pattern)).toEqual([])
        }
      }),
    )
  })

  test('an edit by hand lets the wish go and nothing else; undo brings it back', () => {
    fc.assert(
      fc.property(arbitraryMade, fc.nat(), fc.nat(), (pattern, row, column) => {
        const heel = heelIn(pattern)
        const at = row % heel.chart.rows.length
        const edits = [
          (p: Pattern) => setBand(p, at, at, 2),
          (p: Pattern) => paint(p, stitchOf('tuck'), at, column % heel.chart.columns),
        ]
        for (const edit of edits) {
          const done = edit(onChart(pattern, 'Heel'))
          if (heelIn(done).chart === heel.chart) continue
          expect(heelIn(done)).toEqual({ ...heel, chart: heelIn(done).chart, wish: null })
          expect(wishesLetGo(pattern, done)).toEqual(['Heel'])
          const spot = { row: 0, peg: 0 }
          const version = { from: 'Heel', on: 'Heel', label: '', spot, gesture: null }
          const back = undo(add(begin(pattern), { ...version, pattern: done }))
          expect(heelIn(back.present.pattern)).toBe(heel)
        }
      }),
    )
  })

  test('mirrored, reversed and as the second of a pair the rows are those of the wish turned', () => {
    let kept = 0
    let all = 0
    fc.assert(
      fc.property(arbitraryMade, (pattern) => {
        for (const turned of [
          mirror(pattern),
          reverseDirection(pattern),
          secondOf({ ...pattern, pair: 'mirrored' }),
        ]) {
          expect(untrue(turned)).toEqual([])
          all++
          if (heelIn(turned).wish) kept++
        }
      }),
    )
    expect(kept / all).toBeGreaterThan(0.5)
  })
})

const sock = (): Pattern => {
  const piece = pieceOf(24, 'ring', usualHeel({ pegs: 24, shape: 'ring' }))
  if (!piece) throw new Error('The usual heel cannot be made.')
  return piece
}

test('the usual heel keeps its wish mirrored and reversed, on the other half of the loom', () => {
  for (const turned of [mirror(sock()), reverseDirection(sock())])
    expect(heelIn(turned).wish?.run).toEqual({ from: 11, to: 22 })
})

test('on another loom it is made anew; where that cannot be the rows stay and the wish goes', () => {
  const larger = setLoom(sock(), { pegs: 30 })
  expect(heelIn(larger).chart.columns).toBe(30)
  expect(heelIn(larger).wish).toEqual(heelIn(sock()).wish)
  const small = setLoom(sock(), { pegs: 10 })
  expect(heelIn(small)).toEqual({ ...heelIn(sock()), wish: null })
})

test('made anew from other numbers it goes on with what is worked before it, and loses pictures of rows it has no more', () => {
  const before = {
    ...paint(onChart(sock(), 'Chart'), stitchOf('p'), 0, 20),
    pictures: [
      { chart: 'Heel', row: 1, from: 0, to: 3 },
      { chart: 'Heel', row: 14, from: 0, to: 3 },
    ],
  }
  const { wish } = heelIn(before)
  if (!wish) throw new Error('There is no wish.')
  const made = makeAnew(before, 'Heel', { ...wish, turned: 2 })
  if (!made.ok) throw new Error(made.message)
  expect(made.pattern.pictures).toEqual([{ chart: 'Heel', row: 1, from: 0, to: 3 }])
  expect(heelIn(made.pattern).wish?.turned).toBe(2)
  expect(heelIn(made.pattern).wish?.beside?.[0][20]).toBe(stitchOf('p'))
  expect(untrue(made.pattern)).toEqual([])
  expect(makeAnew(before, 'Heel', { ...wish, turned: 20 }).ok).toBe(false)
})

test('a name, or a stitch that is there already, is no edit of its rows', () => {
  const named = renameChart(sock(), 'Heel', 'Turned heel')
  expect(findChart(named, 'Turned heel')?.wish).toEqual(heelIn(sock()).wish)
  const on = onChart(sock(), 'Heel')
  expect(heelIn(erase(on, 0, 0)).wish).toEqual(heelIn(sock()).wish)
})

test('a file whose wish cannot be worked on its loom says so', () => {
  const text = writeFile(sock())
  const said = (from: string, to: string) => {
    const file = readFile(text.replace(from, to))
    return file.ok ? 'read' : file.message
  }
  expect(said('"to": 13', '"to": 30')).toBe(
    'In the chart "Heel": The wish cannot be worked on this loom. The heel runs from peg 2 to peg 30, but the loom has 24 pegs. Choose pegs from 1 to 24.',
  )
  expect(said('"turned": 4', '"turned": 0')).toBe(
    'In chart 1, "wish.turned" is 0; it must be a whole number from 1 to 400.',
  )
  expect(said('"closeCorners": true', '"closeCorners": true, "beside": ["k*24", "k*23"]')).toBe(
    'In the chart "Heel": The second row beside the wish has 23 columns; the chart has 24.',
  )
})
