import { runsRightToLeft, type Direction } from '../../../loom/direction'
import type { Stitch, Texture } from '../../../stitches/stitch'
import type { Memory } from '../memory'
import { loopsOn } from './place'
import type { ReadRow } from '../reading'
import type { Worked } from './work'

const purls = new Set<Stitch['look']>(['purl', 'twisted purl', 'purl decrease'])

/**
 * How the loops on the loom look on the right side after the rows told, in peg order: knit or purl;
 * null if no row is told. Loops that no row has worked since the cast-on count as knit.
 */
export function looksAfter(memory: Memory, rows: readonly ReadRow[]): readonly Texture[] | null {
  const worked: Worked[] = []
  for (let at = rows.length - 1; at >= 0; at--) {
    const one = memory.rows.get(rows[at] as ReadRow)?.stretch
    if (!one) break
    worked.push(one)
    if (showsAll(one)) break
  }
  const first = worked.at(-1)
  if (!first) return null
  let looks: readonly Texture[] = Array.from({ length: first.before.loops }, () => 'knit')
  for (const one of worked.reverse()) looks = looksOf(one, looks, memory.settings.direction)
  return looks
}

/** Does a row tell by itself how all loops look? */
const showsAll = ({ takes, before, stitches }: Worked): boolean =>
  takes >= before.loops && stitches.every(({ stitch }) => !stitch.passes)

/** The loops after one row: those it has not worked, or only passed, look as they did. */
function looksOf(
  { before, covers, goes, stitches, takes }: Worked,
  old: readonly Texture[],
  direction: Direction,
): readonly Texture[] {
  const forward = goes === 'forward'
  const first = covers ? loopsOn(before, 0, (forward ? covers.from : covers.to + 1) - 1) : 0
  const start = forward ? first : first - takes
  const under = old.slice(Math.max(0, start), Math.max(0, start) + takes)
  if (!forward) under.reverse()
  const made: Texture[] = []
  let at = 0
  for (const { stitch } of stitches) {
    if (stitch.passes) made.push(...under.slice(at, at + stitch.takes))
    else made.push(...texturesOf(stitch, runsRightToLeft(direction, goes)))
    at += stitch.takes
  }
  if (!forward) made.reverse()
  return [...old.slice(0, Math.max(0, start)), ...made, ...old.slice(Math.max(0, start) + takes)]
}

/** The loops that a stitch leaves, in the order they are worked. */
function texturesOf({ cross, makes, look }: Stitch, rightToLeft: boolean): readonly Texture[] {
  if (!cross) return all(purls.has(look) ? 'purl' : 'knit', makes)
  const front = all(cross.frontTexture, cross.front)
  const back = all(cross.backTexture, cross.back)
  // The front group moves the way it leans, past the group behind it.
  return (cross.lean === 'left') === rightToLeft ? [...back, ...front] : [...front, ...back]
}

const all = (texture: Texture, length: number): Texture[] => Array.from({ length }, () => texture)
