/** How a file of one version becomes one of the next. */
export interface Form {
  readonly version: number
  /** Takes the whole file and gives one of the next version; the newest form gives the same. */
  readonly upgrade: (file: object) => object
}

/** As the file holds it: cast on, the chart once, bind off. */
const pieceOfOneChart = {
  onBench: 'Chart',
  steps: [
    { step: 'cast on', how: 'e-wrap' },
    { step: 'chart', section: 'Chart', times: 1 },
    { step: 'bind off', how: 'basic' },
  ],
  sections: [],
  pair: 'none',
  pace: null,
  swatch: null,
  pictures: [],
}

type Parts = Readonly<Record<string, unknown>>

/** The parts of an object; what is none has none, and the schema says what is missing. */
const partsOf = (value: unknown): Parts =>
  typeof value === 'object' && value !== null ? (value as Parts) : {}

const renamed = (value: unknown, from: string, to: string): unknown => {
  const { [from]: name, ...others } = partsOf(value)
  return name === undefined ? value : { ...others, [to]: name }
}

const listIn = (value: unknown, change: (item: unknown) => unknown): unknown =>
  Array.isArray(value) ? value.map(change) : value

function withAllCharts(file: object): object {
  const { chart, words, piece, checks, ...others } = file as Parts
  const { aside, ...checkSettings } = partsOf(checks)
  const { onBench, sections, steps, pictures, ...pieceParts } = partsOf(piece)
  const flat = (section: unknown): unknown => {
    const { chart: rows, ...named } = partsOf(section)
    return { ...named, ...partsOf(rows) }
  }
  const waiting = Array.isArray(sections) ? sections : []
  return {
    ...others,
    charts: [flat({ name: onBench, chart, words, aside }), ...waiting.map(flat)],
    checks: checkSettings,
    steps: listIn(steps, (step) => renamed(step, 'section', 'chart')),
    pictures: listIn(pictures, (picture) => renamed(picture, 'section', 'chart')),
    ...pieceParts,
  }
}

/**
 * Every version there has been, oldest first. To change the format: change the schema, write the
 * step from the last version into its entry here, and add an entry for the new one.
 */
export const forms: readonly [Form, ...Form[]] = [
  // Before version 2 the words were always written from the chart.
  {
    version: 1,
    upgrade: (file) => ({ ...file, words: null, readAs: { size: 1, needles: false } }),
  },
  // Before version 3 a file held one chart and nothing of the piece round it.
  {
    version: 2,
    upgrade: (file) => ({ ...file, piece: pieceOfOneChart }),
  },
  // Before version 4 one chart stood beside the others, and the steps under "piece".
  { version: 3, upgrade: withAllCharts },
  // Before version 5 every chart had its rows, and none a wish.
  { version: 4, upgrade: (file) => file },
  { version: 5, upgrade: (file) => file },
]

/** The version that is written. */
export const version = 5

/** What is said of anything that no Pegwright saved. */
export const otherFile = 'This is not a Pegwright file. Choose a file that was saved in Pegwright.'

export type UpgradeResult =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly message: string }

/** Bring what was read up to the newest of `known`, or say why that cannot be. */
export function upgrade(value: unknown, known: readonly Form[] = forms): UpgradeResult {
  const no = (message: string): UpgradeResult => ({ ok: false, message })
  const newest = known.at(-1)?.version ?? 0
  if (typeof value !== 'object' || value === null || !Object.hasOwn(value, 'pegwright'))
    return no(otherFile)
  const { pegwright: written } = value as { pegwright: unknown }
  if (typeof written !== 'number' || !Number.isInteger(written) || written < 1)
    return no(
      `This file does not say which version it is: "pegwright" must be a whole number from 1 to ${newest}.`,
    )
  if (written > newest)
    return no(
      `A newer Pegwright saved this file: it is of version ${written}, and this Pegwright opens versions 1 to ${newest}. Open it with the newer one.`,
    )
  let file: object = value
  for (const form of known)
    if (form.version >= written)
      file = { ...form.upgrade(file), pegwright: Math.min(form.version + 1, newest) }
  return { ok: true, value: file }
}
