import { crossId } from '../../stitches/crosses'
import type { Cross } from '../../stitches/stitch'
import type { Term } from '../terms'

const numbers = ['', 'one', 'two', 'three', 'four']

/**
 * "2/2 LC", "2/1 RPC", after the published standard; what it has no letters for is told in words:
 * "purled 2/2 LC".
 */
export function crossTerm(cross: Cross): Term {
  const { front, back, lean, frontTexture, backTexture } = cross
  const over = `${numbers[front]} over ${numbers[back]}`
  if (frontTexture === 'purl')
    return {
      abbr: `purled ${crossId({ ...cross, frontTexture: 'knit', backTexture: 'knit' })}`,
      name: `${lean} cross, ${over}, all purled`,
    }
  const kind = backTexture === 'purl' ? 'purl cross' : 'cross'
  return { abbr: crossId(cross), name: `${lean} ${kind}, ${over}` }
}

/**
 * UK habit: all stitches counted, then where the cable needle waits (front leans left, back leans
 * right); C knit, T with purl. Only where the total says how it divides; otherwise the US form.
 */
export function ukCrossTerm(cross: Cross): Term {
  const { front, back, lean, frontTexture, backTexture } = cross
  const even = front === back
  const twoOverOne = front === 2 && back === 1 && backTexture === 'purl'
  if (frontTexture === 'purl' || !(even || twoOverOne)) return crossTerm(cross)
  const where = lean === 'left' ? 'front' : 'back'
  const [letter, kind] = backTexture === 'purl' ? ['T', 'twist'] : ['C', 'cable']
  return {
    abbr: `${letter}${front + back}${where === 'front' ? 'F' : 'B'}`,
    name: `${kind} ${front + back} ${where}`,
  }
}
