import type { InkRole, Item } from '../scene'
import { Pen, type Surface } from './pen'
import { filled, stroked } from '../items'

const fills: readonly InkRole[] = ['loop', 'tone-1', 'tone-2', 'tone-3', 'tone-4']

/** What lies at one depth of a row: strands, each filled in its tone and outlined. */
export class Ply {
  readonly #pens = new Map<number, Pen>()

  constructor(private readonly surface: Surface) {}

  pen(tone: number): Pen {
    let pen = this.#pens.get(tone)
    if (!pen) this.#pens.set(tone, (pen = new Pen(this.surface)))
    return pen
  }

  /** Filled strands with their outlines. */
  filled(stroke: number): Item[] {
    const tones = [...this.#pens.keys()].sort((a, b) => a - b)
    const paths = tones.map((tone) => ({
      ink: fills[tone] ?? 'loop',
      d: this.#pens.get(tone)?.d ?? '',
    }))
    const all = paths.map(({ d }) => d).join('')
    return [...paths.flatMap(({ ink, d }) => area(d, ink)), ...line(all, 'loop-edge', stroke)]
  }

  /** Areas without an outline, of one ink; tones keep their own. */
  plain(ink: InkRole): Item[] {
    return [...this.#pens].flatMap(([tone, { d }]) =>
      area(d, tone > 0 ? (fills[tone] ?? ink) : ink),
    )
  }
}

export const area = (d: string, ink: InkRole): Item[] => (d ? [filled(d, ink)] : [])

export const line = (d: string, ink: InkRole, stroke: number): Item[] =>
  d ? [stroked(d, ink, stroke)] : []
