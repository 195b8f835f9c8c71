/**
 * Drawn signs, as plain data. A sign is drawn in its own columns as the right side is seen:
 * x from 0 at its left edge to `width` at its right edge, y from 0 at the top (up the fabric) to 1
 * at the bottom. The drawing folder maps this square onto flat cells or ring sectors.
 */
export type Command =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  /** A circle that stays round however the cell is stretched: centre, radius in cell units. */
  | readonly ['O', number, number, number]
  | readonly ['Z']

/**
 * In the order in which they are painted. shade: filled with grey, to the edges of the cell (no stitch).
 * ground: filled with paper. behind: filled with a lighter grey, a band that another passes over.
 * fine, line, front: stroked, each heavier than the one before; front passes over what else is there.
 * solid: filled with ink.
 */
export const signInks = ['shade', 'ground', 'behind', 'fine', 'line', 'front', 'solid'] as const
export type Ink = (typeof signInks)[number]

export interface Mark {
  readonly ink: Ink
  readonly path: readonly Command[]
}

export type Sign = readonly Mark[]

/** The published traditions the signs are drawn in. */
export const traditions = ['cyc', 'jis'] as const
export type Tradition = (typeof traditions)[number]

export interface Signs {
  /** After the Craft Yarn Council's chart symbols. */
  readonly cyc: Sign
  /** Is that the council's own symbol? Only these are printed under its name. */
  readonly council?: true
  /** After JIS L 0201 letter symbols for knitting stitch. */
  readonly jis: Sign
}

export type SignPoint = readonly [x: number, y: number]

const through = ([first, ...rest]: readonly SignPoint[]): Command[] =>
  first ? [['M', ...first], ...rest.map((p): Command => ['L', ...p])] : []

export const stroke = (ink: Ink, ...points: SignPoint[]): Mark => ({ ink, path: through(points) })
export const line = (...points: SignPoint[]): Mark => stroke('line', ...points)
export const polygon = (ink: Ink, ...points: SignPoint[]): Mark => ({
  ink,
  path: [...through(points), ['Z']],
})
export const circle = (x: number, y: number, r: number, ink: Ink = 'line'): Mark => ({
  ink,
  path: [['O', x, y, r]],
})
export const dot = (x: number, y: number, r: number): Mark => circle(x, y, r, 'solid')
export const curve = (...path: Command[]): Mark => ({ ink: 'line', path })

function mirrorCommand(command: Command, width: number): Command {
  switch (command[0]) {
    case 'M':
    case 'L':
      return [command[0], width - command[1], command[2]]
    case 'C': {
      const [, x1, y1, x2, y2, x, y] = command
      return ['C', width - x1, y1, width - x2, y2, width - x, y]
    }
    case 'O':
      return ['O', width - command[1], command[2], command[3]]
    case 'Z':
      return command
  }
}

/** The sign as a looking-glass shows it, left and right swapped, in the same columns. */
export const mirrorSign = (sign: Sign, width: number): Sign =>
  sign.map(({ ink, path }) => ({ ink, path: path.map((command) => mirrorCommand(command, width)) }))

export const mirrorSigns = ({ cyc, jis }: Signs, width: number): Signs => ({
  cyc: mirrorSign(cyc, width),
  jis: mirrorSign(jis, width),
})
