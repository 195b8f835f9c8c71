import type { RowEnd } from '../../loom/row'
import type { Stitch } from '../../stitches/stitch'
import type { Remark, TextRange, TokenKind } from './reading'

/** How often a group is worked in all. */
export type Copies =
  | { readonly kind: 'fixed'; readonly times: number }
  /** A bare "6 times" after a group that is worked once already: 6 more, or 6 in all. */
  | { readonly kind: 'bare'; readonly times: number; readonly said: TextRange }
  /** As often as fits, until so many loops are left. `ending`: the last copy may be cut short. */
  | { readonly kind: 'until'; readonly last: number; readonly ending: boolean }
  /** As often as fits before what comes after it: to a marker, a gap. */
  | { readonly kind: 'open' }

export interface StitchItem {
  readonly do: 'stitch'
  readonly stitch: Stitch
  /** null: none is said ("knit"). */
  readonly count: number | null
  readonly range: TextRange
  /** Slipped with the yarn said to be at the back. */
  readonly atBack?: true
  /** Stands in for its purl twin of this name, which the vocabulary does not have. */
  readonly twinOf?: string
}

export interface GroupItem {
  readonly do: 'group'
  readonly items: readonly Item[]
  readonly copies: Copies
  readonly range: TextRange
}

/** A turn in a row; `null` for `end`: turned without a wrap. */
export interface TurnItem {
  readonly do: 'turn'
  readonly end: RowEnd
  /** 0-based; null when it is not named. */
  readonly peg: number | null
  readonly range: TextRange
}

/** "purl pegs 3-6": the pegs are named, from the first one worked to the last. 0-based. */
export interface PegsItem {
  readonly do: 'pegs'
  readonly stitch: Stitch | null
  readonly first: number
  readonly last: number
  readonly back: boolean
  readonly range: TextRange
}

/** A word the trade uses for several stitches: null stands for "nothing is worked". */
export interface ChoiceItem {
  readonly do: 'choice'
  readonly rule: Ambiguity
  readonly count: number
  readonly range: TextRange
}
export const ambiguities = ['ask-times', 'ask-yfwd', 'ask-inc', 'ask-ds', 'ask-k1b'] as const
export type Ambiguity = (typeof ambiguities)[number]

/** Something that is worked but that no stitch is known for: what it takes is not known either. */
export interface GapItem {
  readonly do: 'gap'
  /** Of a word that is not known: the number that it bears, 0 for none. null: a stitch of the trade. */
  readonly number: number | null
  readonly range: TextRange
}

/** A fabric by its name, as the right side looks, on all loops that are left. */
export interface FillItem {
  readonly do: 'fill'
  /**
   * The stitches that are repeated from where its first row begins, for each row of its cycle. null: "knit
   * the knits and purl the purls", each loop as it looks.
   */
  readonly rows: readonly (readonly Stitch[])[] | null
  /** On a ring only whole repeats meet. */
  readonly whole: boolean
  /** So many loops are left after it; 0: those that what follows takes. */
  readonly last: number
  readonly range: TextRange
}

export type Item = StitchItem | GroupItem | TurnItem | PegsItem | ChoiceItem | GapItem | FillItem

/** A count that the words state. */
export interface Said {
  readonly kind: 'total' | 'change' | 'rows'
  readonly count: number
  readonly range: TextRange
}

/** Rows that are named: by number, or the last so many. */
export type Named =
  | { readonly kind: 'numbers'; readonly numbers: readonly number[] }
  | { readonly kind: 'last'; readonly rows: number }
  /** "these rows", "repeat round": what was told last. */
  | { readonly kind: 'these' }

export type Often =
  | { readonly kind: 'more'; readonly times: number }
  | { readonly kind: 'all'; readonly times: number }
  | { readonly kind: 'bare'; readonly times: number; readonly said: TextRange }
  /** "until 20 rnds are worked": so many rows are there then. */
  | { readonly kind: 'until'; readonly rows: number; readonly said: TextRange }
  /** "until Rnd 65 is worked": the number of the last row. */
  | { readonly kind: 'through'; readonly number: number }
  | { readonly kind: 'length' }
  /** "until all stitches are used up", "for pattern": no number can be made of it. */
  | { readonly kind: 'open'; readonly pattern: boolean }
  | { readonly kind: 'none' }

export interface Reference {
  readonly how: 'as' | 'rep'
  readonly named: Named
  readonly often: Often
  readonly range: TextRange
}

export type RelativeRemark = Omit<Remark, 'row' | 'pegs'>

/** What a head says: which rows its words are for. */
export interface Head {
  readonly numbers: readonly number[]
  /** "and all even rows": every row from the first number on in steps of this; 0 for none. */
  readonly every: number
  /** "Next 6 rnds": how many rows without a number. */
  readonly next: number
  readonly side: 'right' | 'wrong' | null
  readonly kind: 'round' | 'row'
  /** "set-up", "dec": what a head without a number is called. */
  readonly name: string | null
  readonly range: TextRange
}

/** Tokens kept flat, for there is one for every word: token i goes from bounds[2i] to bounds[2i+1]. */
export interface BodyTokens {
  readonly kinds: readonly TokenKind[]
  readonly bounds: Int32Array
}

/** The words of one or several rows, or of one reference to rows. Ranges count from its start. */
export interface Body {
  readonly items: readonly Item[]
  readonly said: readonly Said[]
  readonly reference: Reference | null
  /** "for 5 rows", "Knit 3 rnds": worked that often; 1 if not said. */
  readonly rows: number
  /** After so many rows a fabric by name begins anew; 1 where none is named. */
  readonly cycle: number
  /** Its length is measured: "for 5 cm". */
  readonly measured: TextRange | null
  /** Rows that are not told. `set`: they go on in a pattern, as set. */
  readonly workEven: { readonly range: TextRange; readonly set: boolean } | null
  /** Loops are worked as they look. `set`: said as "as established", which may mean a pattern. */
  readonly appears: { readonly range: TextRange; readonly set: boolean } | null
  readonly tokens: BodyTokens
  readonly remarks: readonly (() => RelativeRemark)[]
  /** How many words were understood, and how many were not. */
  readonly known: number
  readonly unknown: number
  /** Lengths of its lists of sizes, with where they stand. */
  readonly sizes: readonly { readonly length: number; readonly range: TextRange }[]
  readonly side: 'right' | 'wrong' | null
}
