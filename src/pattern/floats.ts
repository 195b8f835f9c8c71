import type { Pattern } from './pattern'

/**
 * In things for babies a strand may pass two pegs and about a centimetre at most, mm (common
 * practice: longer ones catch fingers and toes). Held so for a bar in front as well as inside.
 */
export const babyFloat = { pegs: 2, length: 10 } as const

/** What says how long a strand may lie loose inside. */
export interface FloatSettings {
  readonly forBaby: boolean
  /** In pegs. */
  readonly longestFloat: number
  /** mm */
  readonly pitch: number
}

/**
 * How many pegs a strand may pass before it is caught; its length is counted as those pegs times
 * the distance of the pegs. 0: no peg may be slipped.
 */
export const mostPegsPassed = ({ forBaby, longestFloat, pitch }: FloatSettings): number =>
  forBaby
    ? Math.min(longestFloat, babyFloat.pegs, Math.floor(babyFloat.length / pitch))
    : longestFloat

/** The same for a pattern: what its checks allow and what it prints. */
export const mostPegsPassedIn = ({
  loom,
  making,
  checks,
}: Pick<Pattern, 'loom' | 'making' | 'checks'>): number =>
  mostPegsPassed({
    forBaby: making.forBaby,
    longestFloat: checks.longestFloat,
    pitch: loom.pitch,
  })
