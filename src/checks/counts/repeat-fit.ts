import { deleteColumns, insertColumns, setColumns, setRepeat } from '../../pattern/edits/columns'
import { setLoom } from '../../pattern/edits/settings'
import { limits, type Run } from '../../pattern/pattern'
import { nearestDivisors, nearestWidths, repeatLeaves } from '../../pattern/columns/repeatFit'
import { fix, type Fix } from '../../pattern/finding'
import { nothing } from '../nothing'
import type { ChartView, Noted, Rule } from '../rule'
import { counted, listed, upperFirst } from '../../languages/english/forms'
import { pegsNamed } from '../../languages/english/pegs'

/** A loom fits when (pegs - edges) is a whole multiple of the repeat (design rule of this house). */
export const repeatFit: Rule = {
  id: 'repeat-fit',
  title: 'Chart does not fit the loom',
  severity: 'error',
  scope: 'chart',
  check: ({ work }: ChartView) => {
    const { layout, chart } = work
    const { columns, repeat } = chart
    if (layout.over === 0 && (!repeat || layout.copies > 0)) return nothing
    const noted = repeat ? misfit(columns, repeat, layout.pegs) : noRepeat(columns, layout.pegs)
    return [{ row: null, noted }]
  },
}

const onLooms = (count: number): boolean => count >= limits.pegs.least && count <= limits.pegs.most

function misfit(columns: number, repeat: Run, pegs: number): Noted {
  const width = repeat.to - repeat.from + 1
  const edges = columns - width
  const copies = Math.floor((pegs - edges) / width)
  const counts = nearestCounts(edges, width, pegs)
  const widths = nearestWidths(pegs - edges, width)
  const over = pegs - edges - copies * width
  const room = edges > 0 ? `${pegs - edges} (${pegs} less ${counted(edges, 'edge st')})` : `${pegs}`
  const ways = [
    ...(counts.length > 0 ? [`a loom with ${listed(counts, 'or')} pegs`] : []),
    ...(widths.length > 0
      ? [`a repeat of ${listed(widths, 'or')} ${widths.at(-1) === 1 ? 'st' : 'sts'}`]
      : []),
  ]
  return {
    pegs: null,
    say: () =>
      copies > 0
        ? upperFirst(repeatLeaves(width, room, copies, over))
        : `One repeat${edges > 0 ? ` with ${counted(edges, 'edge st')}` : ''} needs ${edges + width} pegs; the loom has ${pegs}.`,
    advice:
      ways.length > 0
        ? `These fit: ${ways.join(', or ')}.`
        : 'Make the repeat shorter, or the edges.',
    mend: () => [
      ...counts.map(onLoom),
      ...widths.map((other) => otherWidth(repeat, other)),
      ...narrower(columns, repeat, pegs),
    ],
  }
}

function noRepeat(columns: number, pegs: number): Noted {
  const over = pegs - columns
  return {
    pegs: null,
    say: () =>
      over > 0
        ? `The chart is ${counted(columns, 'st')} wide without a repeat; the loom has ${pegs} pegs, ${over} more.`
        : `The chart is ${counted(columns, 'st')} wide; the loom has ${pegs} pegs, ${-over} fewer.`,
    advice: `Use a loom with ${columns} pegs, ${over > 0 ? 'set a repeat or add sts to the chart' : 'or remove sts from the chart'}.`,
    mend: () => [
      ...(pegs % columns === 0
        ? [
            fix(`Repeat all ${counted(columns, 'st')}`, (pattern) =>
              setRepeat(pattern, { from: 0, to: columns - 1 }),
            ),
          ]
        : []),
      ...(onLooms(columns) ? [onLoom(columns)] : []),
      ...(over > 0
        ? [fix(`Add ${counted(over, 'plain st')}`, (pattern) => setColumns(pattern, pegs))]
        : []),
      ...narrower(columns, { from: 0, to: columns - 1 }, pegs),
    ],
  }
}

/** Why a repeat of so many stitches does not fill the loom, with what would; null: it does. */
export function whyNotFilled(width: number, pegs: number): string | null {
  if (pegs % width === 0) return null
  const widths = nearestDivisors(pegs, width)
  const counts = nearestCounts(0, width, pegs)
  const fits = widths.length > 0 ? `on ${pegs} pegs it must be ${listed(widths, 'or')}` : ''
  const looms = counts.length > 0 ? `it fits a loom with ${listed(counts, 'or')} pegs` : ''
  const what = [fits, looms].filter((way) => way !== '').join('; ')
  return `The repeat is ${counted(width, 'st')}${what === '' ? ` and does not fit ${pegs} pegs` : `; ${what}`}.`
}

const onLoom = (count: number): Fix =>
  fix(`Use a loom with ${count} pegs`, (pattern) => setLoom(pattern, { pegs: count }))

/** The nearest peg counts, below and above, that whole repeats fill. */
function nearestCounts(edges: number, width: number, pegs: number): number[] {
  const copies = Math.floor((pegs - edges) / width)
  return [copies, copies + 1]
    .map((count) => edges + Math.max(1, count) * width)
    .filter((count, index, all) => onLooms(count) && all.indexOf(count) === index)
}

/** The same repeat with columns added at its end or taken off there. */
function otherWidth({ from, to }: Run, width: number): Fix {
  const more = width - (to - from + 1)
  return more > 0
    ? fix(`Add ${counted(more, 'plain st')} to the repeat`, (pattern) =>
        setRepeat(insertColumns(pattern, to + 1, more), { from, to: to + more }),
      )
    : fix(`Remove ${counted(-more, 'st')} from the repeat`, (pattern) =>
        deleteColumns(pattern, to + more + 1, to),
      )
}

/** The same columns, of which a narrower run is repeated. */
function narrower(columns: number, { from, to }: Run, pegs: number): Fix[] {
  if (pegs <= columns) return []
  const other = nearestDivisors(pegs - columns, to - from + 1).find((width) => width <= to - from)
  return other === undefined
    ? []
    : [
        fix(`Repeat only ${pegsNamed({ from, to: from + other - 1 })}`, (pattern) =>
          setRepeat(pattern, { from, to: from + other - 1 }),
        ),
      ]
}
