import type { Body, Item } from '../nodes'
import { memo } from '../../../pattern/memo'

/** Does a row of these words end in a German turn? */
export const turnsGerman: (items: readonly Item[]) => boolean = memo((items) =>
  items.some(
    (item) =>
      (item.do === 'turn' && item.end === 'German turn') ||
      (item.do === 'group' && turnsGerman(item.items)),
  ),
)

const endsPlain = ({ items }: Body): boolean => {
  const last = items.at(-1)
  return last?.do === 'turn' && last.end === 'on'
}
const beginsDoubled = ({ items }: Body): boolean => {
  const [first] = items
  return first?.do === 'choice' && first.rule === 'ask-ds'
}

const withoutFirst = memo((body: Body): Body => ({ ...body, items: body.items.slice(1) }))
const endingGerman = memo((body: Body): Body => ({
  ...body,
  items: body.items.map((item, at) =>
    at === body.items.length - 1 && item.do === 'turn' ? { ...item, end: 'German turn' } : item,
  ),
}))

/**
 * "K9, turn." and then "DS, p6, turn": the doubled stitch that the next row begins with is the
 * German turn of the row before.
 */
export function closeTurns<T extends { readonly body: Body }>(list: readonly T[]): readonly T[] {
  if (!list.some(({ body }) => beginsDoubled(body))) return list
  return list.map((one, index) => {
    const next = list[index + 1]
    const before = list[index - 1]
    let { body } = one
    if (before && endsPlain(before.body) && beginsDoubled(body)) body = withoutFirst(body)
    if (next && endsPlain(body) && beginsDoubled(next.body)) body = endingGerman(body)
    return body === one.body ? one : { ...one, body }
  })
}
