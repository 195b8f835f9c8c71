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
  const start = forward ? lowest : lowest + width - 1
  const step = forward ? 1 : -1
  for (const move of list) {
    switch (move.do) {
      case 'work':
        loom.work(start + step * move.peg, move.how)
        break
      case 'lay':
        loom.lay(start + step * move.peg, move.as)
        break
      case 'pass':
        loom.pass(start + step * move.peg, move.yarn)
        break
      case 'carry':
        loom.carry(forward ? lowest + move.gap : lowest + width - move.gap)
        break
      case 'take':
        loom.take(start + step * move.peg, move.to)
        break
      case 'put':
        loom.put(start + step * move.peg)
        break
      case 'move':
        loom.move(start + step * move.from, start + step * move.to, move.under)
        break
      case 'draw':
        loom.draw(start + step * move.from, start + step * move.to)
        break
      case 'bar':
        loom.bar(start + step * move.peg)
        break
      case 'base':
        loom.base(start + step * move.peg)
        break
    }
  }
  loom.goPast(start + step * (width - 1))
}
