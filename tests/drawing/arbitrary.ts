import fc from 'fast-check'
import { withDirection } from './pieces'
import { arbitraryOneChart } from '../arbitraries'
import type { Pattern } from '../../src/pattern/pattern'
import { findStitch } from '../../src/stitches/vocabulary'

const simple = ['k', 'p', 'yo', 'none', '2/1 LPC', 'kfb'].flatMap((id) => findStitch(id) ?? [])

/** Pieces of any loom, repeat, bands, runs and turns, in a few stitches. */
export const arbitraryPiece = arbitraryOneChart({
  columns: 12,
  rows: 6,
  stitches: simple,
  cut: true,
})

export const bothDirections = (pattern: Pattern): readonly [Pattern, Pattern] => [
  withDirection(pattern, 'clockwise'),
  withDirection(pattern, 'counterclockwise'),
]

/** A place in a drawing, as a share of its rows and slots. */
export const arbitraryShare = fc.double({ min: 0.01, max: 0.99, noNaN: true })
