import type { StitchMove, StitchMoves } from '../loom/move'
import type { Crossing } from '../loom/row'
import type { Cross, Lean, Stitch, Texture } from './stitch'

/** Pegs that a group of a cross can have. */
export const groupSizes = [1, 2, 3, 4] as const
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

const upTo = (from: number, to: number): number[] =>
  Array.from({ length: to - from }, (_, index) => from + index)

/** The pegs of the two groups of a cross, from 0. */
export interface Groups {
  readonly front: readonly number[]
  readonly back: readonly number[]
}

/**
 * Where the groups of a cross lie before and after it, on pegs counted from right to left or from left to
 * right as the right side is seen. The front group of a left cross comes from the right and goes to
 * the left.
 */
export function groupsOf(
  { front, back, lean }: Cross,
  rightToLeft: boolean,
  when: 'before' | 'after',
): Groups {
  const total = front + back
  const startsFirst = (lean === 'left') === rightToLeft
  const frontIsFirst = when === 'before' ? startsFirst : !startsFirst
  return frontIsFirst
    ? { front: upTo(0, front), back: upTo(front, total) }
    : { front: upTo(back, total), back: upTo(0, back) }
}

/**
 * The moves of a cross. The front group travels outside, the back group waits on a spare needle inside
 * the loom. Which group comes first depends on the way the work goes (common practice): the right
 * hand one when work runs right to left.
 */
function movesOfCross(cross: Cross, rightToLeft: boolean, crossing: Crossing): StitchMoves {
  const { front, back, frontTexture, backTexture } = cross
  const total = front + back
  const from = groupsOf(cross, rightToLeft, 'before')
  const to = groupsOf(cross, rightToLeft, 'after')
  const frontFirst = from.front[0] === 0
  const worked = (pegs: readonly number[], texture: Texture): StitchMoves =>
    pegs.map((peg) => ({ do: 'work', peg, ...(texture === 'purl' && { how: 'purl' }) }))
  const carried = (gap: number): StitchMove => ({ do: 'carry', gap })
  const parked = from.back.map((peg): StitchMove => ({ do: 'take', peg, to: 'inside' }))
  const moved = from.front.map((peg, index): StitchMove => ({
    do: 'move',
    from: peg,
    to: to.front[index] ?? 0,
    under: false,
  }))
  // The front loop that goes farthest ahead makes room for the others.
  const crossed: StitchMoves = [
    ...(frontFirst ? moved.reverse() : moved),
    ...to.back.map((peg): StitchMove => ({ do: 'put', peg })),
  ]
  if (crossing === 'move then knit') {
    const [workFront, workBack] = [worked(to.front, frontTexture), worked(to.back, backTexture)]
    return [
      ...parked,
      ...crossed,
      ...(frontFirst ? [...workBack, ...workFront] : [...workFront, ...workBack]),
    ]
  }
  return frontFirst
    ? [
        carried(front),
        ...worked(from.back, backTexture),
        ...parked,
        carried(0),
        ...worked(from.front, frontTexture),
        ...crossed,
        carried(total),
      ]
    : [
        ...parked,
        carried(back),
        ...worked(from.front, frontTexture),
        ...crossed,
        carried(front),
        ...worked(to.back, backTexture),
        carried(total),
      ]
}

const byHabit = (cross: Cross, rightToLeft: boolean) => ({
  'knit then move': movesOfCross(cross, rightToLeft, 'knit then move'),
  'move then knit': movesOfCross(cross, rightToLeft, 'move then knit'),
})

/**
 * The hand of a crossing does not depend on the side that it is seen from, as that of a screw does not:
 * the strand that lies behind leans the other way, and seen from behind it is in front and leans the
 * same way as the front strand did. So the groups change places, and knit and purl.
 */
const fromBehind = ({ front, back, lean, frontTexture, backTexture }: Cross): Cross => ({
  front: back,
  back: front,
  lean,
  frontTexture: otherTexture[backTexture],
  backTexture: otherTexture[frontTexture],
})
const otherTexture = { knit: 'purl', purl: 'knit' } as const

function declareCross(cross: Cross): Stitch {
  const { front, back, lean } = cross
  const id = crossId(cross)
  const other: Lean = lean === 'left' ? 'right' : 'left'
  const total = front + back
  return {
    id,
    family: 'cross',
    takes: total,
    makes: total,
    width: total,
    mirror: crossId({ ...cross, lean: other }),
    behind: crossId(fromBehind(cross)),
    look: 'cross',
    cross,
    moves: { rightToLeft: byHabit(cross, true), leftToRight: byHabit(cross, false) },
  }
}

/** Every cross a/b with a and b from 1 to 4: one parametric family. */
export const crosses: readonly Stitch[] = textures.flatMap(([frontTexture, backTexture]) =>
  groupSizes.flatMap((front) =>
    groupSizes.flatMap((back) =>
      leans.map((lean) => declareCross({ front, back, lean, frontTexture, backTexture })),
    ),
  ),
)
