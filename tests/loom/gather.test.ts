/** Which loops each stitch gets, and where loops have to be moved. */
import { describe, expect, test } from 'vitest'
import {
  drifts,
  findMiscount,
  inOrder,
  loopsInRun,
  pegsOf,
  standsReady,
  supply,
} from '../../src/loom/gather'
import { loomRow, type Site } from '../../src/loom/row'
import { castOn, sameState, type LoomState } from '../../src/loom/state'
import { emptyStack, single, strand } from '../../src/loom/strand'
import { stitchOf } from '../../src/stitches/vocabulary'

/** Stitches side by side from a peg on. */
function rowOf(ids: string, from = 0) {
  let peg = from
  const sites: Site[] = ids.split(' ').map((id) => {
    const stitch = stitchOf(id.replace('_', ' '))
    const site = { stitch, peg }
    peg += stitch.width
    return site
  })
  return loomRow(sites, from, peg - 1, null, 'on')
}

/** A loom of which some pegs, from 0, hold no loop. */
const without = (pegs: number, ...empty: number[]): LoomState => {
  const full = castOn(pegs)
  return {
    ...full,
    stacks: full.stacks.map((stack, peg) => (empty.includes(peg) ? emptyStack : stack)),
  }
}

test('a row sums up its stitches, and is steady where none takes or makes more than its pegs', () => {
  expect(rowOf('k 2/2_LC p')).toMatchObject({ takes: 6, makes: 6, steady: true, from: 0, to: 5 })
  expect(rowOf('k2tog yo')).toMatchObject({ takes: 2, makes: 2, steady: false })
  expect(rowOf('k none')).toMatchObject({ takes: 1, makes: 1, steady: false })
})

test('sites and their pegs stand in working order', () => {
  const row = rowOf('k 1/1_LC p')
  expect(inOrder(row, 'forward').map(({ peg }) => peg)).toEqual([0, 1, 3])
  expect(inOrder(row, 'back').map(({ peg }) => peg)).toEqual([3, 1, 0])
  const cross = row.sites[1] as Site
  expect([pegsOf(cross, 'forward'), pegsOf(cross, 'back')]).toEqual([
    [1, 2],
    [2, 1],
  ])
})

test('loops are counted in the run of the row only', () => {
  expect(loopsInRun(without(6, 2), rowOf('k k k', 1))).toBe(2)
  expect(loopsInRun(without(6, 0, 5), rowOf('k k k', 1))).toBe(3)
})

describe('a row stands ready', () => {
  test.each([
    ['k k k', [], true],
    ['k k k', [1], false],
    ['k none k', [1], true],
    ['k none k', [], false],
    ['k yo k', [1], true],
    ['k yo k', [], false],
    ['1/1_LC k', [], true],
    ['1/1_LC k', [1], false],
    ['k2tog yo k', [], false],
    ['k2tog none k', [1], false],
  ])('%s over empty pegs %o: %s', (ids, empty, ready) => {
    expect(standsReady(without(3, ...empty), rowOf(ids))).toBe(ready)
  })
})

test('each stitch takes the next loops on its way, whichever way it goes', () => {
  const row = rowOf('k2tog yo k none k')
  const given = (heading: 'forward' | 'back', before = without(5, 3)) =>
    supply(before, row, heading).sources
  expect(given('forward')).toEqual([[0, 1], [], [2], [], [4]])
  expect(given('back')).toEqual([[4], [], [2], [], [1, 0]])
})

test('stitches and loops drift apart and come together again', () => {
  const row = rowOf('k2tog k k yo')
  expect(drifts(castOn(4), row, 'forward')).toEqual([1, 1, 1, 0])
  expect(drifts(castOn(4), row, 'back')).toEqual([-1, -1, -1, 0])
  expect(drifts(without(4, 3), row, 'forward')).toEqual([1, 1, 1, 1])
})

describe('a miscount is told with its numbers, and up to where they agree', () => {
  test.each([
    ['k k k k', [], 'forward', null],
    ['k k2tog k k', [], 'forward', { takes: 5, loops: 4, afterPeg: 0 }],
    ['k k2tog k k', [], 'back', { takes: 5, loops: 4, afterPeg: 2 }],
    ['k2tog k k k', [], 'forward', { takes: 5, loops: 4, afterPeg: null }],
    ['k k yo k', [], 'forward', { takes: 3, loops: 4, afterPeg: 1 }],
    ['k2tog yo yo k', [], 'forward', { takes: 3, loops: 4, afterPeg: 1 }],
    ['1/1_LC yo k', [], 'forward', { takes: 3, loops: 4, afterPeg: 1 }],
    ['yo 1/1_LC k', [], 'back', { takes: 3, loops: 4, afterPeg: 1 }],
    ['k k k k', [2], 'forward', { takes: 4, loops: 3, afterPeg: 1 }],
  ] as const)('%s over empty pegs %o, %s', (ids, empty, heading, miscount) => {
    expect(findMiscount(without(4, ...empty), rowOf(ids), heading)).toEqual(miscount)
  })
})

test('two looms are the same where nothing later could tell them apart', () => {
  const state = castOn(4)
  expect(sameState(state, { ...castOn(4) })).toBe(true)
  const others: Partial<LoomState>[] = [
    { heading: 'back' },
    { float: 1 },
    { inFront: 1 },
    { yarn: { gap: 1, side: 'inside' } },
    { yarn: { gap: 0, side: 'outside' } },
    { stacks: state.stacks.slice(1) },
    { stacks: castOn(5).stacks },
    { stacks: state.stacks.with(3, single(strand('knit', 3))) },
    { stacks: state.stacks.with(0, emptyStack) },
  ]
  for (const change of others) expect(sameState(state, { ...state, ...change })).toBe(false)
})
