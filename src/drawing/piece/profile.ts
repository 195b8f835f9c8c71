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
  readonly kind: 'rows' | 'cup' | 'toe' | 'open' | 'edge' | 'gathered'
  /** A cup of short rows: how far it stands out at one side. */
  readonly out: number
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
  const slices = work.steps.flatMap((step, index) => slicesOf(step, index, size.height, widthOf))
  return withToe(slices)
}

/** A cup with nothing but an end after it closes the piece. */
function withToe(slices: readonly Slice[]): readonly Slice[] {
  const at = slices.findLastIndex(({ kind }) => kind === 'cup')
  const toe = slices[at]
  const after = slices.slice(at + 1)
  if (
    !toe ||
    after.length === 0 ||
    after.some(({ kind, height }) => kind === 'cup' || (kind === 'rows' && height > toe.out))
  )
    return slices
  if (!after.some(({ kind }) => kind === 'edge' || kind === 'gathered')) return slices
  return [...slices.slice(0, at), { ...toe, kind: 'toe', height: toe.out, out: 0 }]
}

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
): Slice[] {
  const slice = (change: Partial<Slice>): Slice => ({
    step: index,
    height: 0,
    lower: widthOf(loopsOf(step.before.stacks, step)),
    upper: widthOf(loopsOf(step.after.stacks, step)),
    kind: 'rows',
    out: 0,
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
  const slices: Slice[] = []
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
        ? slice({ kind: 'cup', lower, upper, height: 0, out: height / 2 })
        : slice({ kind: step.toAndFro ? 'open' : 'rows', lower, upper, height }),
    )
  }
  return slices
}

/** Rows over a part of the pegs in work make the piece no longer on the other part. */
const isShort = ({ rows, pegs }: StepWork, index: number): boolean => {
  const row = rows?.rows[index]?.row
  return row !== undefined && (row.from > pegs.from || row.to < pegs.to)
}
