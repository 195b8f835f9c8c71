import { arrowHead, circlePath, rectangle, short } from '../../path'
import type { Item } from '../../scene'
import { isNumbered, numberStep, smallestReadable, textWidth } from '../../sizes'
import type { AboveGeometry } from './geometry'
import { filled, stroked } from '../../items'

/** Half the width of the rim, in units. */
const rimHalf = 0.68

/** What never changes: the rim, the numbers of the pegs, the marker at peg 1. */
export function loomItems(geometry: AboveGeometry): readonly Item[] {
  return [...rim(geometry), ...numbers(geometry), marker(geometry)]
}

function rim({ kind, unit, radius, centre, pegs, at, width }: AboveGeometry): readonly Item[] {
  const stroke = short(Math.max(0.15, 0.03 * unit))
  const paths =
    kind === 'ring'
      ? [
          [circlePath(centre, radius + rimHalf * unit), 'unworked'] as const,
          [circlePath(centre, Math.max(0.1 * unit, radius - rimHalf * unit)), 'ground'] as const,
        ]
      : [
          [
            rectangle(
              (width - (pegs + 0.4) * unit) / 2,
              at(0, -rimHalf)[1],
              (pegs + 0.4) * unit,
              2 * rimHalf * unit,
            ),
            'unworked',
          ] as const,
        ]
  return paths.flatMap(([d, ink]): Item[] => [filled(d, ink), stroked(d, 'frame', stroke)])
}

const numberAt = (unit: number, size: number): number => 1.02 + (0.65 * size) / unit

function numbers({ unit, pegs, at }: AboveGeometry): readonly Item[] {
  const size = Math.max(smallestReadable.text, Math.min(3.2, unit * 0.36))
  const step = numberStep(unit, textWidth(String(pegs), size) + size * 0.3)
  const items: Item[] = []
  for (let peg = 0; peg < pegs; peg++) {
    if (!isNumbered(peg, step)) continue
    const [x, y] = at(peg, numberAt(unit, size))
    items.push({
      kind: 'text',
      x,
      y: y + size * 0.36,
      text: String(peg + 1),
      size,
      anchor: 'middle',
      ink: 'note',
      ...(peg === 0 ? { weight: 'bold' as const } : {}),
    })
  }
  return items
}

/** A solid wedge on the rim that points at peg 1. */
const marker = ({ unit, at, outward }: AboveGeometry): Item =>
  filled(arrowHead(at(0, 0.5), outward(0) + Math.PI, Math.max(1, 0.42 * unit)), 'note')
