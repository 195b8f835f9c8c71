import { readLimits } from '../limits'
import type { Body, RelativeRemark, Said } from '../nodes'
import type { Remark, TextRange } from '../reading'
import { pegInLoom, turnPegOf } from '../../../loom/rowEnd'
import { memo } from '../../../pattern/memo'
import { standsIn } from '../remarks/parsing'
import * as say from '../remarks/rows'
import type { Words } from './rows'
import { pegsOf } from '../loops/place'
import type { Trouble } from '../loops/stretch'
import type { Resolved, Worked } from '../loops/work'
import { termOf } from '../../../languages/languages'

/** A row that does not come out, with its remark. */
export interface Miscount {
  readonly remark: Remark
  readonly row: number
  readonly trouble: Trouble
  readonly takes: number
}

/** Gathers what there is to say of rows, at its place in the text. */
export class Remarker {
  readonly remarks: Remark[] = []
  readonly miscounts: Miscount[] = []
  /** "Rnd 3": what each row is called. */
  readonly names: string[] = []

  constructor(private readonly shape: 'ring' | 'bar') {}

  /** Are there so many remarks that no more are taken? */
  get full(): boolean {
    return this.remarks.length >= readLimits.remarks
  }

  /** `by`: where the words that the remark's ranges count from begin. */
  add(
    { range, fixes, ...rest }: RelativeRemark,
    by: number,
    row: number | null = null,
    pegs: Remark['pegs'] = null,
  ): void {
    if (this.full) return
    const moved = (one: TextRange) => ({ from: one.from + by, to: one.to + by })
    this.remarks.push({
      ...rest,
      range: moved(range),
      row,
      pegs,
      fixes: fixes.map(({ label, changes }) => ({
        label,
        changes: changes.map((change) => ({ ...change, range: moved(change.range) })),
      })),
    })
  }

  /** What is wrong with one real row. `words`: where it is called for. */
  row(worked: Worked, name: string, source: Words, words: Words, row: number): void {
    const { trouble, pegTrouble, turn, tooLong } = worked
    this.names[row] = name
    const whole = { from: 0, to: source.text.length }
    const add = (remark: RelativeRemark, pegs: Remark['pegs'] = null) =>
      this.add(remark, source.from, row, pegs)
    if (tooLong) add(say.tooManyStitches(name, worked, whole))
    else if (trouble) {
      // A row that is only referred to goes wrong where it is called for.
      const { range } = words
      const called = { from: range.from - source.from, to: range.to - source.from }
      const at = source === words ? whole : called
      add(say.rowCount(name, trouble, worked, at), pegsLeft(worked))
      const remark = this.remarks.at(-1)
      if (remark?.row === row) this.miscounts.push({ remark, row, trouble, takes: worked.takes })
    }
    if (worked.unread > 0) add(say.unreadCount(name, worked, whole))
    if (pegTrouble) add(say.pegsSkipped(name, pegTrouble.named, pegTrouble.next, pegTrouble.range))
    if (!turn) return
    const next = pegOfTurn(worked, this.shape)
    if (turn.peg !== null && next !== null && next !== turn.peg)
      add(say.turnPeg(name, turn.peg, next, turn.range))
    if (turn.end === 'on') add(say.plainTurn(name, turn.range))
  }

  /** What has to be asked about the words of a row. */
  asks({ asks, side }: Resolved, source: Words, row: number): void {
    for (const item of side.unknown)
      this.add(
        item.twinOf && !side.wrong
          ? standsIn(item.twinOf, item.stitch, item.range)
          : say.wrongSide(termOf(item.stitch, 'us').abbr, item.range),
        source.from,
        row,
      )
    if (asks.length > 0 || hasOpen(source.body.items))
      this.#ask(source.body.items, asks, source, row)
  }

  #ask(items: Body['items'], asks: Resolved['asks'], source: Words, row: number): void {
    const { from } = source
    for (const item of items) {
      if (item.do === 'choice' && asks.includes(item.rule))
        this.add(say.ask(item.rule, quoted(source, item.range), item.range), from, row)
      if (item.do !== 'group') continue
      const { copies } = item
      if (copies.kind === 'bare' && asks.includes('ask-times')) {
        const { said, times } = copies
        this.add(say.ask('ask-times', quoted(source, said), said, times), from, row)
      }
      if (copies.kind === 'open')
        this.add(say.askMarker(quoted(source, item.range), item.range), from, row)
      this.#ask(item.items, asks, source, row)
    }
  }

  /** Counts that the words state, held against those of the stitches. */
  said(
    said: readonly Said[],
    from: number,
    name: string,
    [before, after]: readonly [number, number],
    row: number,
  ): void {
    for (const one of said) {
      const wrong =
        one.kind === 'total'
          ? one.count !== after
          : one.kind === 'change' && one.count !== after - before
      if (wrong) this.add(say.statedCount(name, one, after, before), from, row)
    }
  }
}

/** The words at a range, shortened. */
export const quoted = ({ text }: Words, { from, to }: TextRange): string =>
  text.slice(from, Math.min(to, from + 60)).trim()

/** Does a repeat go on to a marker? */
const hasOpen: (items: Body['items']) => boolean = memo((items) =>
  items.some((item) => item.do === 'group' && (item.copies.kind === 'open' || hasOpen(item.items))),
)

/** Pegs of the loops that a row leaves unworked. */
function pegsLeft({ trouble, takes, goes, covers, before }: Worked): Remark['pegs'] {
  if (!trouble || !covers || before.loops < pegsOf(before)) return null
  const over =
    trouble.kind === 'repeat' ? trouble.over : trouble.kind === 'short' ? trouble.loops - takes : 0
  if (over <= 0) return null
  const { from, to } = covers
  return goes === 'forward'
    ? { from: Math.max(from, to - over + 1), to }
    : { from, to: Math.min(to, from + over - 1) }
}

/** The peg that a turn falls on, after the stitches before it. */
function pegOfTurn({ covers, goes, end, before }: Worked, shape: 'ring' | 'bar'): number | null {
  if (!covers) return null
  const turn = turnPegOf({ ...covers, end }, goes)
  if (turn === null) return goes === 'forward' ? covers.to : covers.from
  return pegInLoom(turn, { shape, pegs: pegsOf(before) })
}
