import type { Body, Item } from '../nodes'
import { remembered } from '../remembered'

/** Does a row of these words end in a German turn? */
export const turnsGerman: (items: readonly Item[]) => boolean = remembered((items) =>
  items.some(
    (item) =>
      (item.do === 'turn' && item.end === 'German turn') ||
      (item.do === 'group' && turnsGerman(item.items)),
  ),
)

const closed = new WeakMap<Body, Body>()
const begun = new WeakMap<Body, Body>()

const endsPlain = ({ items }: Body): boolean => {
  const last = items.at(-1)
  return last?.do === 'turn' && last.end === 'on'
}
const beginsDoubled = ({ items }: Body): boolean => {
  const [first] = items
  return first?.do === 'choice' && first.rule === 'ask-ds'
}

/** The same object for the same words. */
function kept(
  known: WeakMap<Body, Body>,
  body: Body,
  items: (body: Body) => readonly Item[],
): Body {
  let made = known.get(body)
  if (!made) known.set(body, (made = { ...body, items: items(body) }))
  return made
}

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
    if (before && endsPlain(before.body) && beginsDoubled(body))
      body = kept(begun, body, ({ items }) => items.slice(1))
    if (next && endsPlain(body) && beginsDoubled(next.body))
      body = kept(closed, body, ({ items }) =>
        items.map((item, at) =>
          at === items.length - 1 && item.do === 'turn' ? { ...item, end: 'German turn' } : item,
        ),
      )
    return body === one.body ? one : { ...one, body }
  })
}
