import type { Bench } from '../state/bench.svelte'
import { walkOf, type WalkState } from '../state/walk.svelte'
import { byKey, type Command } from './command'

const walking = (
  id: string,
  label: string,
  keys: readonly string[],
  run: (walk: WalkState) => void,
  against?: (walk: WalkState) => string | null,
): Command => ({
  id,
  label,
  keys,
  reason: (bench: Bench) => {
    const walk = walkOf(bench)
    if (!walk.shown) return 'Choose “Pegs” over the right sheet to walk move by move.'
    return against?.(walk) ?? null
  },
  run: (bench) => {
    const walk = walkOf(bench)
    if (id !== 'walk-play') walk.playing = false
    run(walk)
  },
})

const atStart = ({ atStart }: WalkState) =>
  atStart ? 'This is the loom before the first move.' : null
const atEnd = ({ atEnd, goesOn }: WalkState) =>
  atEnd
    ? goesOn
      ? 'This was the last move of this chart. To go on, choose a step of the whole piece above.'
      : 'This was the last move.'
    : null

// Rows rise as they do in a chart: up is on.
export const rowBack = walking(
  'walk-row-back',
  'To the start of this row, or the row before',
  ['PageDown'],
  (walk) => walk.rowBefore(),
  atStart,
)
export const moveBack = walking('walk-back', 'One move back', [','], (walk) => walk.back(), atStart)
export const moveForward = walking(
  'walk-forward',
  'One move forward',
  ['.'],
  (walk) => walk.forward(),
  atEnd,
)
export const rowForward = walking(
  'walk-row-forward',
  'To the next row',
  ['PageUp'],
  (walk) => walk.nextRow(),
  atEnd,
)
export const playMoves = walking(
  'walk-play',
  'Play the moves, or stop',
  ['Space'],
  (walk) => {
    walk.playing = !walk.playing
  },
  (walk) => (walk.playing ? null : atEnd(walk)),
)
const firstMove = walking('walk-first', 'To the first move of the row', ['Home'], (walk) =>
  walk.toMove(1),
)
const lastMove = walking('walk-last', 'To the last move of the row', ['End'], (walk) =>
  walk.toMove(Infinity),
)
export const markMove = walking('walk-mark', 'Pictures begin with this move', ['m'], (walk) =>
  walk.toggleMark(),
)

/** Beside a chart only these keys walk: the others mean something else there. */
export const walkFromChart: readonly Command[] = [moveBack, moveForward]

const inPane = [
  rowBack,
  moveBack,
  moveForward,
  rowForward,
  playMoves,
  firstMove,
  lastMove,
  markMove,
]
const paneKeys = new Map<string, Command>([
  ...byKey(inPane),
  ['ArrowLeft', moveBack],
  ['ArrowRight', moveForward],
])

/** The command of a key while the pane of the pegs has the focus. */
export const walkCommand = (key: string): Command | undefined => paneKeys.get(key)
