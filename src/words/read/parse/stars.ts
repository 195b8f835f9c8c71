import { readLimits } from '../limits'
import type { Copies, GroupItem, Item, RelativeRemark } from '../nodes'
import type { TextRange } from '../reading'
import { noStar, starOpen, tooDeep } from '../remarks/parsing'
import { groupItem, mayFill, once, spanOf } from './items'

interface Open {
  readonly mark: string
  readonly at: number
  readonly range: TextRange
}

/** A list of items as it is read, and the asterisks and sentences that repeats go back to. */
export class Stars {
  items: Item[] = []
  #open: Open[] = []
  /** Groups between two asterisks, by their mark. */
  readonly #closed = new Map<string, { item: GroupItem; at: number }>()
  #sentence = 0
  /** How often all that was read so far was put into a group. */
  #wrapped = 0

  /** An asterisk: true when it closes a group that an earlier one opened. */
  star(mark: string, range: TextRange): boolean {
    const open = this.#open.findLast((one) => one.mark === mark)
    if (!open || this.items.length === open.at) {
      if (open) this.#open.splice(this.#open.indexOf(open), 1)
      this.#open.push({ mark, at: this.items.length, range })
      return false
    }
    this.#cut(open)
    const item = groupItem(this.items.splice(open.at), once, spanOf(open.range, range))
    this.items.push(item)
    this.#closed.set(mark, { item, at: this.items.length - 1 })
    return true
  }

  /** "*k2, p2* 4 times": how often the group that has just been closed is worked. */
  repeatClosed(copies: Copies): void {
    const item = this.items.at(-1)
    // A bare number after a closed group is a number of times in all.
    const all: Copies = copies.kind === 'bare' ? { kind: 'fixed', times: copies.times } : copies
    if (item?.do === 'group') this.items[this.items.length - 1] = { ...item, copies: all }
    this.sentenceEnds()
  }

  /** "rep from * ...": a remark if there is no such asterisk. */
  repeatFrom(mark: string, copies: Copies, range: TextRange): RelativeRemark | null {
    const open = this.#open.findLast((one) => one.mark === mark) ?? this.#open.at(-1)
    const closed = this.#closed.get(mark)
    if (!open && closed) {
      this.#repeatAgain(closed, copies, range)
      return null
    }
    if (!open) {
      return this.repeatAll(copies, range) ?? noStar(mark, range)
    }
    this.#cut(open)
    const items = this.items.splice(open.at)
    const item = groupItem(items, copies, spanOf(open.range, range))
    this.items.push(item)
    this.#closed.set(mark, { item: { ...item, copies: once }, at: this.items.length - 1 })
    this.sentenceEnds()
    return null
  }

  #repeatAgain(closed: { item: GroupItem; at: number }, copies: Copies, range: TextRange): void {
    if (closed.at === this.items.length - 1)
      this.items[closed.at] = { ...closed.item, copies, range: spanOf(closed.item.range, range) }
    else {
      // Something stands between: the group is worked again after it, without its first time.
      const again: Copies =
        copies.kind === 'fixed' ? { kind: 'fixed', times: Math.max(0, copies.times - 1) } : copies
      this.items.push({ ...closed.item, copies: again })
    }
    this.sentenceEnds()
  }

  /** "rep to end", "repeat 5 more times": all that was read so far. */
  repeatAll(copies: Copies, range: TextRange): RelativeRemark | null {
    if (this.#wrapped++ > readLimits.depth) return tooDeep(range)
    const at = this.#open.at(-1)?.at ?? 0
    const items = this.items.splice(at)
    if (items.length > 0) this.items.push(groupItem(items, copies, range))
    this.sentenceEnds()
    return null
  }

  /** "around", "to last 3 sts" behind items: the last if it has no number, else the sentence. */
  fill(copies: Copies, range: TextRange): void {
    const last = this.items.at(-1)
    if (!last || this.#sentence >= this.items.length) return
    const bare = last.do === 'stitch' && last.count === null && mayFill(last.stitch)
    const alone = bare || (last.do === 'group' && last.copies === once)
    const at = alone ? this.items.length - 1 : Math.max(this.#sentence, this.#open.at(-1)?.at ?? 0)
    const items = this.items.splice(at)
    const [only] = items
    const inside = items.length === 1 && only?.do === 'group' ? only.items : items
    if (items.length > 0) this.items.push(groupItem(inside, copies, spanOf(last.range, range)))
    this.sentenceEnds()
  }

  /** Does an asterisk stand before, with something behind it? */
  get isOpen(): boolean {
    const open = this.#open.at(-1)
    return open !== undefined && open.at < this.items.length
  }

  sentenceEnds(): void {
    this.#sentence = this.items.length
  }

  /** The list is at its end: a remark if an asterisk is never gone back to. */
  close(): RelativeRemark | null {
    const open = this.#open[0]
    return open ? starOpen(open.range) : null
  }

  #cut(open: Open): void {
    this.#open = this.#open.filter(({ at, mark }) => at <= open.at && mark !== open.mark)
  }
}
