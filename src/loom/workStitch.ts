import type { Loom } from './loom'
import type { Crossing, Site } from './row'

/** Work a stitch once the loops it takes stand on its pegs; then the yarn hangs past them. */
export function workStitch(
  loom: Loom,
  { stitch: { moves, width }, peg: lowest }: Site,
  rightToLeft: boolean,
  crossing: Crossing,
): void {
  const list =
    'rightToLeft' in moves ? moves[rightToLeft ? 'rightToLeft' : 'leftToRight'][crossing] : moves
  const forward = loom.heading === 'forward'
  const at = (peg: number): number => (forward ? lowest + peg : lowest + width - 1 - peg)
  for (const move of list) {
    switch (move.do) {
      case 'work':
        loom.work(at(move.peg), move.how)
        break
      case 'lay':
        loom.lay(at(move.peg), move.as)
        break
      case 'pass':
        loom.pass(at(move.peg), move.yarn)
        break
      case 'carry':
        loom.carry(forward ? lowest + move.gap : lowest + width - move.gap)
        break
      case 'take':
        loom.take(at(move.peg), move.to)
        break
      case 'put':
        loom.put(at(move.peg))
        break
      case 'move':
        loom.move(at(move.from), at(move.to), move.under)
        break
      case 'draw':
        loom.draw(at(move.from), at(move.to))
        break
      case 'bar':
        loom.bar(at(move.peg))
        break
      case 'base':
        loom.base(at(move.peg))
        break
    }
  }
  loom.goPast(at(width - 1))
}
