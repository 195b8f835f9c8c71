import type { Direction, Heading } from '../../loom/direction'
import type { BindOff, Knit } from '../../loom/move'
import type { RowEnd } from '../../loom/row'
import type { Fix, Notice, TextRange } from '../../pattern/finding'
import type { Gauge, Pattern, Run } from '../../pattern/pattern'
import type { Terms } from '../../languages/terms'
import type { Stitch } from '../../stitches/stitch'

export type { TextRange } from '../../pattern/finding'

/** What the words are read for. */
export interface ReadSettings {
  readonly shape: 'ring' | 'bar'
  /** Loops on the loom before the first row. */
  readonly pegs: number
  readonly direction: Direction
  readonly knit: Knit
  readonly terms: Terms
  /** Which size of "24 (28, 32)", from 0. */
  readonly size: number
  /** Flat words for needles: every other row is written as its wrong side looks. */
  readonly needles: boolean
}

/** Kinds of token; the screen colours by them. */
export const tokenKinds = [
  'heading',
  'head',
  'stitch',
  'unknown',
  'number',
  'repeat',
  'count',
  'peg',
  'turn',
  'reference',
  'row',
  'definition',
  'word',
  'punctuation',
] as const
export type TokenKind = (typeof tokenKinds)[number]

export interface Token {
  readonly kind: TokenKind
  readonly range: TextRange
}

/** One stitch as it is worked, and the words that say so. */
export interface ReadStitch {
  readonly stitch: Stitch
  readonly range: TextRange
}

/** One real row, in the order it is worked: references and repeats of rows are expanded. */
export interface ReadRow {
  /** Its number, as the words count. */
  readonly label: string
  /** The words it comes from: its own line, or the one it refers to through `saidAt`. */
  readonly range: TextRange
  /** Where it is called for: the line of the reference or repeat; its own line otherwise. */
  readonly saidAt: TextRange
  /** Which time it is worked by a repeat of rows, from 0. */
  readonly time: number
  readonly heading: Heading | null
  /** Pegs it names, 0-based; null when it names none. */
  readonly run: Run | null
  /** Pegs it covers: those it names, all, or those from the yarn on; null: they cannot be told. */
  readonly covers: Run | null
  /** The way it is worked. */
  readonly goes: Heading
  /** In working order. */
  readonly stitches: readonly ReadStitch[]
  readonly end: RowEnd
  /** Loops on the loom before it, taken, made, and after it (before - takes + makes). */
  readonly before: number
  readonly takes: number
  readonly makes: number
  readonly after: number
}

/** A repair of the words: pieces of text to put in place of others. */
export interface TextFix extends Pick<Fix, 'label'> {
  readonly changes: readonly { readonly range: TextRange; readonly text: string }[]
}

/** Something about the words: what is wrong, what is not known, what has to be asked. */
export interface Remark extends Notice {
  readonly range: TextRange
  /** Index into `Reading.rows`; null when it belongs to no row. */
  readonly row: number | null
  /** 0-based; null for no special pegs. */
  readonly pegs: Run | null
  readonly fixes: readonly TextFix[]
  /** Numbers of the rows that it says are missing, from the first to the last of each run. */
  readonly lacks?: readonly Run[]
}

export interface Section {
  readonly title: string
  readonly range: TextRange
}

/** A band of rows as the words tell it: "Rep Rnds 1-4 twice more". Indexes of its first time. */
export interface ReadBand {
  readonly from: number
  readonly to: number
  readonly times: number
}

/** Loops that the words put on or take off between rows. */
export interface ReadEdge {
  readonly does: 'cast on' | 'bind off'
  /** Which bind-off, where the words name it; null for a cast-on. */
  readonly how: BindOff | null
  /** Index of the row that follows; the number of rows where it is the last thing told. */
  readonly row: number
}

/** A text, read. Reading never fails: there are always rows (perhaps none) and remarks. */
export interface Reading {
  readonly text: string
  readonly settings: ReadSettings
  readonly tokens: readonly Token[]
  readonly rows: readonly ReadRow[]
  readonly bands: readonly ReadBand[]
  readonly edges: readonly ReadEdge[]
  readonly sections: readonly Section[]
  readonly remarks: readonly Remark[]
  /** What the words state for the whole pattern, where they do. */
  readonly stated: {
    readonly knit?: Knit
    readonly direction?: Direction
    readonly pegs?: number
    /** Stitches and rows to 10 cm. */
    readonly gauge?: Gauge
    /** The first line, where it looks like a title. */
    readonly title?: string
  }
}

export const readSettingsOf = ({ loom, making, style, readAs }: Pattern): ReadSettings => ({
  shape: loom.shape,
  pegs: loom.pegs,
  direction: loom.direction,
  knit: making.knit,
  terms: style.terms,
  size: readAs.size,
  needles: readAs.needles,
})
