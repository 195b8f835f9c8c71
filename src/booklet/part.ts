import type { Pattern } from '../pattern/pattern'
import type { Work } from '../pattern/work'
import type { PieceWork } from '../pattern/workPiece'
import type { Column } from './page/blocks'
import type { Block } from './page/flow'
import type { PrintWarning } from './page/page'
import type { Area } from './page/paper'
import type { BookletSettings } from './settings'

/** What a part is laid out from. */
export interface Context {
  readonly settings: BookletSettings
  readonly column: Column
  readonly area: Area
  /** What the booklet tells of; in the part of the second of a pair, the second. */
  readonly piece: PieceWork
  /** The charts that its steps work, in the order of use, each as it is worked first. */
  readonly charts: readonly Work[]
  /** A piece that is no more than its chart: nothing in it needs the chart's name. */
  readonly isOneChart: boolean
  /** The mirrored second of a pair, where it is printed. */
  readonly second: PieceWork | null
  /** What stands in the booklet before the part. */
  readonly before: readonly Block[]
}

/** Blocks with what is not printed as it was asked for. */
export interface Laid {
  readonly blocks: readonly Block[]
  readonly warnings: readonly PrintWarning[]
}

export const laid = (blocks: readonly Block[]): Laid => ({ blocks, warnings: [] })

/** What the designer may leave out, each a switch of the settings. */
export type Leavable = 'charts' | 'words' | 'pictures' | 'second'

/** Something that stands in a booklet. */
export interface Part {
  readonly id: string
  /** What it is called where one chooses. */
  readonly label: string
  /** Of a part that can be left out: its switch, and in which pieces there is one. */
  readonly leavable?: {
    readonly setting: Leavable
    readonly isOffered: (pattern: Pattern) => boolean
  }
  readonly isAsked: (context: Context) => boolean
  readonly blocks: (context: Context) => Laid
}

/** The parts that are asked for, one after the other. */
export function layParts(parts: readonly Part[], context: Context): Laid {
  const blocks = [...context.before]
  const warnings: PrintWarning[] = []
  for (const part of parts) {
    const here = { ...context, before: blocks }
    if (!part.isAsked(here)) continue
    const made = part.blocks(here)
    blocks.push(...made.blocks)
    warnings.push(...made.warnings)
  }
  return { blocks: blocks.slice(context.before.length), warnings }
}
