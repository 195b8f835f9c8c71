import type { Heading } from '../../../loom/direction'
import type { Run } from '../../../pattern/pattern'
import { emptyLoom } from '../../../loom/state'
import { entersRound, gapToAndFro, headingFrom } from '../../../pattern/pegs/inWork'
import type { Body, PegsItem } from '../nodes'
import type { Order } from '../lines/orders'
import { loopsOn, pegsOf, type LoomThen, type Places } from '../loops/place'
import type { Words } from '../rows/rows'

/** Which pegs the words have put in work, and how; nothing of it before they say so. Pegs from 0. */
export class InWork {
  #said: { readonly run: Run; readonly round: boolean } | null = null

  constructor(
    private readonly places: Places,
    private readonly shape: 'ring' | 'bar',
  ) {}

  /** "From here work to and fro on pegs 1 to 10." Gives the loom as it is then. */
  put({ run, round }: Order & { do: 'pegs' }, place: LoomThen): LoomThen {
    const last = pegsOf(place) - 1
    const ends = run?.map((peg) => Math.min(Math.max(peg - 1, 0), last)) ?? [0, last]
    const [from, to] = [Math.min(...ends), Math.max(...ends)]
    this.#said = { run: { from, to }, round: round && this.shape === 'ring' }
    return this.#said.round && entersRound(place.yarn.gap, pegsOf(place))
      ? this.places.at(place, 0, 'forward')
      : place
  }

  /** Is every round begun at peg 1? */
  get round(): boolean {
    return this.#said?.round ?? false
  }

  /** The pegs in work and the way over them, for a row that names none; null: it is worked as it is told. */
  pathOf({ body, kind, head }: Words, place: LoomThen): PathInWork | null {
    const said = this.#said
    if (!said || said.round || (head && kind === 'round' && this.shape === 'ring')) return null
    if (body.items.some((item) => item.do === 'pegs' || item.do === 'turn')) return null
    return { run: said.run, heading: this.#heading(place, said.run) }
  }

  /** From the end of the pegs in work beside which the yarn hangs, as the piece is worked. */
  #heading(place: LoomThen, { from, to }: Run): Heading {
    const pegs = pegsOf(place)
    if (this.shape === 'bar' && from === 0 && to === pegs - 1) return place.heading
    return headingFrom(place.yarn.gap, pegs, { from, to }, this.shape)
  }

  /** The loom after a row; to and fro over a ring, the yarn stays on its side of the join. */
  after(place: LoomThen, covers: Run | null, goes: Heading): LoomThen {
    if (!this.#said || this.#said.round || this.shape === 'bar') return place
    const last = covers ? { to: covers.to, heading: goes } : undefined
    return this.places.at(place, gapToAndFro(place.yarn.gap, last, pegsOf(place)))
  }

  /** Loops that are counted with a row: those that wait are not. */
  loops(place: LoomThen): number {
    return this.#said ? loopsOn(place, this.#said.run.from, this.#said.run.to) : place.loops
  }

  /** Loops put on or taken off. `first`: nothing was worked before, so the loom is empty. */
  edge(order: Order & { do: 'cast on' | 'bind off' }, place: LoomThen, first: boolean): LoomThen {
    const { pegs: named } = order
    const last = pegsOf(place) - 1
    const before = first && order.do === 'cast on' ? emptyLoom(last + 1) : place
    const ends = (named ?? [1, last + 1]).map((peg) => Math.min(Math.max(peg - 1, 0), last))
    return this.places.edge(before, order.do, order.how, Math.min(...ends), Math.max(...ends))
  }
}

export interface PathInWork {
  readonly run: Run
  readonly heading: Heading
}

/** The words on a run of pegs, worked one way. */
export function onPegs(body: Body, { run: { from, to }, heading }: PathInWork): Body {
  const back = heading === 'back'
  const [first, last] = back ? [to, from] : [from, to]
  const range = { from: 0, to: 0 }
  const pegs: PegsItem = { do: 'pegs', stitch: null, first, last, back, range }
  return { ...body, items: [pegs, ...body.items] }
}
