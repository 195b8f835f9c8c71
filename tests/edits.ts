/** Arbitrary edits for property tests: what is kept from version to version must survive them all. */
import { withChart } from '../src/pattern/edits/chart'
import { chartOn } from '../src/pattern/charts'
import fc, { type Arbitrary } from 'fast-check'
import { directions, headings } from '../src/loom/direction'
import { rowEnds } from '../src/loom/row'
import { insertColumns, setRepeat } from '../src/pattern/edits/columns'
import { mirror } from '../src/pattern/edits/mirror'
import { paint } from '../src/pattern/edits/paint'
import { deleteRows, duplicateRows, insertRows, setBand } from '../src/pattern/edits/rows'
import { setLoom, setMaking, setStyle } from '../src/pattern/edits/settings'
import { rotateColumns } from '../src/pattern/edits/turn-round'
import { setEnd, setHeading, setRun } from '../src/pattern/edits/turning'
import { shapes, type Pattern, type Run } from '../src/pattern/pattern'
import { traditions } from '../src/stitches/sign'
import { standardVocabulary } from '../src/stitches/vocabulary'
import { arbitraryOneChart } from './arbitraries'

export type Edit = (pattern: Pattern) => Pattern

const span = (a: number, b: number): Run => ({ from: Math.min(a, b), to: Math.max(a, b) })
const few = standardVocabulary.stitches.filter(({ id }) =>
  ['k', 'p', 'yo', 'k2tog', '1/1 LC'].includes(id),
)

/** Any edit there is, on any row and column. Going back to the first version is one of them. */
export function arbitraryEdit(first: Pattern): Arbitrary<Edit> {
  const row = fc.nat(599).map((n) => (p: Pattern) => n % chartOn(p).rows.length)
  const column = fc.nat(399).map((n) => (p: Pattern) => n % chartOn(p).columns)
  const peg = fc.nat(399).map((n) => (p: Pattern) => n % p.loom.pegs)
  const stitch = fc.oneof(fc.constantFrom(...few), fc.constantFrom(...standardVocabulary.stitches))
  const edit = <T extends unknown[]>(
    parts: { [K in keyof T]: Arbitrary<T[K]> },
    make: (pattern: Pattern, ...parts: T) => Pattern,
  ): Arbitrary<Edit> =>
    fc.tuple(...(parts as Arbitrary<unknown>[])).map((list) => (p) => make(p, ...(list as T)))
  return fc.oneof(
    {
      weight: 8,
      arbitrary: edit([stitch, row, column], (p, one, r, c) => paint(p, one, r(p), c(p))),
    },
    edit([row, fc.integer({ min: 1, max: 3 })], (p, r, n) => insertRows(p, r(p), n)),
    edit([row, row], (p, a, b) => {
      const { from, to } = span(a(p), b(p))
      return duplicateRows(p, from, Math.min(to, from + 2))
    }),
    edit([row], (p, r) => deleteRows(p, r(p), r(p))),
    edit([column], (p, c) => rotateColumns(p, c(p))),
    edit([column], (p, c) => insertColumns(p, c(p))),
    edit([row, row, fc.integer({ min: 1, max: 4 })], (p, a, b, times) => {
      const { from, to } = span(a(p), b(p))
      return setBand(p, from, to, times)
    }),
    edit([row, peg, peg], (p, r, a, b) => setRun(p, r(p), span(a(p), b(p)))),
    edit([row, fc.constantFrom(...rowEnds)], (p, r, end) => setEnd(p, r(p), end)),
    edit([row, fc.option(fc.constantFrom(...headings))], (p, r, way) => setHeading(p, r(p), way)),
    edit([column, column], (p, a, b) => setRepeat(p, span(a(p), b(p)))),
    edit([fc.integer({ min: 3, max: 30 })], (p, pegs) => setLoom(p, { pegs })),
    edit([fc.constantFrom(...directions)], (p, direction) => setLoom(p, { direction })),
    edit([fc.constantFrom(...shapes)], (p, shape) => setLoom(p, { shape })),
    edit([fc.boolean()], (p, forBaby) => setMaking(p, { forBaby })),
    edit([fc.constantFrom(...traditions)], (p, symbols) => setStyle(p, { symbols })),
    fc.constant(mirror),
    fc.constant(() => first),
  )
}

/** Any small piece: few pegs, few workings of its bands, stitches that may be cut. */
export const arbitrarySmallPiece: Arbitrary<Pattern> = arbitraryOneChart({
  columns: 12,
  rows: 8,
  cut: true,
}).map((pattern): Pattern =>
  withChart(
    { ...pattern, loom: { ...pattern.loom, pegs: 3 + (pattern.loom.pegs % 20) } },
    { bands: chartOn(pattern).bands.map((band) => ({ ...band, times: 2 + (band.times % 3) })) },
  ),
)

/** A piece and edits to be done one after the other. */
export const editedPiece = (
  piece: Arbitrary<Pattern> = arbitrarySmallPiece,
  editOf: (first: Pattern) => Arbitrary<Edit> = arbitraryEdit,
): Arbitrary<[Pattern, Edit[]]> =>
  piece.chain((first) => fc.tuple(fc.constant(first), fc.array(editOf(first), { maxLength: 12 })))
