import { whyNotFilled } from '../../checks/counts/repeat-fit'
import { erase, eraseAll, landing, paint, paintAll } from '../../pattern/edits/paint'
import { deleteColumns, insertColumns, keepColumns, setRepeat } from '../../pattern/edits/columns'
import { deleteRows, duplicateRows, insertRows, removeBand } from '../../pattern/edits/rows'
import { rotateColumns } from '../../pattern/edits/turn-round'
import { setRun } from '../../pattern/edits/turning'
import { limits, type Pattern, type Run } from '../../pattern/pattern'
import type { Work } from '../../pattern/work'
import { placedAt } from '../../pattern/row'
import type { Bench } from '../state/bench.svelte'
import { rowNoun } from '../../words/rowName'
import { askFirst } from './blocks/asking'
import { editing, type Command } from './command'
import { applyToStitches, sayLost } from './lost'
import { termOf } from '../../languages/languages'

const count = ({ from, to }: Run) => to - from + 1
const plural = (n: number, word: string) => (n === 1 ? word : `${n} ${word}s`)
/** "round", "3 rows": what is marked. */
const markedRows = ({ marked, pattern }: Bench) => plural(count(marked.rows), rowNoun(pattern))
/** "this peg", "these pegs". */
const thesePegs = ({ from, to }: Run) => (from === to ? 'this peg' : 'these pegs')

/** Column of the chart at the current place. */
export const columnAt = (bench: Bench): number => bench.work.layout.columnOf[bench.spot.peg] ?? 0

/** Fill what is marked with the stitch in hand. */
function paintMarked(bench: Bench): void {
  const { rows, columns } = bench.marked
  const { abbr } = termOf(bench.stitch, bench.pattern.style.terms)
  const before = bench.pattern
  const fill = (p: Pattern) => paintAll(p, bench.stitch, rows, columns)
  if (applyToStitches(bench, `Fill with ${abbr}`, fill)) return
  if (bench.pattern === before && !bench.isSecond)
    bench.say(`Nothing changes: ${abbr} is there already, or the marked pegs have no room for it.`)
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
    applyToStitches(
      bench,
      `Paint ${termOf(bench.stitch, bench.pattern.style.terms).abbr}`,
      (pattern) => paint(pattern, bench.stitch, row, column),
      gesture,
    )
  else bench.say(where.reason)
}

export function eraseHere(bench: Bench, gesture: string | null = null): void {
  if (bench.corner && gesture === null) {
    const { rows, columns } = bench.marked
    applyToStitches(bench, 'Make the marked stitches plain', (p) => eraseAll(p, rows, columns))
    return
  }
  applyToStitches(bench, 'Make it plain', (p) => erase(p, bench.spot.row, columnAt(bench)), gesture)
}

export function pickUpHere(bench: Bench): void {
  const row = bench.chart.rows[bench.spot.row]
  const item = row && placedAt(row, columnAt(bench))
  if (!item) return
  bench.stitch = item.stitch
  bench.hand = 'paint'
  bench.say(`In hand: ${termOf(item.stitch, bench.pattern.style.terms).name}.`)
}

/** What is marked; with nothing marked, the repeat where there is one. */
const columnsToFillWith = ({ corner, marked, chart }: Bench): Run =>
  corner ? marked.columns : (chart.repeat ?? marked.columns)

const roomForRows = (bench: Bench) =>
  bench.chart.rows.length >= limits.rows.most
    ? `The chart has ${limits.rows.most} ${rowNoun(bench.pattern)}s, the most it can have.`
    : null
const roomForColumns = (bench: Bench) =>
  bench.chart.columns >= limits.columns.most
    ? `The chart is ${limits.columns.most} pegs wide, the most it can be.`
    : null

/** "Work this round once", "Work rounds 9 to 16 once": the band at the place, or the row. */
function workOnce(bench: Bench): string {
  const noun = rowNoun(bench.pattern)
  const { numbers } = bench.work
  const band = bench.chart.bands[bandHere(bench)]
  if (!band || band.from === band.to) return `Work this ${noun} once`
  return `Work ${noun}s ${numbers[band.from]} to ${numbers[band.to]} once`
}

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
    label: ({ pattern }) => `Add a ${rowNoun(pattern)} above`,
    keys: ['Insert'],
    reason: roomForRows,
    run: (bench) => {
      const { to } = bench.marked.rows
      bench.apply(`Add a ${rowNoun(bench.pattern)}`, (p) =>
        startAtYarn(insertRows(p, to + 1), to + 1, bench.work),
      )
      bench.goTo({ ...bench.spot, row: to + 1 })
    },
  },
  {
    id: 'row-below',
    label: ({ pattern }) => `Add a ${rowNoun(pattern)} below`,
    keys: ['Shift+Insert'],
    reason: roomForRows,
    run: (bench) => {
      const { from } = bench.marked.rows
      bench.apply(`Add a ${rowNoun(bench.pattern)}`, (p) => insertRows(p, from))
      bench.goTo({ ...bench.spot, row: from })
    },
  },
  {
    id: 'rows-copy',
    label: (bench) => `Copy the ${markedRows(bench)} above`,
    keys: ['d'],
    reason: roomForRows,
    run: (bench) => {
      const { from, to } = bench.marked.rows
      const rows = count({ from, to })
      bench.apply(`Copy the ${markedRows(bench)}`, (p) => duplicateRows(p, from, to))
      bench.goTo(
        { ...bench.spot, row: bench.spot.row + rows },
        bench.corner && { ...bench.corner, row: bench.corner.row + rows },
      )
    },
  },
  {
    id: 'rows-delete',
    label: (bench) => `Remove the ${markedRows(bench)}`,
    keys: ['Mod+Backspace', 'Mod+Delete'],
    reason: (bench) =>
      count(bench.marked.rows) >= bench.chart.rows.length
        ? `A chart keeps at least one ${rowNoun(bench.pattern)}.`
        : null,
    run: (bench) => {
      const { from, to } = bench.marked.rows
      bench.apply(`Remove the ${markedRows(bench)}`, (p) => deleteRows(p, from, to))
      bench.goTo({ ...bench.spot, row: from })
    },
  },
  {
    id: 'band-remove',
    label: workOnce,
    keys: [],
    reason: (bench) =>
      bandHere(bench) < 0 ? `This ${rowNoun(bench.pattern)} is worked once already.` : null,
    run: (bench) => {
      const index = bandHere(bench)
      bench.apply(workOnce(bench), (p) => removeBand(p, index))
    },
  },
])

export const bandHere = (bench: Bench): number =>
  bench.chart.bands.findIndex(({ from, to }) => bench.spot.row >= from && bench.spot.row <= to)

export const columnCommands: readonly Command[] = editing([
  {
    id: 'column-before',
    label: 'Add a peg before',
    keys: ['Alt+Insert'],
    reason: roomForColumns,
    run: (bench) => {
      const { from } = bench.marked.columns
      applyToStitches(bench, 'Add a peg', (p) => insertColumns(p, from))
    },
  },
  {
    id: 'column-after',
    label: 'Add a peg after',
    keys: ['Alt+Shift+Insert'],
    reason: roomForColumns,
    run: (bench) => {
      const { to } = bench.marked.columns
      applyToStitches(bench, 'Add a peg', (p) => insertColumns(p, to + 1))
    },
  },
  {
    id: 'columns-delete',
    label: ({ marked }) => `Remove ${thesePegs(marked.columns)}`,
    keys: ['Alt+Delete', 'Alt+Backspace'],
    reason: (bench) =>
      count(bench.marked.columns) >= bench.chart.columns ? 'A chart keeps at least one peg.' : null,
    run: (bench) => {
      const { from, to } = bench.marked.columns
      askFirst(bench, bench.block.tornByColumns(from, to), 'Remove', () => {
        applyToStitches(bench, `Remove ${plural(count({ from, to }), 'peg')} from the chart`, (p) =>
          deleteColumns(p, from, to),
        )
        bench.corner = null
      })
    },
  },
  {
    id: 'repeat-set',
    label: 'Repeat these pegs',
    keys: ['r'],
    run: (bench) => {
      const { columns } = bench.marked
      askFirst(bench, bench.block.tornByColumns(columns.from, columns.to), 'Repeat', () => {
        bench.apply(`Repeat ${plural(count(columns), 'peg')}`, (p) => setRepeat(p, columns))
        bench.corner = null
        if (bench.work.layout.copies === 1)
          bench.say(
            'The repeat is worked once, with other stitches beside it. “Fill the loom” repeats it all the way round.',
          )
      })
    },
  },
  {
    id: 'repeat-fill',
    label: 'Fill the loom with these pegs',
    keys: ['Shift+r'],
    reason: (bench) => {
      const width = count(columnsToFillWith(bench))
      return width === bench.chart.columns
        ? 'The chart has no other pegs.'
        : whyNotFilled(width, bench.pattern.loom.pegs)
    },
    run: (bench) => {
      const { from, to } = columnsToFillWith(bench)
      const width = to - from + 1
      askFirst(bench, bench.block.tornByColumns(from, to), 'Fill the loom', () => {
        bench.apply(`Fill the loom with ${plural(width, 'peg')}`, (p) =>
          setRepeat(keepColumns(p, from, to), { from: 0, to: width - 1 }),
        )
        bench.goTo({ row: bench.spot.row, peg: 0 })
        const { copies } = bench.work.layout
        const times = copies === 1 ? 'once' : `${copies} times`
        const way = bench.pattern.loom.shape === 'ring' ? 'round' : 'across'
        sayLost(
          bench,
          `The ${width}-peg repeat now goes ${times} ${way} the loom; the other stitches are gone.`,
        )
      })
    },
  },
  {
    id: 'repeat-remove',
    label: 'Remove the repeat',
    keys: [],
    reason: (bench) => (bench.chart.repeat ? null : 'The chart has no repeat.'),
    run: (bench) => {
      bench.apply('Remove the repeat', (p) => setRepeat(p, null))
      bench.corner = null
    },
  },
  {
    id: 'round-start',
    label: 'Start the round here',
    keys: [],
    reason: (bench) => (columnAt(bench) === 0 ? 'The round starts here already.' : null),
    run: (bench) => {
      const column = columnAt(bench) - (bench.chart.repeat?.from ?? 0)
      applyToStitches(bench, 'Start the round here', (p) => rotateColumns(p, column))
      bench.goTo({ ...bench.spot, peg: bench.chart.repeat?.from ?? 0 })
    },
  },
])

/** Both show first what would change. */
export const reverseCommand: Command = {
  id: 'reverse-direction',
  label: 'Reverse the working direction (same fabric)',
  keys: [],
  edits: true,
  run: (bench) => bench.ask('reverse'),
}

export const mirrorCommand: Command = {
  id: 'mirror',
  label: 'Mirror the design (second of a pair)',
  keys: [],
  edits: true,
  run: (bench) => bench.ask('mirror'),
}

export const pieceCommands: readonly Command[] = [reverseCommand, mirrorCommand]
