import { closed } from '../../drawing/path'
import type { Item, Scene } from '../../drawing/scene'
import type { Neighbours } from './overview'
import { widthOf } from '../page/text'
import { filled, written } from '../../drawing/items'

/** Space round a sheet's chart for the marks that say where it goes on, in letter heights. */
export const markSpace = 1.4
const letterShare = 0.8

/**
 * The chart of one sheet with an arrow and a letter on each side where it goes on. The chart stands
 * in the middle of the drawing, `markSpace` letter heights from its edges.
 */
export function marksScene(
  chart: { readonly width: number; readonly height: number },
  { above, below, left, right }: Neighbours,
  size: number,
  title: string,
): Scene {
  const space = markSpace * size
  const letter = letterShare * size
  const [width, height] = [chart.width + 2 * space, chart.height + 2 * space]
  const arrow = 0.28 * letter
  const items: Item[] = []
  const add = (sheet: string | undefined, x: number, y: number, dx: number, dy: number) => {
    if (!sheet) return
    const arrowAt = closed([
      [x + dx * 2.4 * arrow, y + dy * 2.4 * arrow],
      [x + dy * arrow, y - dx * arrow],
      [x - dy * arrow, y + dx * arrow],
    ])
    items.push(
      filled(arrowAt, 'solid'),
      written(
        sheet,
        [
          dx === 0 ? x + 2 * arrow : x + dx * arrow,
          dx === 0 ? y + dy * arrow + 0.34 * letter : y + arrow + 1.1 * letter,
        ],
        dx === 0 ? letter : Math.min(letter, (0.96 * space) / widthOf(sheet, 1, 'bold')),
        dx === 0 ? 'start' : 'middle',
        'note',
        'bold',
      ),
    )
  }
  const near = space - 2.8 * arrow
  add(above?.letter, width / 2, space - 0.4 * arrow - near / 2, 0, -1)
  add(below?.letter, width / 2, height - space + 0.4 * arrow + near / 2, 0, 1)
  add(left?.letter, space - 0.4 * arrow - near / 2, height / 2, -1, 0)
  add(right?.letter, width - space + 0.4 * arrow + near / 2, height / 2, 1, 0)
  return {
    width,
    height,
    title,
    layers: [{ key: 'marks', x: 0, y: 0, items }],
  }
}
