import { standardVocabulary } from '../../../stitches/vocabulary'
import type { GroupItem, Item } from '../nodes'
import { memo } from '../../../pattern/memo'
import { options, type Taken } from './stretch'

/** Groups inside groups: more are not worked out. */
export const deepest = 60

/** Loops that items take, up to a turn or a repeat that goes on to an end (`turns`). */
export interface Size {
  takes: number
  turns: boolean
}

export function sizeOf(list: readonly Item[], from: number, taken: Taken, depth = 0): Size {
  const size: Size = { takes: 0, turns: false }
  if (depth > deepest) return size
  for (let i = from; i < list.length && !size.turns; i++) {
    const item = list[i] as Item
    if (item.do === 'stitch') size.takes += item.stitch.takes * (item.count ?? 1)
    else if (item.do === 'pegs')
      size.takes += item.stitch ? Math.abs(item.last - item.first) + 1 : 0
    else if (item.do === 'turn' || item.do === 'fill') size.turns = true
    else if (item.do === 'choice') {
      const role = item.rule === 'ask-times' ? null : options[item.rule][taken[item.rule] ?? 0]
      if (role) size.takes += standardVocabulary.withRole(role).takes * item.count
    } else if (item.do === 'group') addGroup(item, size, taken, depth)
  }
  return size
}

function addGroup(group: GroupItem, size: Size, taken: Taken, depth: number): void {
  const inside = sizeOf(group.items, 0, taken, depth + 1)
  const times = timesOf(group, taken)
  if (inside.turns || times === null) size.turns = true
  if (times !== null) size.takes += inside.takes * times
}

/** How often a group is worked; null: as often as fits. */
export function timesOf({ copies }: GroupItem, taken: Taken): number | null {
  if (copies.kind === 'fixed') return copies.times
  if (copies.kind === 'bare') return copies.times + ((taken['ask-times'] ?? 0) === 0 ? 1 : 0)
  return null
}

/** Does a group hold a repeat that goes on to an end? */
export const hasUntil: (group: GroupItem) => boolean = memo(({ items }) =>
  items.some(
    (item) =>
      item.do === 'group' &&
      (item.copies.kind === 'until' || item.copies.kind === 'open' || hasUntil(item)),
  ),
)
