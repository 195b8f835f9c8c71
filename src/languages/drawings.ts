import type { Direction } from '../loom/direction'
import type { BindOff } from '../loom/move'

/** What is written in drawings, and said of them to people who do not see them. Pegs are printed numbers. */
export interface DrawingPhrases {
  readonly rowChart: (chart: ChartDrawn) => string
  readonly ringChart: (chart: ChartDrawn, castOn: 'inside' | 'outside') => string
  readonly fabric: (fabric: FabricDrawn) => string
  readonly side: (steps: number, rows: number, length: string | null) => string
  readonly loomFromAbove: (loom: LoomDrawn) => string
  readonly pegsFromFront: (first: number, last: number, leftward: boolean) => string
  readonly stepPictures: (sentences: readonly string[]) => string
  /** The small picture of how sheets of a chart join, and the marks at the edges of one. */
  readonly sheets: (first: string, last: string) => string
  readonly goesOn: string
  /** Stands over what is not to be published yet. */
  readonly draft: string
  readonly draftOf: (title: string) => string
  /** Where loops pass others. */
  readonly passing: Readonly<Record<'inFront' | 'behind', string>>
  /** Beside the steps of a piece. `pegs`: of an edge of only some of the pegs. */
  readonly plain: string
  readonly noRows: string
  readonly castOn: (pegs: number | null) => string
  readonly bindOff: (how: BindOff, pegs: number | null) => string
  readonly opening: (pegs: number, width: string | null) => readonly string[]
}

interface LoomDrawn {
  readonly shape: 'ring' | 'bar'
  readonly pegs: number
  readonly direction: Direction
}

export interface ChartDrawn {
  readonly title: string
  readonly loom: LoomDrawn
  readonly columns: number
  readonly rows: number
  /** How often the repeat stands on the loom; null for a chart without one. */
  readonly copies: number | null
}

export interface FabricDrawn {
  readonly name: string | undefined
  readonly loom: LoomDrawn
  readonly rows: number
  readonly view: 'flat' | 'tube'
  /** It is opened flat at short rows. */
  readonly opened: boolean
}
