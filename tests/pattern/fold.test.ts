import { expect, test } from 'vitest'
import { checkPiece } from '../../src/checks/piece/check'
import { directions } from '../../src/loom/direction'
import { addChart } from '../../src/pattern/edits/piece'
import { foldOf } from '../../src/pattern/pegs/fold'
import { shortRowChart } from '../../src/pattern/generate/shortRows'
import { usualHeel } from '../../src/pattern/generate/wish'
import { newPattern, type Pattern } from '../../src/pattern/pattern'
import type { BindOff } from '../../src/loom/move'
import type { Step } from '../../src/pattern/piece'
import { workPiece } from '../../src/pattern/workPiece'
import { stitchOf } from '../../src/stitches/vocabulary'

const castOn: Step = { kind: 'cast on', how: 'e-wrap', pegs: null }
const plain = (rows: number): Step => ({ kind: 'plain', stitch: stitchOf('k'), amount: { rows } })

/** A tube with a toe of the usual kind on its pegs, closed in a way that joins two halves. */
function withToe(pegs: number, how: BindOff, turn: 'German turn' | 'wrap', ...after: Step[]) {
  const tube = newPattern(pegs, 4)
  const wish = { ...usualHeel(tube.loom), turn }
  const toe = shortRowChart(tube.loom, wish)
  if (!toe.ok) throw new Error(toe.message)
  const pattern = addChart(tube, 'Toe', toe.chart)
  const step: Step = { kind: 'chart', chart: 'Toe', times: 1 }
  const bindOff: Step = { kind: 'bind off', how, pegs: null }
  const steps = [castOn, plain(6), step, ...after, bindOff]
  return { wish, pattern: { ...pattern, steps } }
}

const ways = (pattern: Pattern) => workPiece(pattern).steps.at(-1)?.edge

test('a toe is joined to the other half of the tube: one peg of each pair lies on the toe', () => {
  for (const turn of ['German turn', 'wrap'] as const)
    for (let pegs = 12; pegs <= 120; pegs += 2)
      for (const how of ['graft', 'three-needle'] as const) {
        const { wish, pattern } = withToe(pegs, how, turn)
        const edge = ways(pattern)
        const list = edge?.way.pegs ?? []
        expect(list).toHaveLength(pegs)
        const onToe = (peg = -1) => peg >= wish.run.from && peg <= wish.run.to
        for (let pair = 0; pair < pegs / 2; pair++)
          expect(onToe(list[pair])).toBe(!onToe(list[pegs - 1 - pair]))
        // The first two lie side by side at one corner of the toe, where the yarn is.
        expect((list.at(-1) ?? 0) + 1).toBe(list[0])
        expect(edge?.faults).toEqual([])
      }
})

test('a few rounds after the toe change nothing; many make it a heel, and the fold is in the middle', () => {
  expect(ways(withToe(40, 'graft', 'wrap', plain(2)).pattern)?.fold).toBe(1)
  const far = ways(withToe(40, 'graft', 'wrap', plain(30)).pattern)
  expect(far?.fold).toBeNull()
  expect(far?.way.pegs[0]).toBe(0)
})

test('other ways to bind off, and a toe on another part than half, have no fold', () => {
  expect(ways(withToe(40, 'gather', 'wrap').pattern)?.fold).toBeNull()
  const { pattern } = withToe(40, 'graft', 'wrap')
  const { steps } = workPiece(pattern)
  expect(foldOf(steps.slice(0, -1), 40)).toBe(1)
  expect(foldOf(steps.slice(0, -1), 38)).toBeNull()
})

test('the way round does not matter', () => {
  for (const direction of directions) {
    const { pattern } = withToe(40, 'graft', 'German turn')
    const turned = { ...pattern, loom: { ...pattern.loom, direction } }
    expect(ways(turned)?.way.pegs[0]).toBe(1)
  }
})

test('a toe on more or fewer pegs than half is found at the bind-off that joins the halves', () => {
  const tube = newPattern(40, 4)
  for (const [length, count] of [
    [20, 0],
    [22, 1],
    [16, 1],
  ] as const) {
    const run = { from: 1, to: length }
    const toe = shortRowChart(tube.loom, { ...usualHeel(tube.loom), run, turned: 5 })
    if (!toe.ok) throw new Error(toe.message)
    const pattern = addChart(tube, 'Toe', toe.chart)
    const step: Step = { kind: 'chart', chart: 'Toe', times: 1 }
    const graft: Step = { kind: 'bind off', how: 'graft', pegs: null }
    const work = workPiece({
      ...pattern,
      steps: [castOn, plain(6), step, graft],
    })
    const found = checkPiece(work).filter(({ rule }) => rule === 'piece-halves')
    expect(found.map(({ message }) => message)).toEqual(
      new Array<string>(count).fill(
        `Step 4 (bind off) joins 20 loops with 20, but the short rows before it lie on ${length} pegs: the fold does not meet their corners.`,
      ),
    )
  }
})
