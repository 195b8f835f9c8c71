import { stitchOf } from '../../stitches/vocabulary'
import type { Pattern } from '../pattern'
import { withAllCharts } from './piece'
import { turnOver } from './turn-over'
import { withStepPegs } from './turn-round'

/**
 * Mirror the design, for the second of a pair, in every section: crosses and leans swap, columns
 * reverse, the loom goes on being worked the same way. A heel is placed on the other half of the
 * loom and worked as before, since its rows begin where the yarn is. Rows of a part of the pegs
 * that are no such section are turned over and head the other way.
 */
export function mirror(pattern: Pattern): Pattern {
  const { loom } = pattern
  return withStepPegs(
    withAllCharts(pattern, (chart) => turnOver(chart, loom, (id) => stitchOf(id).mirror)),
    loom.pegs,
  )
}
