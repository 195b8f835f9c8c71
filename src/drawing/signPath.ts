import type { Command, Ink, Sign } from '../stitches/sign'
import { circlePath, mm, type Point } from './path'

/** How a sign's columns lie on the page. */
export interface Setting {
  /** From sign coordinates (x over its columns, y down from 0 to 1) to mm. */
  readonly place: (x: number, y: number) => Point
  /** mm to one unit of a radius. */
  readonly unit: number
  /** Columns a straight line may pass without being bent; 0 when lines stay straight. */
  readonly straight: number
}

export type InkPaths = Partial<Record<Ink, string>>

/** The whole sign as one path for each ink. */
export function signPaths(sign: Sign, setting: Setting): InkPaths {
  const paths: InkPaths = {}
  for (const { ink, path } of sign) paths[ink] = (paths[ink] ?? '') + pathOf(path, setting)
  return paths
}

function pathOf(path: readonly Command[], { place, unit, straight }: Setting): string {
  let d = ''
  let [x, y] = [0, 0]
  let [startX, startY] = [0, 0]
  const goTo = (toX: number, toY: number) => {
    const pieces = straight > 0 ? Math.ceil(Math.abs(toX - x) / straight) : 1
    for (let piece = 1; piece <= pieces; piece++) {
      const share = piece / pieces
      d += mm`L${place(x + (toX - x) * share, y + (toY - y) * share)}`
    }
    if (pieces === 0) d += mm`L${place(toX, toY)}`
    x = toX
    y = toY
  }
  for (const command of path) {
    switch (command[0]) {
      case 'M':
        ;[, x, y] = command
        ;[startX, startY] = [x, y]
        d += mm`M${place(x, y)}`
        break
      case 'L':
        goTo(command[1], command[2])
        break
      case 'C': {
        const [, x1, y1, x2, y2, toX, toY] = command
        d += mm`C${place(x1, y1)} ${place(x2, y2)} ${place(toX, toY)}`
        x = toX
        y = toY
        break
      }
      case 'O':
        d += circlePath(place(command[1], command[2]), command[3] * unit)
        break
      case 'Z':
        if (straight > 0) goTo(startX, startY)
        d += 'Z'
        break
    }
  }
  return d
}

/** A sign that fills one cell is drawn no wider for its height, or higher for its width, than this. */
const stretch = 1.3

/**
 * The same, for a sign that stands alone in its cells and keeps its proportions when they are very
 * wide or very high. `anchor` is the x that stays where it is: the middle, or an edge.
 */
export function proportioned(
  { place, unit, straight }: Setting,
  anchor: number,
  cell: { readonly width: number; readonly height: number },
): Setting {
  const acrossBy = Math.min(1, (stretch * cell.height) / cell.width)
  const upBy = Math.min(1, (stretch * cell.width) / cell.height)
  if (acrossBy === 1 && upBy === 1) return { place, unit, straight }
  return {
    place: (x, y) => place(anchor + (x - anchor) * acrossBy, 0.5 + (y - 0.5) * upBy),
    unit,
    straight,
  }
}
