import { runsRightToLeft } from '../../loom/direction'
import type { Spot } from '../../pattern/history'
import type { Bench } from '../state/bench.svelte'
import { rowNoun } from '../../words/rowName'
import { eraseHere, paintHere, pickUpHere } from './chart'
import type { Command } from './command'

/** One step up the fabric, down it, or sideways as the right side is seen. */
const step =
  (rows: number, sideways: number, extend: boolean) =>
  (bench: Bench): void => {
    const peg1AtRight = runsRightToLeft(bench.pattern.loom.direction)
    const along = peg1AtRight ? -sideways : sideways
    const pegs = bench.work.layout.columnOf.length
    const round = bench.pattern.loom.shape === 'ring' && !extend
    const peg = bench.spot.peg + along
    const to: Spot = {
      row: bench.spot.row + rows,
      peg: round ? (peg + pegs) % pegs : peg,
    }
    bench.goTo(to, extend ? (bench.corner ?? bench.spot) : null)
  }

const arrows = [
  { name: 'up', key: 'ArrowUp', rows: 1, sideways: 0 },
  { name: 'down', key: 'ArrowDown', rows: -1, sideways: 0 },
  { name: 'left', key: 'ArrowLeft', rows: 0, sideways: -1 },
  { name: 'right', key: 'ArrowRight', rows: 0, sideways: 1 },
] as const

/** Commands of the chart itself: they run while a chart has the focus. */
export const placeCommands: readonly Command[] = [
  ...arrows.flatMap(({ name, key, rows, sideways }): Command[] => [
    { id: `go-${name}`, label: `Go ${name}`, keys: [key], run: step(rows, sideways, false) },
    {
      id: `mark-${name}`,
      label: `Mark ${name}`,
      keys: [`Shift+${key}`],
      run: step(rows, sideways, true),
    },
  ]),
  {
    id: 'go-row-start',
    label: 'Go to peg 1',
    keys: ['Home'],
    run: (bench) => bench.goTo({ ...bench.spot, peg: 0 }),
  },
  {
    id: 'go-row-end',
    label: 'Go to the last peg',
    keys: ['End'],
    run: (bench) => bench.goTo({ ...bench.spot, peg: Infinity }),
  },
  {
    id: 'go-top',
    label: ({ pattern }) => `Go ten ${rowNoun(pattern)}s up`,
    keys: ['PageUp'],
    run: (bench) => bench.goTo({ ...bench.spot, row: bench.spot.row + 10 }),
  },
  {
    id: 'go-bottom',
    label: ({ pattern }) => `Go ten ${rowNoun(pattern)}s down`,
    keys: ['PageDown'],
    run: (bench) => bench.goTo({ ...bench.spot, row: bench.spot.row - 10 }),
  },
  {
    id: 'paint',
    label: 'Put the stitch in hand here',
    keys: ['Enter', 'Space'],
    edits: true,
    run: (bench) => paintHere(bench),
  },
  {
    id: 'erase',
    label: 'Plain: back to the ground stitch',
    keys: ['Delete', 'Backspace'],
    edits: true,
    run: (bench) => eraseHere(bench),
  },
  { id: 'pick-up', label: 'Pick up the stitch here', keys: ['i'], run: pickUpHere },
  {
    id: 'unmark',
    label: 'Unmark',
    keys: ['Escape'],
    run: (bench) => {
      bench.corner = null
    },
  },
]
