import { withChart } from '../../src/pattern/edits/chart'
import fc, { type Arbitrary } from 'fast-check'
import { emptyStack, noWale, type Stack } from '../../src/loom/strand'
import type { LoomState } from '../../src/loom/state'
import {
  newPattern,
  blankRow,
  type LoomSetup,
  type Making,
  type Pattern,
} from '../../src/pattern/pattern'
import { crosses } from '../../src/stitches/crosses'
import { workPattern } from '../../src/pattern/work'
import { standardVocabulary, stitchOf } from '../../src/stitches/vocabulary'
import { cellsOf } from '../arbitraries'
import { cellsFrom } from '../cells'

/** A piece of whole rows on its loom. */
export function piece(
  rows: readonly (readonly string[])[],
  loom: Partial<LoomSetup> = {},
  making: Partial<Making> = {},
): Pattern {
  const pegs = rows[0]?.length ?? 3
  const pattern = newPattern(pegs)
  return withChart(
    {
      ...pattern,
      loom: { ...pattern.loom, ...loom, pegs },
      making: { ...pattern.making, ...making },
    },
    { rows: rows.map((ids) => ({ ...blankRow(pegs, stitchOf('k')), cells: cellsFrom(ids) })) },
  )
}

export const endOf = (pattern: Pattern): LoomState => workPattern(pattern).run.end

/** Wales on the pegs, lowest strand first; pegs with one loop give one number. */
export const walesOn = ({ stacks }: LoomState): number[] =>
  stacks.flatMap((stack) => stack.map(({ wale }) => wale).filter((wale) => wale !== noWale))

export const inWork = (stacks: readonly Stack[]): number =>
  stacks.filter((stack) => stack !== emptyStack).length

/** Stitches that take and make a loop on each of their pegs. */
export const steadyStitches = standardVocabulary.stitches.filter(
  ({ takes, makes, width }) => takes === width && makes === width,
)

/** Cells of whole stitches, cut off at `columns` by plain knit. */
export const fill = (parts: readonly (readonly string[])[], columns: number): string[] => {
  const cells: string[] = []
  for (const part of parts) if (cells.length + part.length <= columns) cells.push(...part)
  while (cells.length < columns) cells.push('k')
  return cells
}

export const arbitrarySteadyCells = (columns: number): Arbitrary<string[]> =>
  fc
    .array(fc.constantFrom(...steadyStitches), { maxLength: columns })
    .map((stitches) => fill(stitches.map(cellsOf), columns))

export const arbitraryCrossCells = (columns: number): Arbitrary<string[]> =>
  fc
    .array(fc.oneof(fc.constant(['k']), fc.constantFrom(...crosses).map(cellsOf)), {
      maxLength: columns,
    })
    .map((parts) => fill(parts, columns))

/** Decreases with their yarn overs, in any order, among plain stitches: takes = columns. */
const balancedGroups = [
  ['k2tog', 'yo'],
  ['ssk', 'yo'],
  ['p2tog', 'yo'],
  ['k2tog', 'm1l'],
  ['cdd', 'yo', 'yo'],
  ['sk2p', 'yo', 'm1r'],
  ['k3tog', 'yo', 'yo'],
  ['k2tog', 'ssk', 'yo', 'yo'],
  ['k2tog', 'kfb', ''],
]

export const arbitraryBalancedCells = (columns: number): Arbitrary<string[]> =>
  fc
    .array(
      fc.oneof(
        arbitrarySteadyCells(3),
        fc
          .constantFrom(...balancedGroups)
          .chain((group) =>
            fc.shuffledSubarray([...group.filter((id) => id !== ''), 'k', 'p'], {
              minLength: group.filter((id) => id !== '').length + 2,
            }),
          )
          .map((ids) => ids.flatMap((id) => (id === 'kfb' ? ['kfb', ''] : [id]))),
      ),
      { maxLength: columns },
    )
    .map((parts) => fill(parts, columns))
