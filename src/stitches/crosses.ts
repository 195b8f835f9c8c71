import type { StitchMove, StitchMoves } from '../loom/move'
import type { Crossing } from '../loom/row'
import { crossSigns } from './signs/crosses'
import type { Cross, Lean, Stitch, Term, Texture } from './stitch'

const sizes = [1, 2, 3, 4] as const
const leans = ['left', 'right'] as const
/** Front over back. */
const textures: readonly (readonly [Texture, Texture])[] = [
  ['knit', 'knit'],
  ['knit', 'purl'],
  ['purl', 'purl'],
]

/** C: knit over knit, PC: knit over purl, PPC: purl over purl. */
const letters = ({ frontTexture, backTexture }: Cross): string =>
  frontTexture === 'purl' ? 'PPC' : backTexture === 'purl' ? 'PC' : 'C'

/**
 * As files name it, after the form of the published standard: front/back, lean, letters: 2/2 LC,
 * 2/1 RPC. The standard has no letters for a cross of purl over purl; LPPC and RPPC are only ours.
 */
export const crossId = (cross: Cross): string =>
  `${cross.front}/${cross.back} ${cross.lean === 'left' ? 'L' : 'R'}${letters(cross)}`

const numbers = ['', 'one', 'two', 'three', 'four']

const crossName = (cross: Cross): string => {
  const { front, back, lean, frontTexture, backTexture } = cross
  const over = `${numbers[front]} over ${numbers[back]}`
  const kind = frontTexture === 'knit' && backTexture === 'purl' ? 'purl ' : ''
  return `${lean} ${kind}cross, ${over}${frontTexture === 'purl' ? ', all purled' : ''}`
}

/** "2/2 LC", "2/1 RPC"; what no standard has letters for is told in words: "purled 2/2 LC". */
const crossAbbr = (cross: Cross): string =>
  cross.frontTexture === 'purl'
    ? `purled ${crossId({ ...cross, frontTexture: 'knit', backTexture: 'knit' })}`
    : crossId(cross)

/**
 * UK habit: all stitches counted, then where the cable needle waits (front leans left, back leans
 * right); C knit, T with purl. Only where the total says how it divides; otherwise the US form.
 */
function ukTerm(cross: Cross, us: Term): Term {
  const { front, back, lean, frontTexture, backTexture } = cross
  const even = front === back
  const twoOverOne = front === 2 && back === 1 && backTexture === 'purl'
  if (frontTexture === 'purl' || !(even || twoOverOne)) return us
  const where = lean === 'left' ? 'F' : 'B'
  return {
    abbr: `${backTexture === 'purl' ? 'T' : 'C'}${front + back}${where}`,
    name: `${backTexture === 'purl' ? 'twist' : 'cable'} ${front + back} ${lean === 'left' ? 'front' : 'back'}`,
  }
}

const upTo = (from: number, to: number): number[] =>
  Array.from({ length: to - from }, (_, index) => from + index)

/**
 * The moves of a cross. The front group travels outside, the back group waits on a spare needle inside
 * the loom. Which group comes first depends on the way the work goes (common practice): a left
 * cross has the right hand loops in front, and those are worked first when work runs right to left.
 */
function movesOfCross(cross: Cross, rightToLeft: boolean, crossing: Crossing): StitchMoves {
  const { front, back, frontTexture, backTexture } = cross
  const total = front + back
  const frontFirst = (cross.lean === 'left') === rightToLeft
  const [frontFrom, backTo] = frontFirst
    ? [upTo(0, front), upTo(0, back)]
    : [upTo(back, total), upTo(front, total)]
  const [backFrom, frontTo] = frontFirst
    ? [upTo(front, total), upTo(back, total)]
    : [upTo(0, back), upTo(0, front)]
  const worked = (pegs: readonly number[], texture: Texture): StitchMoves =>
    pegs.map((peg) => ({ do: 'work', peg, ...(texture === 'purl' && { how: 'purl' }) }))
  const carried = (gap: number): StitchMove => ({ do: 'carry', gap })
  const parked = backFrom.map((peg): StitchMove => ({ do: 'take', peg, to: 'inside' }))
  const moved = frontFrom.map((from, index): StitchMove => ({
    do: 'move',
    from,
    to: frontTo[index] ?? 0,
    under: false,
  }))
  // The front loop that goes farthest ahead makes room for the others.
  const crossed: StitchMoves = [
    ...(frontFirst ? moved.reverse() : moved),
    ...backTo.map((peg): StitchMove => ({ do: 'put', peg })),
  ]
  if (crossing === 'move then knit') {
    const [workFront, workBack] = [worked(frontTo, frontTexture), worked(backTo, backTexture)]
    return [
      ...parked,
      ...crossed,
      ...(frontFirst ? [...workBack, ...workFront] : [...workFront, ...workBack]),
    ]
  }
  return frontFirst
    ? [
        carried(front),
        ...worked(backFrom, backTexture),
        ...parked,
        carried(0),
        ...worked(frontFrom, frontTexture),
        ...crossed,
        carried(total),
      ]
    : [
        ...parked,
        carried(back),
        ...worked(frontFrom, frontTexture),
        ...crossed,
        carried(front),
        ...worked(backTo, backTexture),
        carried(total),
      ]
}

const byHabit = (cross: Cross, rightToLeft: boolean) => ({
  'knit then move': movesOfCross(cross, rightToLeft, 'knit then move'),
  'move then knit': movesOfCross(cross, rightToLeft, 'move then knit'),
})

function declareCross(cross: Cross): Stitch {
  const { front, back, lean } = cross
  const id = crossId(cross)
  const us = { abbr: crossAbbr(cross), name: crossName(cross) }
  const uk = ukTerm(cross, us)
  const other: Lean = lean === 'left' ? 'right' : 'left'
  const total = front + back
  return {
    id,
    family: 'cross',
    us,
    uk,
    also: [],
    takes: total,
    makes: total,
    width: total,
    steps: `${front === 1 ? 'The front loop crosses' : `The ${front} front loops cross`} to the ${lean}; ${back === 1 ? 'the back loop waits' : `the ${back} back loops wait`} on a spare needle inside the loom.`,
    mirror: crossId({ ...cross, lean: other }),
    look: 'cross',
    signs: crossSigns(cross),
    cross,
    moves: { rightToLeft: byHabit(cross, true), leftToRight: byHabit(cross, false) },
  }
}

/** Every cross a/b with a and b from 1 to 4: one parametric family. */
export const crosses: readonly Stitch[] = textures.flatMap(([frontTexture, backTexture]) =>
  sizes.flatMap((front) =>
    sizes.flatMap((back) =>
      leans.map((lean) => declareCross({ front, back, lean, frontTexture, backTexture })),
    ),
  ),
)
