import { describe, expect, test } from 'vitest'
import { makeShortRows } from '../../../src/pattern/generate/shortRows'
import { mostTurns, usualTurns } from '../../../src/pattern/generate/wish'
import { shortRowShapes, type ShortRowWish } from '../../../src/pattern/pattern'
import type { LoomSetup } from '../../../src/pattern/pattern'
import { isClosed, isReadyToGraft, rulesThatFind, turnKinds, workSection } from './sections'
import { stitchOf } from '../../../src/stitches/vocabulary'

/**
 * Every generated heel for every run of 6 to 200 pegs and every step passes all turn checks and
 * leaves one loop on each peg. Where the whole product of what can be chosen is too slow, it is gone
 * through evenly: any four runs meet each turn, shape, loom and corner, and each step comes.
 */
const least = 6
const most = 200
const runs = Array.from({ length: most - least + 1 }, (_, at) => least + at)
const steps = Array.from({ length: most - 2 }, (_, at) => 1 + at)

interface Section {
  readonly wish: ShortRowWish
  readonly loom: Pick<LoomSetup, 'pegs' | 'shape' | 'direction'>
}

/** The item of the list at this place, beginning again after the last. */
const pick = <T>(list: readonly T[], at: number): T => list[at % list.length] as T

/** As many as fit, the usual third, or some number between. */
const someTurns = (
  run: ShortRowWish['run'],
  step: number,
  sides: Section['wish']['sides'],
  at: number,
) => {
  const fit = mostTurns(run, step, sides)
  return pick([fit, Math.min(usualTurns(run, step), fit), 1 + ((at * 7) % fit)], at)
}

const direction = (at: number) => pick(['clockwise', 'counterclockwise'] as const, at)

/** Steps with which two turns fit at each side; with wider ones there is one, and no step. */
const widest = (length: number): number => Math.floor((length - 1) / 2) - 1

/** What is chosen besides, 24 ways. */
const choices = turnKinds.flatMap((turn) =>
  shortRowShapes.flatMap((shape) =>
    (['ring', 'bar'] as const).flatMap((loomShape) =>
      [true, false].map((closeCorners) => ({ turn, shape, loomShape, closeCorners, beside: null })),
    ),
  ),
)

/**
 * A twelfth of the steps that show for each run, the other ones for the runs beside it; a quarter of
 * the choices, the other ones for the next three runs.
 */
function* bothSided(): Generator<Section> {
  for (const length of runs)
    for (let at = 0; at < Math.max(widest(length) / 12, choices.length / 4); at++) {
      const step = at === 0 ? widest(length) : 1 + ((at * 12 + (length % 12)) % widest(length))
      const { loomShape, ...chosen } = pick(choices, at * 5 + length * 6)
      const closes = chosen.shape === 'heel' && chosen.closeCorners
      const free = closes && loomShape === 'bar' ? 1 : 0
      const before = (at % 3) + free
      // In the round one corner may lie over the join.
      const after = Math.max(((at + length) % 3) + free, closes ? 2 - before : 0)
      const run = { from: before, to: before + length - 1 }
      const turned = someTurns(run, step, 'both', at + (length >> 1))
      yield {
        wish: { ...chosen, run, step, turned, sides: 'both' },
        loom: {
          pegs: before + length + after,
          shape: loomShape,
          direction: direction(at + (length >> 2)),
        },
      }
    }
}

const oneSidedChoices = turnKinds.flatMap((turn) =>
  shortRowShapes.flatMap((shape) =>
    (['first', 'last'] as const).map((sides) => ({ turn, shape, sides })),
  ),
)

/** At one side of a bar: a step in twenty, other ones for each run. */
function* oneSided(): Generator<Section> {
  for (const length of runs)
    for (let at = 0; at < Math.max(length / 20, oneSidedChoices.length / 2); at++) {
      const widest = length - 2
      const step = at === 0 ? widest : 1 + ((at * 20 + (length % 20)) % widest)
      const chosen = pick(oneSidedChoices, at + length * 4)
      const beside = (at + length) % 4
      const pegs = length + beside
      const run =
        chosen.sides === 'last' ? { from: 0, to: length - 1 } : { from: beside, to: pegs - 1 }
      const turned = someTurns(run, step, chosen.sides, at + (length >> 1))
      yield {
        wish: { ...chosen, run, step, turned, closeCorners: length % 2 === 0, beside: null },
        loom: { pegs, shape: 'bar', direction: direction(at + (length >> 2)) },
      }
    }
}

/** The good practice that the wish itself leaves; in sections at one side there is none. */
function hintsOf({ wish, loom }: Section): string[] {
  const { shape, turn, run, step, turned, sides, closeCorners } = wish
  const hints: string[] = []
  // Out and back again takes two turns at a side, the second of them the corner or not.
  // A toe ends with its last short row: it has no corners to close.
  if (shape === 'toe' && sides === 'both' && step > 1 && turned > 1) return ['turn-steps']
  if (shape !== 'heel' || sides !== 'both' || (turned === 1 && !closeCorners)) return hints
  const goesRound = loom.shape === 'ring' && turn === 'wrap'
  const hasCorner = goesRound || run.from > 0 || run.to < loom.pegs - 1
  if (!closeCorners && hasCorner) hints.push('turn-corners')
  if (step > 1 && turned > 1) hints.push('turn-steps')
  return hints
}

/** The sections of which the checks or the loom say what they should not. */
function wrongOf(sections: readonly Section[]): unknown[] {
  return sections.flatMap((section) => {
    const work = workSection(section.wish, section.loom)
    const { faults, hints } = rulesThatFind(work)
    const closed =
      section.wish.shape === 'toe' ? isReadyToGraft(work, section.wish) : isClosed(work)
    // How many pegs are turned is the wish's own; see below for the usual third.
    const others = hints.filter((rule) => rule !== 'turn-third')
    const right = closed && faults.length === 0 && others.join() === hintsOf(section).join()
    return right ? [] : [{ ...section, faults, hints: others, closed }]
  })
}

/** How many runs and steps occur, and of the other choices in any four runs beside each other. */
function coverOf(sections: readonly Section[]) {
  const lengths = sections.map(({ wish: { run } }) => run.to - run.from + 1)
  const perRun = new Map<number, Set<string>>()
  sections.forEach(({ wish: { turn, shape, sides, closeCorners }, loom }, at) => {
    const length = lengths[at] ?? 0
    const key = [turn, shape, sides, sides === 'both' && closeCorners, loom.shape].join()
    perRun.set(length, (perRun.get(length) ?? new Set()).add(key))
  })
  return {
    runs: new Set(lengths).size,
    steps: new Set(sections.map(({ wish }) => wish.step)).size,
    fewestChoices: Math.min(
      ...runs.slice(3).map((length) => {
        const four = [3, 2, 1, 0].map((less) => perRun.get(length - less) ?? new Set<string>())
        return new Set(four.flatMap((keys) => [...keys])).size
      }),
    ),
  }
}

describe('every run of 6 to 200 pegs passes the checks and leaves one loop on each peg', () => {
  test('turned at both sides, on a ring and a bar, with every step that shows there', () => {
    const sections = [...bothSided()]
    expect(coverOf(sections)).toEqual({ runs: runs.length, steps: widest(most), fewestChoices: 24 })
    expect(wrongOf(sections).slice(0, 5)).toEqual([])
  }, 30_000)

  test('with a step too wide for a second turn: the same rows as for one turn', () => {
    for (const turn of turnKinds)
      for (const shape of shortRowShapes) {
        const one = {
          turn,
          shape,
          turned: 1,
          sides: 'both',
          closeCorners: true,
          beside: null,
        } as const
        for (const length of runs) {
          const make = (step: number) =>
            makeShortRows(
              { pegs: length + 2, shape: 'ring' },
              { ...one, run: { from: 1, to: length }, step },
              stitchOf('k'),
              0,
            )
          const wide = steps.filter((step) => step > widest(length) && step <= length - 2)
          const narrow = JSON.stringify(make(1))
          expect(wide.filter((step) => JSON.stringify(make(step)) !== narrow)).toEqual([])
        }
      }
  })

  test('turned at one side of a bar, with every step', () => {
    const sections = [...oneSided()]
    expect(coverOf(sections)).toEqual({
      runs: runs.length,
      steps: steps.length,
      fewestChoices: oneSidedChoices.length,
    })
    expect(wrongOf(sections).slice(0, 5)).toEqual([])
  }, 30_000)
})
