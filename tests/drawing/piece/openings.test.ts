import { describe, expect, test } from 'vitest'
import { lieOf, lyingOf } from '../../../src/drawing/piece/openings'
import { profileOf } from '../../../src/drawing/piece/profile'
import { sidePicture } from '../../../src/drawing/piece/side'
import { addChart, addStep } from '../../../src/pattern/edits/piece'
import { openingsOf } from '../../../src/pattern/pegs/openings'
import { secondOf } from '../../../src/pattern/pair'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { workPiece } from '../../../src/pattern/workPiece'
import { stitchOf } from '../../../src/stitches/vocabulary'

const room = { width: 90, height: 150, text: 2.8, chosen: null }

/** 32 pegs, 30 rounds, an opening of the last six pegs that is `high` rows high, 30 rounds. */
function mitt(direction: 'clockwise' | 'counterclockwise', high: number): Pattern {
  const cuff = newPattern(32, 30)
  const loom = { ...cuff.loom, direction }
  const start: Pattern = { ...cuff, loom, gauge: { stitches: 20, rows: 30 } }
  const part = { columns: 1, repeat: { from: 0, to: 0 }, bands: [] }
  const row = (heading: 'forward' | 'back') =>
    ({ cells: [stitchOf('k')], run: { from: 0, to: 25 }, heading, end: 'on' }) as const
  const rows = Array.from({ length: high }, (_, at) => row(at % 2 === 0 ? 'forward' : 'back'))
  const made = addChart(addChart(start, 'Beside', { ...part, rows }), 'To it', {
    ...part,
    rows: rows.slice(0, 1),
  })
  const thumb = { from: 26, to: 31 }
  const steps: Step[] = [
    { kind: 'chart', chart: 'To it', times: 1 },
    { kind: 'bind off', how: 'basic', pegs: thumb },
    { kind: 'chart', chart: 'Beside', times: 1 },
    { kind: 'cast on', how: 'e-wrap', pegs: thumb },
    { kind: 'plain', stitch: stitchOf('k'), amount: { rows: 30 } },
  ]
  return steps.reduce((piece, step, at) => addStep(piece, 2 + at, step), made)
}

/** Left, top, right and bottom of the opening, and of the piece, mm. */
function seen(pattern: Pattern) {
  const { scene } = sidePicture(workPiece(pattern), room)
  const boxOf = (key: RegExp) => {
    const paths = scene.layers
      .filter((layer) => key.test(layer.key))
      .flatMap(({ items }) => items.flatMap((item) => (item.kind === 'path' ? [item.d] : [])))
    const points = paths.flatMap((d) =>
      d.includes('h')
        ? [...d.matchAll(/M([\d.]+) ([\d.]+)h([\d.]+)v([\d.]+)/g)].flatMap(([, x, y, w, h]) => [
            [Number(x), Number(y)],
            [Number(x) + Number(w), Number(y) + Number(h)],
          ])
        : [...d.matchAll(/([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]),
    )
    const xs = points.map(([x = NaN]) => x)
    const ys = points.map(([, y = NaN]) => y)
    return {
      left: Math.min(...xs),
      right: Math.max(...xs),
      top: Math.min(...ys),
      bottom: Math.max(...ys),
    }
  }
  return { hole: boxOf(/^opening/), piece: boxOf(/^step/) }
}

describe('an opening for a thumb', () => {
  test('is where its pegs are bound off and cast on again; all other edges go round the piece', () => {
    const { steps } = workPiece(mitt('counterclockwise', 1))
    expect(openingsOf(steps)).toEqual([{ pegs: { from: 26, to: 31 }, from: 3, to: 5 }])
    expect(openingsOf(workPiece(newPattern(32, 30)).steps)).toEqual([])
  })

  test('makes no heel of the rounds beside it, and the piece no narrower', () => {
    const slices = profileOf(workPiece(mitt('counterclockwise', 1)))
    expect(slices.map(({ kind }) => kind)).not.toContain('cup')
    expect(new Set(slices.map(({ upper }) => upper))).toEqual(new Set([80]))
  })

  test.each([
    ['counterclockwise', 1],
    ['clockwise', 1],
    ['counterclockwise', 9],
  ] as const)('lies in true proportion in front, worked %s, %i rows high', (direction, high) => {
    const { hole, piece } = seen(mitt(direction, high))
    const scale = (piece.right - piece.left) / 80
    // Six of 20 stitches to 10 cm across, rows of 30 to 10 cm up, above 30 rounds and the last round before it.
    expect((hole.right - hole.left) / scale).toBeCloseTo(30, 0)
    expect((hole.bottom - hole.top) / scale).toBeCloseTo((high * 100) / 30, 0)
    expect((piece.bottom - hole.bottom) / scale).toBeCloseTo((31 * 100) / 30, 0)
    // The last pegs stand at the right where the loom is worked to the right, else at the left.
    if (direction === 'counterclockwise') expect(hole.right).toBeCloseTo(piece.right, 1)
    else expect(hole.left).toBeCloseTo(piece.left, 1)
  })

  test('of the second of a pair lies on the other side', () => {
    const first: Pattern = mitt('counterclockwise', 1)
    const pair: Pattern = { ...first, pair: 'mirrored' }
    const [one, two] = [seen(pair), seen(secondOf(pair))]
    expect(one.hole.right).toBeCloseTo(one.piece.right, 1)
    expect(two.hole.left).toBeCloseTo(two.piece.left, 1)
    expect(two.hole.right - two.hole.left).toBeCloseTo(one.hole.right - one.hole.left, 1)
    expect(two.hole.top).toBeCloseTo(one.hole.top, 1)
  })

  test('is named beside it, with its pegs and how wide it is', () => {
    const texts = sidePicture(workPiece(mitt('clockwise', 1)), room).scene.layers.flatMap(
      ({ items }) => items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
    )
    expect(texts.join(', ')).toContain('opening, 6 pegs, 3 cm wide')
    expect(texts).toContain('cast on 6')
  })
})

test('what lies on both halves of a tube is partly behind, and on a rake nothing is', () => {
  const ring = { pegs: 32, direction: 'counterclockwise', shape: 'ring' } as const
  expect(lieOf({ first: 0, loom: ring }, { from: 12, to: 19 })).toEqual([
    { left: 0.75, right: 1, behind: false },
    { left: 0.75, right: 1, behind: true },
  ])
  const rake = { ...ring, shape: 'bar' } as const
  expect(lieOf(lyingOf(rake, [], null), { from: 12, to: 19 })).toEqual([
    { left: 0.375, right: 0.625, behind: false },
  ])
  // A heel of the first half lies at the left, so that its middle is at that edge.
  expect(lyingOf(ring, [], { from: 0, to: 15 }).first).toBe(8)
})
