import { rectangle } from '../../drawing/path'
import type { Item, Scene } from '../../drawing/scene'
import { signPaths } from '../../drawing/signPath'
import { signWeights, weights } from '../../drawing/sizes'
import { turnSigns } from '../../drawing/turnSigns'
import { rowEnds } from '../../loom/row'
import type { Work } from '../../pattern/work'
import { languages } from '../../languages/languages'
import { filled, stroked } from '../../drawing/items'

/** One entry of the key: its sign, its abbreviation and its name. */
export interface KeyEntry {
  readonly sign: Scene
  readonly abbr: string
  readonly name: string
}

interface Cell {
  readonly width: number
  readonly height: number
}

const rim = weights.grid

function cellScene({ width, height }: Cell, title: string, items: readonly Item[]): Scene {
  const outline: Item = stroked(rectangle(0, 0, width, height), 'grid', weights.grid)
  return {
    width: width + 2 * rim,
    height: height + 2 * rim,
    title,
    layers: [{ key: 'mark', x: rim, y: rim, items: [...items, outline] }],
  }
}

/** What else the charts show: the turns that are used, and pegs that some row does not work. */
export function rowMarkEntries(works: readonly Work[], cell: Cell): KeyEntry[] {
  const rows = works.flatMap(({ chart }) => chart.rows)
  const terms = works[0]?.pattern.style.terms ?? 'us'
  const { turns, unworked } = languages[terms].booklet
  const { abbr } = languages[terms].turnSteps['German turn']
  const unit = Math.min(cell.width, cell.height)
  const place = (x: number, y: number) =>
    [(cell.width - unit) / 2 + x * unit, (cell.height - unit) / 2 + y * unit] as const
  const used = rowEnds.filter((end) => end !== 'on' && rows.some((row) => row.end === end))
  const entries = used.map((end): KeyEntry => {
    const { line = '' } = signPaths(turnSigns[end], { place, unit, straight: 0 })
    const sign: Item = stroked(line, 'note', signWeights(unit).line)
    return {
      sign: cellScene(cell, turns[end], [sign]),
      abbr: end === 'German turn' ? abbr : '',
      name: turns[end],
    }
  })
  if (rows.every(({ run }) => run === null)) return entries
  const d = rectangle(0, 0, cell.width, cell.height)
  const shade: Item = filled(d, 'unworked')
  return [...entries, { sign: cellScene(cell, unworked, [shade]), abbr: '', name: unworked }]
}
