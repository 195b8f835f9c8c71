import { describe, expect, test } from 'vitest'
import { footLength } from '../../../src/drawing/piece/foot'
import { profileOf } from '../../../src/drawing/piece/profile'
import { sidePicture, stepAt } from '../../../src/drawing/piece/side'
import { addChart, addStep } from '../../../src/pattern/edits/piece'
import { shortRowChart } from '../../../src/pattern/generate/shortRows'
import { usualHeel } from '../../../src/pattern/generate/wish'
import { newPattern, type Pattern } from '../../../src/pattern/pattern'
import type { Step } from '../../../src/pattern/piece'
import { workPiece } from '../../../src/pattern/workPiece'
import { stitchOf } from '../../../src/stitches/vocabulary'

const leg: Pattern = { ...newPattern(40, 14), gauge: { stitches: 25, rows: 35 } }
const options = { width: 60, height: 120, text: 2.8, chosen: null }

function withHeel(...after: Step[]): Pattern {
  const heel = shortRowChart(leg.loom, usualHeel(leg.loom))
  if (!heel.ok) throw new Error(heel.message)
  const pattern = addChart(leg, 'Heel', heel.chart)
  const step: Step = { kind: 'chart', chart: 'Heel', times: 1 }
  const [castOn, chart, bindOff] = pattern.steps as readonly [Step, Step, Step]
  return {
    ...pattern,
    steps: [castOn, chart, step, ...after, bindOff],
  }
}

function gathered(pattern: Pattern): Pattern {
  const steps = pattern.steps.slice(0, -1)
  const end: Step = { kind: 'bind off', how: 'gather', pegs: null }
  return { ...pattern, steps: [...steps, end] }
}

test('each step is as high as its rows are by the gauge, and as wide as half the tube', () => {
  const slices = profileOf(
    workPiece(addStep(leg, 2, { kind: 'plain', stitch: stitchOf('k'), amount: { mm: 120 } })),
  )
  expect(
    slices.map(({ kind, height, lower }) => [kind, Math.round(height), Math.round(lower)]),
  ).toEqual([
    ['edge', 0, 80],
    ['rows', 40, 80],
    ['rows', 120, 80],
    ['edge', 0, 80],
  ])
})

test('a heel in the middle stands out; closed at the end of the piece it is a toe', () => {
  const kinds = (pattern: Pattern) => profileOf(workPiece(pattern)).map(({ kind }) => kind)
  const foot: Step = { kind: 'plain', stitch: stitchOf('k'), amount: { mm: 100 } }
  expect(kinds(withHeel(foot))).toContain('cup')
  expect(kinds(withHeel())).toContain('toe')
})

test('a foot is as long in several steps as in one', () => {
  const rounds = (rows: number): Step => ({
    kind: 'plain',
    stitch: stitchOf('k'),
    amount: { rows },
  })
  const long = (pattern: Pattern) =>
    profileOf(workPiece(pattern)).reduce((sum, { height }) => sum + height, 0)
  const inSteps = withHeel(rounds(10), rounds(10), rounds(10), rounds(10))
  expect(profileOf(workPiece(inSteps)).map(({ kind }) => kind)).not.toContain('toe')
  // 14 rounds, the one that closes the heel and 40 more, 35 to 10 cm.
  expect(long(withHeel(rounds(40)))).toBeCloseTo((55 * 100) / 35, 6)
  expect(long(inSteps)).toBeCloseTo(long(withHeel(rounds(40))), 6)
  const { boxes } = sidePicture(workPiece(inSteps), options)
  expect(boxes.map(({ step }) => step)).toEqual([0, 1, 2, 3, 4, 5, 6, 7])
})

test('the foot of a sock reaches from the back of the heel to the closed end', () => {
  const foot = (pattern: Pattern) => footLength(profileOf(workPiece(pattern)))
  const rounds = (rows: number): Step => ({
    kind: 'plain',
    stitch: stitchOf('k'),
    amount: { rows },
  })
  const heel = profileOf(workPiece(withHeel(rounds(40)))).find(({ kind }) => kind === 'cup')
  // The last round of the heel and 40 more, 35 to 10 cm.
  expect(foot(gathered(withHeel(rounds(40))))).toBeCloseTo((heel?.out ?? 0) + (41 * 100) / 35)
  expect(foot(withHeel(rounds(40)))).toBeNull()
  expect(foot(leg)).toBeNull()
})

test.each([14, 1])('a piece of %d rounds is as long gathered as bound off', (rows) => {
  const hat: Pattern = { ...newPattern(40, rows), gauge: { stitches: 25, rows: 35 } }
  const slices = profileOf(workPiece(gathered(hat)))
  const length = (of: typeof slices) => of.reduce((sum, { height }) => sum + height, 0)
  expect(length(slices)).toBeCloseTo(length(profileOf(workPiece(hat))))
  expect(length(slices)).toBeCloseTo((rows * 100) / 35)
  const dome = slices.find(({ kind }) => kind === 'gathered')
  expect([dome?.step, dome?.lower, dome?.upper]).toEqual([1, 80, 0])
  expect(sidePicture(workPiece(gathered(hat)), options).boxes.map(({ step }) => step)).toEqual([
    0, 1, 2,
  ])
})

test('some pegs gathered leave the piece as long as it is, and as wide', () => {
  const pegs = { from: 0, to: 5 }
  const part: Step = { kind: 'bind off', how: 'gather', pegs }
  const slices = profileOf(workPiece(addStep(leg, 2, part)))
  expect(slices.map(({ kind }) => kind)).not.toContain('gathered')
  expect(slices.reduce((sum, { height }) => sum + height, 0)).toBeCloseTo(40)
})

describe('a shoulder of a flat piece', () => {
  const bar: Pattern = { ...leg, loom: { ...leg.loom, shape: 'bar' } }
  const shoulder = (sides: 'first' | 'last' | 'both') => {
    const wish = {
      shape: 'wedge',
      turn: 'wrap',
      run: { from: 0, to: 39 },
      turned: 4,
      step: 4,
      closeCorners: false,
      beside: null,
    } as const
    const wedge = shortRowChart(bar.loom, { ...wish, sides })
    if (!wedge.ok) throw new Error(wedge.message)
    const pattern = addChart(bar, 'Shoulder', wedge.chart)
    const [castOn, chart, bindOff] = pattern.steps as readonly [Step, Step, Step]
    const step: Step = { kind: 'chart', chart: 'Shoulder', times: 1 }
    return profileOf(workPiece({ ...pattern, steps: [castOn, chart, step, bindOff] }))
  }

  test.each([
    ['last', 'first', 'last'],
    ['first', 'last', 'first'],
  ] as const)('turned at the %s peg slopes down to it', (sides, highAt, lowAt) => {
    const slices = shoulder(sides)
    expect(slices.map(({ kind }) => kind)).not.toContain('toe')
    const end = slices.at(-1)
    const at = { first: end?.drop?.[0], last: end?.drop?.at(-1) }
    expect(at[highAt]).toBe(0)
    expect(at[lowAt]).toBeGreaterThan(5)
  })

  test('turned at both is highest between', () => {
    const drop = shoulder('both').at(-1)?.drop ?? []
    expect(Math.min(...drop)).toBe(0)
    expect(drop[0]).toBeGreaterThan(5)
    expect(drop.at(-1)).toBeGreaterThan(5)
  })
})

test('the picture stays inside its room and in true proportion, whatever the room', () => {
  for (const [width, height] of [
    [60, 120],
    [40, 200],
    [120, 40],
  ] as const) {
    const { scene, boxes } = sidePicture(workPiece(leg), { ...options, width, height })
    expect([scene.width, scene.height]).toEqual([width, height])
    for (const { top, bottom } of boxes) {
      expect(top).toBeGreaterThanOrEqual(0)
      expect(bottom).toBeLessThanOrEqual(height)
    }
  }
})

test('lengths stand beside it; without a gauge it says that proportions are assumed', () => {
  const texts = (pattern: Pattern) =>
    sidePicture(workPiece(pattern), options).scene.layers.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
    )
  expect(texts(leg)).toEqual(['cast on', 'Chart', '14 rounds', '4 cm', 'bind off'])
  expect(texts({ ...leg, gauge: null })).toEqual(['cast on', 'Chart', '14 rounds', 'bind off'])
  const uk = { ...leg, gauge: null, style: { ...leg.style, terms: 'uk' as const } }
  expect(texts(uk)).toEqual(['cast on', 'Chart', '14 rounds', 'cast off'])
  expect(sidePicture(workPiece({ ...leg, gauge: null }), options).scene.title).toContain('assumed')
})

test('a press on a step or on what is said of it gives the step', () => {
  const picture = sidePicture(workPiece(leg), options)
  const { boxes, labels, labelsFrom } = picture
  expect(labels.map(({ step }) => step)).toEqual([0, 1, 2])
  for (const { step, top, bottom } of labels)
    expect(stepAt(picture, labelsFrom + 1, (top + bottom) / 2)).toBe(step)
  for (const { step, top, bottom } of boxes)
    expect(stepAt(picture, 2, (top + bottom) / 2)).toBe(step)
  expect(stepAt(picture, 2, -5)).toBeNull()
})

test('where there is little room the rows go first, then the names alone stay', () => {
  const texts = (width: number, height: number) =>
    sidePicture(workPiece(leg), { ...options, width, height }).scene.layers.flatMap(({ items }) =>
      items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
    )
  expect(texts(60, 18)).toEqual(['cast on', 'Chart', '4 cm', 'bind off'])
  expect(texts(60, 14)).toEqual(['cast on', 'Chart, 4 cm', 'bind off'])
  expect(texts(22, 14)).toEqual(['cast on', 'Chart', 'bind off'])
})

test('a cup near an end stays inside the picture', () => {
  const whole = withHeel()
  // Not bound off, so that the heel is no toe.
  const steps = whole.steps.slice(0, 3)
  const { scene } = sidePicture(workPiece({ ...whole, steps }), options)
  const drawn = scene.layers
    .filter(({ key }) => key.includes('cup'))
    .flatMap(({ items }) => items)
    .flatMap((item) => (item.kind === 'path' ? (item.d.match(/-?[\d.]+/g) ?? []) : []))
    .map(Number)
    // Of each pair the second is y.
    .filter((_, index) => index % 2 === 1)
  expect(drawn.length).toBeGreaterThan(0)
  expect(Math.min(...drawn)).toBeGreaterThanOrEqual(0)
  expect(Math.max(...drawn)).toBeLessThanOrEqual(options.height)
})
