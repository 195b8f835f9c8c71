import { readLimits } from '../limits'
import type { Body, Reference, RelativeRemark, Said } from '../nodes'
import type { Terms } from '../../../languages/terms'
import type { TextRange } from '../reading'
import type { Spellings } from '../terms/spellings'
import type { Cursor } from './cursor'

/** What is gathered while the words of a row are read. */
export class Parsing {
  readonly said: Said[] = []
  /** Made when they are asked for: near spellings take long to find. */
  readonly remarks: (() => RelativeRemark)[] = []
  reference: Reference | null = null
  rows = 1
  cycle = 1
  measured: TextRange | null = null
  workEven: Body['workEven'] = null
  side: Body['side'] = null
  appears: Body['appears'] = null
  unknown = 0

  constructor(
    readonly cursor: Cursor,
    readonly spellings: Spellings,
    readonly terms: Terms,
    private readonly text: string,
  ) {}

  remark(remark: RelativeRemark | (() => RelativeRemark)): void {
    if (this.remarks.length < readLimits.remarks)
      this.remarks.push(typeof remark === 'function' ? remark : () => remark)
  }

  /** The words from a piece up to the cursor. */
  quote(start: number): string {
    const { from, to } = this.cursor.rangeFrom(start)
    return this.text.slice(from, to)
  }
}
