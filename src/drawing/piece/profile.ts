import type { PieceWork, StepWork } from '../../pattern/workPiece'
import { leavesWaiting, openingsOf, partOf, type Opening } from '../../pattern/pegs/openings'
import { together } from '../../pattern/pegs/together'
import type { Run } from '../../pattern/pattern'
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
  /** An edge on some of the pegs, or the pegs of a cup; null for all of them. 0-based. */
  readonly pegs: Run | null
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
  const openings = openingsOf(work.steps)
  const { parts, later } = together(work)
  const whole = { from: 0, to: loom.pegs - 1 }
  const slices = work.steps.flatMap((step, index) => {
    const rows = step.rows?.rows.length ?? 0
    const made = (own: StepWork) =>
      slicesOf(work.steps, own, index, size.height, openings, widthOf, isRing)
    // A step that is nothing but parts of rounds goes on round the wall, once for all parts of a round.
    if (rows === 0 || parts[index] !== rows) return made(step)
    const high = (rows - (later[index] ?? 0)) / rows
    return made({ ...step, pegs: whole, toAndFro: false }).map((slice) => ({
      ...slice,
      height: slice.height * high,
    }))
  })
  return drawnIn(isRing ? withToe(slices, size.height) : sloped(slices))
}

/** A gathered end draws in so much of what was worked last, in parts of its width. */
const gatheredShare = 1 / 5

/** Gathering works no row and adds no length: the last rows close to a dome. */
function drawnIn(slices: readonly Slice[]): readonly Slice[] {
  const at = slices.findLastIndex(({ kind }) => kind === 'gathered')
  const [last, end] = [slices[at - 1], slices[at]]
  if (last?.kind !== 'rows' || !end || last.height === 0 || last.drop || last.below) return slices
  const high = Math.min(gatheredShare * last.upper, last.height)
  const upTo = last.height - high
  const width = last.lower + ((last.upper - last.lower) * upTo) / last.height
  return [
    ...slices.slice(0, at - 1),
    ...(upTo > 0 ? [{ ...last, height: upTo, upper: width }] : []),
    { ...last, kind: 'gathered', height: high, lower: width, upper: 0 },
    { ...end, lower: 0 },
    ...slices.slice(at + 1),
  ]
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

type Stacks = StepWork['before']['stacks']

/** Pegs that fabric hangs from, and those of an opening, beside which it goes on as wide as it was. */
const loopsOf = (stacks: Stacks, { pegs }: StepWork, open: readonly Opening[]): number => {
  let loops = 0
  for (let peg = pegs.from; peg <= pegs.to; peg++) {
    const isOpen = open.some(({ pegs: { from, to } }) => peg >= from && peg <= to)
    if (isOpen || (stacks[peg]?.length ?? 0) > 0) loops++
  }
  return loops
}

function slicesOf(
  steps: readonly StepWork[],
  step: StepWork,
  index: number,
  rowHeight: number,
  openings: readonly Opening[],
  widthOf: (loops: number) => number,
  isRing: boolean,
): Rising[] {
  const open = openings.filter(({ from, to }) => index >= from && index <= to)
  const widthAt = (stacks: Stacks): number => widthOf(loopsOf(stacks, step, open))
  const slice = (change: Partial<Slice>): Slice => ({
    step: index,
    height: 0,
    lower: widthAt(step.before.stacks),
    upper: widthAt(step.after.stacks),
    kind: 'rows',
    out: 0,
    pegs: null,
    below: null,
    drop: null,
    ...change,
  })
  if (step.edge) {
    const part = partOf(step)
    const gathered = !part && step.step.kind === 'bind off' && step.step.how === 'gather'
    const width = step.step.kind === 'cast on' ? 'upper' : 'lower'
    const at = slice({})[width]
    return [
      slice({
        kind: gathered ? 'gathered' : 'edge',
        pegs: part,
        lower: at,
        upper: gathered ? 0 : at,
      }),
    ]
  }
  const slices: Rising[] = []
  const rows = step.rows?.rows ?? []
  for (let row = 0; row < rows.length;) {
    const first = row
    const short = leavesWaiting(steps, index, row)
    while (row < rows.length && leavesWaiting(steps, index, row) === short) row++
    const [run, last] = [rows[first], rows[row - 1]]
    if (!run || !last) break
    const lower = widthAt(run.before.stacks)
    const upper = widthAt(last.after.stacks)
    const height = (row - first) * rowHeight
    slices.push(
      short
        ? isRing
          ? slice({ kind: 'cup', lower, upper, out: height / 2, pegs: covered(rows, first, row) })
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

/** All pegs that some of these rows cover. */
const covered = (rows: NonNullable<StepWork['rows']>['rows'], first: number, end: number): Run =>
  rows
    .slice(first, end)
    .map(({ row: { from, to } }) => ({ from, to }))
    .reduce((a, b) => ({ from: Math.min(a.from, b.from), to: Math.max(a.to, b.to) }))
