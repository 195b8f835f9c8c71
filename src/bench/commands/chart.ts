import { erase, eraseAll, landing, paint, paintAll } from '../../pattern/edits/paint'
import { deleteColumns, insertColumns, keepColumns, setRepeat } from '../../pattern/edits/columns'
import { deleteRows, duplicateRows, insertRows, removeBand } from '../../pattern/edits/rows'
import { rotateColumns } from '../../pattern/edits/turn-round'
import { setRun } from '../../pattern/edits/turning'
import { limits, type Pattern, type Run } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import { placedAt } from '../../pattern/row'
import { stitchOf } from '../../stitches/vocabulary'
import type { Bench } from '../state/bench.svelte'
import { editing, type Command } from './command'

const count = ({ from, to }: Run) => to - from + 1
const plural = (n: number, word: string) => (n === 1 ? word : `${n} ${word}s`)

/** Column of the chart at the current place. */
export const columnAt = (bench: Bench): number => bench.work.layout.columnOf[bench.spot.peg] ?? 0

/** Fill what is marked with the stitch in hand. */
function paintMarked(bench: Bench): void {
  const { rows, columns } = bench.marked
  const { abbr } = stitchOf(bench.stitch)[bench.pattern.style.terms]
  const before = bench.pattern
  if (bench.apply(`Fill with ${abbr}`, (p) => paintAll(p, bench.stitch, rows, columns))) return
  if (bench.pattern === before && !bench.isSecond)
    bench.say(`${abbr} is there already, or finds no room in what is marked.`)
}

/** Put the stitch in hand at the current place or into all that is marked, or say why it cannot land. */
export function paintHere(bench: Bench, gesture: string | null = null): void {
  if (bench.corner) {
    paintMarked(bench)
    return
  }
  const column = columnAt(bench)
  const { row } = bench.spot
  const where = landing(bench.pattern, bench.stitch, row, column)
  if (where.can)
    bench.apply(
      `Paint ${stitchOf(bench.stitch).us.abbr}`,
      (pattern) => paint(pattern, bench.stitch, row, column),
      gesture,
    )
  else bench.say(where.reason)
}

export function eraseHere(bench: Bench, gesture: string | null = null): void {
  if (bench.corner && gesture === null) {
    const { rows, columns } = bench.marked
    bench.apply('Erase what is marked', (p) => eraseAll(p, rows, columns))
    return
  }
  bench.apply('Erase', (p) => erase(p, bench.spot.row, columnAt(bench)), gesture)
}

export function pickUpHere(bench: Bench): void {
  const row = bench.pattern.chart.rows[bench.spot.row]
  const item = row && placedAt(row, columnAt(bench))
  if (!item) return
  bench.stitch = item.stitch.id
  bench.hand = 'paint'
  bench.say(`In hand: ${item.stitch.us.name}.`)
}

/** What is marked; with nothing marked, the repeat where there is one. */
const columnsToFillWith = ({ corner, marked, pattern }: Bench): Run =>
  corner ? marked.columns : (pattern.chart.repeat ?? marked.columns)

const roomForRows = (bench: Bench) =>
  bench.pattern.chart.rows.length >= limits.rows.most
    ? `The chart has ${limits.rows.most} rows, the most it can have.`
    : null
const roomForColumns = (bench: Bench) =>
  bench.pattern.chart.columns >= limits.columns.most
    ? `The chart has ${limits.columns.most} columns, the most it can have.`
    : null

/** A row put in after one that turns starts beside the yarn and goes back from there. */
function startAtYarn(pattern: Pattern, row: number, { firstRuns }: Work): Pattern {
  const before = firstRuns[row - 1]
  if (!before || before.row.end === 'on') return pattern
  const { heading, yarn } = before.after
  const last = pattern.loom.pegs - 1
  const run = heading === 'forward' ? { from: yarn.gap, to: last } : { from: 0, to: yarn.gap - 1 }
  return run.from > run.to ? pattern : setRun(pattern, row, run)
}

export const rowCommands: readonly Command[] = editing([
  {
    id: 'row-above',
    label: 'Insert row above',
    keys: ['Insert'],
    reason: roomForRows,
    run: (bench) => {
      const { to } = bench.marked.rows
      bench.apply('Insert row', (p) => startAtYarn(insertRows(p, to + 1), to + 1, bench.work))
      bench.goTo({ ...bench.spot, row: to + 1 })
    },
  },
  {
    id: 'row-below',
    label: 'Insert row below',
    keys: ['Shift+Insert'],
    reason: roomForRows,
    run: (bench) => {
      const { from } = bench.marked.rows
      bench.apply('Insert row', (p) => insertRows(p, from))
      bench.goTo({ ...bench.spot, row: from })
    },
  },
  {
    id: 'rows-copy',
    label: 'Duplicate rows',
    keys: ['d'],
    reason: roomForRows,
    run: (bench) => {
      const { from, to } = bench.marked.rows
      const rows = count({ from, to })
      bench.apply(`Duplicate ${plural(rows, 'row')}`, (p) => duplicateRows(p, from, to))
      bench.goTo(
        { ...bench.spot, row: bench.spot.row + rows },
        bench.corner && { ...bench.corner, row: bench.corner.row + rows },
      )
    },
  },
  {
    id: 'rows-delete',
    label: 'Delete rows',
    keys: ['Mod+Backspace', 'Mod+Delete'],
    reason: (bench) =>
      count(bench.marked.rows) >= bench.pattern.chart.rows.length
        ? 'A chart keeps at least one row.'
        : null,
    run: (bench) => {
      const { from, to } = bench.marked.rows
      bench.apply(`Delete ${plural(count({ from, to }), 'row')}`, (p) => deleteRows(p, from, to))
      bench.goTo({ ...bench.spot, row: from })
    },
  },
  {
    id: 'band-remove',
    label: 'Work band once',
    keys: [],
    reason: (bench) => (bandHere(bench) < 0 ? 'These rows belong to no band.' : null),
    run: (bench) => {
      const index = bandHere(bench)
      bench.apply('Work band once', (p) => removeBand(p, index))
    },
  },
])

export const bandHere = (bench: Bench): number =>
  bench.pattern.chart.bands.findIndex(
    ({ from, to }) => bench.spot.row >= from && bench.spot.row <= to,
  )

export const columnCommands: readonly Command[] = editing([
  {
    id: 'column-before',
    label: 'Insert column before',
    keys: ['Alt+Insert'],
    reason: roomForColumns,
    run: (bench) => {
      const { from } = bench.marked.columns
      bench.apply('Insert column', (p) => insertColumns(p, from))
    },
  },
  {
    id: 'column-after',
    label: 'Insert column after',
    keys: ['Alt+Shift+Insert'],
    reason: roomForColumns,
    run: (bench) => {
      const { to } = bench.marked.columns
      bench.apply('Insert column', (p) => insertColumns(p, to + 1))
    },
  },
  {
    id: 'columns-delete',
    label: 'Delete columns',
    keys: ['Alt+Delete', 'Alt+Backspace'],
    reason: (bench) =>
      count(bench.marked.columns) >= bench.pattern.chart.columns
        ? 'A chart keeps at least one column.'
        : null,
    run: (bench) => {
      const { from, to } = bench.marked.columns
      bench.apply(`Delete ${plural(count({ from, to }), 'column')}`, (p) =>
        deleteColumns(p, from, to),
      )
      bench.corner = null
    },
  },
  {
    id: 'repeat-set',
    label: 'Repeat these columns',
    keys: ['r'],
    run: (bench) => {
      const { columns } = bench.marked
      bench.apply(`Repeat columns ${columns.from + 1} to ${columns.to + 1}`, (p) =>
        setRepeat(p, columns),
      )
      bench.corner = null
      if (bench.work.layout.copies === 1)
        bench.say(
          'It is worked once, between the columns beside it. “Fill the loom” takes these away.',
        )
    },
  },
  {
    id: 'repeat-fill',
    label: 'Fill the loom with these columns',
    keys: ['Shift+r'],
    reason: (bench) =>
      count(columnsToFillWith(bench)) === bench.pattern.chart.columns
        ? 'These are all the columns there are.'
        : null,
    run: (bench) => {
      const { from, to } = columnsToFillWith(bench)
      const width = to - from + 1
      bench.apply(`Fill the loom with columns ${from + 1} to ${to + 1}`, (p) =>
        setRepeat(keepColumns(p, from, to), { from: 0, to: width - 1 }),
      )
      bench.goTo({ row: bench.spot.row, peg: 0 })
      const { copies, over } = bench.work.layout
      bench.say(
        over === 0
          ? `The ${plural(width, 'column')} ${width === 1 ? 'is' : 'are'} worked ${plural(copies, 'time')}; the other columns were taken away.`
          : `The ${plural(width, 'column')} ${width === 1 ? 'goes' : 'go'} ${copies} times into ${bench.pattern.loom.pegs} pegs; ${over} ${over === 1 ? 'is' : 'are'} left over.`,
      )
    },
  },
  {
    id: 'repeat-remove',
    label: 'Take the repeat away',
    keys: [],
    reason: (bench) => (bench.pattern.chart.repeat ? null : 'The chart has no repeat.'),
    run: (bench) => {
      bench.apply('Take the repeat away', (p) => setRepeat(p, null))
      bench.corner = null
    },
  },
  {
    id: 'round-start',
    label: 'Start the round here',
    keys: [],
    reason: (bench) => (columnAt(bench) === 0 ? 'The round starts here already.' : null),
    run: (bench) => {
      const column = columnAt(bench) - (bench.pattern.chart.repeat?.from ?? 0)
      bench.apply('Start the round here', (p) => rotateColumns(p, column))
      bench.goTo({ ...bench.spot, peg: bench.pattern.chart.repeat?.from ?? 0 })
    },
  },
])

/** Both show first what would change. */
export const reverseCommand: Command = {
  id: 'reverse-direction',
  label: 'Reverse the working direction (same fabric)',
  keys: [],
  edits: true,
  run: (bench) => {
    bench.turning = 'reverse'
  },
}

export const mirrorCommand: Command = {
  id: 'mirror',
  label: 'Mirror the design (second of a pair)',
  keys: [],
  edits: true,
  run: (bench) => {
    bench.turning = 'mirror'
  },
}

export const pieceCommands: readonly Command[] = [reverseCommand, mirrorCommand]
