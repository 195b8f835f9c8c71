import type { Run } from '../pattern/pattern'
import type { Work } from '../pattern/work'
import type { Geometry } from './geometry'
import type { FindingMark } from './marks'
import { drawnRows, replaceRows, rowLayers, type DrawnRows } from './rows'
import type { Layer, Scene } from './scene'
import { usualColumns, type ColumnKind } from './slots'
import { yarnLayer, yarnLineChanged } from './yarnLine'

/** A chart as drawn, with what it was drawn from: the next version is drawn from it. */
export interface ChartScene<G extends Geometry, O> extends Scene {
  readonly geometry: G
  readonly work: Work
  readonly options: O
  readonly rows: DrawnRows
  /** What stands side by side unless it is asked for otherwise. */
  readonly columns: ColumnKind
}

interface WithMarks {
  readonly marks?: readonly FindingMark[]
}

/** How one kind of chart is drawn. */
export interface ChartKind<G extends Geometry, O extends WithMarks> {
  readonly geometry: (work: Work, options: O) => G
  /** Do these options lay out the same? */
  readonly same: (options: O, others: O) => boolean
  readonly title: (work: Work, geometry: G) => string
  readonly grid: (work: Work, geometry: G) => Layer
  readonly boxes: (work: Work, geometry: G) => Layer
  readonly numbers: (work: Work, geometry: G) => Layer
  readonly findings: (marks: readonly FindingMark[], geometry: G) => Layer
}

const noMarks: readonly FindingMark[] = []

/**
 * Draw a chart; from its earlier version only what changed, when all cells lie where they did. The
 * result is the same, and layers that an edit did not touch are the same objects.
 */
export function drawChart<G extends Geometry, O extends WithMarks>(
  kind: ChartKind<G, O>,
  work: Work,
  options: O,
  previous?: ChartScene<G, O>,
): ChartScene<G, O> {
  const columns = usualColumns(work.chart, work.layout)
  const stays =
    previous?.columns === columns &&
    liesTheSame(previous.work, work) &&
    kind.same(previous.options, options)
  const scene = stays ? drawAgain(kind, work, options, previous) : null
  return { ...(scene ?? drawAfresh(kind, work, options, previous)), columns }
}

function drawAfresh<G extends Geometry, O extends WithMarks>(
  kind: ChartKind<G, O>,
  work: Work,
  options: O,
  previous?: ChartScene<G, O>,
): Omit<ChartScene<G, O>, 'columns'> {
  const geometry = kind.geometry(work, options)
  const rows = drawnRows(work, geometry, previous?.rows)
  const { width, height } = geometry
  const layers = [
    kind.grid(work, geometry),
    ...rowLayers(work, rows),
    kind.boxes(work, geometry),
    yarnLayer(work, geometry),
    kind.numbers(work, geometry),
    kind.findings(options.marks ?? noMarks, geometry),
  ]
  return { width, height, title: kind.title(work, geometry), layers, geometry, work, options, rows }
}

function drawAgain<G extends Geometry, O extends WithMarks>(
  kind: ChartKind<G, O>,
  work: Work,
  options: O,
  kept: ChartScene<G, O>,
): Omit<ChartScene<G, O>, 'columns'> | null {
  const { geometry, rows, width, height, title } = kept
  const layers = kept.layers.slice()
  if (replaceRows(layers, work, kept.work, rows)) {
    if (kind.geometry(work, options).key !== geometry.key) return null
    layers[layers.length - 2] = kind.numbers(work, geometry)
  }
  if (yarnLineChanged(work, kept.work)) layers[layers.length - 3] = yarnLayer(work, geometry)
  const { marks = noMarks } = options
  if (!sameMarks(marks, kept.options.marks ?? noMarks))
    layers[layers.length - 1] = kind.findings(marks, geometry)
  return { width, height, title, layers, geometry, work, options, rows }
}

/** Is all the same that says where cells lie and what stands round them? Rows may differ. */
function liesTheSame(before: Work, now: Work): boolean {
  const [a, b] = [before.pattern, now.pattern]
  return (
    a.style === b.style &&
    a.loom === b.loom &&
    a.gauge === b.gauge &&
    a.title === b.title &&
    before.chart.columns === now.chart.columns &&
    before.chart.repeat === now.chart.repeat &&
    before.chart.bands === now.chart.bands &&
    before.chart.rows.length === now.chart.rows.length &&
    before.layout === now.layout &&
    before.numbers === now.numbers
  )
}

export const sameRun = (a: Run | null | undefined, b: Run | null | undefined): boolean =>
  a === b || (a?.from === b?.from && a?.to === b?.to)

function sameMarks(a: readonly FindingMark[], b: readonly FindingMark[]): boolean {
  if (a === b) return true
  if (a.length !== b.length) return false
  return a.every((mark, i) => {
    const other = b[i]
    return (
      mark.row === other?.row && mark.severity === other.severity && sameRun(mark.pegs, other.pegs)
    )
  })
}
