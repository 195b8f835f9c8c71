import type { GroupItem, Item } from '../nodes'
import { groupItem, mayFill, untilEnd } from '../parse/items'
import { memo } from '../../../pattern/memo'

/** "Knit." as all that a row says means all its pegs. */
export const withFills: (items: readonly Item[]) => readonly Item[] = memo((items) => {
  if (items.length > 1 && items.every(({ do: does }) => does === 'stitch')) return items
  const list: Item[] = []
  let chunk: Item[] = []
  const close = () => {
    const worked = chunk.filter(({ do: does }) => does !== 'gap' && does !== 'pegs')
    const [only] = worked
    const pegsWorked = chunk.some((item) => item.do === 'pegs' && item.stitch)
    const fills =
      worked.length === 1 && only?.do === 'stitch' && only.count === null && mayFill(only.stitch)
    for (const item of chunk)
      if (fills && item === only && !pegsWorked) list.push(groupItem([item], untilEnd, item.range))
      else list.push(item)
    chunk = []
  }
  for (const item of items) {
    if (item.do === 'turn') {
      close()
      list.push(item)
    } else if (item.do === 'group' && hasTurn(item))
      chunk.push({ ...item, items: withFills(item.items) })
    else chunk.push(item)
  }
  close()
  return list
})

const hasTurn = ({ items }: GroupItem): boolean => items.some((item) => item.do === 'turn')

/** "(Turn, p14. Turn, k14.) x 8": the last row goes on in what follows. */
export const endsInTurns = (items: readonly Item[]): boolean => {
  const last = items.at(-1)
  return last?.do === 'group' && hasTurn(last)
}
