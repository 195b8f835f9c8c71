import type { Terms } from '../../../languages/terms'
import { readLimits } from '../limits'
import type { Body, Item, RelativeRemark } from '../nodes'
import type { Spellings } from '../terms/spellings'
import type { Cursor } from './cursor'
import { Stars } from './stars'

export interface ParseSettings {
  /** Which size of lists of sizes is read, from 0. */
  readonly size: number
  readonly spellings: Spellings
  readonly terms: Terms
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] }

/** What a line says beside its items. */
type Beside = Mutable<Omit<Body, 'items' | 'tokens' | 'known' | 'sizes' | 'said' | 'remarks'>> & {
  said: Body['said'][number][]
  /** Made when they are asked for: near spellings take long to find. */
  remarks: (() => RelativeRemark)[]
}

/** Reads words of one kind, and takes up what they say; false: no such words stand here. */
export type Reader = (parsing: Parsing) => boolean

/** What is gathered while the words of a row are read. */
export class Parsing {
  /** The items of the list that is being read. */
  stars = new Stars()
  /** Lists inside lists. */
  depth = 0
  readonly found: Beside = {
    said: [],
    remarks: [],
    reference: null,
    rows: 1,
    cycle: 1,
    measured: null,
    workEven: null,
    appears: null,
    unknown: 0,
    side: null,
  }

  constructor(
    readonly cursor: Cursor,
    readonly settings: ParseSettings,
    private readonly text: string,
  ) {}

  put(...items: readonly Item[]): true {
    this.stars.items.push(...items)
    return true
  }

  /** Items that are read as a list of their own; asterisks are paired within it. */
  list(readAll: () => void): Item[] {
    const outer = this.stars
    this.stars = new Stars()
    this.depth++
    readAll()
    const open = this.stars.close()
    if (open) this.remark(open)
    const { items } = this.stars
    this.stars = outer
    this.depth--
    return items
  }

  remark(remark: RelativeRemark | (() => RelativeRemark)): void {
    const { remarks } = this.found
    if (remarks.length < readLimits.remarks)
      remarks.push(typeof remark === 'function' ? remark : () => remark)
  }

  /** The words from a piece up to the cursor. */
  quote(start: number): string {
    const { from, to } = this.cursor.rangeFrom(start)
    return this.text.slice(from, to)
  }
}
