import { termOf } from '../../languages/languages'
import { memo } from '../../pattern/memo'
import type { Pattern } from '../../pattern/pattern'
import { readFile } from '../../shelf/format'
import type { OnShelf, Stage } from '../../shelf/keep'

export const groups = ['All', 'On the loom', 'Drafts', 'Finished', 'Removed'] as const
export type Group = (typeof groups)[number]
export const orders = ['Last worked', 'Name', 'Loom'] as const
export type Order = (typeof orders)[number]

const stages: Readonly<Partial<Record<Group, Stage>>> = {
  'On the loom': 'on the loom',
  Drafts: 'draft',
  Finished: 'finished',
}

/** Removed pieces are kept so long, in milliseconds: 60 days. */
const keptRemoved = 60 * 24 * 3_600_000

/** A piece on the shelf, with what its file says. */
export interface Piece extends OnShelf {
  /** Null: its file cannot be read. */
  readonly pattern: Pattern | null
}

export const isIn = ({ stage, removed }: OnShelf, group: Group): boolean =>
  group === 'Removed'
    ? removed !== null
    : removed === null && (group === 'All' || stage === stages[group])

/** What a piece is found by: its names, notes and stitches. */
const wordsIn = memo((pattern: Pattern): string => {
  const { title, designer, notes, charts, steps, style } = pattern
  const stitches = new Set(charts.flatMap(({ chart }) => chart.rows.flatMap(({ cells }) => cells)))
  const terms = [...stitches].flatMap((stitch) => {
    const term = stitch && termOf(stitch, style.terms)
    return term ? [term.name, term.abbr] : []
  })
  const noted = steps.flatMap((step) => ('text' in step ? [step.text] : []))
  return [title, designer, notes, ...charts.map(({ name }) => name), ...noted, ...terms]
    .join('\n')
    .toLowerCase()
})

export const loomOf = ({ loom }: Pattern): string =>
  `${loom.pegs}-peg ${loom.shape === 'ring' ? 'ring' : 'rake'}`

/** Does the piece have all these words in it? */
export function has({ pattern, title }: Piece, words: readonly string[]): boolean {
  const all = pattern ? wordsIn(pattern) : title.toLowerCase()
  return words.every((word) => all.includes(word))
}

export const byOrder: Readonly<Record<Order, (a: Piece, b: Piece) => number>> = {
  'Last worked': (a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0),
  Name: (a, b) => a.title.localeCompare(b.title),
  Loom: (a, b) => (a.pattern?.loom.pegs ?? 0) - (b.pattern?.loom.pegs ?? 0),
}

/** Was it removed so long ago that it goes for good? */
export const isPast = ({ removed }: OnShelf): boolean =>
  removed !== null && Date.parse(removed) + keptRemoved < Date.now()

/** Reads the files of pieces; one that has not changed is read once. */
export class PieceReader {
  readonly #known = new Map<string, Piece>()

  read(on: OnShelf): Piece {
    const known = this.#known.get(on.id)
    const result = known?.text === on.text ? null : readFile(on.text)
    const pattern = result === null ? (known?.pattern ?? null) : result.ok ? result.pattern : null
    const piece = { ...on, pattern }
    this.#known.set(on.id, piece)
    return piece
  }
}
