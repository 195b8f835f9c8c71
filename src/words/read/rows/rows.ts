import type { Heading } from '../../../loom/direction'
import type { Memory } from '../memory'
import type { Statement } from '../lines/outline'
import type { Body } from '../nodes'
import type { ReadRow, ReadStitch, TextRange } from '../reading'
import type { Worked } from '../loops/work'

/** Words to be worked: a statement, and what its line says. */
export interface Words extends Statement {
  readonly body: Body
  readonly kind: 'round' | 'row'
  readonly side: 'right' | 'wrong' | null
  /** Which row of its fabric's cycle it stands for, from 0. */
  readonly row: number
}

export interface RowFacts {
  readonly label: string
  readonly source: Words
  readonly saidAt: TextRange
  readonly time: number
}

const shift = ({ from, to }: TextRange, by: number): TextRange => ({ from: from + by, to: to + by })

/** The stitches at their place in the text; each object of the words becomes one object. */
function stitchesAt(stitches: readonly ReadStitch[], by: number): readonly ReadStitch[] {
  const shifted: ReadStitch[] = []
  let known: Map<ReadStitch, ReadStitch> | null = null
  let last: ReadStitch | null = null
  let here: ReadStitch | null = null
  for (const read of stitches) {
    if (read !== last || !here) {
      // As long as the words only go on, none of them has been met before.
      if (last && read.range.from <= last.range.from)
        known ??= new Map(shifted.map((one, index) => [stitches[index] ?? one, one]))
      here = known?.get(read) ?? { stitch: read.stitch, range: shift(read.range, by) }
      known?.set(read, here)
      last = read
    }
    shifted.push(here)
  }
  return shifted
}

/** A row of the reading; its stitches are put at their place when they are first asked for. */
export function makeRow(
  memory: Memory,
  worked: Worked,
  facts: RowFacts,
  old: ReadRow | undefined,
): ReadRow {
  const { label, source, saidAt, time } = facts
  const { from } = source
  const made = old && memory.rows.get(old)
  if (made?.stretch === worked && made.offset === from && isSame(old, facts)) return old
  let stitches: readonly ReadStitch[] | null = null
  const { takes, makes } = worked
  const before = worked.before.loops
  const row: ReadRow = {
    label,
    range: source.range,
    saidAt,
    time,
    heading: headingSaid(worked),
    run: worked.run,
    get stitches() {
      return (stitches ??= stitchesAt(worked.stitches, from))
    },
    end: worked.end,
    before,
    takes,
    makes,
    after: before - takes + makes,
    covers: worked.covers,
    goes: worked.goes,
  }
  memory.rows.set(row, { stretch: worked, offset: from })
  return row
}

/** A heading is said where pegs are named, or where a plain turn sends the row back. */
const headingSaid = ({ run, goes, before }: Worked): Heading | null =>
  run || goes !== before.heading ? goes : null

const isSame = (
  old: ReadRow | undefined,
  { label, source, saidAt, time }: RowFacts,
): old is ReadRow =>
  old?.label === label &&
  old.time === time &&
  sameRange(old.saidAt, saidAt) &&
  sameRange(old.range, source.range)

const sameRange = (a: TextRange, b: TextRange): boolean => a.from === b.from && a.to === b.to
