import { inOrder, type Miscount } from '../../loom/gather'
import { emptyStack } from '../../loom/strand'
import type { Site } from '../../loom/row'
import type { PatternRun } from '../../pattern/work'
import type { Stitch } from '../../stitches/stitch'
import { inFirstCopy } from '../copies'
import { fix, type Fix } from '../../pattern/finding'
import { paintColumns } from '../mending'
import { nothing } from '../nothing'
import type { Noted, RowRule, RowView } from '../rule'
import { inEachRepeat } from '../wording'
import { repeatBalance } from './balance'
import { noStitchFromHere } from './empty-peg'
import { termOf } from '../../languages/languages'
import { countedInWords, listed, needsStitches } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'

/** The sum of takes must equal the pegs in work before the row (design rule of this house). */
export const rowCount: RowRule = {
  id: 'row-count',
  title: 'Stitch count is off',
  severity: 'error',
  scope: 'row',
  startsWith: 'loops',
  check: (view) => {
    const { run, layout } = view
    const { miscount, row } = run
    if (!miscount || isOfEmptyPegs(run, miscount)) return nothing
    const { takes, loops, afterPeg } = miscount
    const held = heldUnworked(view)
    if (held.length > 0 && held.length === loops - takes) return [noteHeld(view, held)]
    const forward = run.heading === 'forward'
    const from = afterPeg === null ? row.from : forward ? afterPeg + 1 : row.from
    const to = afterPeg === null || forward ? row.to : afterPeg - 1
    const each = repeatBalance(run, layout)
    const perRepeat = each && each.copies > 1 && each.inEdges === 0 && each.perCopy !== 0
    const first = layout.copyRuns[0]
    const pegs =
      from > to
        ? null
        : perRepeat && first
          ? { from: Math.max(from, first.from), to: Math.max(from, first.to) }
          : { from, to }
    return [
      {
        pegs,
        say: (name) =>
          `${name} ${has(view, takes, loops)}. ${
            perRepeat
              ? `${missing(each.perCopy)} in each of the ${each.copies} repeats${afterPeg === null ? '' : `, after peg ${afterPeg + 1}`}.`
              : `${missing(takes - loops)} ${afterPeg === null ? 'from the first peg on' : `after peg ${afterPeg + 1}`}.`
          }`,
        advice:
          takes > loops
            ? 'Mark the peg that a decrease empties as no stitch, make a yarn over on it, or remove the decrease.'
            : 'Remove an increase, or make up for it with a decrease beside it.',
        mend: (index) => balance(view, index),
      },
    ]
  },
}

/** Pegs that are marked as no stitch although they hold a loop; in rising order. */
const heldUnworked = ({ run: { row, before } }: RowView): readonly number[] =>
  row.sites.flatMap(({ stitch, peg }) =>
    stitch.look === 'none' && before.stacks[peg] !== emptyStack ? [peg] : [],
  )

function noteHeld(view: RowView, held: readonly number[]): Noted {
  const pegs = held.filter((peg) => inFirstCopy(view.layout, peg))
  const [first = 0] = pegs
  const one = pegs.length === 1
  const name = `${one ? 'peg' : 'pegs'} ${listed(pegs.map((peg) => peg + 1))}`
  return {
    pegs: { from: first, to: pegs.at(-1) ?? first },
    say: (row) =>
      `${row}: ${name} still ${one ? 'holds a loop, but is' : 'hold loops, but are'} marked as no stitch${inEachRepeat(view.layout, first)}.`,
    advice: one
      ? 'Knit it, or move its loop to the next peg: a decrease there works both.'
      : 'Knit them, or move their loops to the next pegs: decreases there work both.',
    mend: (index) => balance(view, index),
  }
}

/** Where only empty pegs are worked too many, that is what is said. */
const isOfEmptyPegs = ({ faults }: PatternRun, { takes, loops }: Miscount): boolean =>
  takes - loops === faults.filter(({ kind }) => kind === 'empty peg').length

const missing = (excess: number): string =>
  `${countedInWords(Math.abs(excess), 'stitch', 'stitches')} too ${excess > 0 ? 'many' : 'few'}`

function has({ run: { row }, layout }: RowView, takes: number, loops: number): string {
  const whole = row.from === 0 && row.to === layout.columnOf.length - 1
  const where = whole ? 'the loom' : pegsNamed(row)
  const hold = whole || row.from === row.to ? 'holds' : 'hold'
  return needsStitches(takes, loops, `${where} ${hold}`)
}

/** Loops a stitch takes beyond those that stand on its own pegs. */
const excessOf = ({ run: { before } }: RowView, { stitch, peg }: Site): number => {
  let own = 0
  for (let at = peg; at < peg + stitch.width; at++) if (before.stacks[at] !== emptyStack) own++
  return stitch.takes - own
}

/** At most so many stitches are looked at for repairs; after that a person has to look. */
const mostSuspects = 4

function balance(view: RowView, index: number): Fix[] {
  const { run, layout } = view
  const { miscount, row } = run
  if (!miscount) return []
  const tooMany = miscount.takes > miscount.loops
  const sites = inOrder(row, run.heading) as readonly Site<Stitch>[]
  const start = miscount.afterPeg
  const after =
    start === null
      ? 0
      : sites.findIndex(({ stitch, peg }) => peg <= start && start < peg + stitch.width) + 1
  const suspects = sites
    .slice(after)
    .filter((site) => inFirstCopy(layout, site.peg))
    .filter((site) => (tooMany ? excessOf(view, site) > 0 : excessOf(view, site) < 0))
  const column = (peg: number) => layout.columnOf[peg] ?? 0
  const fixes: Fix[] = []
  if (suspects.length > 1) {
    const empty = suspects.every(({ peg }) => run.before.stacks[peg] === emptyStack)
    const pegs = listed(suspects.map(({ peg }) => peg + 1))
    const columns = suspects.map(({ peg }) => column(peg))
    fixes.push(
      empty
        ? fix(
            `Make yarn overs on pegs ${pegs}, which are empty`,
            paintColumns('yarn over', index, columns),
          )
        : fix(`Knit pegs ${pegs}`, paintColumns('knit', index, columns)),
    )
  }
  for (const site of suspects.slice(0, mostSuspects)) fixes.push(...around(view, site, index))
  return fixes
}

/** Ways to balance one stitch: work it plain, or change a plain neighbour of it. */
function around(view: RowView, { stitch, peg }: Site<Stitch>, index: number): Fix[] {
  const { run, layout, setting } = view
  const column = (at: number) => layout.columnOf[at] ?? 0
  const { abbr } = termOf(stitch, setting.terms)
  const onEmpty = run.before.stacks[peg] === emptyStack
  if (stitch.takes === 1 && onEmpty)
    return [
      fix(
        `Make a yarn over on peg ${peg + 1}, which is empty`,
        paintColumns('yarn over', index, [column(peg)]),
      ),
      fix(
        `No stitch on peg ${peg + 1}, which is empty`,
        paintColumns('no stitch', index, [column(peg)]),
      ),
    ]
  const partner = stitch.takes > 1 ? 'yarn over' : 'two together'
  const partnerName = partner === 'yarn over' ? 'Make a yarn over' : 'Knit two together'
  const plainAt = (at: number): boolean =>
    run.row.sites.some(
      (site) => site.peg === at && site.stitch.takes === 1 && site.stitch.width === 1,
    )
  const neighbours = [peg + 1, peg - 1].filter(plainAt)
  return [
    fix(
      stitch.look === 'none' ? `Knit peg ${peg + 1}` : `Knit peg ${peg + 1} instead of ${abbr}`,
      paintColumns('knit', index, [column(peg)]),
    ),
    ...(stitch.takes === 2
      ? neighbours.slice(0, 1).map((at) => noStitchFromHere(`peg ${at + 1}`, index, [column(at)]))
      : []),
    ...(Math.abs(stitch.takes - 1) > 1 && neighbours.length === 2
      ? [
          fix(
            `${partner === 'yarn over' ? 'Make yarn overs' : partnerName} on pegs ${peg} and ${peg + 2} beside it`,
            paintColumns(partner, index, neighbours.map(column)),
          ),
        ]
      : []),
    ...neighbours.map((at) =>
      fix(`${partnerName} on peg ${at + 1} beside it`, paintColumns(partner, index, [column(at)])),
    ),
  ]
}
