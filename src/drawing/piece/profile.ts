import type { PieceWork, StepWork } from '../../pattern/workPiece'
import { stitchSize } from '../../pattern/totals'

/** A slice of the piece, seen from the side. Millimetres of the real thing. */
export interface Slice {
  /** Step it belongs to, 0-based. */
  readonly step: number
  readonly height: number
  /** Width at its lower and its upper edge: of a tube lying flat, or of a flat piece. */
  readonly lower: number
  readonly upper: number
  readonly kind: 'rows' | 'cup' | 'toe' | 'slope' | 'open' | 'edge' | 'gathered'
  /** A cup of short rows: how far it stands out at one side. */
  readonly out: number
  /**
   * Short rows make a flat piece higher where more of them lie: how far below its highest place the lower
   * and the upper edge lie. Null where they are level.
   */
  readonly below: Drop | null
  readonly drop: Drop | null
}

/** At `places` places from the first peg to the last, mm. */
export type Drop = readonly number[]

const places = 25

/** How much higher the piece gets by a slice where that is not the same everywhere, mm. */
interface Rising extends Slice {
  readonly rise?: Drop
}

/** Without a gauge a stitch is drawn as wide as the pegs stand apart, and three quarters as high. */
const assumedRatio = 0.75

/** The piece from its cast-on up, step by step, in true proportions where there is a gauge. */
export function profileOf(work: PieceWork): readonly Slice[] {
  const { loom } = work.pattern
  const size = stitchSize(work.pattern) ?? {
    width: loom.pitch,
    height: loom.pitch * assumedRatio,
  }
  const layers = loom.shape === 'ring' ? 2 : 1
  const widthOf = (loops: number): number => (loops * size.width) / layers
  const isRing = loom.shape === 'ring'
  const slices = work.steps.flatMap((step, index) =>
    slicesOf(step, index, size.height, widthOf, isRing),
  )
  return isRing ? withToe(slices, size.height) : sloped(slices)
}

/** Rounds between a toe and the end of the piece: those that take in its doubled stitches. */
const mostClosing = 4

/** A cup with nothing after it but a few rounds and an end that closes it is a toe. */
function withToe(slices: readonly Slice[], rowHeight: number): readonly Slice[] {
  const at = slices.findLastIndex(({ kind }) => kind === 'cup')
  const toe = slices[at]
  const after = slices.slice(at + 1)
  const rounds = after.reduce((sum, { height, kind }) => sum + (kind === 'rows' ? height : 0), 0)
  const end = after.at(-1)
  if (!toe || !end || (end.kind !== 'edge' && end.kind !== 'gathered')) return slices
  if (rounds > mostClosing * rowHeight) return slices
  const folded = { height: 0, lower: 0, upper: 0 }
  return [
    ...slices.slice(0, at),
    { ...toe, kind: 'toe', height: toe.out, out: 0 },
    ...after.map((slice): Slice => ({ ...slice, ...folded })),
  ]
}

/** What is worked after short rows lies along them. */
function sloped(slices: readonly Rising[]): readonly Slice[] {
  let below: Drop = new Array<number>(places).fill(0)
  return slices.map((slice) => {
    const heights = below.map((one, at) => (slice.rise?.[at] ?? slice.height) - one)
    const height = Math.max(...heights)
    const drop = heights.map((one) => height - one)
    const result: Slice = { ...slice, height: Math.max(0, height), below, drop }
    below = drop
    return isLevel(drop) && isLevel(result.below ?? drop)
      ? { ...result, below: null, drop: null }
      : result
  })
}

const isLevel = (drop: Drop): boolean => drop.every((one) => one < 1e-9)

const loopsOf = (stacks: StepWork['before']['stacks'], { pegs }: StepWork): number => {
  let loops = 0
  for (let peg = pegs.from; peg <= pegs.to; peg++) if ((stacks[peg]?.length ?? 0) > 0) loops++
  return loops
}

function slicesOf(
  step: StepWork,
  index: number,
  rowHeight: number,
  widthOf: (loops: number) => number,
  isRing: boolean,
): Rising[] {
  const slice = (change: Partial<Slice>): Slice => ({
    step: index,
    height: 0,
    lower: widthOf(loopsOf(step.before.stacks, step)),
    upper: widthOf(loopsOf(step.after.stacks, step)),
    kind: 'rows',
    out: 0,
    below: null,
    drop: null,
    ...change,
  })
  if (step.edge) {
    const gathered = step.step.kind === 'bind off' && step.step.how === 'gather'
    const width = step.step.kind === 'cast on' ? 'upper' : 'lower'
    const at = slice({})[width]
    return [
      slice({
        kind: gathered ? 'gathered' : 'edge',
        lower: at,
        upper: gathered ? 0 : at,
        height: gathered ? at / 5 : 0,
      }),
    ]
  }
  const slices: Rising[] = []
  const rows = step.rows?.rows ?? []
  for (let row = 0; row < rows.length;) {
    const first = row
    const short = isShort(step, row)
    while (row < rows.length && isShort(step, row) === short) row++
    const [run, last] = [rows[first], rows[row - 1]]
    if (!run || !last) break
    const lower = widthOf(loopsOf(run.before.stacks, step))
    const upper = widthOf(loopsOf(last.after.stacks, step))
    const height = (row - first) * rowHeight
    slices.push(
      short
        ? isRing
          ? slice({ kind: 'cup', lower, upper, height: 0, out: height / 2 })
          : slopeOf(rows.slice(first, row), step, rowHeight, slice)
        : slice({ kind: step.toAndFro && isRing ? 'open' : 'rows', lower, upper, height }),
    )
  }
  return slices
}

/** Short rows of a flat piece: higher where more of them lie, as a shoulder is at the neck. */
function slopeOf(
  rows: NonNullable<StepWork['rows']>['rows'],
  { pegs }: StepWork,
  rowHeight: number,
  slice: (change: Partial<Slice>) => Slice,
): Rising {
  const rise = Array.from({ length: places }, (_, at) => {
    const peg = pegs.from + Math.round(((pegs.to - pegs.from) * at) / (places - 1))
    return rowHeight * rows.filter(({ row }) => row.from <= peg && row.to >= peg).length
  })
  return { ...slice({ kind: 'slope' }), rise }
}

/** Rows over a part of the pegs in work make the piece no longer on the other part. */
const isShort = ({ rows, pegs }: StepWork, index: number): boolean => {
  const row = rows?.rows[index]?.row
  return row !== undefined && (row.from > pegs.from || row.to < pegs.to)
}
