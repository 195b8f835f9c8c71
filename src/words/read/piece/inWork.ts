import type { Heading } from '../../../loom/direction'
import type { Run } from '../../../pattern/pattern'
import { headingFrom } from '../../../pattern/workPiece'
import type { Body, PegsItem } from '../nodes'
import type { Order } from '../lines/orders'
import { loopsOn, type Place, type Places } from '../loops/place'
import type { Words } from '../rows/rows'

/** Which pegs the words have put in work, and how; nothing of it before they say so. Pegs from 0. */
export class InWork {
  #said: { readonly run: Run; readonly round: boolean } | null = null

  constructor(
    private readonly places: Places,
    private readonly shape: 'ring' | 'bar',
  ) {}

  /** "From here work to and fro on pegs 1 to 10." Gives the loom as it is then. */
  put({ run, round }: Order & { do: 'pegs' }, place: Place): Place {
    const last = place.pegs - 1
    const ends = run?.map((peg) => Math.min(Math.max(peg - 1, 0), last)) ?? [0, last]
    const [from, to] = [Math.min(...ends), Math.max(...ends)]
    this.#said = { run: { from, to }, round: round && this.shape === 'ring' }
    const atJoin = place.gap % place.pegs === 0
    return this.#said.round && atJoin
      ? this.places.of(place.pegs, place.occupied, 0, 'forward')
      : place
  }

  /** Is every round begun at peg 1? */
  get round(): boolean {
    return this.#said?.round ?? false
  }

  /** The words of a row that names no pegs, on those in work. */
  bodyOf({ body, kind, headed }: Words, place: Place): Body {
    const said = this.#said
    if (!said || said.round || (headed && kind === 'round' && this.shape === 'ring')) return body
    if (body.items.some((item) => item.do === 'pegs' || item.do === 'turn')) return body
    return onPegs(body, said.run, this.#heading(place, said.run))
  }

  /** From the end of the pegs in work beside which the yarn hangs, as the piece is worked. */
  #heading({ gap, pegs, heading }: Place, { from, to }: Run): Heading {
    if (this.shape === 'bar' && from === 0 && to === pegs - 1) return heading
    return headingFrom(gap, pegs, { from, to }, this.shape)
  }

  /** To and fro over the whole of a ring, the yarn stays on its side of the join. */
  after(place: Place, covers: Run | null, goes: Heading): Place {
    const said = this.#said
    const { pegs, occupied, gap, heading } = place
    const last = goes === 'forward' && covers?.to === pegs - 1 && gap === 0
    return said && !said.round && last && this.shape === 'ring'
      ? this.places.of(pegs, occupied, pegs, heading)
      : place
  }

  /** Loops that are counted with a row: those that wait are not. */
  loops(place: Place): number {
    return this.#said ? loopsOn(place, this.#said.run.from, this.#said.run.to) : place.loops
  }

  /** Loops put on or taken off. `first`: nothing was worked before, so the loom is empty. */
  edge(
    { do: does, pegs: named }: Order & { do: 'cast on' | 'bind off' },
    place: Place,
    first: boolean,
  ): Place {
    const { pegs } = place
    const on = does === 'cast on' ? 1 : 0
    if (!named)
      return this.places.of(
        pegs,
        on ? null : new Uint8Array(pegs),
        on ? 0 : place.gap,
        on ? 'forward' : place.heading,
      )
    const [start, end] = named.map((peg) => Math.min(Math.max(peg - 1, 0), pegs - 1)) as [
      number,
      number,
    ]
    const occupied = place.occupied?.slice() ?? new Uint8Array(pegs).fill(first && on ? 0 : 1)
    occupied.fill(on, Math.min(start, end), Math.max(start, end) + 1)
    const gap = end >= start ? end + 1 : end
    if (this.shape === 'ring')
      return this.places.of(pegs, occupied, gap === pegs ? 0 : gap, place.heading)
    const heading = gap === 0 ? 'forward' : gap === pegs ? 'back' : place.heading
    return this.places.of(pegs, occupied, gap, heading)
  }
}

const made = new WeakMap<Body, Map<string, Body>>()

/** The same object for the same words on the same pegs. */
function onPegs(body: Body, run: Run, heading: Heading): Body {
  let known = made.get(body)
  if (!known) made.set(body, (known = new Map<string, Body>()))
  const key = `${run.from}/${run.to}/${heading}`
  let on = known.get(key)
  if (!on) {
    const back = heading === 'back'
    const [first, last] = back ? [run.to, run.from] : [run.from, run.to]
    const pegs: PegsItem = {
      do: 'pegs',
      stitch: null,
      first,
      last,
      back,
      range: { from: 0, to: 0 },
    }
    known.set(key, (on = { ...body, items: [pegs, ...body.items] }))
  }
  return on
}
