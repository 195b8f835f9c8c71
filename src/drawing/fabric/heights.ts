import type { RowRun } from '../../loom/work'

/**
 * How high each peg's fabric has grown, in rows. Each row raises the pegs it covers by one; a row
 * over all pegs begins with all of them level at the highest, so that a piece with short rows is
 * drawn opened flat there.
 */
export interface Heights {
  /** `base[row][peg]`: the lower edge of the row. */
  readonly base: readonly Int32Array[]
  /** `reached[row][peg]`: how high the peg was before a whole row brought it level. */
  readonly reached: readonly Int32Array[]
  /** After the last row. */
  readonly end: Int32Array
  readonly highest: number
  /** Does any peg wait while others go on? */
  readonly opened: boolean
}

export function heightsOf(rows: readonly RowRun[], pegs: number): Heights {
  const now = new Int32Array(pegs)
  const base: Int32Array[] = []
  const reached: Int32Array[] = []
  let opened = false
  let last: RowRun | undefined
  for (const run of rows) {
    const { row } = run
    if (last && last.after !== run.before) raiseCastOn(now, last, run)
    last = run
    const before = now.slice()
    const { from, to } = row
    if (from === 0 && to === pegs - 1) {
      const most = Math.max(...now)
      if (now.some((height) => height !== most)) {
        now.fill(most)
        opened = true
      }
    }
    const level = now.slice()
    reached.push(before)
    base.push(level)
    for (let peg = from; peg <= to; peg++) now[peg] = (level[peg] ?? 0) + 1
  }
  const highest = now.length > 0 ? Math.max(...now) : 0
  if (now.some((height) => height !== highest)) opened = true
  return { base, reached, end: now, highest, opened }
}

/** Loops cast on between two rows stand as high as the fabric beside them. */
function raiseCastOn(now: Int32Array, { after }: RowRun, { before }: RowRun): void {
  const isNew = (peg: number): boolean =>
    (before.stacks[peg]?.length ?? 0) > 0 && (after.stacks[peg]?.length ?? 0) === 0
  for (let from = 0; from < now.length; from++) {
    if (!isNew(from)) continue
    let to = from
    while (to + 1 < now.length && isNew(to + 1)) to++
    const beside = [now[from - 1] ?? now.at(-1) ?? 0, now[to + 1] ?? now[0] ?? 0]
    now.fill(Math.max(now[from] ?? 0, ...beside), from, to + 1)
    from = to
  }
}
