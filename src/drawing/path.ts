import { pathRound } from 'd3-path'

/** Writing SVG path data: millimetres, rounded to hundredths. */
export type Point = readonly [x: number, y: number]

export const short = (n: number): number => Math.round(n * 100) / 100 + 0

/** Path data with its numbers rounded; a point is written as its two numbers. */
export const mm = (
  strings: TemplateStringsArray,
  ...values: readonly (number | Point | string)[]
): string =>
  strings.reduce((text, part, i) => {
    const value = values[i - 1] ?? ''
    if (typeof value === 'string') return text + value + part
    return text + (typeof value === 'number' ? short(value) : at(value)) + part
  })

const at = ([x, y]: Point): string => `${short(x)} ${short(y)}`

export const polyline = (points: readonly Point[]): string =>
  points.map((point, i) => `${i === 0 ? 'M' : 'L'}${at(point)}`).join('')

export const closed = (points: readonly Point[]): string => `${polyline(points)}Z`

export const rectangle = (x: number, y: number, width: number, height: number): string =>
  mm`M${x} ${y}h${width}v${height}h${-width}Z`

export const circlePath = ([x, y]: Point, radius: number): string => {
  const r = short(radius)
  return `M${short(x - r)} ${short(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`
}

/** On circles round a centre, from angle to angle (clockwise from the top, radians); a straight line leads from one to the next. */
export function arcs(
  [x, y]: Point,
  ...list: readonly (readonly [radius: number, from: number, to: number])[]
): string {
  const path = pathRound(2)
  for (const [radius, from, to] of list)
    path.arc(x, y, radius, from - Math.PI / 2, to - Math.PI / 2, to < from)
  return path.toString()
}

/** From one point to another: a point `share` of the way, 0 to 1. */
export const between = ([x0, y0]: Point, [x1, y1]: Point, share: number): Point => [
  x0 + (x1 - x0) * share,
  y0 + (y1 - y0) * share,
]

/** A filled head of an arrow with its tip at `tip`, pointing along `angle` (clockwise from the top). */
export function arrowHead([x, y]: Point, angle: number, length: number): string {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
  const corner = (side: number): Point => [
    x - length * sin + side * 0.42 * length * cos,
    y + length * cos + side * 0.42 * length * sin,
  ]
  return closed([[x, y], corner(1), corner(-1)])
}
