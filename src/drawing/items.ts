import { short, type Point } from './path'
import type { InkRole, Item } from './scene'

type PathItem = Extract<Item, { kind: 'path' }>
type TextItem = Extract<Item, { kind: 'text' }>

/** An area, with an outline of the same ink where it has one; `stroke` in mm. */
export const filled = (d: string, ink: InkRole, stroke = 0): PathItem => ({
  kind: 'path',
  d,
  ink,
  stroke: short(stroke),
  fill: true,
})

/** A line, `stroke` mm wide. */
export const stroked = (d: string, ink: InkRole, stroke: number, dash?: string): PathItem => ({
  kind: 'path',
  d,
  ink,
  stroke: short(stroke),
  fill: false,
  ...(dash === undefined ? {} : { dash }),
})

/** The same, but nothing for a path without anything in it. */
export const ifAny = (d: string | undefined, draw: (d: string) => Item): Item[] =>
  d ? [draw(d)] : []

/** A line of text, its baseline at `y`, in letters of `size` mm. */
export const written = (
  text: string,
  [x, y]: Point,
  size: number,
  anchor: TextItem['anchor'],
  ink: InkRole = 'note',
  weight?: 'bold',
): TextItem => ({
  kind: 'text',
  x,
  y,
  text,
  size,
  anchor,
  ink,
  ...(weight === undefined ? {} : { weight }),
})
