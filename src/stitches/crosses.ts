import type { Loom } from '../loom/loom'
import type { At } from '../loom/row'
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

/**
 * The front group travels outside, the back group waits on a spare needle inside the loom. Which
 * group comes first depends on the way the work goes (common practice): a left cross has the right
 * hand loops in front, and those are worked first when work runs right to left.
 */
export const workCross =
  ({ front, back, lean, frontTexture, backTexture }: Cross) =>
  (loom: Loom, { pegs, rightToLeft, crossing }: At): void => {
    const how = (texture: Texture) => (texture === 'purl' ? 'purl' : loom.knit)
    const frontFirst = (lean === 'left') === rightToLeft
    const firstSize = frontFirst ? front : back
    const first = pegs.slice(0, firstSize)
    const second = pegs.slice(firstSize)
    const [frontFrom, backFrom] = frontFirst ? [first, second] : [second, first]
    const [frontTo, backTo] = frontFirst
      ? [pegs.slice(back), pegs.slice(0, back)]
      : [pegs.slice(0, front), pegs.slice(front)]
    const gapAt = (position: number): number =>
      loom.heading === 'forward'
        ? (pegs[0] as number) + position
        : (pegs[0] as number) + 1 - position
    const workAll = (list: readonly number[], texture: Texture) => {
      for (const peg of list) loom.work(peg, how(texture))
    }
    const moveFront = () => {
      const pairs = frontFrom.map((from, i) => [from, frontTo[i] as number] as const)
      for (const [from, to] of frontFirst ? pairs.reverse() : pairs) loom.move(from, to)
    }
    const park = () => backFrom.forEach((peg) => loom.take(peg, 'inside'))
    const putBack = () => backTo.forEach((peg) => loom.put(peg))

    if (crossing === 'move then knit') {
      park()
      moveFront()
      putBack()
      const order = frontFirst
        ? ([
            [backTo, backTexture],
            [frontTo, frontTexture],
          ] as const)
        : ([
            [frontTo, frontTexture],
            [backTo, backTexture],
          ] as const)
      for (const [list, texture] of order) workAll(list, texture)
    } else if (frontFirst) {
      loom.carry(gapAt(front))
      workAll(backFrom, backTexture)
      park()
      loom.carry(gapAt(0))
      workAll(frontFrom, frontTexture)
      moveFront()
      putBack()
      loom.carry(gapAt(front + back))
    } else {
      park()
      loom.carry(gapAt(back))
      workAll(frontFrom, frontTexture)
      moveFront()
      putBack()
      loom.carry(gapAt(front))
      workAll(backTo, backTexture)
      loom.carry(gapAt(front + back))
    }
  }

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
    work: workCross(cross),
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
