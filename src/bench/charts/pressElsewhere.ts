import type { NumberHit } from '../../drawing/flatGeometry'
import type { Spot } from '../../pattern/history'
import { layAt, putPreview } from '../commands/blocks/laying'
import { markPegs, markRows } from '../commands/blocks/marking'
import type { Bench } from '../state/bench.svelte'

/** What is under the pointer. */
export interface Under {
  readonly spot: Spot | null
  readonly number: NumberHit | null
  /** Shift is held: to what is marked. */
  readonly isAdding: boolean
}

/** A press on something else than the cells. */
export interface PressElsewhere {
  /** Takes the press, or not. */
  readonly down: (under: Under) => boolean
  readonly move: (under: Under) => void
  /** The pointer goes over it without a press. */
  readonly over: (under: Under) => void
}

/** A block that lies on the chart is dragged, or laid where it is pressed; a stamp is put there. */
export function pressOnBlock(bench: Bench): PressElsewhere {
  /** Rows and columns from the corner of the block to where it is held. */
  let grip = { row: 0, column: 0 }
  const columnOf = ({ peg }: Spot): number => bench.work.layout.columnOf[peg] ?? 0
  const layUnder = (spot: Spot): void =>
    layAt(bench, { row: spot.row - grip.row, column: columnOf(spot) - grip.column })
  return {
    down({ spot }) {
      const { preview, area } = bench.block
      if (!preview) return false
      if (!spot || !area) return true
      const column = columnOf(spot)
      const isInside =
        spot.row >= area.rows.from &&
        spot.row <= area.rows.to &&
        column >= area.columns.from &&
        column <= area.columns.to
      grip =
        isInside && preview.how !== 'stamp'
          ? { row: spot.row - preview.at.row, column: column - preview.at.column }
          : { row: 0, column: 0 }
      layUnder(spot)
      if (preview.how === 'stamp') putPreview(bench)
      return true
    },
    move({ spot }) {
      const { preview } = bench.block
      if (spot && preview && preview.how !== 'stamp') layUnder(spot)
    },
    over({ spot }) {
      const { preview } = bench.block
      if (!spot || preview?.how !== 'stamp') return
      bench.block.lay({ ...preview, at: { row: spot.row, column: columnOf(spot) } })
    },
  }
}

/** The numbers beside a chart mark their rows and columns. */
export function pressOnNumbers(bench: Bench): PressElsewhere {
  let first: NumberHit | null = null
  const mark = (number: NumberHit): void => {
    if (first?.of === 'row' && number.of === 'row') markRows(bench, number.row, first.row)
    if (first?.of === 'peg' && number.of === 'peg') markPegs(bench, number.peg, first.peg)
  }
  return {
    down({ number, isAdding }) {
      if (!number) return false
      const isSameKind = isAdding && bench.corner && first?.of === number.of
      if (!isSameKind) first = number
      mark(number)
      return true
    },
    move({ number, spot }) {
      if (number) mark(number)
      else if (spot && first)
        mark(first.of === 'row' ? { of: 'row', row: spot.row } : { of: 'peg', peg: spot.peg })
    },
    over: () => undefined,
  }
}
