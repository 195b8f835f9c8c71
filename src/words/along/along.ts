import { memo } from '../../pattern/memo'
import { schedule } from '../../pattern/schedule'
import { pieceStretches, type Stretch } from '../../pattern/stretches'
import type { PieceWork } from '../../pattern/workPiece'
import type { Terms } from '../../languages/terms'
import { linesOfStep } from '../piece/write'
import { writeRow } from '../sentence'
import type { Span } from '../spans'
import { stintsOf, type Stint } from './stints'

/** A stretch of the piece as a knitter comes to it: a row, or an edge. */
export interface Stop {
  readonly stretch: Stretch
  /** What is to be known before it: notes, and which pegs are in work from here. */
  readonly told: readonly string[]
  /** Which row of its step it is, from 0. */
  readonly pass: number
}

/** A whole piece, one stretch after the other, to be knitted along with. */
export interface Along {
  readonly piece: PieceWork
  readonly stops: readonly Stop[]
  /** What is told after the last of them. */
  readonly after: readonly string[]
}

/** The same object for the same piece. */
export const alongPiece = memo((piece: PieceWork): Along => {
  const stops: Stop[] = []
  let told: string[] = []
  let step = -1
  let pass = 0
  const tellUpTo = (end: number): void => {
    for (let index = step + 1; index < end; index++) told.push(...toldIn(piece, index))
  }
  for (const stretch of pieceStretches(piece)) {
    const here = stretch.step ?? 0
    if (here !== step) {
      tellUpTo(here)
      step = here
      pass = 0
    }
    stops.push({ stretch, told, pass: pass++ })
    told = []
  }
  tellUpTo(piece.steps.length)
  return { piece, stops, after: told }
})

/** A step that is nothing to be worked. */
const toldIn = (piece: PieceWork, index: number): readonly string[] => {
  const kind = piece.steps[index]?.step.kind
  return kind === 'note' || kind === 'pegs' ? texts(piece, index) : []
}

const texts = (piece: PieceWork, index: number): readonly string[] =>
  linesOfStep(piece, index, piece.pattern.style.terms).map(({ text }) => text)

/** What is done at a stop, as one text. */
export function textOf({ piece }: Along, { stretch }: Stop): string {
  const { loom, style } = piece.pattern
  if (stretch.kind === 'row') return writeRow(stretch.run, loom.shape, style.terms)
  return texts(piece, stretch.step ?? 0).join(' ')
}

/** The same as its spans, and the stitches that they tell; an edge is one span without stitches. */
export function readStop(
  along: Along,
  stop: Stop,
): { spans: readonly Span[]; stints: readonly Stint[] } {
  const { stretch } = stop
  const { loom, style } = along.piece.pattern
  const terms: Terms = style.terms
  if (stretch.kind === 'row') return stintsOf(stretch.run, loom.shape, terms)
  const [text = ''] = texts(along.piece, stretch.step ?? 0)
  const pegs = stretch.run.way.pegs
  const run = { from: Math.min(...pegs), to: Math.max(...pegs) }
  return {
    spans: [{ text, kind: 'stitches' }],
    stints: pegs.length > 0 ? [{ span: 0, sites: [], pegs: run, copy: null }] : [],
  }
}

/** How often a row is worked within its band: this time from 0, and in all; null: outside of bands. */
export function bandOf(
  { piece }: Along,
  { stretch, pass }: Stop,
): { at: number; of: number; rows: number } | null {
  const chart = stretch.chart && piece.steps[stretch.step ?? 0]?.chart?.chart
  if (!chart || !stretch.chart) return null
  const passes = schedule(chart)
  const { row, time } = passes[pass % passes.length] ?? { row: 0, time: 0 }
  const band = chart.bands.find(({ from, to }) => from <= row && row <= to)
  return band ? { at: time, of: band.times, rows: band.to - band.from + 1 } : null
}
