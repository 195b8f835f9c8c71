/** Stitches of a kind: the loops that all of them make, and how often it is worked. */
export interface StitchCount {
  readonly abbr: string
  readonly loops: number
  readonly times: number
}

/** What a piece comes to. `forOne`: of a pair. */
export interface TotalsPhrases {
  readonly stitches: (loops: number, kinds: readonly StitchCount[]) => string
  /** "k 480"; what makes several loops at once says how often: "3/3 LC 30 (5 times)". */
  readonly ofKind: (kind: StitchCount) => string
  /** Yarn in mm. */
  readonly yarn: (yarn: number, grams: number | null, forOne: boolean) => string
  /** `pace`: plain stitches in a minute. */
  readonly time: (minutes: number, pace: number, forOne: boolean) => string
  readonly estimated: string
  readonly allForOne: string
  /** Amounts alone: "42 m", "18 g", "2 h 5 min". Yarn in mm. */
  readonly metres: (yarn: number) => string
  readonly grams: (grams: number) => string
  readonly duration: (minutes: number) => string
}
