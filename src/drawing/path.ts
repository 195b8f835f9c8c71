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

export const moveTo = ([x, y]: Point): string => `M${short(x)} ${short(y)}`
export const lineTo = ([x, y]: Point): string => `L${short(x)} ${short(y)}`

export const polyline = ([first, ...rest]: readonly Point[]): string =>
  first ? moveTo(first) + rest.map(lineTo).join('') : ''

export const closed = (points: readonly Point[]): string => `${polyline(points)}Z`

export const rectangle = (x: number, y: number, width: number, height: number): string =>
  `M${short(x)} ${short(y)}h${short(width)}v${short(height)}h${short(-width)}Z`

export const circlePath = ([x, y]: Point, radius: number): string => {
  const r = short(radius)
  return `M${short(x - r)} ${short(y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`
}

/** On a circle round `centre`, from where the pen is to `to`. */
export const arcTo = (radius: number, large: boolean, clockwise: boolean, to: Point): string =>
  `A${short(radius)} ${short(radius)} 0 ${large ? 1 : 0} ${clockwise ? 1 : 0} ${short(to[0])} ${short(to[1])}`

/** A filled head of an arrow with its tip at `tip`, pointing along `angle` (clockwise from the top). */
export function arrowHead([x, y]: Point, angle: number, length: number): string {
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)]
  const corner = (side: number): Point => [
    x - length * sin + side * 0.42 * length * cos,
    y + length * cos + side * 0.42 * length * sin,
  ]
  return closed([[x, y], corner(1), corner(-1)])
}
